import { circuitOf, endsOf } from "../../network";
import {
  apartOf,
  comesAway,
  isConductor,
  isGroundSet,
  isLine,
  isTransformer,
  letterAt,
  lettersAtEnd,
  lowSidesOf,
  openPhasesOf,
} from "../../devices";
import {
  doneBy,
  amended,
  conductorNames,
  elementsOfKind,
  jobOf,
  settingsOf,
  type System,
  workPointName,
} from "../../document";
import {
  cablesWithin,
  LINE_VOLTS,
  neutralInHand,
  questionsAbout,
  type Threat,
  type WorkPointReport,
} from "../../hazard";
import { citationOf } from "../../reference";
import {
  type ConductorId,
  conductorId,
  type ElementId,
  lettersOf,
  partsOfConductor,
  type WorkPointId,
} from "../../terms";
import { say } from "./say";
import { legsOf, phaseCalled } from "../job/hands";
import { joinedTo } from "../job/joined";
import { isLiveState } from "../job/live";
import { elementOf, elementsOf, figure, nameOf } from "../job/names";
import { asItStands, seen } from "../job/seen";
import type { JobState } from "../job/state";
import { defineRule, type Problem } from "./rule";
import { threatsWords } from "../job/threatWords";
import { isLiveWork } from "../../steps";

/** Hands touch only what is grounded, tested and beyond two mistakes; work with a hot stick goes by its own rules. */
export const workNotSafe = defineRule({
  id: "work-not-safe",
  severity: "danger",
  citation: citationOf("n2-ground-to-treat-dead"),
  check(step, before) {
    if (step.do !== "work" || isLiveWork(step)) return undefined;
    const id = step.at;
    const report = seen(before).workPoints[id];
    const workPoint = jobOf(before.document).workPoints[id];
    if (report === undefined || workPoint === undefined) return undefined;
    if (report.verdict === "grounded")
      return [...looseEnds(id, before), ...endsLeftBare(id, before), ...cutInTwo(id, before)];
    const name = workPointName(before.document, id);
    const felt = report.threats.filter((it) => isToldOf(report, it, before));
    if (felt.length === 0) return unproven(id, report, before);
    return {
      where: id,
      message: say("rule.work-not-safe", {
        how: say(`rule.work-not-safe.${report.verdict}`, { name }),
        threats: threatsWords(before.document, felt),
      }),
      help: say(`rule.work-not-safe.${report.verdict}.help`),
    };
  },
});

/** Whether a threat is among what makes the work unsafe: what the grounds hold under the limit is none of it, unless it is live now. */
function isToldOf({ verdict }: WorkPointReport, { strength, exposureVolts }: Threat, before: JobState) {
  if (verdict === "live") return strength === 0;
  return strength <= 2 && exposureVolts >= settingsOf(before.document).exposureLimitVolts;
}

/** Nothing threatens it beyond the limit, and yet nobody knows that it is dead: what was not tested, or showed what a neighbour induces. */
function unproven(id: WorkPointId, { verdict }: WorkPointReport, before: JobState): Problem {
  const { document, tested, readings } = before;
  const { at, conductors } = jobOf(document).workPoints[id]!;
  const untested = lettersOf(conductors)
    .map((letter) => conductorId(at, letter))
    .filter((it) => !tested.has(it));
  const gaps = { name: workPointName(document, id), where: conductorNames(document, untested) };
  if (untested.length > 0 && cablesWithin(document.system, at).length > 0)
    return {
      where: id,
      message: say("rule.work-not-safe.spike", gaps),
      help: say("rule.work-not-safe.spike.help"),
    };
  if (verdict === "isolated" && untested.length === 0 && conductors.includes("N")) {
    const [inHand] = neutralInHand(questionsAbout(document, id), id, tested);
    if (inHand !== undefined) return { where: id, message: inHand.message, help: inHand.help! };
  }
  const shown = untested.flatMap((it) => readings.get(it) ?? []).filter((it) => !it.isDead);
  const induced = Math.max(0, ...shown.map(({ volts }) => volts));
  const how =
    verdict !== "isolated" || untested.length === 0 ? verdict : induced > 0 ? "induced" : "untested";
  return {
    where: id,
    message: say(`rule.work-not-safe.${how}`, { ...gaps, volts: figure(induced) }),
    help: say(`rule.work-not-safe.${how}.help`, gaps),
  };
}

/**
 * A conductor that has parted has two ends, and both come into the hand: each is grounded for itself.
 *
 * @see NIOSH FACE 90-02, a splice grounded on one side
 */
function looseEnds(id: WorkPointId, before: JobState): Problem[] {
  const { document } = before;
  return doneBy(document, id).flatMap((span) => {
    const element = elementOf(document.system, span);
    if (element === undefined) return [];
    const loose = endsOf(element).flatMap(([end, point]) =>
      lettersOf(apartOf(element).replace("N", ""))
        .map((letter) => conductorId(point, letterAt(element, end, letter)))
        .filter((it) => asItStands(before).conductors[it]?.state !== "grounded"),
    );
    if (loose.length === 0) return [];
    const gaps = { name: nameOf(document, span), where: conductorNames(document, loose) };
    return [
      {
        where: id,
        message: say("rule.work-not-safe.looseEnd", gaps),
        help: say("rule.work-not-safe.looseEnd.help", gaps),
      },
    ];
  });
}

