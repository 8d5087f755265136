/** What one edit of a large drawing costs up to the painted states, beside the same from the drawing alone. */
import { expect, test } from "vitest";
import {
  english,
  type Edit,
  edits,
  isRefusal,
  objectionTo,
  sceneOf,
  statesAtHand,
  statesByReach,
  type StillhotDocument,
} from "../../src/core";
import { assessWithoutWork, buffersOf, fromColumns, toColumns } from "../../src/core/hazard";
import { medianMilliseconds, report } from "../support/measure";
import { sidelineSystem } from "../support/sideline";

/** One frame of a screen [ms]. Budgets are shown, not asserted: machines differ. */
const FRAME = 16.7;

const fresh = (document: StillhotDocument): StillhotDocument => structuredClone(document);

/** A drawing under edits, each made of the one before as in the app. */
class Edited {
  document: StillhotDocument;
  #round = 0;

  constructor(devices: number) {
    this.document = sidelineSystem(devices) as unknown as StillhotDocument;
    this.paint();
  }

  do(...several: readonly Edit[]): void {
    const change = several[this.#round++ % several.length]!(this.document);
    if (isRefusal(change)) throw new Error(JSON.stringify(change.refused));
    this.document = change.after;
  }

  /** The scene by what reach tells, as the canvas gets it. */
  paint(): void {
    const states = statesAtHand(this.document.system) ?? statesByReach(this.document.system);
    sceneOf(this.document, undefined, { catalogue: english, states });
  }
}

/** The same from the drawing alone: checked whole, compiled whole, drawn whole. */
function fromTheStart(document: StillhotDocument): void {
  expect(objectionTo(document)).toBeUndefined();
  sceneOf(document, undefined, { catalogue: english, states: statesByReach(document.system) });
}

const KINDS: readonly (readonly [what: string, one: Edit, other: Edit])[] = [
  ["a switch", edits.open("q3"), edits.close("q3")],
  [
    "a move of a point",
    edits.movePoints(["p3_1"], { x: 20, y: 20 }),
    edits.movePoints(["p3_1"], { x: -20, y: -20 }),
  ],
  ["a label", edits.setElementKeys("q3", { label: "one" }), edits.setElementKeys("q3", { label: "other" })],
];

for (const devices of [1000, 10_000])
  test.each(KINDS)(`%s of ${devices} elements, from the edit to the scene`, (what, one, other) => {
    const edited = new Edited(devices);
    const milliseconds = medianMilliseconds(() => {
      edited.do(one, other);
      edited.paint();
    }, 25);
    const copies = Array.from({ length: 4 }, () => fresh(edited.document));
    const whole = medianMilliseconds(() => fromTheStart(copies.pop()!), 2);
    report(`${what}, ${devices} elements, of ${FRAME} ms`, milliseconds / FRAME, "at most 1");
    report(
      `the same from the drawing alone against it, ${devices} elements`,
      whole / milliseconds,
      "more than 5",
    );
    expect(whole / milliseconds).toBeGreaterThan(5);
  });

test("the parts of it, 10 000 elements", () => {
  const edited = new Edited(10_000);
  const times: [number, number, number][] = [];
  for (let round = 0; round < 31; round++) {
    const began = performance.now();
    edited.do(edits.open("q3"), edits.close("q3"));
    const changed = performance.now();
    const states = statesAtHand(edited.document.system);
    const stated = performance.now();
    sceneOf(edited.document, undefined, { catalogue: english, ...(states === undefined ? {} : { states }) });
    times.push([changed - began, stated - changed, performance.now() - stated]);
  }
  const median = (part: number) => times.map((it) => it[part]!).sort((a, b) => a - b)[15]!;
  ["the edit, checked", "states by reach", "the scene"].forEach((what, part) =>
    report(`milliseconds: ${what}`, median(part), "shown only"),
  );
});

test("a switch that everything hangs from, 10 000 elements", () => {
  const edited = new Edited(10_000);
  const milliseconds = medianMilliseconds(() => {
    edited.do(edits.open("ms2"), edits.close("ms2"));
    edited.paint();
  }, 15);
  report(`every state another, 10 000 elements, of ${FRAME} ms`, milliseconds / FRAME, "at most 1");
});

test("an assessment sent as columns against one sent as records, 10 000 elements", () => {
  const assessment = assessWithoutWork(sidelineSystem(10_000) as unknown as StillhotDocument);
  const { columns, ids } = toColumns(assessment);
  const again = toColumns(assessment, ids).columns;
  const records = medianMilliseconds(() => structuredClone(assessment), 7);
  const asColumns = medianMilliseconds(() => {
    const sent = structuredClone(again);
    return fromColumns(structuredClone(sent, { transfer: buffersOf(sent) }), ids);
  }, 7);
  expect(fromColumns(columns).ids).toEqual(ids);
  report("milliseconds to copy an assessment as columns", asColumns, "shown only");
  report("records against columns", records / asColumns, "more than 10");
  expect(records / asColumns).toBeGreaterThan(10);
});
