export const hazard = {} as const;
