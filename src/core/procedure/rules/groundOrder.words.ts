export const en = {
  "ruleName.ground-order": "Ground end first on, line end first off",
  "rule.ground-order.on": "the phase end of {set} goes on before its neutral or earth end",
  "rule.ground-order.on.help": "put the neutral or earth end on first, then the phase end with a stick",
  "rule.ground-order.off": "the neutral or earth end of {set} comes off before its phase end",
  "rule.ground-order.off.help": "take the phase end off first with a stick, then the neutral or earth end",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.ground-order": "Côté terre posé d'abord, côté ligne retiré d'abord",
  "rule.ground-order.on": "le côté phase de {set} se pose avant son côté neutre ou terre",
  "rule.ground-order.on.help": "posez d'abord le côté neutre ou terre, puis le côté phase à la perche",
  "rule.ground-order.off": "le côté neutre ou terre de {set} part avant son côté phase",
  "rule.ground-order.off.help": "ôtez d'abord le côté phase à la perche, puis le côté neutre ou terre",
};
