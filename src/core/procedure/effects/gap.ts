import { type CircuitElement, deviceOf, isTransformer, openPhasesOf, letterAt } from "../../devices";
import type { Step, System } from "../../document";
import {
  type ConductorReport,
  degreesApart,
  feedsApart,
  standApart,
  voltsApart,
  type VoltsToEarth,
} from "../../hazard";
import {
  circuitOf,
  conductorsToCome,
  groupsAsDrawn,
  isPhase,
  phaseIslands,
  type StepGroup,
} from "../../network";
import { type ConductorId, conductorId, type ElementId, type Letter } from "../../terms";
import { secondaryIds } from "../job/hands";
import { islandOf } from "../job/joined";
import { isLiveState } from "../job/live";
import { elementOf } from "../job/names";
import { isFedBackwards } from "../job/paths";
import { madeBy } from "../job/repair";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";
import { movedAround } from "../job/worked";

/** What stands at the two sides of one phase of a thing. */
export interface Gap {
  readonly thing: ElementId;
  readonly letter: Letter;
  readonly sides: Sides;
  readonly from: ConductorReport;
  readonly to: ConductorReport;
}

/** Two feeds that a thing joins, each as it stands without the other. */
export interface Joined {
  readonly thing: ElementId;
  readonly letter: Letter;
  readonly from: VoltsToEarth;
  readonly to: VoltsToEarth;
}

/** The two sides of each phase of a two-ended thing; nothing for any other. */
export function gapsOf(state: JobState, id: string | undefined, letters: string): Gap[] {
  const element = elementOf(state.document.system, id);
  if (element === undefined || deviceOf(element.kind).ends.length < 2 || isTransformer(element)) return [];
  const { from, to } = element as unknown as { from: string; to: string };
  return [...letters].flatMap((it) => {
    const letter = it as Letter;
    const sides = [conductorId(from, letter), conductorId(to, letterAt(element, "to", letter))] as const;
    return gapBetween(state, { thing: id as ElementId, letter, sides });
  });
}

/** What stands at two conductors; nothing where one of them is not there. */
function gapBetween(state: JobState, gap: Pick<Gap, "thing" | "letter" | "sides">): Gap[] {
  const [from, to] = gap.sides.map((id) => asItStands(state).conductors[id]);
  return from === undefined || to === undefined ? [] : [{ ...gap, from, to }];
}

/** Volts across a gap [V]. */
export const voltsAcross = ({ from, to }: Pick<Joined, "from" | "to">): number => voltsApart(from, to);

/** Angle between the two sides of a gap, 0 to 180 [°]. */
export const degreesAcross = ({ from, to }: Pick<Joined, "from" | "to">): number => degreesApart(from, to);

/** Live, and there: of what only this work brings nobody has drawn a feed, and nothing can feed it yet. */
function isLiveAt(state: JobState, id: ConductorId): boolean {
  const circuit = circuitOf(state.document.system);
  return (
    isLiveState(asItStands(state).conductors[id]?.state) &&
    !conductorsToCome(circuit).has(circuit.nodeOf.get(id)!)
  );
}

/**
 * One side is only the other's own supply come back through the windings of a bank or a load: a phase of a bank switched
 * one by one, and held down by a fault or not. Closing it puts right what stands there; it joins no second supply.
 */
const isRegenerated = (state: JobState, { from, to, sides: [a, b] }: Gap): boolean => {
  const comesBackFrom = (side: ConductorReport, id: ConductorId, other: ConductorReport) =>
    isFedBackwards(state, id) && side.sources.every((it) => other.sources.includes(it));
  return comesBackFrom(from, a, to) || comesBackFrom(to, b, from);
};

/** Phases that a step opened, or closed: those that are now otherwise than before. */
export function phasesMoved(
  step: Step,
  before: JobState,
  after: JobState,
): { opened: string; closed: string } {
  const was = elementOf(before.document.system, step.element);
  const is = elementOf(after.document.system, step.element);
  if (was === undefined || is === undefined) return { opened: "", closed: "" };
  const [openBefore, openAfter] = [openPhasesOf(was), openPhasesOf(is)];
  return {
    opened: [...openAfter].filter((it) => !openBefore.includes(it)).join(""),
    closed: [...openBefore].filter((it) => !openAfter.includes(it)).join(""),
  };
}

/** The conductors on the two sides of a phase of a thing. */
export type Sides = readonly [ConductorId, ConductorId];

/** The largest current through some phases of a thing [A]. */
export const ampsThrough = (state: JobState, id: string | undefined, letters: string): number =>
  Math.max(
    0,
    ...[...letters].map((it) => asItStands(state).elements[id as ElementId]?.amps[it as Letter] ?? 0),
  );

