export const en = {
  "ruleName.phase-check": "Two supplies are joined only phase to phase",
  "rule.phase-check.untested": "{name} closes a parallel path that nobody has tested for phasing and volts",
  "rule.phase-check.untested.help":
    "test {from} and {to} for volts, phase to phase, right before it is closed",
  "rule.phase-check": "{name} joins two supplies on {letter} that stand {degrees}° and {volts} V apart",
  "rule.phase-check.help":
    "check the phases across the gap with a phasing set first; find which is which before closing",
  "rule.phase-check.notInStep":
    "{name} joins {one} and {other}, which nothing keeps in step: up to {volts} V can stand across it",
  "rule.phase-check.notInStep.help":
    "take one of the two off first, and close after it: with a gap in the supply",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.phase-check": "Deux alimentations ne se joignent que phase à phase",
  "rule.phase-check.untested":
    "{name} ferme un chemin parallèle dont personne n’a vérifié la concordance de phase et la tension",
  "rule.phase-check.untested.help":
    "vérifier la tension à {from} et à {to}, phase à phase, juste avant de fermer",
  "rule.phase-check": "{name} joint sur {letter} deux sources écartées de {degrees}° et de {volts} V",
  "rule.phase-check.help":
    "comparez d'abord les phases de part et d'autre avec un comparateur ; trouvez laquelle est laquelle avant de fermer",
  "rule.phase-check.notInStep":
    "{name} joint {one} et {other}, que rien ne tient en synchronisme : jusqu’à {volts} V peuvent se tenir entre ses bornes",
  "rule.phase-check.notInStep.help": "retirez d’abord l’une des deux, puis fermez : avec une coupure",
};
