import { english } from "../../../tests/support/words";
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { isUnreadable, readDocument, type StillhotDocument } from "../document";
import { assess } from "../hazard";
import type { ElementId, PointId } from "../terms";
import { lookMarks, marginMarks, powerMarks } from "./marks";
import { powerInto } from "./power";
import { sceneOf } from "./scene";

function demo(name: string): StillhotDocument {
  const found = readDocument(
    readFileSync(new URL(`../../../shared/demos/${name}.stillhot.json`, import.meta.url), "utf8"),
  );
  if (isUnreadable(found)) throw new Error("the demo does not read");
  return found.document;
}

const withKeys = (document: StillhotDocument, id: string, keys: object): StillhotDocument => ({
  ...document,
  system: {
    ...document.system,
    elements: {
      ...document.system.elements,
      [id]: { ...document.system.elements[id as ElementId], ...keys },
    },
  },
});

const kinds = (document: StillhotDocument, kind: string) =>
  Object.entries(document.system.elements)
    .filter(([, it]) => it.kind === kind)
    .map(([id]) => id as ElementId);

test("sources give what loads take, and a little for the way", () => {
  for (const name of ["sideline-three-transformers", "transformer-tap", "grounded-wye-delta-bank"]) {
    const document = demo(name);
    const assessment = assess(document);
    const sum = (kind: string) =>
      kinds(document, kind).reduce((all, id) => all + powerInto(document, assessment, id)!.watts, 0);
    const given = -sum("source");
    const taken = sum("load");
    expect(taken).toBeGreaterThan(0);
    expect(given).toBeGreaterThan(taken);
    expect(given).toBeLessThan(taken * 1.1);
  }
});

test("the arrow through a customer's meter turns round when their generator feeds the tap", () => {
  const document = demo("portable-generator");
  const drawn = assess(document);
  const [meter, generator, cutout] = ["m2", "gen1", "c1"] as ElementId[];
  expect(powerInto(document, drawn, meter!)!.watts).toBeGreaterThan(0);
  const backfed = withKeys(withKeys(document, generator!, { on: true }), cutout!, { open: "A" });
  const after = assess(backfed);
  expect(powerInto(backfed, after, generator!)!.watts).toBeLessThan(0);
  expect(powerInto(backfed, after, meter!)!.watts).toBeLessThan(0);
  const scene = sceneOf(backfed, after, { catalogue: english });
  const arrow = powerMarks(backfed, after, scene).find((it) => it.mark === "power" && it.element === meter);
  const { along } = scene.routes.get(meter!)!;
  expect(arrow).toMatchObject({ dx: -along.x, dy: -along.y });
});

test("margin marks stand on their points, worst first", () => {
  const document = demo("transformer-tap");
  const scene = sceneOf(document, assess(document), { catalogue: english });
  const [first, second] = Object.keys(document.system.points);
  const marks = marginMarks(scene, { [first!]: null, [second!]: 1 });
  expect(marks.map((it) => it.mark === "margin" && it.margin)).toEqual(["1", "none"]);
});

test("places to look at are numbered in their order, each once, on what stands there", () => {
  const document = demo("transformer-tap");
  const scene = sceneOf(document, assess(document), { catalogue: english });
  const [first, second] = Object.keys(document.system.points) as PointId[];
  const [element] = scene.routes.keys();
  const marks = lookMarks(scene, [
    { place: "a", where: second! },
    { place: "b", where: element! },
    { place: "a", where: first! },
  ]);
  const [x, y] = scene.points.get(second!)!.spine;
  expect(marks).toEqual([
    { mark: "step", x, y, n: 1, isHere: true },
    { mark: "step", ...scene.routes.get(element!)!.centre, n: 2, isHere: false },
  ]);
});
