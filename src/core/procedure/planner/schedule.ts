import { distanceBetween } from "./distance";
import type { System } from "../../document";
import type { PlannedStep } from "./types";

/** Steps that stand together, and what has to be done before them. */
export interface Action {
  readonly id: string;
  readonly steps: readonly PlannedStep[];
  /** ids of actions that come before */
  readonly needs: readonly string[];
  /** of what can be done next, the lowest goes first */
  readonly rank: number;
  /** where it is done; anywhere without it */
  readonly at?: string;
}

/**
 * Puts actions in an order that keeps every precedence: by rank, then the nearest, then as they were told.
 *
 * @throws Error when needs run in a circle: a mistake of the planner, never of a drawing
 */
export function inOrder(system: System, actions: readonly Action[]): PlannedStep[] {
  const left = [...actions];
  const ids = new Set(actions.map(({ id }) => id));
  const done = new Set<string>();
  const steps: PlannedStep[] = [];
  let here: string | undefined;
  while (left.length > 0) {
    let best = -1;
    let bestCost = [Infinity, Infinity];
    left.forEach(({ needs, rank, at }, index) => {
      if (!needs.every((it) => done.has(it) || !ids.has(it))) return;
      const far = here === undefined || at === undefined ? 0 : distanceBetween(system, here, at);
      if (rank < bestCost[0]! || (rank === bestCost[0] && far < bestCost[1]!))
        [best, bestCost] = [index, [rank, far]];
    });
    if (best === -1) throw new Error(`needs in a circle: ${left.map(({ id }) => id).join(", ")}`);
    const [next] = left.splice(best, 1);
    steps.push(...next!.steps);
    done.add(next!.id);
    here = next!.at ?? here;
  }
  return steps;
}
