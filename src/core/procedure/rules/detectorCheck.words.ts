export const en = {
  "ruleName.detector-check": "The detector is proven before a test and after it",
  "rule.detector-check.before": "the detector is not proven right before this test",
  "rule.detector-check.after":
    "the detector is not proven again after the test, and the next thing is to {verb}",
  "rule.detector-check.end": "the detector is not proven again after the last test",
  "rule.detector-check.help":
    "check the detector on a known live source or its tester right before the test and right after it",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.detector-check": "Le détecteur est prouvé avant une vérification et après",
  "rule.detector-check.before": "le détecteur n'est pas éprouvé juste avant cette vérification",
  "rule.detector-check.after":
    "le détecteur n'est pas éprouvé de nouveau après la vérification, avant : {verb}",
  "rule.detector-check.end": "le détecteur n'est pas éprouvé de nouveau après la dernière vérification",
  "rule.detector-check.help":
    "éprouvez le détecteur sur une source connue sous tension ou sur son testeur, juste avant la vérification et juste après",
};
