export const en = {
  "ruleName.induced-exposure": "What a neighbouring circuit induces is not felt through the grounds",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.induced-exposure": "Ce qu'induit un circuit voisin ne se ressent pas à travers les terres",
};
