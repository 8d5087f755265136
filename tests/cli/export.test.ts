import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { files, line, tap } from "./line";

describe("export", () => {
  test("writes a map beside the drawing, and says what is not in it", async () => {
    const at = files({ "tap.stillhot.json": tap() });
    const { code, out } = await line(["export", at("tap.stillhot.json"), "-o", at("tap.geojson")]);
    expect(code).toBe(0);
    expect(out).toMatch(/not written: the job/);
    const map = JSON.parse(readFileSync(at("tap.geojson"), "utf8")) as { features: { id: string }[] };
    expect(map.features.map(({ id }) => id)).toEqual(expect.arrayContaining(["p1", "c1", "t1"]));
  });

  test("what it wrote, import reads", async () => {
    const at = files({ "tap.stillhot.json": tap() });
    await line(["export", at("tap.stillhot.json"), "-o", at("tap.geojson")]);
    const { code, out } = await line(["import", at("tap.geojson")]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ system: { elements: { c1: { kind: "cutout", phases: "A" } } } });
  });

  test("a model by the ending of its file or by name, and import reads it as drawn", async () => {
    const at = files({ "tap.stillhot.json": tap() });
    const { code, out } = await line(["export", at("tap.stillhot.json"), "-o", at("tap.xml")]);
    expect(code).toBe(0);
    expect(out).toMatch(/not written: the job/);
    const again = await line(["import", at("tap.xml")]);
    expect(again.code).toBe(0);
    const { system } = JSON.parse(again.out) as { system: { points: object; elements: object } };
    expect(system).toMatchObject({ elements: { c1: { kind: "cutout", phases: "A" } } });
    expect(again.err).not.toMatch(/rod|meter put in/);
    const named = await line(["export", at("tap.stillhot.json"), "--as", "cim"]);
    expect(named.out).toBe(readFileSync(at("tap.xml"), "utf8"));
    expect((await line(["export", at("tap.stillhot.json"), "--as", "shape"])).code).toBe(2);
  });

  test("never onto a drawing", async () => {
    const at = files({ "tap.stillhot.json": tap() });
    const { code, err } = await line(["export", at("tap.stillhot.json"), "-o", at("tap.stillhot.json")]);
    expect(code).toBe(2);
    expect(err).toMatch(/drawing/);
  });

  test("in French", async () => {
    const at = files({ "tap.stillhot.json": tap() });
    const { err } = await line(["--language", "fr", "export", at("tap.stillhot.json")]);
    expect(err).toMatch(/non écrit\s:\s*le travail/);
  });
});

test("a newer file of a model says what is otherwise than in the drawing of the older one", async () => {
  const map = (change: (feature: { id: string; properties: Record<string, unknown> }) => boolean) => {
    const whole = JSON.parse(readFileSync("shared/import/geojson/example.geojson", "utf8")) as {
      features: { id: string; properties: Record<string, unknown> }[];
    };
    return { ...whole, features: whole.features.filter(change) };
  };
  const at = files({
    "newer.geojson": map((it) => {
      if (it.id === "T1") it.properties["kva"] = 37.5;
      return it.id !== "G2";
    }),
  });
  await line(["import", "shared/import/geojson/example.geojson", "-o", at("old.stillhot.json")]);
  const { code, err } = await line(["import", at("newer.geojson"), "--since", at("old.stillhot.json")]);
  expect(code).toBe(0);
  expect(err).toMatch(/gone, 1: G2/);
  expect(err).toMatch(/changed, 1: T1 \(kva\)/);
  const again = await line([
    "import",
    "shared/import/geojson/example.geojson",
    "--since",
    at("old.stillhot.json"),
  ]);
  expect(again.err).toMatch(/Nothing is otherwise/);
});
