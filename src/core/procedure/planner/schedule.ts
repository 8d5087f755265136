import { distanceBetween } from "./distance";
import type { System } from "../../document";
import type { PlannedStep } from "./types";

/** Steps that stand together, and what has to be done before them. */
export interface Action {
  readonly steps: readonly PlannedStep[];
  /** what comes before it; all of it is scheduled too */
  readonly after: readonly Action[];
  /** of what can be done next, the lowest goes first */
  readonly rank: number;
  /** where it is done; anywhere without it */
  readonly at?: string;
}

/**
 * Puts actions in an order that keeps every precedence: by rank, then the nearest, then as they were told.
 *
 * @throws Error when they wait for each other in a circle: a mistake of the planner, never of a drawing
 */
export function inOrder(system: System, actions: readonly Action[]): PlannedStep[] {
  const left = [...actions];
  const done = new Set<Action>();
  const steps: PlannedStep[] = [];
  let here: string | undefined;
  while (left.length > 0) {
    let best = -1;
    let bestCost = [Infinity, Infinity];
    left.forEach(({ after, rank, at }, index) => {
      if (!after.every((it) => done.has(it))) return;
      const far = here === undefined || at === undefined ? 0 : distanceBetween(system, here, at);
      if (rank < bestCost[0]! || (rank === bestCost[0] && far < bestCost[1]!))
        [best, bestCost] = [index, [rank, far]];
    });
    if (best === -1) throw new Error(`a circle of ${left.map(({ steps: [first] }) => first?.do).join(", ")}`);
    const [next] = left.splice(best, 1);
    steps.push(...next!.steps);
    done.add(next!);
    here = next!.at ?? here;
  }
  return steps;
}
