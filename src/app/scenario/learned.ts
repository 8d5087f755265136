import { type Attempt, scenarioName, scenarioOf, scoreOf } from "../../core";
import { noteTried } from "../keep/learned";
import { scenarioTitled } from "./scenarios";

/** Notes for the learner's path how an attempt at a scenario of the library went. One that went on from the middle of another does not count. */
export async function noteAttempt(attempt: Attempt): Promise<void> {
  const { document, forkOf } = attempt;
  const listed = await scenarioTitled(scenarioOf(document).variant?.of ?? document.title);
  if (listed === undefined || forkOf !== undefined) return;
  const { passed, earned, of } = scoreOf(attempt);
  await noteTried({
    item: scenarioName(listed.id),
    right: passed,
    share: of === 0 ? 0 : earned / of,
    shares: sharesOf(attempt),
  });
}

/** How much was earned of what counts for each task of the trade, 0 to 1. */
function sharesOf(attempt: Attempt): Record<string, number> {
  const tasks = new Map<string, { earned: number; of: number }>();
  const { objectives } = scoreOf(attempt);
  for (const { id, tasks: about = [] } of scenarioOf(attempt.document).objectives ?? []) {
    const { earned, of } = objectives.find((it) => it.id === id)!;
    for (const task of about) {
      const sum = tasks.get(task) ?? { earned: 0, of: 0 };
      tasks.set(task, { earned: sum.earned + earned, of: sum.of + of });
    }
  }
  return Object.fromEntries(
    [...tasks].filter(([, { of }]) => of > 0).map(([task, { earned, of }]) => [task, earned / of]),
  );
}
