import { elementsOfKind, perObject } from "../../document";
import { conductorId, lettersOf } from "../../terms";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";
import type { Rehearsal } from "./rehearse";

/** Customers without supply over a job. */
export interface CustomersOutOfJob {
  readonly asFound: number;
  /** at the most while work is going on */
  readonly during: number;
  /** at the most at all */
  readonly worst: number;
  readonly end: number;
  /** added up over all steps */
  readonly steps: number;
}

/** Customers whose service has not every one of its conductors from the utility; a machine of their own is no supply. */
export const customersWithout = (state: JobState): number => countedIn(state.document.system)(state);

const countedIn = perObject((_system: object) => {
  let count: number | undefined;
  return (state: JobState): number => (count ??= counted(state));
});

function counted(state: JobState): number {
  const { conductors } = asItStands(state);
  return elementsOfKind(state.document.system, "load").reduce(
    (sum, [, it]) =>
      !lettersOf(it.phases).every((letter) => conductors[conductorId(it.at, letter)]?.state === "energized")
        ? sum + it.customers
        : sum,
    0,
  );
}

const countsOf = (steps: Rehearsal["steps"]): number[] => steps.map(({ state }) => customersWithout(state));

/**
 * Customers without supply, added up over the steps of an order, of those alone who get it back: who is dark at its end as well
 * is none the better for an order that says less on its way, nor for one that drops them late.
 */
export function darkStepsIn({ steps }: Pick<Rehearsal, "steps">): number {
  const counts = countsOf(steps);
  const end = counts.at(-1) ?? 0;
  return counts.reduce((sum, it) => sum + Math.max(0, it - end), 0);
}

/** How many customers are without supply in the course of a rehearsal. */
export function customersOutIn({ begin, steps }: Pick<Rehearsal, "begin" | "steps">): CustomersOutOfJob {
  const counts = countsOf(steps);
  const atWork = steps.flatMap(({ state }, index) => (state.workUnderWay.size > 0 ? [counts[index]!] : []));
  const asFound = customersWithout(begin);
  return {
    asFound,
    during: Math.max(0, ...atWork),
    worst: Math.max(asFound, ...counts),
    end: counts.at(-1) ?? asFound,
    steps: counts.reduce((sum, it) => sum + it, 0),
  };
}
