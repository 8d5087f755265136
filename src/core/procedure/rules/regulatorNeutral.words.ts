export const en = {
  "ruleName.regulator-neutral": "A regulator is bypassed at neutral, and blocked there",
  "rule.regulator-neutral":
    "{by} bypasses {name} off neutral on {phases}: {amps} A flows round through its series winding",
  "rule.regulator-neutral.help": "run it to neutral on every phase and block it there before it is bypassed",
  "rule.regulator-neutral.unblocked":
    "{by} bypasses {name}, which is at neutral and not blocked: its control can run it off",
  "rule.regulator-neutral.unblocked.help": "switch its control off and block it at neutral first",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.regulator-neutral": "Un régulateur est contourné à la position neutre, et bloqué là",
  "rule.regulator-neutral":
    "{by} contourne {name} hors de la position neutre sur {phases} : {amps} A tourne par son enroulement série",
  "rule.regulator-neutral.help":
    "le mener à la position neutre sur chaque phase et l’y bloquer avant de le contourner",
  "rule.regulator-neutral.unblocked":
    "{by} contourne {name}, qui est à la position neutre sans y être bloqué : sa commande peut l’en sortir",
  "rule.regulator-neutral.unblocked.help": "couper sa commande et le bloquer à la position neutre d’abord",
};
