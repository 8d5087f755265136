import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  asOf,
  assess,
  dayBy,
  edits,
  evidenceOf,
  evidenceOfAll,
  lookFirst,
  readDocument,
  type StillhotDocument,
  structuresOf,
  type System,
  workPointsOf,
  writeDocument,
} from "../../src/core";
import { edited } from "../support/edited";

const FOLDER = "shared/demos";
const SEEN_ON = "2026-03-01";
const LIMIT = edits.setLimit("seenDays", 90, "every quarter");

/** Demos of which somebody saw every structure on one day, and no thing says more of itself. */
const SEEN = readdirSync(FOLDER).flatMap((name) => {
  if (!name.endsWith(".json")) return [];
  const read = readDocument(readFileSync(`${FOLDER}/${name}`, "utf8"));
  if (!("document" in read)) return [];
  const structures = Object.keys(read.document.system.structures ?? {});
  const seen = structures.map((id) => edits.seeStructure(id, SEEN_ON));
  return structures.length === 0 ? [] : [[name, edited(read.document, ...seen)] as const];
});

const countSeen = ({ system }: StillhotDocument): number =>
  [...Object.keys(system.points), ...Object.keys(system.elements)].filter(
    (id) => evidenceOf(system as System, id) === "seen",
  ).length;

test("there are demos that name their structures", () => expect(SEEN.length).toBeGreaterThan(8));

describe.each(SEEN)("D17 what was seen fades by the setting: %s", (_, seen) => {
  const limited = edited(seen, LIMIT);

  test("never without the setting, and not before its days are over", () => {
    expect(asOf(seen, "2099-01-01")).toBe(seen);
    expect(asOf(limited, SEEN_ON)).toBe(limited);
    expect(asOf(limited, "2026-05-30")).toBe(limited);
    expect(asOf(limited, "2025-01-01")).toBe(limited);
  });

  test("a day later nothing that only its structure vouches for counts as seen, and the file is as it was", () => {
    const before = writeDocument(limited);
    const faded = asOf(limited, "2026-05-31");
    const still = [...structuresOf(faded.system).values()].filter(
      (it) => evidenceOfAll(faded.system, it) === "seen",
    );
    expect(still.map((it) => it.id)).toEqual([]);
    expect(countSeen(faded)).toBeLessThan(countSeen(limited));
    expect(writeDocument(limited)).toBe(before);
  });

  test("nothing electrical changes: verdicts, margins and threats are as before, and more is to be looked at", () => {
    const faded = asOf(limited, "2026-05-31");
    const [before, after] = [assess(limited), assess(faded)];
    expect(after.conductors).toEqual(before.conductors);
    for (const [id] of workPointsOf(limited)) {
      const { assumptions: fewer, ...was } = before.workPoints[id]!;
      const { assumptions: more, ...is } = after.workPoints[id]!;
      expect(is).toEqual(was);
      expect(more).toBeGreaterThan(fewer);
      expect(lookFirst(faded, id).asked.ofSingles).toBeGreaterThanOrEqual(
        lookFirst(limited, id).asked.ofSingles,
      );
    }
  });
});

test("a structure that was seen without a day, and one that is known otherwise, stay as they are", () => {
  const [, first] = SEEN[0]!;
  const [id = ""] = Object.keys(first.system.structures ?? {});
  const dayless = edited(first, LIMIT, edits.setStructureKeys(id, { seenOn: undefined }));
  const told = edited(first, LIMIT, edits.setStructureKeys(id, { evidence: "told" }));
  const at = (of: StillhotDocument) => asOf(of, dayBy(new Date(2099, 0, 1))).system.structures?.[id as never];
  expect(at(dayless)).toMatchObject({ evidence: "seen" });
  expect(at(told)).toMatchObject({ evidence: "told" });
});
