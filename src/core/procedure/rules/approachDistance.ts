import {
  type CircuitElement,
  comesAway,
  isCable,
  isDeadFront,
  isLine,
  isTransformer,
  letterAt,
  openPhasesOf,
} from "../../devices";
import {
  conductorNames,
  elementOfKind,
  elementsOfKind,
  jobOf,
  pointsOnStructure,
  settingsOf,
  structureOf,
  type WorkPoint,
} from "../../document";
import { distanceWords, LINE_VOLTS } from "../../hazard";
import { circuitOf, conductorsToCome, endsOf } from "../../network";
import { approachDistanceFor, citationOf, gloveClassFor } from "../../reference";
import {
  type ConductorId,
  conductorId,
  type Letter,
  LETTERS,
  type Message,
  partsOfConductor,
} from "../../terms";
import { say } from "./say";
import { handsAreOn } from "../effects/consequence";
import { isUnderCover } from "../job/covered";
import { devicesWorkedOn, phaseCalled } from "../job/hands";
import { elementsOf, figure, nameOf } from "../job/names";
import { defineRule, type Problem } from "./rule";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";
import { isLiveWork } from "../../steps";

/**
 * What stays energized near the work is out of reach or covered. At the work point itself it is within reach; elsewhere on
 * the same pole the drawing has no distance, so that is a note with the distance to keep, save where a device is changed
 * there: then hands come to all that hangs beside it. The other terminal of what hangs open right where the work is is
 * within reach too. Inside a pad or a vault nothing is out of reach: what is bare there, the
 * bushing of a parked elbow too, is covered. A neighbouring circuit has its spacing drawn. A phase beside the grounded ones that has no ground of its own counts as energized. What comes within reach
 * while people are on the line is said then.
 */
export const approachDistance = defineRule({
  id: "approach-distance",
  severity: "warning",
  citation: citationOf("mad"),
  check(step, before, after) {
    if (step.do !== "work") return comeWithinReach(before, after);
    if (isLiveWork(step)) return undefined;
    const { document } = after;
    const workPoint = jobOf(document).workPoints[step.at];
    if (workPoint === undefined) return undefined;
    const near = hotBeside(after, workPoint);
    const ungrounded = ungroundedBeside(before, after, workPoint);
    const onPole = pointsOnStructure(document.system, workPoint.at)
      .filter((point) => point !== workPoint.at)
      .flatMap((point) => hotAt(after, point));
    const ofNoGround =
      ungrounded.length === 0
        ? []
        : [problem(after, step.at, ungrounded, "rule.approach-distance.ungrounded")];
    if (devicesWorkedOn(before, step.at).length > 0) {
      const bare = [...near, ...onPole].filter((id) => !isBehindDeadFront(after, id));
      const [within, beyond] = byClass(after, workPoint, bare);
      return [
        ...asDangers(after, within, "rule.approach-distance.within"),
        ...ofNoGround,
        ...asNotes(after, step.at, [beyond]),
        ...neighbours(before, workPoint.at),
      ];
    }
    const acrossGap = onPole.filter((id) => isAcrossGap(after, workPoint, id));
    const [ofWorkClass, ofOtherClass] = byClass(
      after,
      workPoint,
      onPole.filter((id) => !acrossGap.includes(id)),
    );
    const inside = isEnclosed(after, workPoint.at)
      ? ofWorkClass.filter((id) => !isBehindDeadFront(after, id))
      : [];
    return [
      ...(near.length === 0 ? [] : [problem(after, step.at, near, "rule.approach-distance")]),
      ...atEachPoint(acrossGap).map((ids) =>
        problem(after, partsOfConductor(ids[0]!).point, ids, "rule.approach-distance"),
      ),
      ...ofNoGround,
      ...asDangers(after, inside, "rule.approach-distance.enclosure"),
      ...asNotes(after, step.at, [ofWorkClass.filter((id) => !inside.includes(id)), ofOtherClass]),
      ...neighbours(before, workPoint.at),
    ];
  },
});

/**
 * Whether a conductor is the other terminal of a thing that ends where the work is: nothing but its own open gap lies
 * between it and the hands, and that is shorter than the distance to keep. What comes away in the hand leaves no gap of
 * its own.
 */
