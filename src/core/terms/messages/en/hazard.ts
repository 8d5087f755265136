/** What the assessment finds, as a sentence each; whoever shows findings comes after the first picture. */
export const hazard = {
  "hazard.unsolved":
    "the drawing's equations could not be solved, so no number here may be believed and every conductor counts as live",
  "hazard.loadsUnsettled":
    "loads of constant current or power, or machines at a set output, did not settle; such loads are taken as constant impedances, such machines as volts behind their reactance",
  "hazard.brokenEnergized": "{name} has parted and is energized on {phases}",
  "hazard.brokenEnergized.help": "guard it, keep everybody away, and open what feeds it from either side",
  "hazard.faultStands":
    "{name} is fed on {phases} as drawn: {amps} A flow, and nothing on the drawing is sure to clear it: {sees}",
  "hazard.faultStands.unearthed":
    "its source is not earthed, so that no link sees one phase at earth; an earth-fault relay at the source would have to, and a second phase at earth is a short",
  "hazard.faultStands.mayHold": "the {link} link of {device} is next to see it, and may hold",
  "hazard.faultStands.trips": "{device} is next to see it, and at what it trips is not drawn",
  "hazard.faultStands.machine": "{machine} goes on feeding it, whatever link melts",
  "hazard.faultStands.none": "the source's own protection, which is not drawn, would have to see it",
  "hazard.faultStands.help":
    "guard the place and keep everybody away from what it touches; have it opened from where the fault can be broken",
  "hazard.faultStands.help.at":
    "guard the place and keep everybody away from what it touches and from the pole's down conductor, which stand at {at} V to earth as drawn; have it opened from where the fault can be broken",
  "hazard.faultStands.help.beside":
    "guard the place and keep everybody away from what it touches; a phase beside it stands at {beside} V to earth; have it opened from where the fault can be broken",
  "hazard.faultStands.help.both":
    "guard the place and keep everybody away from what it touches and from the pole's down conductor, which stand at {at} V to earth as drawn; a phase beside it stands at {beside} V; have it opened from where the fault can be broken",
  "hazard.faultStands.link":
    "{name} is fed on {phases} as drawn: the {link} link of {device} clears its {amps} A within {seconds} s, and is drawn whole",
  "hazard.faultStands.link.help":
    "look whether that link has blown; until it is seen to have, guard the place and take it for live",
  "volts.told": "{volts} V",
  "volts.underOne": "under 1 V",
  "hazard.moreThan": "more than {volts}",
  "hazard.openNeutral": "the neutral of {name} is open beside live conductors",
  "hazard.openNeutral.help": "take the load off beyond it, and join it in gloves after a test",
  "hazard.singlePhasing": "{name} is short of a phase as drawn: {least} to {most} V stand between its phases",
  "hazard.singlePhasing.help":
    "have what runs there shut off at its own main until every phase is back; find the link or the conductor that is open",
  "hazard.legVolts": "{where} stands at {volts} V to its neutral instead of {nominal} V",
  "hazard.legVolts.help":
    "look for an open neutral on the way to the transformer, and pull the meters beyond it",
  "hazard.closedBetween":
    "{name} is drawn closed and joins two supplies on {letter} that stand {degrees}° and {volts} V apart: a short",
  "hazard.closedBetween.help":
    "go and look which way it stands and which phase is which; if it is so, keep away and have it opened from where the fault can be broken",
  "hazard.closedBetween.notInStep":
    "{name} is drawn closed and joins two supplies that nothing keeps in step: up to {volts} V can stand between them",
  "hazard.closedBetween.notInStep.help":
    "go and look whether it is closed; if it is so, ask the system operator what keeps the two in step, and take one of them off",
  "hazard.regulatorBypassed":
    "{name} is drawn bypassed off neutral on {phases}: current without limit flows round through its series winding",
  "hazard.regulatorBypassed.help":
    "go and look which tap it stands on and whether its bypass is closed; if it is so, keep away from both and have the line opened",
  "hazard.neutralVolts": "{where} stands at {volts} V to earth as drawn",
  "hazard.neutralVolts.notKnown":
    "the volts of {where} to earth are not known, since the solution did not settle",
  "hazard.neutralVolts.help":
    "treat it as live; look for a break in the neutral between it and the source, and for a bad ground rod",
  "hazard.inducedExposure":
    "phase {letter} is induced, and with the grounds in place {milliamps} mA could still go through a body of 500 Ω, {volts} V where {limit} V is the limit",
  "hazard.inducedExposure.help":
    "put a ground set at the work point itself, or move the grounds nearer to it",
  "hazard.inducedExposure.notKnown":
    "phase {letter} is induced, and what a worker could still feel with the grounds in place is not known: take it for over {limit} V",
  "hazard.noGroundHere":
    "no ground set stands at {at} itself, so the worker is not bonded to what is worked on",
  "hazard.poleNotBonded": "the ground set at {at} is not bonded to the pole, so the worker is not",
  "hazard.equipotential.help":
    "put a ground set on at the work point and bond it to the pole; without it a worker feels the volts to earth",
  "hazard.stepTouch": "{when}, {lifted} stand at {volts} V above the ground that people stand on",
  "hazard.stepTouch.barricaded":
    "{when}, {lifted} stand at {volts} V above the ground around; it is barricaded",
  "hazard.stepTouch.notKnown":
    "{when}, {lifted} may stand above the ground that people stand on; at how many volts is not known",
  "hazard.stepTouch.pole": "the pole, the truck and the rods",
  "hazard.stepTouch.enclosure": "the enclosure, the truck and the rods",
  "hazard.stepTouch.bonded": "all that is bonded to the neutral there, the truck and the rods",
  "hazard.stepTouch.help.bonded":
    "keep people and equipment clear of all that is bonded to the neutral there, of the truck and the rods: barricade {at}",
  "hazard.stepTouch.help.enclosure":
    "keep people and equipment clear of the enclosure, the truck and the rods: barricade {at}",
  "hazard.stepTouch.help.pole":
    "keep people and equipment clear of the pole's base, the truck and the rods: barricade {at}",
  "hazard.neutralInHand.notTied":
    "the neutral at {at} is held to earth by nothing on this structure but what is in hand",
  "hazard.neutralInHand.lifted": "{when}, the neutral in hand at {at} stands at {volts} V to earth",
  "hazard.neutralInHand.help":
    "put a ground set with a rod on here, or bridge the break, before hands come to the neutral, and block what could lift it; test it first",
  "hazard.threatsNotAll.1":
    "too much here can change for every combination to be worked out: ways that take one thing going wrong are all listed, of those that take two or three some may be missing",
  "hazard.threatsNotAll.2":
    "too much here can change for every combination to be worked out: ways that take one or two things going wrong are all listed, of those that take three some may be missing",
  "hazard.stepTouchNotAll":
    "too much here can change for every combination to be worked out: whether one of them would lift the pole, the truck and the rods is not known",
  "hazard.threatsNotAll.help":
    "take what is not listed for possible; open, tag and block nearer to the work, or draw less of what is far away",
  "hazard.feedNotDrawn":
    "nothing on the drawing could ever feed {letters} here, so what does feed it was left out: it is not known to be dead",
  "hazard.feedNotDrawn.help":
    "draw what feeds it, or put back the clamp or the span that is missing on the way",
  "hazard.neutralVolts.noRods":
    "{where} stands at {volts} V to earth as drawn, on a line along which no rod is drawn; with {rods} rods a kilometre it would be {left} V",
  "hazard.loadsUnsettledAfter":
    "loads of constant current or power, or machines at a set output, did not settle after some of the ways in which this could go live; there such loads are taken as constant impedances, such machines as volts behind their reactance",
} as const;
