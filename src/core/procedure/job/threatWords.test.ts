import { expect, test } from "vitest";
import { draw } from "../../../../tests/support/jobNotation";
import { spell } from "../../../../tests/support/words";
import { assess } from "../../hazard";
import type { WorkPointId } from "../../terms";
import { threatWords } from "./threatWords";

test("no figure is told of what nobody feels", () => {
  const document = draw(`
    s1 source p1 ABC kvLL=12.47
    w1 work   p1 A
  `);
  const [threat] = assess(document).workPoints["w1" as WorkPointId]!.threats;
  const told = (exposureVolts: number) => spell(threatWords(document, { ...threat!, exposureVolts }));
  expect([0, 1.59e-8, 0.99, 1, 53.42].map(told)).toEqual(
    ["under 1 V", "under 1 V", "under 1 V", "1 V", "53.4 V"].map(
      (felt) => `live now at 7200 V, ${felt} felt`,
    ),
  );
});
