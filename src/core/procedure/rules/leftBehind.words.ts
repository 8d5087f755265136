export const en = {
  "ruleName.left-behind": "Nothing of the job stays on the line",
  "rule.left-behind": "left at the end: {what}",
  "rule.left-behind.underWay": "still on while work goes on: {what}",
  "rule.left-behind.help":
    "take off what is the crew's and bring each thing to its normal position, or add a note that names it and says why it stays",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.left-behind": "Rien du travail ne reste sur la ligne",
  "rule.left-behind": "laissé à la fin : {what}",
  "rule.left-behind.underWay": "encore là pendant que le travail continue : {what}",
  "rule.left-behind.help":
    "retirez ce qui est à l'équipe et remettez chaque chose à sa position normale, ou ajoutez une note qui la nomme et dit pourquoi elle reste",
};
