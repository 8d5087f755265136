export const en = {
  "ruleName.single-phasing": "A motor that ran on two phases is off before the third comes back",
  "rule.single-phasing": "{name} closes with {motor} on, pole by pole, where a link had blown",
  "rule.single-phasing.help": "have the motor shut off at its own main until all its phases are back",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.single-phasing":
    "Un moteur qui a tourné sur deux phases est arrêté avant le retour de la troisième",
  "rule.single-phasing":
    "{name} se ferme avec {motor} en service, pôle par pôle, là où un fusible avait fondu",
  "rule.single-phasing.help":
    "faire arrêter le moteur à son disjoncteur jusqu’au retour de toutes ses phases",
};
