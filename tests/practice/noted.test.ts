import { expect, test } from "vitest";
import { english, generateTap, sceneOf, withNoted } from "../../src/core";
import { spell } from "../support/words";

test("what is noted at a thing stands there once, and nothing of the drawing goes for it", () => {
  const scene = sceneOf(generateTap({ level: 2, seed: 7 }), undefined, { catalogue: english, way: "across" });
  expect(scene.plates.length).toBeGreaterThan(0);
  const ids = [...scene.points.keys(), ...scene.elements.keys()];
  const noted = withNoted(scene, new Map(ids.map((id) => [id, { text: `at ${id}`, look: "ink" }])), spell);
  const texts = noted.pieces.flatMap(({ notes }) => notes.map(({ text }) => text));
  for (const id of ids) expect(texts.filter((it) => it === `at ${id}`)).toHaveLength(1);
  expect(noted.pieces.map(({ owner }) => owner)).toEqual(scene.pieces.map(({ owner }) => owner));
});
