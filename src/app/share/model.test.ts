import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readFile } from "./files";

const file = (name: string, text = readFileSync(`shared/import/${name}`, "utf8")) => new File([text], name);

test.each([
  ["a utility's model", "cim/ieee13-devices.xml", 22],
  ["a map", "geojson/example.geojson", 20],
])("%s opens as a drawing, and what was done on the way comes with it", async (_, name, points) => {
  const opened = await readFile(file(name));
  if (!("document" in opened)) throw new Error(opened.problems.join());
  expect(Object.keys(opened.document.system.points).length).toBeGreaterThanOrEqual(points);
  expect(opened.sides?.leftOut).toBeDefined();
});

test.each([
  [
    "x.xml",
    '<!DOCTYPE x []><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"/>',
    /document type/,
  ],
  ["x.geojson", '{"type":"FeatureCollection","features":[{"type":"Feature"}]}', /no id/],
])("%s that cannot be brought in says why", async (name, text, expected) => {
  const opened = await readFile(file(name, text));
  expect("problems" in opened && opened.problems.join()).toMatch(expected);
});

test("a drawing whose notes speak of a map is a drawing", async () => {
  const text =
    '{"format":"stillhot","formatVersion":1,"notes":"FeatureCollection","system":{"points":{},"elements":{}}}';
  expect("document" in (await readFile(file("x.stillhot.json", text)))).toBe(true);
});
