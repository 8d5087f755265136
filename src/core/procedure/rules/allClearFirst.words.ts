export const en = {
  "ruleName.all-clear-first": "An all-clear, said back, before the line is energized",
  "rule.all-clear-first":
    "{name} energizes the line without an all-clear after the last work and the last ground",
  "rule.all-clear-first.unrepeated": "{name} energizes the line before the all-clear was repeated back",
  "rule.all-clear-first.help":
    "get an all-clear from every person by name, and repeat it back, once the last ground is off",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.all-clear-first": "Tous dégagés, répété, avant la remise sous tension",
  "rule.all-clear-first":
    "{name} met la ligne sous tension sans dégagement après le dernier travail et la dernière terre",
  "rule.all-clear-first.unrepeated":
    "{name} met la ligne sous tension avant que le dégagement ait été répété",
  "rule.all-clear-first.help":
    "obtenez le dégagement de chacun par son nom, et répétez-le, une fois la dernière terre partie",
};
