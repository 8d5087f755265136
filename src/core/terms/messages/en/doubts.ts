/** What may be otherwise than drawn, as what follows `if`, and what would come of it. */
export const doubts = {
  "doubt.goes-on": "the line goes on beyond {name} and is fed",
  "doubt.goes-on.here": "the line goes on beyond it and is fed",
  "doubt.other-position": "{name} stands otherwise than drawn",
  "doubt.other-position.closed": "{name} is closed{on}, not open",
  "doubt.other-position.open": "{name} is open{on}, not closed",
  "doubt.second-transformer": "a second transformer feeds the same secondary as {name}",
  "doubt.other-connection": "{name} is connected {connection}",
  "doubt.swapped-labels": "{name} and {other} are taken for each other",
  "doubt.swapped-phases": "phases along {name} are swapped otherwise than drawn",
  "doubt.machine": "{name} runs, and is twice as big as drawn",
  "doubt.machine.undrawn": "a standby generator runs at {name}",
  "doubt.machine.bridged": "{name} joins both of its supplies",
  "doubt.open-neutral": "the neutral of {name} is open",
  "doubt.no-rod": "the ground rod at {name} is missing",
  "doubt.no-rod.along": "there are no ground rods along {name}",
  "doubt.no-pole-bond": "{name} is not bonded to the pole",
  "doubt.crossing": "another circuit crosses {name}",
  "doubt.no-span": "{name} is not there",
  "doubt.other-cable": "{name} and {other} come out at each other's far ends",
  "doubt.thin-ground": "the cable of {name} is only {cable}",
  "lookFirst.line": "{place}: if {doubts}, {outcome}",
  "lookFirst.live": "the work point is live at {volts} V",
  "lookFirst.liveUnknown": "the work point is live",
  "lookFirst.unfed": "nobody has drawn what feeds the work point",
  "lookFirst.strength.0": "the work point stands at {volts} V",
  "lookFirst.strength.1": "one more thing going wrong makes the work point live at {volts} V",
  "lookFirst.strength.2": "two more things going wrong make the work point live at {volts} V",
  "lookFirst.strength.3": "three more things going wrong make the work point live at {volts} V",
  "lookFirst.feels": "{outcome}; the worker feels {exposure} V, over the limit",
  "lookFirst.held": "{outcome}; the worker stays under the limit",
  "lookFirst.settles": "{line}. One look there settles {count} such doubts.",
  "lookFirst.settlesOne": "{line}.",
  "groundsWorth.all":
    "What the grounds are worth: without them {hurting} ways in which the drawing may be wrong here would put the worker over the limit; with them none does.",
  "groundsWorth.allOne":
    "What the grounds are worth: without them one way in which the drawing may be wrong here would put the worker over the limit; with them it does not.",
  "groundsWorth.some":
    "What the grounds are worth: without them {hurting} ways in which the drawing may be wrong here would put the worker over the limit; with them {left} still do.",
  "groundsWorth.someOne":
    "What the grounds are worth: without them {hurting} ways in which the drawing may be wrong here would put the worker over the limit; with them one still does.",
  "groundsWorth.none":
    "The grounds do not hold what may be wrong with the drawing here: {left} ways would put the worker over the limit, with them as without.",
  "groundsWorth.noneOne":
    "The grounds do not hold what may be wrong with the drawing here: one way would put the worker over the limit, with them as without.",
  "groundsWorth.cable": "{line} With cable of {cable} or more in each set none would.",
  "groundsWorth.set": "{line} With one more set of 4/0 at {at} none would.",
  "groundsWorth.cut": "{line} {count} more doubts were not asked.",
  "ranges.line":
    "Where numbers from the map are off, {name} may stand at {volts}, and the worker may feel {exposure}.",
  "ranges.between": "{least} to {most} V",
  "ranges.one": "{most} V",
  "ranges.over":
    "{line} That is over the limit, though it is not as drawn: only a look or a measurement tells.",
  "ranges.verdict": "{line} Then the work point is: {verdict}.",
  "ranges.finding": "{line} Then this is so too: {finding}",
  "ranges.cut": "{line} {count} more numbers were not asked.",
} as const;
