export const planner = {
  "why.test.spike":
    "within the cable a detector touches nothing: traced and spiked, this is the one that is grounded at its ends",
  "why.brief": "so that all know the job, the hazards, what feeds it and how it is kept dead",
  "why.brief.switching": "so that all know what is switched, in which order, and why",
  "why.secure": "loose or failing as it is, it could come down when the pole is shaken",
  "why.request-permit": "{why}",
  "why.receive-permit": "nothing on the section is operated before the system operator has given it over",
  "why.hand-over.permit": "{owner} holds the permit of this section: nobody works under another's",
  "why.hand-over.back":
    "the tags of {owner} hang there still: the permit goes back to whom it was taken over from",
  "why.confirm-permit": "said back, so that both have the same section in mind",
  "why.off": "to stay open while people are on the line",
  "why.off.isolates": "the way from {source} to the work goes through {name}",
  "why.off.isolates.machine":
    "a generator that nobody drew could be at {source}, and would feed the work through {name}",
  "why.off.noBypass":
    "no by-pass is drawn around {regulator}, so that it cannot come off without dropping what it feeds: the line is cut at {name}",
  "why.off.shows": "the gap of {name} can be seen, and that of {other} cannot",
  "why.off.drops": "the load comes off at {name}, so that nothing is left to break at {other}",
  "why.off.splits.clamp":
    "nothing hangs on {other} when it comes off, nor when it goes on again: {name} picks up the load then, and no jaws",
  "why.off.splits": "this closes after {other}, so that no link picks everything up at once",
  "why.off.motor": "what runs there stays off until every phase is back through {other}",
  "why.off.capacitor": "the grounds of this job do not short {name}, so it is taken off",
  "why.bypass.neutral": "off neutral, {name} would be a short circuit through its bypass",
  "why.neutral.beside":
    "off neutral, {name} would be a short circuit through what is closed beside it with {by}",
  "why.bypass.block": "with its control off, {name} stays at neutral while it is bypassed",
  "why.bypass.close": "the line goes past {name} through {by}, and nobody is without supply",
  "why.bypass.open": "the line goes through {name} again; the bypass breaks nothing",
  "why.bypass.unblock": "the control goes on again, and steps as the volts ask",
  "why.block": "made inoperable, so that a wrong hand is not enough",
  "why.block.automatic": "it can close by itself or from afar, whatever tag hangs on it",
  "why.block.clamp": "a lifted clamp that swings back would make the line live again",
  "why.tag": "nobody closes {name} while people are on the line",
  "why.tag.thrown": "it throws between two supplies: nobody throws it while people are on the line",
  "why.tag.found": "open already, and among what keeps the work dead",
  "why.wait":
    "a capacitor keeps a charge after it lost its supply; it is given {minutes} minutes by the clock",
  "why.check-detector.before": "a broken detector shows nothing, just as a dead line does",
  "why.check-detector.after": "it still shows volts, so what it showed can be believed",
  "why.test": "only a test shows that it is dead",
  "why.test.dark":
    "dark since before the crew came: something of a customer’s may feed it when {name} goes on",
  "why.test.motor":
    "what runs behind {name} was short of a phase: every phase is read before it goes on again",
  "why.test.changed": "{name} was changed: its volts are read before anybody relies on them",
  "why.test.phasing":
    "a parallel path is closed at {name}: the volts at {at} are tested first, phase to phase",
  "why.retest": "with the grounds on, what a neighbour induced is gone and shows dead",
  "why.ground.work":
    "whatever is closed or started by mistake, the hands at {at} stay at the pole's own potential",
  "why.ground.work.station":
    "whatever is closed or started by mistake, the hands at {at} stay at the potential of the station's ground grid",
  "why.ground.work.enclosure":
    "whatever is closed or started by mistake, the hands at {at} stay at the potential of the enclosure and its rods",
  "why.ground.secondary":
    "anything that customers run could feed {name} backwards; one set at {at} holds them all",
  "why.ground.secondary.meters":
    "customers' generators could feed {name} backwards; one set at {at} holds them all, and spares pulling {meters} meters",
  "why.ground.secondary.meter":
    "a customer's generator could feed {name} backwards; one set at {at} holds it, and spares pulling the meter",
  "why.barricade": "a mistake would lift the pole, the truck and the rods at {at}; nobody stands beside them",
  "why.barricade.enclosure":
    "a mistake would lift the enclosure and the ground around it at {at}; nobody stands beside it",
  "why.ask.hold":
    "{name} crosses the work or hangs on its poles: with its reclosing held, a wire that touches it is not energized again and again",
  "why.cover": "energized within reach of the work: {name}",
  "why.work": "cut off from every supply, tagged, tested and grounded",
  "why.all-clear.work": "everybody is off the line before a ground comes off",
  "why.uncover": "left as it was found",
  "why.unground": "line end first: the ground end holds it dead until the stick is clear",
  "why.all-clear.grounds": "with the grounds off the line counts as live, and nobody may be on it",
  "why.confirm.all-clear": "said back by name, so that nobody is missing",
  "why.release-permit": "people clear and grounds off: the operator may have the section back",
  "why.release-permit.switching": "all of it is switched: the operator has the section back as it is left",
  "why.untag": "nobody is on the line any more; the tag comes off before anybody operates {name}",
  "why.untag.stays": "nobody is on the line any more; it stays as it stands, without the crew's tag",
  "why.unblock": "nobody is on the line any more; {name} moves only unblocked",
  "why.unblock.stays": "left as it was found",
  "why.unblock.close": "found blocked, and closes only unblocked",
  "why.barricade.down": "a wire is down at {at}: nobody comes near it from here on",
  "why.replace-barrel": "the barrel goes back into its hinge before it can be closed",
  "why.refuse": "a new link, now that what blew the old one is looked for, and cut off or mended",
  "why.inspect.tripped":
    "{name} was found open and may have tripped: the line beyond it is walked before it closes",
  "why.inspect.set": "{set} was found on: {name} stays open until whoever put it on has taken it off",
  "why.inspect.blown":
    "what blew the link of {name} is looked for on the line beyond before a new one goes in",
  "why.refuse.looked": "a new link, now that somebody has looked for what blew the old one",
  "why.supply": "it supplies what can be supplied while the work goes on",
  "why.ring":
    "one source feeds both its sides: closed before anything is opened, so that nobody goes without supply meanwhile",
  "why.supply.way": "what is closed next has its supply through it",
  "why.off.leave": "the job leaves it open",
  "why.off.ring": "open in service; the usual way carries everybody again",
  "why.off.normal": "open in service; it opens before two supplies would meet",
  "why.off.again": "the load comes off here, so that what is switched next breaks and picks up none",
  "why.stop.first":
    "cut off from the station it would go on by itself; its owner stops it before the line opens",
  "why.stop.machine": "it runs by itself, and would meet the line out of step",
  "why.on.leave": "the job leaves it closed",
  "why.on.service": "found open; in service it is closed",
  "why.on.new": "put in open by the work; in service it is closed",
  "why.stand-clear": "if a link blows, the gas of {name} comes out where somebody might look",
  "why.on": "closed while nothing feeds it",
  "why.on.live": "the supply comes back through {name} to what lies beyond",
  "why.on.joined": "closed in service; what lies beyond has its supply already",
  "why.on.capacitor": "back on the line last, with the volts back",
  "why.on.clamp": "everything beyond {name} stands open, so that no load is picked up",
  "plan.alternative.openings": "open {names} instead of {others}",
  "plan.alternative.fewer": "leave {others} closed",
  "plan.alternative.more": "open {names} as well",
  "plan.alternative.holdOpen": "rest on what stands open anyway instead of a ground set at {place}",
  "plan.alternative.hold": "open {names} instead of a ground set at {place}",
  "plan.control.opens":
    "nothing on the way from {source} opens: draw a switch, cutout, clamp or lead on it, or de-energize {source} from its own side",
  "plan.control.opens.terminal":
    "what is changed has a terminal at {where}, and nothing on the way there from {source} opens: draw a clamp, switch or cutout ahead of it, or de-energize {source} from its own side",
  "plan.control.breaks":
    "nothing at hand may break the current of {name}: a load-break tool or a device made for it, or a way to drop its load",
  "plan.control.ground":
    "a ground set at {at} with a whole neutral would hold it; without one, whatever could start must be open, tagged and blocked",
  "plan.control.gap":
    "no gap that one can see keeps it apart: a disconnect, a cutout or a clamp in series with {name} would",
  "plan.control.cable":
    "no cable of the table carries {amps} A at {at}: sets in parallel, or the supply shut off",
  "plan.control.neutral": "the grounds need a neutral at {at} that leads back to the source",
} as const;
