export const en = {
  "ruleName.open-neutral":
    "No neutral is parted, and nobody connected to an open one, with supply on the legs",
  "rule.open-neutral": "{name} gets supply while its neutral is open: its two legs go apart",
  "rule.open-neutral.help": "join the neutral and test both legs before anybody is connected",
  "rule.open-neutral.parted":
    "{name} is cut on its neutral under load: it carried {amps} A, and {volts} V stands across the gap",
  "rule.open-neutral.parted.help":
    "take the load off first; a neutral is the last to be cut and the first to be joined",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.open-neutral":
    "Aucun neutre n’est coupé, ni personne raccordé à un neutre ouvert, quand il y a de la tension à côté",
  "rule.open-neutral":
    "{name} a son alimentation alors que son neutre est ouvert : ses deux jambes s’écartent",
  "rule.open-neutral.help":
    "rabouter le neutre et vérifier les deux jambes avant de raccorder qui que ce soit",
  "rule.open-neutral.parted":
    "le neutre de {name} est coupé en charge : il portait {amps} A, et {volts} V se tiennent entre les bouts",
  "rule.open-neutral.parted.help":
    "enlever la charge d’abord ; le neutre est le dernier coupé et le premier raccordé",
};