/** The gaps that a step closes between two live sides, but for a phase that a bank's own windings hold. */
export function gapsToMeet(step: Step, before: JobState, after: JobState): Gap[] {
  const [was, is] = movedAround(step, before, after);
  const gaps = gapsMade(step, was, is);
  // Closing between two live sides joins two things that each have a supply.
  return (step.do === "work" ? [...gaps, ...gapsInRow(was, gaps)] : gaps).filter(
    (gap) => gap.sides.every((id) => isLiveAt(was, id)) && !isRegenerated(was, gap),
  );
}

/** The gap of each phase of what a step switches, or of what the work at its place splices or puts in. */
export const gapsMade = (step: Step, was: JobState, is: JobState): Gap[] =>
  step.do === "work"
    ? madeBy(step, was.document).flatMap((id) => gapsOf(was, id, phasesJoined(was, is, id)))
    : gapsOf(was, step.element, phasesMoved(step, was, is).closed);

/**
 * Between the live ends of several gaps that have nothing between them but pieces that are dead, or live only by what comes back
 * through a bank or from a machine: one work joins them all. What is live so may be such a piece, and an end as well.
 */
function gapsInRow(state: JobState, gaps: readonly Gap[]): Gap[] {
  const { system } = state.document;
  const bothWays = gaps.flatMap(({ thing, letter, sides: [a, b] }) => [
    { thing, letter, near: a, far: b },
    { thing, letter, near: b, far: a },
  ]);
  const isEnd = (id: ConductorId) => isLiveAt(state, id);
  const leadsOn = (id: ConductorId) => !isEnd(id) || isFedBackwards(state, id);
  const seen = new Set<ConductorId>();
  return bothWays
    .filter(({ near, far }) => isEnd(near) && leadsOn(far))
    .flatMap(({ thing, letter, near, far }) => {
      seen.add(near);
      // A set goes on over what is added to it while it is gone over.
      const pieces = new Set([islandOf(system, far)]);
      const ends = new Set<ConductorId>();
      for (const piece of pieces)
        for (const next of bothWays) {
          if (!leadsOn(next.near) || islandOf(system, next.near) !== piece) continue;
          if (leadsOn(next.far)) pieces.add(islandOf(system, next.far));
          if (isEnd(next.far) && !seen.has(next.far)) ends.add(next.far);
        }
      return [...ends].flatMap((end) => gapBetween(state, { thing, letter, sides: [near, end] }));
    });
}

/** Phases in which the work on a thing joins its ends: those that were parted or cut, or all where it was not there. */
function phasesJoined(before: JobState, after: JobState, id: ElementId): string {
  const was = elementOf(before.document.system, id);
  const is = elementOf(after.document.system, id);
  if (was === undefined || is === undefined) return "";
  const { planned } = before.document.system.elements[id] as { planned?: boolean };
  const apart = (it: CircuitElement) => {
    const { parted = "", cut = "" } = it as { parted?: string; cut?: string };
    return `${openPhasesOf(it)}${parted}${cut}`;
  };
  const phases = planned === true ? ((is as { phases?: string }).phases ?? "") : apart(was);
  return [...phases].filter((it) => it !== "N" && !apart(is).includes(it)).join("");
}

/** Two supplies that a step joins and that nothing keeps in step. */
export interface OutOfStep {
  readonly thing: ElementId;
  readonly one: readonly ElementId[];
  readonly other: readonly ElementId[];
  /** the most that can stand across the thing: both sides against each other [V] */
  readonly volts: number;
}

/** The first supplies that a step joins and that nothing keeps in step: whatever their angle is, it is another a moment later. */
export const outOfStepIn = (step: Step, before: JobState, after: JobState): OutOfStep | undefined =>
  outOfStepAcross(step, before, after) ?? broughtTogether(step, ...movedAround(step, before, after));

function outOfStepAcross(step: Step, before: JobState, after: JobState): OutOfStep | undefined {
  const gaps = gapsToMeet(step, before, after);
  if (gaps.length === 0) return undefined;
  const supplies = suppliesOf(before.document.system);
  const groupsIn = ({ sources }: ConductorReport) => sources.flatMap((it) => supplies.get(it)?.group ?? []);
  const gap = gaps.find(({ from, to }) => {
    const [one, other] = [groupsIn(from), groupsIn(to)];
    return one.length > 0 && other.length > 0 && !one.some((it) => other.includes(it));
  });
  return (
    gap && {
      thing: gap.thing,
      one: gap.from.sources,
      other: gap.to.sources,
      volts: gap.from.volts + gap.to.volts,
    }
  );
}

