export const en = {
  "ruleName.volts-first":
    "The volts of a changed transformer or service are read before a customer is put onto it",
  "rule.volts-first":
    "{name} puts the customer onto {bank}, which was changed and whose volts nobody has read",
  "rule.volts-first.dead":
    "{name} went in while {bank}, which was changed, was still dead: the customer gets its volts before anybody has read them",
  "rule.volts-first.never": "{bank} was changed, customers hang on it, and nobody has read its volts",
  "rule.volts-first.help":
    "test {at} for volts, leg to leg and to the neutral, before the customer is put back",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.volts-first":
    "La tension d’un transformateur ou d’un branchement remplacé se relève avant de remettre un client",
  "rule.volts-first":
    "{name} remet le client sur {bank}, qui a été remplacé et dont personne n’a relevé la tension",
  "rule.volts-first.dead":
    "{name} a été refermé alors que {bank}, qui a été remplacé, était encore hors tension : le client reçoit sa tension avant que personne l’ait relevée",
  "rule.volts-first.never":
    "{bank} a été remplacé, des clients y sont raccordés, et personne n’en a relevé la tension",
  "rule.volts-first.help":
    "vérifiez la tension à {at}, entre les fils et au neutre, avant de remettre le client",
};
