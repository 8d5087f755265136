import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  amended,
  assess,
  complete,
  deviceNumbersOf,
  evidenceOf,
  type JsonObject,
  rangesOf,
  readDocument,
  type StillhotDocument,
  type WorkPointId,
} from "../../src/core";
import { randomDocument } from "../support/randomSystems";

const W1 = "w1" as WorkPointId;
/** Of what is far under a volt nobody could feel the difference. */
const SLACK_VOLTS = 1e-6;

function readable(seed: number, parts: number): StillhotDocument | undefined {
  const read = readDocument(JSON.stringify(randomDocument(seed, { parts })));
  return "document" in read ? read.document : undefined;
}

/** The drawing with each number that nobody has seen to somewhere between its ends. */
function drawnOtherwise(document: StillhotDocument, next: () => number): StillhotDocument {
  const { system } = document;
  const between = (low: unknown, high: unknown, share: number): unknown =>
    Array.isArray(low)
      ? low.map((it, nth) => between(it, (high as unknown[])[nth], share))
      : typeof low === "number"
        ? low + share * ((high as number) - low)
        : low;
  const set: Record<string, JsonObject> = {};
  for (const id of Object.keys(system.elements))
    if (evidenceOf(system, id) !== "seen")
      for (const { low, high } of deviceNumbersOf(complete(system.elements[id as never]!))) {
        const share = next();
        set[id] = {
          ...set[id],
          ...(Object.fromEntries(
            Object.entries(low).map(([key, value]) => [key, between(value, high[key], share)]),
          ) as JsonObject),
        };
      }
  for (const [id, { earthOhms }] of Object.entries(system.points))
    if (typeof earthOhms === "number" && evidenceOf(system, id) !== "seen")
      set[id] = { earthOhms: earthOhms * (0.5 + 1.5 * next()) };
  return { ...document, system: amended(system, [{ set }]) };
}

/** The highest of each conductor of the work point, by letter. */
function highest(document: StillhotDocument, figure: "volts" | "exposureVolts"): Map<string, number> {
  const found = new Map<string, number>();
  for (const it of assess(document).workPoints[W1]!.threats)
    found.set(it.conductor, Math.max(it[figure], found.get(it.conductor) ?? 0));
  return found;
}

/** Uniform between 0 and 1, or, every other time, at one of the ends. */
function shares(seed: number): () => number {
  let state = seed * 2654435761 + 1;
  const uniform = () => (state = (state * 16807 + 11) % 2147483647) / 2147483647;
  return () => (uniform() < 0.5 ? Math.round(uniform()) : uniform());
}

const misses: string[] = [];
const FROM = Number(process.env["FROM"] ?? 0), TO = Number(process.env["TO"] ?? 40), DRAWS=Number(process.env["DRAWS"]??25);
describe("how far the figures may be off", () => {
  test("H22 no random draw of the numbers from the map lies outside of the range", () => {
    let asked = 0;
    for (let seed = FROM; seed < TO; seed++) {
      const document = readable(seed, 8);
      if (document === undefined) continue;
      const ranges = rangesOf(document, W1, { mostWork: Infinity });
      const next = shares(seed);
      for (let draw = 0; draw < DRAWS; draw++) {
        const other = drawnOtherwise(document, next);
        for (const figure of ["volts", "exposureVolts"] as const)
          for (const [letter, volts] of highest(other, figure)) {
            asked++;
            const range = ranges.conductors[letter as "A"]?.[figure];
            const slack = SLACK_VOLTS + 1e-6 * volts;
            if (range === undefined || volts > range.most + slack || volts < range.least - slack)
              misses.push(`${seed} ${letter} ${figure} ${volts} not in ${JSON.stringify(range)}`);
          }
      }
    }
    process.stdout.write("");console.log(asked, misses.length, misses.slice(0, 60).join("\n"));
    expect(asked).toBeGreaterThan(0);
  });
});