/** What is on: the group that keeps step with it, and the phases that it is joined to, through transformers too. */
function suppliesOf(system: System) {
  const circuit = circuitOf(system);
  const islands = phaseIslands(circuit);
  const supplies = new Map<ElementId, { readonly group: StepGroup; readonly on: Set<number> }>();
  for (const [emf, group] of groupsAsDrawn(circuit).ofEmf) {
    const { element, legs } = circuit.emfs[emf]!;
    const id = circuit.elementIds[element]!;
    const { on } = supplies.get(id) ?? { on: new Set<number>() };
    for (const node of legs) if (isPhase(circuit, node)) on.add(islands[node]!);
    supplies.set(id, { group, on });
  }
  return supplies;
}

/** Two supplies that hang together in one drawing, did not in another, and that nothing kept in step there. */
function firstBroughtTogether(was: System, is: System): readonly [ElementId, ElementId] | undefined {
  const [apart, joined] = [suppliesOf(was), suppliesOf(is)];
  const ids = [...apart.keys()].filter((id) => joined.has(id));
  const hangTogether = (among: typeof apart, a: ElementId, b: ElementId) =>
    [...among.get(a)!.on].some((island) => among.get(b)!.on.has(island));
  for (const [nth, a] of ids.entries())
    for (const b of ids.slice(nth + 1))
      if (
        apart.get(a)!.group !== apart.get(b)!.group &&
        hangTogether(joined, a, b) &&
        !hangTogether(apart, a, b)
      )
        return [a, b];
  return undefined;
}

/**
 * Supplies that a work brings together, through however many transformers, leads and spans that it puts in or makes whole.
 * The thing that is told is one without which they stay apart, and at which volts stand already.
 */
function broughtTogether(step: Step, was: JobState, is: JobState): OutOfStep | undefined {
  if (step.do !== "work" || was.document === is.document) return undefined;
  const pair = firstBroughtTogether(was.document.system, is.document.system);
  if (pair === undefined) return undefined;
  const made = madeBy(step, was.document).map((thing) => ({ thing, volts: voltsAtLowSide(was, thing) }));
  const isNeeded = ({ thing }: { thing: ElementId }) =>
    firstBroughtTogether(was.document.system, without(thing, was, is)) === undefined;
  const live = made.filter(({ volts }) => volts > 0);
  const told = live.find(isNeeded) ?? live[0] ?? made[0];
  return told && { thing: told.thing, one: [pair[0]], other: [pair[1]], volts: 2 * told.volts };
}

/** The highest volts to earth that stand at a thing where it gives its volts: at the low side of a transformer, at any end of another [V]. */
function voltsAtLowSide(state: JobState, id: ElementId): number {
  const element = elementOf(state.document.system, id);
  if (element === undefined) return 0;
  const ends = isTransformer(element)
    ? secondaryIds(element)
    : gapsOf(state, id, (element as { phases?: string }).phases ?? "").flatMap(({ sides }) => sides);
  const reports = ends.map((it) => asItStands(state).conductors[it]!);
  return Math.max(0, ...reports.filter((it) => isLiveState(it.state)).map(({ volts }) => volts));
}

/** The drawing as the work leaves it, with one thing as it was before. */
const without = (thing: ElementId, was: JobState, is: JobState): System => {
  const { system } = is.document;
  return { ...system, elements: { ...system.elements, [thing]: was.document.system.elements[thing]! } };
};

/**
 * Feeds that do not stand together once the work is done and did not meet before it: another phase, or other volts. What
 * meets may be told at a thing that was there; the one that brought it about is told instead, without which nothing would be.
 */
function newlyApart(step: Step, was: JobState, is: JobState): Joined[] {
  if (step.do !== "work" || was.document === is.document) return [];
  const before = feedsApart(circuitOf(was.document.system));
  const newIn = (system: System) => [...feedsApart(circuitOf(system))].filter(([id]) => !before.has(id));
  const [worst] = newIn(is.document.system)
    .map(([id, { letter, one, other }]) => ({ id, letter, from: one, to: other }))
    .sort((a, b) => voltsAcross(b) - voltsAcross(a));
  if (worst === undefined) return [];
  const made = madeBy(step, was.document);
  const needed = made.filter((id) => newIn(without(id, was, is)).length === 0);
  const likely = needed.length > 0 ? needed : made;
  const thing = likely.find((id) => id === worst.id) ?? likely[0]!;
  return standApart(worst.from, worst.to) ? [{ ...worst, thing }] : [];
}

/** What a step joins that does not stand together, in angle or in volts; the worst of it. */
export function mismatchOf(step: Step, before: JobState, after: JobState): Joined | undefined {
  const gaps = gapsToMeet(step, before, after).filter(({ from, to }) => standApart(from, to));
  const apart = gaps.length > 0 ? gaps : newlyApart(step, ...movedAround(step, before, after));
  return [...apart].sort((a, b) => voltsAcross(b) - voltsAcross(a))[0];
}
