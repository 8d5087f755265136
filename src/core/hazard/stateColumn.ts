import { perObject } from "../document";
import type { ConductorId } from "../terms";
import type { Assessment, ConductorState } from "./types";

/** Every word for a state, at the place that stands for it in columns. What is not told yet is `unknown` too, and counts as hot. */
export const STATES: readonly ConductorState[] = [
  "unknown",
  "faulted",
  "energized",
  "backfed",
  "induced",
  "grounded",
  "isolated",
  "neutral",
];
/** The place that stands for a state in columns. */
export const codeOf = Object.fromEntries(STATES.map((it, code) => [it, code])) as Record<
  ConductorState,
  number
>;

/** States of conductors as columns: one row each, in the order of their ids. */
export interface StateColumn {
  /** the same list for drawings with the same conductors, as far as that is told */
  readonly ids: readonly ConductorId[];
  /** places in `STATES` */
  readonly states: Uint8Array;
}

/** What may still be said of states after an edit that was not looked at yet: what was hot counts as hot, nothing else is known. */
export const statesUntold = ({ ids, states }: StateColumn): StateColumn => ({
  ids,
  states: states.map((code) => (isHot(STATES[code]) ? code : codeOf.unknown)),
});

/** Whether a conductor in this state may hold volts against another or the earth. */
export const isHot = (state: ConductorState | undefined): boolean =>
  state === "energized" || state === "backfed" || state === "induced" || state === "faulted";

/** The states of an assessment as a column. */
export const stateColumn: (conductors: Assessment["conductors"]) => StateColumn = perObject(
  (conductors: Assessment["conductors"]) => {
    const ids = Object.keys(conductors) as ConductorId[];
    return { ids, states: Uint8Array.from(ids, (id) => codeOf[conductors[id]!.state]) };
  },
);
