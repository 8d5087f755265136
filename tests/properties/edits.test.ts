import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  conductorsOf,
  elementCountOf,
  elementsAt,
  objectionTo,
  readDocument,
  type StillhotDocument,
} from "../../src/core/document";
import { objectionAfter } from "../../src/core/document/check";
import { patched, type Produced, produced } from "../../src/core/document/patching";
import { circuitOf } from "../../src/core/network";
import { randomSystem } from "../support/randomSystems";

type Bag = Record<string, unknown>;
interface Draft {
  title: unknown;
  system: { points: Record<string, Bag>; elements: Record<string, Bag> };
  job?: unknown;
  settings?: unknown;
}

const demos = [
  ...readdirSync("shared/demos")
    .filter((it) => it.endsWith(".stillhot.json"))
    .map((it) => `shared/demos/${it}`),
  ...readdirSync("shared/scenarios")
    .filter((it) => it.endsWith(".stillhot.json"))
    .map((it) => `shared/scenarios/${it}`),
].map((path): StillhotDocument => {
  const read = readDocument(readFileSync(path, "utf8"));
  if (!("document" in read)) throw new Error(`${path} does not read`);
  return read.document;
});

const aDrawing: fc.Arbitrary<StillhotDocument> = fc.oneof(
  fc.constantFrom(...demos),
  fc.integer({ min: 1, max: 9999 }).map((seed) => {
    const document = {
      format: "stillhot",
      formatVersion: 1,
      title: "",
      system: { frequencyHz: 60, ...randomSystem(seed, { parts: 12 }) },
    };
    return document as unknown as StillhotDocument;
  }),
);

/** One thing done to a drawing, good or bad: which ones it hits is told by numbers. */
const aDeed = fc.record({
  kind: fc.constantFrom(
    "key",
    "key",
    "end",
    "removeElement",
    "removePoint",
    "addPoint",
    "addElement",
    "copyElement",
    "kind",
    "whole",
    "title",
    "job",
    "workPoint",
    "settings",
    "deep",
  ),
  which: fc.nat(),
  other: fc.nat(),
  key: fc.constantFrom("phases", "open", "label", "kva", "at", "from", "to", "span", "neutral", "connection"),
  value: fc.oneof(
    fc.constantFrom<unknown>("A", "AB", "ABC", "12", "", "wye", "delta", true, false, 3, -0, NaN, "p1", "p2"),
    fc.constantFrom<unknown>(null, undefined, "\ud800", [1, [2]], { constructor: 1 }, 1e9),
  ),
});
type Deed = typeof aDeed extends fc.Arbitrary<infer It> ? It : never;

function doDeed(draft: Draft, { kind, which, other, key, value }: Deed): void {
  const { points, elements } = draft.system;
  const [pointIds, elementIds] = [Object.keys(points), Object.keys(elements)];
  const point = pointIds[which % Math.max(1, pointIds.length)] ?? "p1";
  const element = elementIds[which % Math.max(1, elementIds.length)] ?? "e1";
  const another = pointIds[other % Math.max(1, pointIds.length)] ?? "p1";
  const record = elements[element];
  switch (kind) {
    case "key":
      if (record !== undefined) elements[element] = { ...record, [key]: value };
      return;
    case "end":
      for (const end of ["to", "at", "from"])
        if (typeof record?.[end] === "string" && record["kind"] !== "ground") {
          elements[element] = { ...record, [end]: another };
          return;
        }
      return;
    case "removeElement":
      delete elements[element];
      return;
    case "removePoint":
      delete points[point];
      return;
    case "addPoint":
      points[other % 3 === 0 ? String(other % 50) : `new${other}`] = { x: which % 99, y: 0 };
      return;
    case "addElement":
      elements[`new${other}`] = { kind: "span", from: point, to: another, phases: "A", lengthM: 10 };
      return;
    case "copyElement":
      if (record !== undefined)
        elements[other % 4 === 0 ? `bad id ${other}` : `copy${other}`] = { ...record };
      return;
    case "kind":
      if (record !== undefined) elements[element] = { ...record, kind: other % 2 === 0 ? "lead" : "nothing" };
      return;
    case "whole":
      elements[element] = value as Bag;
      return;
    case "title":
      draft.title = value;
      return;
    case "job":
      draft.job = {
        workPoints: { w1: { at: another, conductors: "A" } },
        steps: [{ do: "open", element }],
      };
      return;
    case "workPoint":
      draft.job = { workPoints: { w1: { at: point, conductors: value } } };
      return;
    case "settings":
      draft.settings = { hazardVolts: value };
      return;
    case "deep":
      if (record !== undefined) record[key] = value;
  }
}

const copyOf = (document: StillhotDocument): StillhotDocument => structuredClone(document);

test("E2 what an edit touched is looked at alone, and finds an objection exactly where looking at everything does", () => {
  const seen = { good: 0, bad: 0 };
  fc.assert(
    fc.property(
      aDrawing,
      fc.array(fc.array(aDeed, { minLength: 1, maxLength: 3 }), { maxLength: 12 }),
      (start, edits) => {
        let document = start;
        expect(objectionTo(document)).toBeUndefined();
        for (const deeds of edits) {
          let step: Produced;
          try {
            step = produced<Draft>(document, (draft) => deeds.forEach((deed) => doDeed(draft, deed)));
          } catch {
            continue; // a record that the first deed made unfit to be changed further
          }
          const objection = objectionAfter(document, step.after, step.forward);
          expect(objection).toEqual(objectionTo(copyOf(step.after)));
          if (objection !== undefined) {
            seen.bad++;
            continue;
          }
          seen.good++;
          circuitOf(document.system); // carried over from here
          expect(columnsOf(step.after)).toEqual(columnsOf(copyOf(step.after))); // S9
          const back = patched(step.after, step.inverse);
          expect(objectionAfter(step.after, back, step.inverse)).toBeUndefined();
          expect(remembered(step.after)).toEqual(remembered(copyOf(step.after)));
          expect(remembered(back)).toEqual(remembered(copyOf(document)));
          document = step.after;
        }
      },
    ),
    { numRuns: 150 },
  );
  // Otherwise it says nothing of the one or the other.
  expect(Math.min(seen.good, seen.bad)).toBeGreaterThan(150);
});

/** A circuit without the objects that tell it from another. */
const columnsOf = ({ system }: StillhotDocument) => ({
  ...circuitOf(system),
  system: {},
  structure: {},
  values: {},
});

/** What is carried along from edit to edit, in an order of its own. */
function remembered({ system }: StillhotDocument) {
  const byId = <Value>(map: ReadonlyMap<string, readonly Value[]>) =>
    [...map].filter(([, list]) => list.length > 0).sort(([a], [b]) => (a < b ? -1 : 1));
  return {
    count: elementCountOf(system),
    conductors: byId(conductorsOf(system)),
    elements: byId(elementsAt(system)).map(([id, list]) => [id, [...list].sort()]),
  };
}
