export const en = {
  "ruleName.secondary-backfeed": "Work on a transformer is guarded against its secondary",
  "rule.secondary-backfeed": "{name} is worked on while {feeders} could feed it backwards",
  "rule.secondary-backfeed.help":
    "ground the secondary at {at}, or pull every meter, or have every main open, tagged and blocked",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.secondary-backfeed": "Le travail sur un transformateur est gardé contre son secondaire",
  "rule.secondary-backfeed": "on travaille sur {name} alors que {feeders} pourrait l'alimenter à l'envers",
  "rule.secondary-backfeed.help":
    "mettez le secondaire à la terre à {at}, ou retirez chaque compteur, ou ayez chaque disjoncteur principal ouvert, étiqueté et bloqué",
};
