export const en = {
  "ruleName.neutral-volts": "A neutral at dangerous volts is said",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.neutral-volts": "Un neutre à une tension dangereuse est signalé",
};