function isAcrossGap({ document }: JobState, { at, conductors }: WorkPoint, id: ConductorId): boolean {
  const { point, letter } = partsOfConductor(id);
  return elementsOf(document.system).some(([, it]) => {
    if (isLine(it) || isTransformer(it) || isDeadFront(it) || comesAway(it)) return false;
    const endAt = (where: string) => endsOf(it).find(([, end]) => end === where)?.[0];
    const [here, there] = [endAt(at), endAt(point)];
    if (here === undefined || there === undefined) return false;
    const own = phaseCalled(it, there, letter);
    return (
      own !== undefined && openPhasesOf(it).includes(own) && conductors.includes(letterAt(it, here, own))
    );
  });
}

/** What hands would come to, one danger a point, so that each can be covered. */
const asDangers = (
  state: JobState,
  hot: readonly ConductorId[],
  key: "rule.approach-distance.within" | "rule.approach-distance.enclosure",
): Problem[] =>
  atEachPoint(hot).map((ids) => ({
    ...problem(state, partsOfConductor(ids[0]!).point, ids, key),
    severity: "danger",
  }));

/** What there is a distance to keep from, each class of voltage with its own. */
const asNotes = (state: JobState, where: string, classes: readonly (readonly ConductorId[])[]): Problem[] =>
  classes
    .filter((hot) => hot.length > 0)
    .map((hot) => ({ ...problem(state, where, hot, "rule.approach-distance.pole"), severity: "note" }));

/** Whether people reach into a cabinet or a vault there, where nothing is farther off than an arm. */
const isEnclosed = ({ document }: JobState, at: string): boolean =>
  ["pad", "vault"].includes(structureOf(document.system, at)?.kind ?? "pole");

/** Whether a conductor ends in closed dead-front connectors, cables and windings alone; a parked one leaves its bushing bare. */
function isBehindDeadFront({ document }: JobState, id: ConductorId): boolean {
  const { point, letter } = partsOfConductor(id);
  const here = elementsOf(document.system).flatMap(([, it]) =>
    endsOf(it).flatMap(([end, at]) => {
      const own = at === point ? phaseCalled(it, end, letter) : undefined;
      return own === undefined ? [] : [{ it, own }];
    }),
  );
  const isInsulated = ({ it, own }: { it: CircuitElement; own: Letter }): boolean =>
    isDeadFront(it) ? !openPhasesOf(it).includes(own) : isTransformer(it) || isCable(it);
  return here.some(({ it }) => isDeadFront(it)) && here.every(isInsulated);
}

/** What is within arm's reach of the work, of the same class of voltage, and what is not. */
function byClass(
  { document }: JobState,
  { at, conductors }: WorkPoint,
  hot: readonly ConductorId[],
): readonly [ConductorId[], ConductorId[]] {
  const circuit = circuitOf(document.system);
  const isLine = (id: ConductorId) => circuit.nominalVolts[circuit.nodeOf.get(id)!]! > LINE_VOLTS;
  const ofWork = isLine(conductorId(at, conductors[0] as Letter));
  return [hot.filter((id) => isLine(id) === ofWork), hot.filter((id) => isLine(id) !== ofWork)];
}

function atEachPoint(ids: readonly ConductorId[]): ConductorId[][] {
  const byPoint = new Map<string, ConductorId[]>();
  for (const id of ids) {
    const { point } = partsOfConductor(id);
    byPoint.set(point, [...(byPoint.get(point) ?? []), id]);
  }
  return [...byPoint.values()];
}

/** What a step that switches or uncovers something brings within reach of people who are on the line. */
const comeWithinReach = (before: JobState, after: JobState): Problem[] =>
  before.document === after.document && before.covered === after.covered
    ? []
    : [...after.workUnderWay].flatMap((id) => {
        const workPoint = jobOf(after.document).workPoints[id];
        if (workPoint === undefined || !handsAreOn(after, id)) return [];
        const was = hotBeside(before, workPoint);
        const near = hotBeside(after, workPoint).filter((it) => !was.includes(it));
        return near.length === 0 ? [] : [problem(after, id, near, "rule.approach-distance")];
      });

const ownOf = ({ at, conductors }: WorkPoint): ConductorId[] =>
  [...conductors].map((letter) => conductorId(at, letter as Letter));

/** Conductors at the work point, beside those that are worked on, at a dangerous voltage. */
const hotBeside = (state: JobState, workPoint: WorkPoint): ConductorId[] =>
  hotAt(state, workPoint.at).filter((id) => !ownOf(workPoint).includes(id));

