export const en = {
  "ruleName.ground-return": "The current of a ground goes home by a whole neutral",
  "rule.ground-return.rod": "{set} returns through a rod alone",
  "rule.ground-return.rod.help":
    "ground to the neutral at {at}, which leads home; a rod alone lets no link see the fault",
  "rule.ground-return.open":
    "the neutral at {at} does not lead home to a source, so {set} returns through rods alone",
  "rule.ground-return.open.help": "find where the neutral is open, and ground where it is whole",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.ground-return": "Le courant d'une terre revient par un neutre entier",
  "rule.ground-return.rod": "{set} revient par un piquet seul",
  "rule.ground-return.rod.help":
    "mettez à la terre par le neutre à {at}, qui remonte à la source ; par un piquet seul aucun fusible ne voit le défaut",
  "rule.ground-return.open":
    "le neutre à {at} ne remonte à aucune source, donc {set} revient par les piquets seuls",
  "rule.ground-return.open.help": "trouvez où le neutre est ouvert, et mettez à la terre là où il est entier",
};
