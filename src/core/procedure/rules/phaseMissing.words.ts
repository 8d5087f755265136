export const en = {
  "ruleName.phase-missing": "No bank is left with a phase missing",
  "rule.phase-missing": "{name} is left with {phases} missing",
  "rule.phase-missing.closed":
    "{name} puts a customer onto {bank}, which has {phases} missing: a motor burns on it",
  "rule.phase-missing.closed.single": "{name} puts a customer onto {bank}, which has {phases} missing",
  "rule.phase-missing.help": "close the missing phase, or open the others",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.phase-missing": "Aucun banc n’est laissé avec une phase en moins",
  "rule.phase-missing": "on laisse {name} sans {phases}",
  "rule.phase-missing.closed":
    "{name} met un client sur {bank}, à qui il manque {phases} : un moteur y brûle",
  "rule.phase-missing.closed.single": "{name} met un client sur {bank}, à qui il manque {phases}",
  "rule.phase-missing.help": "fermer la phase qui manque, ou ouvrir les autres",
};
