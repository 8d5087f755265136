/** Règles et limites propres à un dessin : ce que demande chaque règle, et l'écran qui la désactive avec une raison. */
export const company = {
  "company.amount": "{value} {unit}",
  "company.unknownRule": "Une règle que cette version ne connaît pas",
  "rules.on": "Active",
  "rules.off": "Désactivée",

  "limit.singleCrew":
    "Une seule équipe, dont chaque ouverture est visible, sur la structure du travail et sous son propre contrôle, peut omettre la demande, les étiquettes et le blocage (29 CFR 1910.269(m)(2)(iii))",
  "limit.hazardVolts": "Sous tension dès",
  "limit.exposureLimitVolts": "Limite d'exposition",
  "limit.openWithoutLoadBreakAmps": "Un coupe-circuit nu peut couper",
  "limit.tapClampMaxAmps": "Une pince peut porter",
  "limit.assumeGenerators": "Supposer que tout client peut avoir une génératrice",
  "limit.assumedGeneratorKva": "Génératrice supposée",
  "limit.bodyOhms": "Résistance du corps",
  "limit.clearingSeconds": "Durée d'élimination",
  "limit.inducedLimitVolts": "Limite d'exposition induite",
  "limit.clampBreakAmps": "Une pince peut couper",
  "limit.seenDays": "Ce qui a été vu compte comme vu pendant (0 : toujours)",
} as const;
