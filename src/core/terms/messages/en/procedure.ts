export const procedure = {} as const;