/**
 * What comes out of the line leaves a line on either side, a conductor that the work takes away as well as a switch or a
 * jumper that it renews, and what is grounded through it alone is grounded no more once it is off: each side that stays
 * has a ground of its own.
 *
 * @see 29 CFR 1910.269(n)(3): no difference of potential between parts that one worker touches
 */
function endsLeftBare(id: WorkPointId, before: JobState): Problem[] {
  const { system } = before.document;
  const done = doneBy(before.document, id).filter((it) => isThere(before, it));
  const gone = done.filter((it) => isTakenAway(before, it));
  const off = done.filter((it) => isRenewed(before, it) || (gone.includes(it) && isInLine(system, it)));
  if (off.length === 0) return [];
  const left = amended(system, [{ remove: [...new Set([...off, ...gone])] }]);
  const held = joinedTo(
    left,
    elementsOfKind(system, "ground").flatMap(([, { at, phases }]) =>
      lettersOf(phases).map((letter) => conductorId(at, letter)),
    ),
  );
  return off.flatMap((thing) => {
    const element = elementOf(system, thing)!;
    const terminals = isTransformer(element)
      ? lowSidesOf(element).flatMap(legsOf)
      : endsOf(element).flatMap(([end, point]) =>
          lettersAtEnd(element, end)
            .filter((letter) => letter !== "N")
            .map((letter) => conductorId(point, letter)),
        );
    const bare = terminals
      .filter((it) => isTransformer(element) || goesOn(left, it))
      // What stays live beside the hands is told by its distance.
      .filter((it) => !held.has(it) && !isLiveState(conductorsOf(before)[it]?.state));
    if (bare.length === 0) return [];
    const gaps = { name: nameOf(before.document, thing), where: conductorNames(before.document, bare) };
    return [
      {
        where: id,
        message: say("rule.work-not-safe.takenAway", gaps),
        help: say("rule.work-not-safe.takenAway.help", gaps),
      },
    ];
  });
}

/** A cable that is worked on between its ends is cut there, and both parts come into the hand: each is held from its own end. */
function cutInTwo(id: WorkPointId, { document }: JobState): Problem[] {
  const { system } = document;
  const { at, conductors } = jobOf(document).workPoints[id]!;
  const cables = cablesWithin(system, at);
  const sets = elementsOfKind(system, "ground").flatMap(([, it]) =>
    lettersOf(it.phases).map((letter) => conductorId(it.at, letter)),
  );
  return cables
    .filter((part) => {
      const element = elementOf(system, part)!;
      const [end = "from"] = endsOf(element).find(([, point]) => point === at) ?? [];
      const letters = lettersOf(conductors).filter((it) => {
        const own = phaseCalled(element, end, it);
        return own !== undefined && !openPhasesOf(element).includes(own);
      });
      const held = joinedTo(amended(system, [{ remove: cables.filter((it) => it !== part) }]), sets);
      return letters.some((it) => !held.has(conductorId(at, it)));
    })
    .map((part) => {
      const gaps = { name: workPointName(document, id), part: nameOf(document, part) };
      return {
        where: id,
        message: say("rule.work-not-safe.cut", gaps),
        help: say("rule.work-not-safe.cut.help", gaps),
      };
    });
}

const conductorsOf = (state: JobState) => asItStands(state).conductors;

/** Whether a thing stands already: what is planned comes with the work. */
function isThere({ document }: JobState, id: ElementId): boolean {
  const element = elementOf(document.system, id);
  return element !== undefined && element.planned !== true;
}

const isTakenAway = ({ document }: JobState, id: ElementId): boolean =>
  elementOf(document.system, id)?.leave === "gone" || jobOf(document).leave[id] === "gone";

const isInLine = (system: System, id: ElementId): boolean => isConductor(elementOf(system, id)!);

/**
 * Whether the work changes a thing through which the line goes: hands on one side of it come to the other side too. So they
 * do on a bank between two lines; what holds a low side that customers are fed from is another rule's.
 */
function isRenewed({ document: { system } }: JobState, id: ElementId): boolean {
  const element = elementOf(system, id)!;
  if (isTransformer(element)) {
    const circuit = circuitOf(system);
    return lowSidesOf(element)
      .flatMap(legsOf)
      .some((leg) => circuit.nominalVolts[circuit.nodeOf.get(leg) ?? -1]! > LINE_VOLTS);
  }
  return !isLine(element) && !comesAway(element) && endsOf(element).length === 2;
}

/** Whether something closed hangs on a conductor, so that more than a stub stays in reach: a pulled meter leaves its jaws alone. */
const goesOn = (system: System, id: ConductorId): boolean => {
  const { point, letter } = partsOfConductor(id);
  return elementsOf(system).some(
    ([, it]) =>
      !isGroundSet(it) &&
      endsOf(it).some(([end, at]) => {
        const own = at === point ? phaseCalled(it, end, letter) : undefined;
        return own !== undefined && !openPhasesOf(it).includes(own);
      }),
  );
};
