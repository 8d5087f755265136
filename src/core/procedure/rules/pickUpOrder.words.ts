export const en = {
  "ruleName.pick-up-order": "A clamp goes on with the cutout beyond it open",
  "rule.pick-up-order": "{name} goes on with {amps} A beyond it; a clamp may make or break {limit} A",
  "rule.pick-up-order.bank": "{name} energizes {bank} by its jaws: they make the bank’s inrush",
  "rule.pick-up-order.meter": "{name} goes in with {amps} A beyond it: its jaws make the load",
  "rule.pick-up-order.meter.help": "have the customer's main off before it goes in",
  "rule.pick-up-order.meter.main": "open {main} first; it picks up the load afterwards",
  "rule.pick-up-order.join":
    "{name} is remade with {amps} A beyond it: a connector in the hand makes the load",
  "rule.pick-up-order.join.help": "open what is beyond it first; that picks up the load afterwards",
  "rule.pick-up-order.behind":
    "{name} energizes {bank} from its low side: a connector in the hand makes its inrush, and {at} comes to {volts} V",
  "rule.pick-up-order.behind.help":
    "energize {bank} from its own side first, test across the open leads, and join them where no volts stand between",
  "rule.pick-up-order.blade":
    "{name} is closed onto {amps} A; it has no rating for load, and may make or break {limit} A",
  "rule.pick-up-order.blade.help":
    "close it first, with the load off, and let what is made to break the load pick it up last",
  "rule.pick-up-order.help":
    "open the cutout beyond it, attach the clamp, then let the cutout pick up the load",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.pick-up-order": "Une pince se pose avec le coupe-circuit au-delà ouvert",
  "rule.pick-up-order": "{name} se pose avec {amps} A en aval ; une pince peut établir ou couper {limit} A",
  "rule.pick-up-order.bank":
    "{name} met {bank} sous tension par ses mâchoires, qui font l’appel de courant du banc",
  "rule.pick-up-order.meter": "{name} se remet avec {amps} A en aval : ses mâchoires établissent la charge",
  "rule.pick-up-order.meter.help": "faites couper le disjoncteur principal du client avant de le remettre",
  "rule.pick-up-order.meter.main": "ouvrez d'abord {main} ; il reprend la charge ensuite",
  "rule.pick-up-order.join":
    "on refait {name} avec {amps} A en aval : un connecteur tenu en main établit la charge",
  "rule.pick-up-order.join.help":
    "ouvrez d'abord ce qui est en aval ; c'est lui qui reprend la charge ensuite",
  "rule.pick-up-order.behind":
    "{name} met {bank} sous tension par sa basse tension : un connecteur tenu en main fait son appel de courant, et {at} monte à {volts} V",
  "rule.pick-up-order.behind.help":
    "mettez d'abord {bank} sous tension par son propre côté, vérifiez entre les bretelles ouvertes, et joignez-les là où il n'y a aucune tension",
  "rule.pick-up-order.blade":
    "{name} se ferme sur {amps} A ; il n’a pas de calibre pour la charge, et peut établir ou couper {limit} A",
  "rule.pick-up-order.blade.help":
    "fermez-le d’abord, la charge coupée, et laissez ce qui est fait pour la couper la reprendre en dernier",
  "rule.pick-up-order.help":
    "ouvrez le coupe-circuit en aval, posez la pince, puis laissez le coupe-circuit reprendre la charge",
};
