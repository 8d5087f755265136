import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readFile } from "./readFile";

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

test("a large drawing opens as a small one, and one that is broken says where", async () => {
  const points = Object.fromEntries(
    Array.from({ length: 9000 }, (_, k) => [`p${k}`, { label: `Pole ${k}`, x: k, y: 0 }]),
  );
  const text = JSON.stringify({ format: "stillhot", formatVersion: 1, system: { points, elements: {} } });
  expect(text.length).toBeGreaterThan(300_000);
  const opened = await readFile(file("large.stillhot.json", text));
  expect("document" in opened && Object.keys(opened.document.system.points).length).toBe(9000);
  const broken = await readFile(file("large.stillhot.json", text.replace('"x":7,', '"x":"seven",')));
  expect("problems" in broken && broken.problems.join()).toMatch(/system\.points\.p7\.x/);
});

test("what is no UTF-8 is no model", async () => {
  const bytes = new Uint8Array([...new TextEncoder().encode("<rdf:RDF "), 0xff, 0xfe, 0x41]);
  const opened = await readFile(new File([bytes], "x.xml"));
  expect("problems" in opened && opened.problems.join()).toMatch(/UTF-8/);
});
