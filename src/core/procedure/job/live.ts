import type { ConductorState } from "../../hazard";
import { jobOf, type Step } from "../../document";
import { type ConductorId, conductorId, type Letter, lettersOf } from "../../terms";
import { joinedTo } from "./joined";
import { asItStands } from "./seen";
import type { JobState } from "./state";

/** Reached by some supply: what only a neighbour induces is a hazard of its own. */
const isFed = (state: ConductorState | undefined): boolean =>
  state === "energized" || state === "backfed" || state === "faulted";

/** Fed, or to be taken for it, since nobody drew what feeds it. */
export const isLiveState = (state: ConductorState | undefined): boolean =>
  state === "unknown" || isFed(state);

/** Conductors of all work points of the job. */
export const workConductors = ({ document }: JobState): ConductorId[] =>
  Object.values(jobOf(document).workPoints).flatMap(({ at, conductors }) =>
    lettersOf(conductors).map((letter) => conductorId(at, letter as Letter)),
  );

/** Conductors that a step brings to life. */
export function energizedBy(before: JobState, after: JobState): ConductorId[] {
  if (before.document === after.document) return [];
  const was = asItStands(before).conductors;
  const is = asItStands(after).conductors;
  return (Object.keys(is) as ConductorId[]).filter(
    (id) => isLiveState(is[id]!.state) && !isLiveState(was[id]?.state),
  );
}

/**
 * Conductors that a step brings to life where the job's people are or were: a work point, or what is joined to one. A
 * line that is picked up again beyond an open switch is none of it. In a job without work points everything is.
 */
export function energizedOnTheJob(before: JobState, after: JobState): ConductorId[] {
  const energized = energizedBy(before, after);
  const work = workConductors(after);
  if (energized.length === 0 || work.length === 0) return energized;
  const joined = joinedTo(after.document.system, work);
  return energized.filter((id) => joined.has(id));
}

/** Customers with and without supply: those at any of whose conductors something reaches. */
export const isSupplied = (state: JobState, at: string, phases: string): boolean =>
  lettersOf(phases).some((letter) => isFed(asItStands(state).conductors[conductorId(at, letter)]?.state));

/** Whether this step is the first of its kind in the job so far. */
export const isFirst = (before: JobState, is: (step: Step) => boolean): boolean => !before.played.some(is);
