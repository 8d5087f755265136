export const en = {
  "ruleName.load-break": "What opens under load is made to break that current",
  "rule.load-break.bare":
    "{name} breaks {amps} A on {letter}, and neither it nor the tool in hand is made to break more than {limit} A",
  "rule.load-break.unrated":
    "opening {name} breaks {amps} A on {letter}; it has no rating, and may break {limit} A, charging and exciting current only",
  "rule.load-break.clamp":
    "lifting {name} breaks {amps} A on {letter}; a clamp may break {limit} A, charging and exciting current only",
  "rule.load-break.lead": "cutting {name} breaks {amps} A on {letter}; a lead may break {limit} A",
  "rule.load-break.help":
    "drop the load first with something that is made to: a load-break tool on a cutout with hooks, a rated switch, the customers' mains",
  "rule.load-break.procedure":
    "{name} breaks {amps} A on {letter} by an open gap; up to {limit} A that rests on the company's own procedure, not on a rating",
  "rule.load-break.procedure.help": "use a load-break tool, or be sure that your procedure allows it",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.load-break": "Ce qui s'ouvre en charge est fait pour couper ce courant",
  "rule.load-break.bare":
    "{name} coupe {amps} A sur {letter}, et ni lui ni l'outil en main ne sont faits pour couper plus de {limit} A",
  "rule.load-break.unrated":
    "ouvrir {name} coupe {amps} A sur {letter} ; il n’a aucun pouvoir de coupure et peut couper {limit} A, courants de charge et à vide seulement",
  "rule.load-break.clamp":
    "lever {name} coupe {amps} A sur {letter} ; une pince peut couper {limit} A, courants de charge capacitive et à vide seulement",
  "rule.load-break.lead":
    "couper {name} interrompt {amps} A sur {letter} ; une bretelle peut couper {limit} A",
  "rule.load-break.help":
    "ôtez d'abord la charge avec ce qui est fait pour cela : un outil de coupure sur un coupe-circuit à crochets, un interrupteur prévu, les disjoncteurs des clients",
  "rule.load-break.procedure":
    "{name} coupe {amps} A sur {letter} par simple ouverture ; jusqu'à {limit} A cela repose sur la procédure de l'entreprise, pas sur un pouvoir de coupure",
  "rule.load-break.procedure.help":
    "prenez un outil de coupure en charge, ou assurez-vous que votre procédure le permet",
};
