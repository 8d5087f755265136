import { expect, test, vi } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { sceneOf } from "../../core";
import { inEnglish } from "../words/catalogue";
import { readied } from "./readied";

/** A line of so many spans. */
const line = (spans: number) =>
  draw(`
    s1 source p0 ABC kvLL=12.47
    ${Array.from({ length: spans }, (_, n) => `sp${n} span p${n}-p${n + 1} ABC`).join("\n    ")}
  `);
const scene = (document: ReturnType<typeof line>) => sceneOf(document, undefined, { catalogue: inEnglish });

test("what a large drawing's picture is made from is worked out in turns, and shown as it is without them", async () => {
  const [ready, other] = [line(300), line(300)];
  const turns = vi.spyOn(globalThis, "setTimeout");
  await readied(ready);
  expect(turns.mock.calls.length).toBeGreaterThan(2);
  turns.mockRestore();
  expect(scene(ready).pieces.map(({ box }) => box)).toEqual(scene(other).pieces.map(({ box }) => box));
});

test("a small one waits for nothing", async () => {
  const turns = vi.spyOn(globalThis, "setTimeout");
  await readied(line(3));
  expect(turns).not.toHaveBeenCalled();
  turns.mockRestore();
});
