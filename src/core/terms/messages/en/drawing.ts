export const drawing = {
} as const;
