import { expect, test } from "vitest";
import { isRefusal, type StillhotDocument, structureOf } from "../../core";
import { emptyDrawing } from "../session/emptyDrawing";
import { nextNumber } from "./number";
import { PARTS, startWithSource } from "./parts";
import { growingPointOf } from "./point";

/** A line of poles with these labels, none where nothing is said; the last one is the point that it ends at. */
function line(...labels: readonly string[]): { document: StillhotDocument; at: string } {
  const points = Object.fromEntries(labels.map((label, n) => [`p${n}`, { label }]));
  const elements = Object.fromEntries(
    labels.slice(1).map((_, n) => [`c${n}`, { kind: "span", phases: "A", from: `p${n}`, to: `p${n + 1}` }]),
  );
  const source = { kind: "source", phases: "A", at: "p0", kvLL: 12.47 };
  const system = { frequencyHz: 60, points, elements: { src: source, ...elements } };
  return { document: { ...emptyDrawing, system } as never, at: `p${labels.length - 1}` };
}

test.each([
  ["one on from the last", ["Pole 29", "Pole 30"], "Pole 31"],
  ["from the first that has a number", ["Station", "Pole 30"], "Pole 31"],
  ["one down where numbers run down", ["Pole 31", "Pole 30"], "Pole 29"],
  ["past one that is there", ["Pole 31", "Station", "Pole 30"], "Pole 32"],
  ["up again where they end at one", ["Pole 2", "Pole 1"], "Pole 3"],
  ["of what is written before it and after", ["Pole 140-B7/N"], "Pole 140-B8/N"],
  ["of what stands before a comma", ["Pole 30, main line"], "Pole 31"],
  ["the first one where the last has none", ["Old Mill"], "Pole 1"],
])("the number proposed is %s", (_, labels, proposed) => {
  const { document, at } = line(...labels);
  expect(nextNumber(document, at, "grow.poleLabel")).toBe(proposed);
});

function grown(document: StillhotDocument, at: string, part: string) {
  const { phases } = growingPointOf(document, at);
  const change = PARTS.find(({ id }) => id === part)!.edit(document, at, phases, { phase: "A" })(document);
  if (isRefusal(change)) throw new Error(change.refused.key);
  return change;
}

test("a span leads to a structure of its own; a cutout, its transformer and a ground stay on this one", () => {
  const begun = startWithSource(emptyDrawing);
  if (isRefusal(begun)) throw new Error("a source can always be drawn");
  const pole = grown(begun.after, "p1", "span");
  const [at = "", , structure] = pole.made ?? [];
  expect(structureOf(pole.after.system, at)).toMatchObject({
    id: structure,
    label: "Pole 1",
    isDerived: false,
  });
  const cutout = grown(pole.after, at, "cutout");
  const transformer = grown(cutout.after, cutout.made![0]!, "transformer");
  const ground = grown(transformer.after, at, "ground");
  for (const id of [...cutout.made!, ...transformer.made!, ...ground.made!])
    expect([id, structureOf(ground.after.system, id)?.id]).toEqual([id, structure]);
  const house = grown(transformer.after, transformer.made![0]!, "house");
  expect(structureOf(house.after.system, house.made![0]!)?.label).toBe("House 1");
});
