import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { assess, assumedThings, isUnreadable, jobOf, readDocument, structureOf } from "../../core";
import { byNearness } from "./nearness";

const read = readDocument(readFileSync("shared/demos/sideline-three-transformers.stillhot.json", "utf8"));
if (isUnreadable(read)) throw new Error("the demo does not read");
const { document } = read;
const [id, workPoint] = Object.entries(jobOf(document).workPoints)[0]!;
const things = assumedThings({ system: document.system, workPoint });

test("what is listed as not seen is what the verdict counts, each once, and begins where the work is", () => {
  expect(things.length).toBe(assess(document).workPoints[id as never]!.assumptions);
  const groups = byNearness(document.system, workPoint.at, things);
  expect(groups.flatMap((it) => it.things).sort()).toEqual([...new Set(things)].sort());
  expect(groups[0]!.structure).toBe(structureOf(document.system, workPoint.at)!.id);
  expect(groups.length).toBeGreaterThan(2);
});
