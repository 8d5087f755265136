export const en = {
  "ruleName.capacitor-discharge": "A capacitor waits, then is shorted, before its line counts as dead",
  "rule.capacitor-discharge.switched": "{name} goes back on the line while it holds {volts} V",
  "rule.capacitor-discharge.closed": "{name} puts the line back on {bank} while it holds {volts} V",
  "rule.capacitor-discharge.closed.help": "wait {left} s more before it is closed again",
  "rule.capacitor-discharge":
    "{name} has been without supply for {seconds} s and still holds {volts} V when the {verb} touches it",
  "rule.capacitor-discharge.help": "wait {left} s more, then short it",
  "rule.capacitor-discharge.unshorted":
    "{name} has not been shorted, so what hangs on it does not count as dead",
  "rule.capacitor-discharge.unshorted.help": "put a ground set on every phase of {name}",
  "rule.capacitor-discharge.apart.help":
    "its own open switch parts it from every ground set: close it while the line is dead, then put a ground set on every phase of {name}",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.capacitor-discharge":
    "Un condensateur attend, puis est court-circuité, avant que sa ligne compte hors tension",
  "rule.capacitor-discharge.switched": "{name} revient sur la ligne alors qu'il garde {volts} V",
  "rule.capacitor-discharge.closed": "{name} remet la ligne sur {bank} qui garde {volts} V",
  "rule.capacitor-discharge.closed.help": "attendre encore {left} s avant de refermer",
  "rule.capacitor-discharge":
    "{name} est sans alimentation depuis {seconds} s et tient encore {volts} V quand on y touche ({verb})",
  "rule.capacitor-discharge.help": "attendez encore {left} s, puis court-circuitez-le",
  "rule.capacitor-discharge.unshorted":
    "{name} n'a pas été court-circuité, donc ce qui y tient ne compte pas comme hors tension",
  "rule.capacitor-discharge.unshorted.help": "posez une mise à la terre sur chaque phase de {name}",
  "rule.capacitor-discharge.apart.help":
    "son propre interrupteur ouvert l’écarte de toute mise à la terre : fermez-le tant que la ligne est hors tension, puis posez une mise à la terre sur chaque phase de {name}",
};
