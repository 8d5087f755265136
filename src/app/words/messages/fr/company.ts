/** Règles et limites d'une entreprise, comme on les change et les montre. */
export const company = {
  "company.title": "Règles et limites de l'entreprise",
  "company.open": "Règles et limites de l'entreprise pour ce dessin",
  "company.about":
    "Elles valent pour ce dessin et y sont enregistrées. Chaque changement demande une raison et figure avec elle sur la fiche.",
  "company.none": "Toutes les règles sont actives, toutes les limites sont les habituelles.",
  "company.rulesOff.one": "1 règle est désactivée ici.",
  "company.rulesOff": "{count} règles sont désactivées ici.",
  "company.limits.one": "1 limite n'est pas l'habituelle.",
  "company.limits": "{count} limites ne sont pas les habituelles.",
  "company.why": "Lesquelles, et pourquoi",
  "company.ruleFacts": "{severity} · {rule} · {citation}",
  "company.limitIs": "{what} : {value} ({why})",
  "company.back": "Revenir à la valeur par défaut",
  "company.onAgain": "Réactiver",
  "company.what": "{what} : {why}",
  "company.noReason": "aucune raison n'a été donnée",
  "company.change": "Changer",
  "company.changeName": "Changer : {name}",
  "company.value": "{name} [{unit}]",
  "company.reasonFor": "Raison, telle qu'elle figurera sur la fiche",
  "company.needReason": "Dites d'abord pourquoi : une limite ne change qu'avec une raison.",
  "company.needNumber": "Ce n'est pas un nombre.",
  "company.ruleOffHelp":
    "Ce que trouve cette règle n'est alors dit nulle part : ni dans l'ordre des étapes, ni dans la répétition, ni sur la fiche. Ce qui arrive à une personne reste le même.",
} as const;
