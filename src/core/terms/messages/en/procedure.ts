/** What the rehearsal says: rules, consequences, readings, and what the hands cannot do. */
export const procedure = {
  "report.summary": "{file}: {steps} steps, {dangers} danger, {warnings} warning, {notes} note",
  "report.atStep": "{file}, step {n}",
  "report.stands": "{name}: {verdict}",
  "report.atEnd": "{file}, at the end, {where}",
  "report.do": "do: {help}",
  "mark.thisStep": "this step",
  "mark.lastSwitching": "last switching",
  "mark.goesOnHere": "goes on here",
  "mark.workBegan": "work began",
  "mark.lastUnground": "last ground came off",
  "mark.onTheLine": "people or grounds on the line",
  "mark.order": "the order",

  "stands.live": "live",
  "stands.could-go-live": "could go live",
  "stands.grounded": "grounded",
  "stands.isolated": "isolated",

  "danger.now": "live now at {volts} V, {exposure} V felt",
  "danger.if": "{upsets}: {volts} V, {exposure} V felt",

  "doing.brief": "brief the crew",
  "doing.request-permit": "request the permit",
  "doing.receive-permit": "receive the permit",
  "doing.release-permit": "release the permit",
  "doing.check-detector": "check the detector",
  "doing.ask": "ask the operator",
  "doing.all-clear": "call all clear",
  "doing.confirm": "repeat back",
  "doing.stand-clear": "stand clear",
  "doing.hand-over": "hand over",
  "doing.note": "note",
  "doing.open": "open",
  "doing.close": "close",
  "doing.lift": "lift",
  "doing.attach": "attach",
  "doing.cut": "cut",
  "doing.join": "join",
  "doing.tag": "tag",
  "doing.untag": "untag",
  "doing.block": "block",
  "doing.unblock": "unblock",
  "doing.unground": "unground",
  "doing.pull": "pull",
  "doing.replace": "replace",
  "doing.refuse": "renew the link",
  "doing.remove-barrel": "take the barrel out",
  "doing.replace-barrel": "put the barrel back",
  "doing.start": "start",
  "doing.stop": "stop",
  "doing.set-position": "set the switch",
  "doing.test": "test",
  "doing.ground": "ground",
  "doing.inspect": "look",
  "doing.barricade": "barricade",
  "doing.cover": "cover",
  "doing.uncover": "uncover",
  "doing.secure": "secure",
  "doing.work": "work",
  "doing.wait": "wait",

  "step.noElement": "there is no element {id} as the drawing stands",
  "step.doesNotOpen": "{name} is nothing that opens",
  "step.doesNotClose": "{name} is nothing that closes",
  "step.otherKind": "{name} is no thing to {verb}",
  "step.alreadyOpen": "{name} is open already on {phases}",
  "step.alreadyClosed": "{name} is closed already on {phases}",
  "step.alreadyThere": "{name} is on {position} already",
  "step.already.tagged": "{name} has a tag already",
  "step.already.blocked": "{name} is blocked already",
  "step.already.on": "{name} is running already",
  "step.not.tagged": "{name} has no tag",
  "step.not.blocked": "{name} is not blocked",
  "step.not.on": "{name} is not running",
  "step.seized": "{name} is seized and does not move",
  "step.barrelOut": "the barrel of {name} is out on {phases}",
  "step.barrelIn": "the barrel of {name} is in on {phases}",
  "step.blocked": "{name} is blocked: unblock it before it can be closed",
  "step.linkBlown":
    "the link of {name} is blown on {phases}: closing the barrel joins nothing until it is renewed",
  "step.linkWhole": "the link of {name} is whole on {phases}",
  "step.groundTwice": "a ground set {id} is on already",
  "step.noConductor": "{at} has no conductor that this step names",
  "step.noNeutral": "{at} has no neutral to ground to",

  "brief.planChanged": "the plan was changed",
  "brief.unexpected": "something was not as expected",
  "brief.shownLive": "a test showed voltage at {where}",
  "permit.generator": "a generator on the section, {name}, can feed it",
  "permit.transfer": "there is a transfer switch on the section, {name}",
  "permit.tie": "the section meets another supply at {name}",
  "permit.parallel": "the section is fed in parallel through {name}",
  "permit.feed": "the section is fed through {name} too",
  "permit.line": "the section has {count} transformers, so it is a line and not one transformer's own tap",
  "permit.load":
    "{name} takes its supply from the same section, so it is a line and not one transformer's own tap",
  "permit.span": "the section is a line and not one transformer's own tap",

  "reading.dead": "{where} shows no voltage",
  "reading.live": "{where} shows voltage: {volts} V",
  "reading.induced": "{where} shows {volts} V, induced by what runs beside it",

  "breaks.tool": "the load-break tool, rated {limit} A",
  "breaks.arc-chute": "its arc chute, rated {limit} A",
  "breaks.rated": "its own rating of {limit} A",
  "breaks.made-for-load": "a device made to break its load; no rating is drawn",
  "breaks.bare": "an open gap alone, which has no rating",
  "breaks.unrated": "a contact with no rating, which may break {limit} A",
  "breaks.clamp": "a clamp, which may break {limit} A",
  "breaks.lead": "a parting lead, which may break {limit} A",

  "clearing.none":
    "no link on the way melts; it lasts until something upstream trips, {seconds} s or more, if anything trips at all",
  "clearing.link": "the {link} link of {name} carries {amps} A and melts in {least} to {most} s",
  "clearing.fast": "the {link} link of {name} carries {amps} A and melts within half a cycle",
  "clearing.maybe": "the {link} link of {name} carries {amps} A and melts in {least} s or not at all",

  "consequence.none": "nothing happens that anyone could see",
  "consequence.shock":
    "hands are on {where} at {volts} V: {milliamps} mA through {ohms} Ω of body, against about 10 mA at which a hand cannot let go",
  "consequence.charge": "{name} still holds {volts} V and lets go {joules} J at once",
  "consequence.groundedLive":
    "the ground goes onto {where} at {volts} V: {amps} A flows through the set at the end of the stick; {clearing}",
  "consequence.spikedLive":
    "the spike goes into {where} at {volts} V: a bolted fault, {amps} A through the spike with its arc at the cable; {clearing}",
  "consequence.traced": "the tracer’s signal is on {where}: this is the cable that is grounded at its ends",
  "consequence.noTrace":
    "the tracer gives no signal at {at}: no ground set closes its way round, and nothing is proven",
  "consequence.ungroundedLive":
    "the ground comes off {where} with {amps} A in it: an arc is drawn out at the end of the stick, and {volts} V stands on the line behind it",
  "consequence.closedOnto": "{name} closes onto {onto}: {amps} A flows; {clearing}",
  "consequence.outOfStep":
    "{name} joins two supplies {degrees}° and {volts} V apart: {amps} A flows through it; {clearing}",
  "consequence.arc":
    "{amps} A is drawn out as an arc at {name} {letter}, which may break {limit} A; {volts} V stands across the gap and keeps it burning",
  "consequence.clampArc":
    "the jaw of {name} makes {amps} A with {volts} V across the gap: it arcs as it goes on",
  "consequence.openedDead": "{name} opens with no current through it",
  "consequence.broken": "{name} breaks {amps} A by {by}",
  "consequence.closedDead": "{name} closes with no current through it",
  "consequence.carries": "{name} closes and carries {amps} A",

  "approach.distance": "{metres} m",
  "approach.avoidContact": "no contact at all",
  "approach.beyondTable": "more than the table has",
  "gloves.class": "class {name} gloves (to {volts} V)",
  "gloves.none": "no rubber glove is rated for it",

  "rule.brief-first": "work on the line begins before the tailboard",
  "rule.brief-first.help":
    "brief the crew first: hazards, work procedures, special precautions, energy-source controls, protective equipment",
  "rule.brief-again": "the briefing no longer covers the job: {why}",
  "rule.brief-again.help": "stop, look again and brief the crew on what has changed",
  "rule.permit-first": "{name} is operated without a held permit, and {why}",
  "rule.permit-first.work": "work begins at {name} without a held permit, and {why}",
  "rule.permit-first.unrequested": "a permit is received that nobody has requested",
  "rule.permit-first.help":
    "request the permit from the system operator, receive it and repeat it back first",
  "rule.loose-hardware": "operating {name} shakes the pole, and {loose} hangs loose or is failing there",
  "rule.loose-hardware.ground":
    "putting {name} on shakes the pole, and {loose} hangs loose or is failing there",
  "rule.loose-hardware.help": "secure {loose} or cut it clear first, from where it cannot fall on anyone",
  "rule.load-break.bare":
    "{name} breaks {amps} A on {letter}, and neither it nor the tool in hand is made to break more than {limit} A",
  "rule.load-break.unrated":
    "opening {name} breaks {amps} A on {letter}; it has no rating, and may break {limit} A, charging and exciting current only",
  "rule.load-break.clamp":
    "lifting {name} breaks {amps} A on {letter}; a clamp may break {limit} A, charging and exciting current only",
  "rule.load-break.lead": "cutting {name} breaks {amps} A on {letter}; a lead may break {limit} A",
  "rule.load-break.help":
    "drop the load first with something that is made to: a load-break tool on a cutout with hooks, a rated switch, the customers' mains",
  "rule.load-break.procedure":
    "{name} breaks {amps} A on {letter} by an open gap; up to {limit} A that rests on the company's own procedure, not on a rating",
  "rule.load-break.procedure.help": "use a load-break tool, or be sure that your procedure allows it",
  "rule.load-break-rating": "{name} breaks {amps} A on {letter}, more than {by}",
  "rule.load-break-rating.help":
    "drop load until the current is within the rating, or open something that is rated for it",
  "rule.load-not-dropped": "with {name} open, {where} is still fed by {sources}",
  "rule.load-not-dropped.help":
    "find the other way in and open it too before anything here is taken for dead",
  "rule.customers-out": "customers left without supply by {name}: {count}",
  "rule.customers-out.critical": "customers left without supply by {name}: {count}, critical: {critical}",
  "rule.customers-out.help": "tell the critical customers before the switch is opened",
  "rule.visible-gap": "isolation rests on {name}, whose open gap cannot be seen",
  "rule.visible-gap.help": "open something in series with {name} whose gap can be seen, and tag it",
  "rule.automatic-device":
    "isolation rests on {name}, which can close by itself or from afar and is not blocked",
  "rule.automatic-device.help":
    "block {name}: disable reclosing and remote control, lock its handle, and tag it",
  "rule.tag-each": "the {verb} begins while {name}, which keeps the work isolated, has no tag",
  "rule.tag-each.help": "tag {name} first",
  "rule.tag-each.joined":
    "the {verb} begins while {name} hangs on the work with nothing open between: started, it feeds it",
  "rule.tag-each.joined.help":
    "open and tag what parts {name} from the work, or, where nothing opens, hang a tag on it: its owner's word and a ground set are no open point",
  "rule.tag-each.thrown":
    "the {verb} begins while {name} alone parts a machine that runs from the work, and has no tag",
  "rule.tag-each.thrown.help":
    "nobody sees into it: pull the meter or open what stands between, and tag that; at the least {name} has a tag",
  "rule.others-tag": "the tag on {name} is that of {owner}",
  "rule.others-tag.set": "{name} was put on by {owner}",
  "rule.others-tag.help": "leave it as it is and speak to {owner}; what is handed over is your own",
  "rule.others-tag.permit": "the permit is released by {by}, and {owner} holds it",
  "rule.others-tag.permit.help": "{owner} releases it, or hands it over first",
  "rule.hands-on-live.bare": "bare hands {verb} at {where}, which stands at {volts} V",
  "rule.hands-on-live.gloves":
    "gloves of class {given} do not keep {nominal} V off: hands {verb} at {where}, at {volts} V",
  "rule.hands-on-live.noClass": "hands {verb} at {where}, at {volts} V, in gloves whose class nobody said",
  "rule.hands-on-live.help":
    "make it dead, test and ground it; or work it live by a method for its volts: sticks, or {gloves}",
  "rule.hands-on-live.reclosing": "{name} feeds what is worked live and can reclose",
  "rule.hands-on-live.alone": "live work over 600 V with one person on the pole",
  "rule.hands-on-live.alone.help": "a second qualified person is there, 1910.269(l)(2)(i)",
  "rule.hands-on-live.cover": "within reach of the hands and bare: {where}",
  "rule.hands-on-live.cover.help": "cover what is within reach before hands come to the line",
  "rule.hands-on-live.neutral": "the neutral of {name} is open, and nobody has tested what stands on it",
  "rule.hands-on-live.neutral.help":
    "an open neutral is a hot conductor: test both ends first, and splice it in gloves",
  "rule.hands-on-live.ungrounded":
    "bare hands {verb} at {where}, which nobody has grounded: what is not grounded counts as energized",
  "rule.hands-on-live.ungrounded.help": "test and ground it first, or work it by a method of live work",
  "rule.hands-on-live.untested": "bare hands {verb} at {where}, which nobody has tested",
  "rule.hands-on-live.untested.help":
    "test it first, the detector proven right before and after, or wear gloves",
  "rule.open-neutral": "{name} gets supply while its neutral is open: its two legs go apart",
  "rule.open-neutral.help": "join the neutral and test both legs before anybody is connected",
  "rule.open-neutral.parted":
    "{name} is cut on its neutral under load: it carried {amps} A, and {volts} V stands across the gap",
  "rule.open-neutral.parted.help":
    "take the load off first; a neutral is the last to be cut and the first to be joined",
  "rule.regulator-neutral":
    "{by} bypasses {name} off neutral on {phases}: {amps} A flows round through its series winding",
  "rule.regulator-neutral.help": "run it to neutral on every phase and block it there before it is bypassed",
  "rule.regulator-neutral.unblocked":
    "{by} bypasses {name}, which is at neutral and not blocked: its control can run it off",
  "rule.regulator-neutral.unblocked.help": "switch its control off and block it at neutral first",
  "rule.volts-first":
    "{name} puts the customer onto {bank}, which was changed and whose volts nobody has read",
  "rule.volts-first.dead":
    "{name} went in while {bank}, which was changed, was still dead: the customer gets its volts before anybody has read them",
  "rule.volts-first.never": "{bank} was changed, customers hang on it, and nobody has read its volts",
  "rule.volts-first.help":
    "test {at} for volts, leg to leg and to the neutral, before the customer is put back",
  "rule.phase-check.untested": "{name} closes a parallel path that nobody has tested for phasing and volts",
  "rule.phase-check.untested.help":
    "test {from} and {to} for volts, phase to phase, right before it is closed",
  "rule.capacitor-discharge.closed": "{name} puts the line back on {bank} while it holds {volts} V",
  "rule.capacitor-discharge.closed.help": "wait {left} s more before it is closed again",
  "rule.approach-distance.within":
    "within arm's reach of what is changed and bare: {hot}, {volts} V; keep {distance} away",
  "rule.approach-distance.enclosure":
    "within reach of the hands in the same enclosure and bare: {hot}, {volts} V; cover it or keep {distance} away",
  "rule.work-not-safe.spike": "work begins on the cable at {name}, and nobody has traced or spiked it",
  "rule.work-not-safe.spike.help":
    "test and ground it at its ends, then trace it, or drive the spike through it from afar: in the hole a detector touches nothing",
  "rule.work-not-safe.cut": "the cable is cut at {name}, and its part {part} has no ground of its own beyond",
  "rule.work-not-safe.cut.help":
    "test and ground the far end of {part} too: once it is cut both parts are in the hand",
  "rule.work-not-safe.looseEnd": "{name} has parted, and its end at {where} has no ground of its own",
  "rule.work-not-safe.looseEnd.help": "test and ground {where} too: both ends come into the hand",
  "rule.work-not-safe.takenAway":
    "{name} comes away, and {where}, which stays, is grounded through it alone or not at all",
  "rule.work-not-safe.takenAway.help": "ground {where} too, or bond across before it is taken off",
  "rule.not-repaired": "{name} energizes {thing} before the work on it is done",
  "rule.not-repaired.help": "do the work first, or cut that part off at both ends",
  "rule.tagged-operated": "{verb} on {name} while its tag is on",
  "rule.tagged-operated.help":
    "a tag comes off only when the people it stands for are clear and have released it: untag {name} first",
  "rule.detector-check.before": "the detector is not proven right before this test",
  "rule.detector-check.after":
    "the detector is not proven again after the test, and the next thing is to {verb}",
  "rule.detector-check.end": "the detector is not proven again after the last test",
  "rule.detector-check.help":
    "check the detector on a known live source or its tester right before the test and right after it",
  "rule.test-before-ground": "{set} grounds {where}, not tested dead there since the last switching",
  "rule.test-before-ground.help": "test {where} between the last switching and this step",
  "rule.test-live": "the test showed {volts} V at {where}, and the next thing is to {verb}",
  "rule.test-live.none": "the test shows no voltage at {where}, where it was to be live",
  "rule.test-live.none.help": "stop and find out what is still open before anything else is closed",
  "rule.test-live.help": "stop: inspect, ask the system operator, find what feeds it, and brief again",
  "rule.ground-on-live":
    "{set} goes onto {where}, which is {state} at {volts} V: {amps} A flows through the set",
  "rule.ground-on-live.help": "open what feeds {where}, tag it, and test before grounding",
  "rule.ground-on-live.spike":
    "the spike goes into {where}, which is {state} at {volts} V: {amps} A flows through the spike",
  "rule.ground-on-live.spike.help":
    "have what feeds {where} opened and tagged, test and ground at both ends, trace the cable from there, and only then drive the spike; the piece that was hit is shorted until work at that place cuts it out",
  "rule.ground-on-live.off":
    "{set} comes off {where} while a supply feeds it: {amps} A flows through the set, and the line is live without it",
  "rule.ground-on-live.off.help":
    "leave the set on, stand clear, and have what feeds {where} opened and tagged first",
  "rule.ground-order.on": "the phase end of {set} goes on before its neutral or earth end",
  "rule.ground-order.on.help": "put the neutral or earth end on first, then the phase end with a stick",
  "rule.ground-order.off": "the neutral or earth end of {set} comes off before its phase end",
  "rule.ground-order.off.help": "take the phase end off first with a stick, then the neutral or earth end",
  "rule.ground-rating":
    "{set} would carry {amps} A for {seconds} s at X/R {xOverR}; its {cable} cable withstands {withstand} A",
  "rule.ground-rating.help": "use a larger set or two in parallel, or have the clearing time shortened",
  "rule.ground-rating.unknown":
    "nobody stated which cable {set} has: it is counted as No. 2 copper, the least that is allowed",
  "rule.ground-rating.small": "the {cable} cable of {set} is smaller than No. 2 copper",
  "rule.ground-rating.size.help": "use a set of No. 2 copper or larger, rated for the fault current there",
  "rule.ground-place":
    "with these grounds the worker would still feel {exposure} V, over {limit} V: {threat}",
  "rule.ground-place.help": "a ground set at {place} would be enough",
  "rule.ground-place.none":
    "no one more ground set is enough: remove a way in, or bond the worker to the pole and the neutral",
  "rule.ground-return.rod": "{set} returns through a rod alone",
  "rule.ground-return.rod.help":
    "ground to the neutral at {at}, which leads home; a rod alone lets no link see the fault",
  "rule.ground-return.open":
    "the neutral at {at} does not lead home to a source, so {set} returns through rods alone",
  "rule.ground-return.open.help": "find where the neutral is open, and ground where it is whole",
  "rule.secondary-backfeed": "{name} is worked on while {feeders} could feed it backwards",
  "rule.secondary-backfeed.help":
    "ground the secondary at {at}, or pull every meter, or have every main open, tagged and blocked",
  "rule.capacitor-discharge":
    "{name} has been without supply for {seconds} s and still holds {volts} V when the {verb} touches it",
  "rule.capacitor-discharge.help": "wait {left} s more, then short it",
  "rule.capacitor-discharge.unshorted":
    "{name} has not been shorted, so what hangs on it does not count as dead",
  "rule.capacitor-discharge.unshorted.help": "put a ground set on every phase of {name}",
  "rule.open-phase-backfeed":
    "{where} is taken for dead, and {name} holds it at {volts} V from its other phases",
  "rule.open-phase-backfeed.help": "open every phase that feeds {name}, then test",
  "rule.ferroresonance":
    "{name} switches single poles of {bank}, whose primary is not grounded, over the cable {cable} with {percent} % load: its volts can ring up",
  "rule.ferroresonance.grounded":
    "{name} switches single poles of {bank} over the cable {cable} with {percent} % load: its grounded wye seldom rings, but is no absolute safeguard",
  "rule.ferroresonance.help":
    "switch all three phases together, switch at the bank's own terminals, or leave a few percent of resistive load on it",
  "rule.approach-distance":
    "still energized within reach of the work: {hot}, {volts} V; keep {distance} away or cover it",
  "rule.approach-distance.pole":
    "still energized on the same pole: {hot}, {volts} V; the drawing has no distance, so keep {distance} away",
  "rule.approach-distance.ungrounded":
    "within reach of the work and not grounded, so it counts as energized: {hot}, {volts} V; ground it too, keep {distance} away, or cover it",
  "rule.approach-distance.nearby": "{name} hangs {spacing} m from the line, nearer than {distance}",
  "rule.approach-distance.help": "cover {hot}, or keep clear and wear {gloves}",
  "rule.work-not-safe": "{how}: {threats}",
  "rule.work-not-safe.live": "work begins at {name} while it is live",
  "rule.work-not-safe.live.help":
    "open, tag, test and ground every way in, or work by the rules for live lines",
  "rule.work-not-safe.could-go-live": "work begins at {name}, which one mistake could make live",
  "rule.work-not-safe.could-go-live.help":
    "control each of these: open and tag it, block it, or put the grounds where they hold it",
  "rule.work-not-safe.isolated": "work begins at {name}, which is isolated and not proven dead",
  "rule.work-not-safe.isolated.help":
    "test every conductor after the last switching, with the detector proven, then ground at the work point",
  "rule.work-not-safe.untested":
    "work begins at {name}, and nobody has tested {where} since the last switching",
  "rule.work-not-safe.untested.help":
    "test {where}, with the detector proven right before and after, then ground at the work point",
  "rule.work-not-safe.induced":
    "work begins at {name}, where the last test showed {volts} V at {where}, induced by what runs beside it",
  "rule.work-not-safe.induced.help":
    "test once more with the grounds on, the detector proven right before and after: what is induced is gone then",
  "rule.work-not-safe.grounded": "work begins at {name}",
  "rule.work-not-safe.grounded.help": "ground and test at the work point",
  "rule.onto-fault": "{name} closes onto {things}, which is not mended",
  "rule.onto-fault.help": "mend {things} first, or cut it off at both ends and energize the rest",
  "rule.customers-machine": "the crew starts {name}, which is a customer’s",
  "rule.customers-machine.help": "leave it off; its owner starts it when the line is theirs again",
  "rule.guard-first": "{name} is down, and nobody keeps people away from it",
  "rule.guard-first.help": "barricade it at its poles before anything is switched, and treat it as live",
  "rule.single-phasing": "{name} closes with {motor} on, pole by pole, where a link had blown",
  "rule.single-phasing.help": "have the motor shut off at its own main until all its phases are back",
  "rule.phase-missing": "{name} is left with {phases} missing",
  "rule.phase-missing.closed":
    "{name} puts a customer onto {bank}, which has {phases} missing: a motor burns on it",
  "rule.phase-missing.help": "close the missing phase, or open the others",
  "rule.cause-first": "{name} is closed again, and nobody has looked for what blew its link",
  "rule.cause-first.tripped":
    "{name} was found open and may have tripped, and it is closed with nobody having walked the line beyond it",
  "rule.cause-first.tripped.help":
    "walk what lies beyond it first and look at every pole; where it was opened on purpose, find out by whom",
  "rule.cause-first.help": "walk what lies beyond it first, and look at every pole",
  "rule.grounds-left": "{name} is closed while {sets} is still on what it energizes",
  "rule.grounds-left.help": "take {sets} off first, with everyone clear",
  "rule.clear-before-ungrounding": "{set} comes off while people are still on the line at {where}",
  "rule.clear-before-ungrounding.help":
    "get an all-clear from every person by name before the ground comes off",
  "rule.all-clear-first":
    "{name} energizes the line without an all-clear after the last work and the last ground",
  "rule.all-clear-first.unrepeated": "{name} energizes the line before the all-clear was repeated back",
  "rule.all-clear-first.help":
    "get an all-clear from every person by name, and repeat it back, once the last ground is off",
  "rule.tags-left": "{name} energizes the section while the tag on {tagged} is still there",
  "rule.tags-left.help": "take the tag off {tagged} first, once its people have released it",
  "rule.permit-release.held": "{name} energizes the section while its permit is still held",
  "rule.permit-release.help": "release the permit to the system operator first",
  "rule.permit-release.word": "{name} energizes the section without the system operator's word, and {why}",
  "rule.permit-release.word.help": "ask the system operator before closing",
  "rule.release-order.people": "the permit is released while people are still on the line at {where}",
  "rule.release-order.people.help": "get the all-clear from every person first",
  "rule.release-order.untag": "the tag on {name} comes off while people are still on the line at {where}",
  "rule.release-order.unblock": "{name} is unblocked while people are still on the line at {where}",
  "rule.release-order.grounds": "the permit is released while {sets} is still on",
  "rule.release-order.grounds.help": "take {sets} off first",
  "rule.release-order.none": "there is no permit to release",
  "rule.release-order.tag": "the tag on {name} comes off before the permit is released",
  "rule.release-order.tag.help": "release the permit first, then take the tags off",
  "rule.stand-clear": "{name} is closed without standing clear of its barrel",
  "rule.stand-clear.help": "stand out of the way of the exhaust and look away, then close",
  "rule.pick-up-order": "{name} goes on with {amps} A beyond it; a clamp may make or break {limit} A",
  "rule.pick-up-order.bank": "{name} energizes {bank} by its jaws: they make the bank’s inrush",
  "rule.pick-up-order.meter": "{name} goes in with {amps} A beyond it: its jaws make the load",
  "rule.pick-up-order.meter.help": "have the customer's main off before it goes in",
  "rule.pick-up-order.meter.main": "open {main} first; it picks up the load afterwards",
  "rule.pick-up-order.join":
    "{name} is remade with {amps} A beyond it: a connector in the hand makes the load",
  "rule.pick-up-order.join.help": "open what is beyond it first; that picks up the load afterwards",
  "rule.pick-up-order.help":
    "open the cutout beyond it, attach the clamp, then let the cutout pick up the load",
  "rule.close-rating": "{name} is closed onto {amps} A and may carry {limit} A",
  "rule.close-rating.help": "drop load, or use something rated to carry it",
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
  "rule.phase-check": "{name} joins two supplies on {letter} that stand {degrees}° and {volts} V apart",
  "rule.phase-check.help":
    "check the phases across the gap with a phasing set first; find which is which before closing",
  "rule.phase-check.notInStep":
    "{name} joins {one} and {other}, which nothing keeps in step: up to {volts} V can stand across it",
  "rule.phase-check.notInStep.help":
    "take one of the two off first, and close after it: with a gap in the supply",
  "rule.repeat-back": "the order of step {n} is carried out before it is repeated back",
  "rule.repeat-back.help": "repeat the order to the one who gave it, and hear that it was right, first",
  "rule.jumper-order.on": "{name} is made at its live end first, so its other end hangs live in the hand",
  "rule.jumper-order.on.help": "make the dead end first, then the live end",
  "rule.jumper-order.off": "{name} comes off at its dead end first, so its loose end stays live",
  "rule.jumper-order.off.help": "take the live end off first",
  "rule.step-not-possible.help": "look at what stands on the pole, and mend the plan",
  "rule.left-behind": "left at the end: {what}",
  "rule.left-behind.underWay": "still on while work goes on: {what}",
  "rule.left-behind.help":
    "take off what is the crew's and bring each thing to its normal position, or add a note that names it and says why it stays",
  "left.ground": "ground set {name}",
  "left.groundTaken": "{name}, found on, is off",
  "left.tag": "a tag on {name}",
  "left.position": "{name} not at its normal position",
  "left.cover": "a cover at {name}",
  "left.permit": "the permit, not released",
} as const;
