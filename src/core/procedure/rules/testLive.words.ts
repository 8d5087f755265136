export const en = {
  "ruleName.test-live": "A test that shows voltage stops the plan",
  "rule.test-live": "the test showed {volts} V at {where}, and the next thing is to {verb}",
  "rule.test-live.none": "the test shows no voltage at {where}, where it was to be live",
  "rule.test-live.none.help": "stop and find out what is still open before anything else is closed",
  "rule.test-live.help": "stop: inspect, ask the system operator, find what feeds it, and brief again",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.test-live": "Une vérification qui montre une tension arrête l'ordre des étapes",
  "rule.test-live": "la vérification a montré {volts} V à {where}, et la suite est : {verb}",
  "rule.test-live.none": "la vérification ne montre aucune tension en {where}, qui devait être sous tension",
  "rule.test-live.none.help": "s’arrêter et chercher ce qui est encore ouvert avant de fermer autre chose",
  "rule.test-live.help":
    "arrêtez : regardez, interrogez l'exploitant, trouvez ce qui l'alimente, et refaites la réunion",
};
