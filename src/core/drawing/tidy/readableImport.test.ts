import { describe, expect, test } from "vitest";
import { drawing8500 } from "../../../../tests/support/ieee8500";
import { done, importModel } from "../../../../tests/support/imported";
import { spell } from "../../../../tests/support/words";
import { complete, completePoint, type StillhotDocument } from "../../document";
import { assessWithoutWork } from "../../hazard";
import { exportModel, ModelImport, whatChanged } from "../../import";
import { readableImport } from "./readableImport";

const MAPS = ["cim/ieee8500-lateral.xml", "cim/maple10-node-breaker.xml"];

/** Nearer than this two symbols lie over each other: less than a plate is wide. */
const BESIDE_EACH_OTHER = 60;

const places = ({ system }: StillhotDocument) =>
  new Map(
    Object.entries(system.points).map(([id, saved]) => {
      const { x, y } = completePoint(saved);
      return [id, { x, y }];
    }),
  );

/** How many pairs of points that something joins stand too near to each other. */
function tooNear(document: StillhotDocument): number {
  const at = places(document);
  return Object.values(document.system.elements).filter((saved) => {
    const it = complete(saved);
    if (!("from" in it)) return false;
    const [a, b] = [at.get(it.from)!, at.get(it.to)!];
    return Math.hypot(a.x - b.x, a.y - b.y) < BESIDE_EACH_OTHER;
  }).length;
}

describe.each(MAPS)("%s, whose places are those of a map", (file) => {
  const asMapped = done(importModel(file));
  const readable = readableImport(asMapped);

  test("is laid out with room for its symbols, and says so with how to keep the map's", () => {
    expect(tooNear(asMapped.document)).toBeGreaterThan(0);
    expect(tooNear(readable.document)).toBe(0);
    const entry = readable.approximated.find(({ what }) => what.key === "importing.laidOut")!;
    expect(entry.count).toBe(asMapped.counts.points);
    expect(spell(entry.why)).toContain("--places map");
    expect(asMapped.approximated.map(({ what }) => what.key)).not.toContain("importing.laidOut");
  });

  test("has the same ids, keys, states and volts, so that a second import tells no change", () => {
    expect(readable.document.system.elements).toEqual(asMapped.document.system.elements);
    expect(whatChanged(asMapped.document, readable.document)).toEqual({ added: [], gone: [], changed: [] });
    expect(assessWithoutWork(readable.document).conductors).toEqual(
      assessWithoutWork(asMapped.document).conductors,
    );
  });
});

test("the IEEE 8500-node feeder becomes one within seconds, with taps on both sides of a line where they are on the map", () => {
  const whole = done(importModel(MAPS[0]!));
  const feeder = drawing8500("balanced");
  const began = process.cpuUsage();
  const readable = readableImport({ ...whole, document: feeder });
  // Tried in every way for its ties it took thirteen.
  expect(process.cpuUsage(began).user / 1e6).toBeLessThan(6);
  expect(tooNear(readable.document)).toBe(0);
  const [was, is] = [places(feeder), places(readable.document)];
  const around = new Map<string, string[]>();
  for (const saved of Object.values(feeder.system.elements)) {
    const it = complete(saved);
    if ("from" in it) around.set(it.from, [...(around.get(it.from) ?? []), it.to]);
  }
  const kept = [...around].flatMap(([at, onward]) =>
    (["x", "y"] as const).flatMap((across) => {
      const along = across === "x" ? "y" : "x";
      const offOf = (id: string, on: typeof is) => Math.sign(on.get(id)![across] - on.get(at)![across]);
      const taps = onward.filter((it) => is.get(it)![along] === is.get(at)![along]);
      const [one, other, ...more] = taps;
      if (one === undefined || other === undefined || more.length > 0) return [];
      // Both on one side on the map: one of them has to leave it.
      if (offOf(one, was) === offOf(other, was)) return [];
      return [offOf(one, was) === offOf(one, is) && offOf(other, was) === offOf(other, is)];
    }),
  );
  expect(kept.length).toBeGreaterThan(20);
  expect(kept.filter((it) => !it)).toEqual([]);
});

test("what is written as a model and stands clear of each other keeps its places", () => {
  const once = readableImport(done(importModel(MAPS[0]!)));
  const model = new ModelImport();
  model.write(exportModel(once.document).text);
  model.endFile();
  const again = readableImport(done(model.finish()));
  expect(again.approximated.map(({ what }) => what.key)).not.toContain("importing.laidOut");
});
