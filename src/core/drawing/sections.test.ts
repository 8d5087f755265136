import { english } from "../../../tests/support/words";
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { drawn } from "../../../tests/support/drawn";
import { isUnreadable, readDocument, type StillhotDocument } from "../document";
import { assess } from "../hazard";
import { LEAST_SYMBOL, overviewOf, placeNotes, type Scene, sceneOf, symbolLengthAt } from ".";

const demos = new URL("../../../shared/demos/", import.meta.url);
const named = (name: string): StillhotDocument => {
  const read = readDocument(readFileSync(new URL(`${name}.stillhot.json`, demos), "utf8"));
  if (isUnreadable(read)) throw new Error(`${name} does not read`);
  return read.document;
};
const names = readdirSync(demos)
  .filter((it) => it.endsWith(".stillhot.json"))
  .map((it) => it.replace(".stillhot.json", ""));

const sceneFor = (document: StillhotDocument): Scene =>
  sceneOf(document, assess(document), { catalogue: english });

/** What is written on the marks and beside them where symbols would be so long [px]. */
function marksAt(scene: Scene, symbol: number): readonly string[] {
  const scale = symbol / symbolLengthAt(scene, 1);
  return overviewOf(scene, scale).plates.map(({ notes }) => notes.map(({ text }) => text).join(": "));
}

/** The tap whose work place, and what is behind it, hangs on one cutout; that is open and tagged, and the place grounded. */
function grounded(): StillhotDocument {
  const document = named("sideline-three-transformers");
  const elements = {
    ...document.system.elements,
    c1: { ...document.system.elements["c1" as never], open: "C", tagged: true },
    g1: { kind: "ground", at: "p6", phases: "C" },
  } as unknown as StillhotDocument["system"]["elements"];
  return { ...document, system: { ...document.system, elements } };
}

test("G9 from afar each structure has its mark, and from further each section between what opens", () => {
  const scene = sceneFor(grounded());
  expect(marksAt(scene, LEAST_SYMBOL / 2)).toEqual([
    "Fernhill station",
    "30: 1 open · T",
    "31",
    "32: 1 GND",
    "33",
  ]);
  expect(marksAt(scene, 3)).toEqual(["Fernhill station +1: 1 open · T", "31 +2: 1 GND"]);
});

test("G9 a tie that is open bounds a section as one that is closed does", () => {
  expect(marksAt(sceneFor(named("sideline-far-end-tie")), 3)).toHaveLength(4);
});

test.each(names)(
  "G9 of the demo %s no structure is left out from further, and the worst of a section is shown",
  (name) => {
    const scene = sceneFor(named(name));
    const sections = overviewOf(scene, 3 / symbolLengthAt(scene, 1));
    const structures = sections.plates.map(
      ({ notes }) => 1 + Number(/ \+(\d+)$/.exec(notes[0]!.text)?.[1] ?? 0),
    );
    expect(structures.reduce((sum, it) => sum + it, 0)).toBe(scene.plates.length);
    const isLive = (it: Scene) => it.plates.some(({ overall }) => overall === "energized");
    expect(isLive(sections)).toBe(isLive(scene));
    const flags = placeNotes(sections, 3 / symbolLengthAt(scene, 1)).filter(
      ({ note }) => note.kind === "work",
    );
    expect(flags).toHaveLength(scene.works.size);
  },
);

test("from afar a line has as many strokes as it has phases, wherever it turns", () => {
  const document = drawn({
    points: Object.fromEntries(["p1", "p2", "p3"].map((id) => [id, { label: id }])),
    elements: {
      src: { kind: "source", phases: "ABC", at: "p1", kvLL: 12.47 },
      main: { kind: "span", phases: "ABC", from: "p1", to: "p2" },
      tap: { kind: "span", phases: "B", from: "p2", to: "p3" },
      other: { kind: "span", phases: "AC", from: "p2", to: "p4" },
    },
  });
  const far = overviewOf(sceneOf(document, assess(document), { catalogue: english }));
  const strokesOf = (id: string) =>
    far.pieces.filter(({ owner }) => owner.of === "element" && owner.id === id).map(({ spine }) => spine);
  expect(["main", "tap", "other"].map((id) => strokesOf(id).length)).toEqual([3, 1, 2]);
  for (const spine of strokesOf("other"))
    for (let k = 2; k + 1 < spine.length; k += 2)
      expect(Math.min(Math.abs(spine[k]! - spine[k - 2]!), Math.abs(spine[k + 1]! - spine[k - 1]!))).toBe(0);
  expect(new Set(strokesOf("other").map((it) => it.join())).size).toBe(2);
});
