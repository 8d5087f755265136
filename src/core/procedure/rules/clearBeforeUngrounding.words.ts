export const en = {
  "ruleName.clear-before-ungrounding": "Everybody is clear before a ground comes off",
  "rule.clear-before-ungrounding": "{set} comes off while people are still on the line at {where}",
  "rule.clear-before-ungrounding.help":
    "get an all-clear from every person by name before the ground comes off",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.clear-before-ungrounding": "Tous sont dégagés avant qu'une terre soit retirée",
  "rule.clear-before-ungrounding": "{set} part alors qu'il y a encore du monde sur la ligne à {where}",
  "rule.clear-before-ungrounding.help":
    "obtenez le dégagement de chacun par son nom avant que la terre ne parte",
};
