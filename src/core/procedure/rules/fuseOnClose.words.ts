export const en = {
  "ruleName.fuse-on-close": "The link holds when its cutout closes",
  "rule.fuse-on-close.inrush":
    "the {link} link of {name} meets {amps} A of inrush for {seconds} s and can melt at {melts} A",
  "rule.fuse-on-close.inrush.help": "energize the transformers in parts, or fit a larger or slower link",
  "rule.fuse-on-close.cold-load":
    "the {link} link of {name} meets about {amps} A of load coming back cold and can melt at {melts} A",
  "rule.fuse-on-close.cold-load.help": "pick the load up in parts",
  "rule.fuse-on-close.fault":
    "closing onto the fault sends {amps} A through the {link} link of {name}, which melts in {seconds} s",
  "rule.fuse-on-close.fault.fast":
    "closing onto the fault sends {amps} A through the {link} link of {name}, which melts within half a cycle",
  "rule.fuse-on-close.fault.help": "find and clear the fault before closing",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.fuse-on-close": "L'élément fusible tient quand son coupe-circuit se ferme",
  "rule.fuse-on-close.inrush":
    "le fusible {link} de {name} reçoit {amps} A d'enclenchement pendant {seconds} s et peut fondre à {melts} A",
  "rule.fuse-on-close.inrush.help":
    "mettez les transformateurs sous tension par parties, ou montez un fusible plus gros ou plus lent",
  "rule.fuse-on-close.cold-load":
    "le fusible {link} de {name} reçoit environ {amps} A de charge froide et peut fondre à {melts} A",
  "rule.fuse-on-close.cold-load.help": "reprenez la charge par parties",
  "rule.fuse-on-close.fault":
    "fermer sur le défaut envoie {amps} A dans le fusible {link} de {name}, qui fond en {seconds} s",
  "rule.fuse-on-close.fault.fast":
    "la fermeture sur le défaut envoie {amps} A dans le fusible {link} de {name}, qui fond en moins d'une demi-période",
  "rule.fuse-on-close.fault.help": "trouvez et éliminez le défaut avant de fermer",
};
