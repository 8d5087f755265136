import { type CircuitElement, deviceOf, isTransformer, openPhasesOf, letterAt } from "../../devices";
import type { Step } from "../../document";
import { type ConductorReport, degreesApart, givenApart, standApart, voltsApart } from "../../hazard";
import { circuitOf, conductorsToCome, groupsAsDrawn } from "../../network";
import {
  type ConductorId,
  conductorId,
  type ElementId,
  type Letter,
  lettersOf,
  partsOfConductor,
} from "../../terms";
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
export const voltsAcross = ({ from, to }: Pick<Gap, "from" | "to">): number => voltsApart(from, to);

/** Angle between the two sides of a gap, 0 to 180 [°]. */
export const degreesAcross = ({ from, to }: Gap): number => degreesApart(from, to);

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

/** The first gap that a step closes between supplies that nothing keeps in step: whatever their angle is, it is another a moment later. */
export function outOfStepIn(step: Step, before: JobState, after: JobState): Gap | undefined {
  const gaps = [...gapsToMeet(step, before, after), ...throughNewBanks(step, before)];
  if (gaps.length === 0) return undefined;
  const circuit = circuitOf(before.document.system);
  const { ofEmf } = groupsAsDrawn(circuit);
  const groupOf = new Map(
    [...ofEmf].map(([emf, group]) => [circuit.elementIds[circuit.emfs[emf]!.element], group] as const),
  );
  const groupsIn = ({ sources }: ConductorReport) => sources.flatMap((it) => groupOf.get(it) ?? []);
  return gaps.find(({ from, to }) => {
    const [one, other] = [groupsIn(from), groupsIn(to)];
    return one.length > 0 && other.length > 0 && !one.some((it) => other.includes(it));
  });
}

/** From a live primary to a live low side of each transformer that a work puts in: its windings join what stands there. */
function throughNewBanks(step: Step, before: JobState): Gap[] {
  if (step.do !== "work") return [];
  return madeBy(step, before.document).flatMap((thing) => {
    const bank = elementOf(before.document.system, thing);
    const isPlanned = before.document.system.elements[thing]?.planned === true;
    if (bank === undefined || !isTransformer(bank) || !isPlanned) return [];
    const live = (ids: readonly ConductorId[]) => ids.find((id) => isLiveAt(before, id));
    const [one, other] = [
      live(lettersOf(bank.phases).map((letter) => conductorId(bank.from, letter))),
      live(secondaryIds(bank)),
    ];
    return one === undefined || other === undefined
      ? []
      : gapBetween(before, { thing, letter: partsOfConductor(one).letter, sides: [one, other] });
  });
}

/** Of these what each would give at its low side, and what stands there, where these do not stand together: another phase, or other volts. */
function givenByNewBanks(step: Step, before: JobState, after: JobState): Gap[] {
  const gaps = throughNewBanks(step, before);
  if (gaps.length === 0) return [];
  const [was, is] = movedAround(step, before, after).map((it) => givenApart(circuitOf(it.document.system)));
  // Of two in parallel it is the later one on the way from the source that is told, be it the new one or not.
  const [apart] = [...is!].flatMap(([bank, it]) => (was!.has(bank) ? [] : [it]));
  return apart === undefined
    ? []
    : gaps.map((gap) => ({ ...gap, from: { ...gap.from, ...apart.one }, to: { ...gap.to, ...apart.other } }));
}

/** The gap that a step closes between supplies that do not stand together, in angle or in volts; the worst one. */
export function mismatchOf(step: Step, before: JobState, after: JobState): Gap | undefined {
  return [
    ...gapsToMeet(step, before, after).filter(({ from, to }) => standApart(from, to)),
    ...givenByNewBanks(step, before, after),
  ].sort((a, b) => voltsAcross(b) - voltsAcross(a))[0];
}
