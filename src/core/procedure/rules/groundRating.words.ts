export const en = {
  "ruleName.ground-rating": "A ground set carries the largest fault for the clearing time",
  "rule.ground-rating":
    "{set} would carry {amps} A for {seconds} s at X/R {xOverR}; its {cable} cable withstands {withstand} A",
  "rule.ground-rating.help": "use a larger set or two in parallel, or have the clearing time shortened",
  "rule.ground-rating.unknown":
    "nobody stated which cable {set} has: it is counted as No. 2 copper, the least that is allowed",
  "rule.ground-rating.small": "the {cable} cable of {set} is smaller than No. 2 copper",
  "rule.ground-rating.size.help": "use a set of No. 2 copper or larger, rated for the fault current there",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.ground-rating": "Une mise à la terre porte le plus grand défaut pendant l'élimination",
  "rule.ground-rating":
    "{set} porterait {amps} A pendant {seconds} s à X/R {xOverR} ; son câble {cable} tient {withstand} A",
  "rule.ground-rating.help":
    "prenez un jeu plus gros ou deux en parallèle, ou faites raccourcir la durée d'élimination",
  "rule.ground-rating.unknown":
    "personne n’a dit quel câble a {set} : il est compté comme du cuivre No. 2, le moins permis",
  "rule.ground-rating.small": "le câble {cable} de {set} est plus petit que du cuivre No. 2",
  "rule.ground-rating.size.help":
    "prenez un jeu en cuivre No. 2 ou plus gros, prévu pour le courant de défaut à cet endroit",
};
