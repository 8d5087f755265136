import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  act,
  type Action,
  type Attempt,
  debriefOf,
  isRefusal,
  jobOf,
  knownView,
  objectionTo,
  readAttempt,
  scoreOf,
  startAttempt,
  STEP_VERBS,
  type StillhotDocument,
  truthOf,
  verifyAttempt,
  writeAttempt,
} from "../../src/core";
import { files, scenarioFile } from "./library";

/** Any action with anything that is there in truth, sensible or not. */
function anyAction(document: StillhotDocument): fc.Arbitrary<Action> {
  const { system } = truthOf(document);
  const points = Object.keys(system.points);
  const elements = [...Object.keys(system.elements), "g1"];
  const step = fc.record(
    {
      do: fc.constantFrom(...STEP_VERBS),
      element: fc.constantFrom(...elements),
      at: fc.constantFrom(...points, ...Object.keys(jobOf(document).workPoints)),
      phases: fc.constantFrom("A", "B", "ABC", "12"),
      with: fc.constantFrom("load-break-tool", "clamp-stick", "spoon"),
      seconds: fc.constant(400),
      position: fc.constantFrom("off", "generator"),
    },
    { requiredKeys: ["do", "element", "at", "seconds", "position"] },
  );
  const walk = fc.record({ do: fc.constant("go"), at: fc.constantFrom(...points) });
  const look = fc.record({ do: fc.constant("inspect"), at: fc.constantFrom(...points) });
  return fc.oneof({ weight: 5, arbitrary: step }, walk, {
    weight: 2,
    arbitrary: look,
  }) as fc.Arbitrary<Action>;
}

describe("T1 T2 whatever is done, an attempt holds together", () => {
  test.each(files)("%s", (id) => {
    const document = scenarioFile(id);
    fc.assert(
      fc.property(fc.array(anyAction(document), { minLength: 4, maxLength: 14 }), (actions) => {
        let attempt: Attempt = startAttempt(document);
        for (const action of [...actions, { do: "finish" } as const]) {
          const acted = act(attempt, action);
          if (isRefusal(acted)) continue;
          attempt = acted.attempt;
          // What the apprentice has is a drawing that reads back, at every moment.
          expect(objectionTo(knownView(attempt).document)).toBeUndefined();
        }
        const again = readAttempt(writeAttempt(attempt));
        expect(again).toEqual(attempt);
        expect(verifyAttempt(again as Attempt)).toBeUndefined();
        const { percent } = scoreOf(attempt);
        expect(percent).toBeGreaterThanOrEqual(0);
        expect(percent).toBeLessThanOrEqual(100);
        expect(debriefOf(attempt).happened.timeLine).toHaveLength(attempt.log.length);
      }),
      { numRuns: 4, seed: 7 },
    );
  });
});