/** Dead conductors beside grounded ones that are worked on, with no ground of their own. What this very work hangs was not there to ground. */
function ungroundedBeside(before: JobState, state: JobState, workPoint: WorkPoint): ConductorId[] {
  const { conductors } = asItStands(state);
  const circuit = circuitOf(before.document.system);
  const toCome = conductorsToCome(circuit);
  const own = ownOf(workPoint);
  if (!own.every((id) => conductors[id]?.state === "grounded")) return [];
  const hot = hotAt(state, workPoint.at);
  return barePhasesAt(state, workPoint.at).filter(
    (id) =>
      !toCome.has(circuit.nodeOf.get(id) ?? -1) &&
      !own.includes(id) &&
      !hot.includes(id) &&
      conductors[id]!.state !== "grounded" &&
      !isHeldByRodHere(state, id),
  );
}

/** Whether a conductor is the neutral that a set right here ties to its own rod, and with it to what the worker is bonded to. */
const isHeldByRodHere = ({ document }: JobState, id: ConductorId): boolean => {
  const { point, letter } = partsOfConductor(id);
  return (
    letter === "N" &&
    elementsOfKind(document.system, "ground").some(
      ([, { at, to, poleBond }]) => at === point && to === "both" && poleBond,
    )
  );
};

/** Conductors of a point at a dangerous voltage that nothing covers. */
function hotAt(state: JobState, point: string): ConductorId[] {
  const { hazardVolts } = settingsOf(state.document);
  return barePhasesAt(state, point).filter((id) => asItStands(state).conductors[id]!.volts >= hazardVolts);
}

/** Conductors of a point that nothing covers, the neutral left out. */
const barePhasesAt = (state: JobState, point: string): ConductorId[] =>
  LETTERS.map((letter) => conductorId(point, letter)).filter((id) => {
    const report = asItStands(state).conductors[id];
    return report !== undefined && report.state !== "neutral" && !isUnderCover(state, id);
  });

function problem(
  state: JobState,
  where: string,
  hot: readonly ConductorId[],
  key:
    | "rule.approach-distance.within"
    | "rule.approach-distance.enclosure"
    | "rule.approach-distance"
    | "rule.approach-distance.pole"
    | "rule.approach-distance.ungrounded",
): Problem {
  const circuit = circuitOf(state.document.system);
  const lineToLine = Math.max(...hot.map((id) => circuit.nominalVolts[circuit.nodeOf.get(id)!]!));
  const isSplit = hot.some((id) => "12".includes(partsOfConductor(id).letter));
  // Where only one phase is within reach nobody comes between two: the volts to ground count.
  const phases = new Set(hot.map((id) => partsOfConductor(id).letter));
  const volts = phases.size > 1 || isSplit ? lineToLine : lineToLine / Math.sqrt(3);
  return {
    where,
    message: say(key, {
      hot: conductorNames(state.document, hot),
      volts: figure(volts),
      keep: keepWords(volts, phases.size > 1),
    }),
    help: say("rule.approach-distance.help", {
      gloves: gloveWords(volts),
      hot: conductorNames(state.document, hot),
    }),
  };
}

/** What to keep from it: a distance is kept, the table's *avoid contact* is none. */
function keepWords(volts: number, betweenPhases: boolean): Message {
  const distance = approachDistanceFor(volts);
  if (distance === undefined) return say("rule.approach-distance.keep.beyond");
  return distance.rule === "distance"
    ? say("rule.approach-distance.keep", { distance: distanceWords(volts, betweenPhases) })
    : say("rule.approach-distance.keep.contact");
}

function gloveWords(volts: number): Message {
  const gloves = gloveClassFor(volts);
  return gloves === undefined
    ? say("gloves.none")
    : say("gloves.class", { name: gloves.name, volts: gloves.maxUseVolts });
}

/** Circuits on the same poles or beside that hang nearer than the distance to keep. */
function neighbours(state: JobState, at: string): Problem[] {
  const { document } = state;
  const poles = pointsOnStructure(document.system, at) as readonly string[];
  return elementsOfKind(document.system, "nearby").flatMap(([id, it]) => {
    if (!it.on || it.spacingM === undefined || state.covered.has(id)) return [];
    const span = elementOfKind(document.system, it.span, "span");
    if (span === undefined || !(poles.includes(span.from) || poles.includes(span.to))) return [];
    const volts = it.kvLL * 1000;
    const distance = approachDistanceFor(volts);
    if (distance?.rule !== "distance" || it.spacingM >= distance.phaseToPhaseM) return [];
    return [
      {
        where: id,
        message: say("rule.approach-distance.nearby", {
          name: nameOf(document, id),
          spacing: it.spacingM,
          distance: say("approach.distance", { metres: distance.phaseToPhaseM }),
        }),
        help: say("rule.approach-distance.help", { gloves: gloveWords(volts), hot: nameOf(document, id) }),
      },
    ];
  });
}
