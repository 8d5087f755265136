export const en = {
  "ruleName.ground-place": "Grounds stand where they keep the exposure under the limit",
  "rule.ground-place":
    "with these grounds the worker would still feel {exposure} V, over {limit} V: {threat}",
  "rule.ground-place.help": "a ground set at {place} would be enough",
  "rule.ground-place.none":
    "no one more ground set is enough: remove a way in, or bond the worker to the pole and the neutral",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.ground-place": "Les terres sont là où elles tiennent l'exposition sous la limite",
  "rule.ground-place":
    "avec ces mises à la terre le travailleur ressentirait encore {exposure} V, plus que {limit} V : {threat}",
  "rule.ground-place.help": "une mise à la terre à {place} suffirait",
  "rule.ground-place.none":
    "aucune mise à la terre de plus ne suffit : ôtez une entrée, ou reliez le travailleur au poteau et au neutre",
};
