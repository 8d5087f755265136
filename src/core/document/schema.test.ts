import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { hasPlacedPoints, jsonSchema, isUnreadable, readDocument, writeDocument } from ".";
import { spellProblem } from "../../../tests/support/words";

const validate = new Ajv2020({ allErrors: true, allowUnionTypes: true }).compile(jsonSchema());
const isValid = (file: unknown): boolean => validate(file);

const DEMOS = "shared/demos";
const files = readdirSync(DEMOS).filter((it) => it.endsWith(".stillhot.json"));

test("the published schema is the one that the fields make (vitest -u writes it)", async () => {
  await expect(`${JSON.stringify(jsonSchema(), null, 2)}\n`).toMatchFileSnapshot(
    "../../../static/stillhot.schema.json",
  );
});

describe.each(files)("%s", (name) => {
  const text = readFileSync(`${DEMOS}/${name}`, "utf8");
  const file = readDocument(text);
  if (isUnreadable(file)) throw new Error(file.problems.map(spellProblem).join("\n"));
  const { document, warnings } = file;

  test("is read without a warning, and is just as it would be written", () => {
    expect(warnings).toEqual([]);
    expect(writeDocument(document)).toBe(text);
  });

  test("fits the schema", () => {
    isValid(JSON.parse(text));
    expect(validate.errors).toEqual(null);
  });

  test("is in the index under its title", () => {
    const index = JSON.parse(readFileSync(`${DEMOS}/index.json`, "utf8")) as {
      id: string;
      title: string;
      summary: { en: string; fr: string };
    }[];
    const entry = index.find(({ id }) => `${id}.stillhot.json` === name);
    expect(entry?.title).toBe(document.title);
    for (const summary of [entry?.summary.en, entry?.summary.fr]) expect(summary).toMatch(/^[A-Z].*\.$/);
    expect(index.length).toBe(files.length);
  });

  test("is laid out by the program", () => {
    expect(hasPlacedPoints(document.system)).toBe(false);
  });
});

describe("what the schema refuses, the reader refuses", () => {
  const point = {
    format: "stillhot",
    formatVersion: 1,
    title: "",
    system: { points: { p1: {}, p2: {} }, elements: {} },
  };
  const withElement = (record: object) => ({
    ...point,
    system: { ...point.system, elements: { c1: record } },
  });
  const withJob = (job: object) => ({ ...point, job });
  test.each([
    [{}],
    [[]],
    [{ ...point, format: "other" }],
    [{ ...point, formatVersion: 2 }],
    [{ ...point, title: 4 }],
    [{ ...point, system: { points: {} } }],
    [{ ...point, system: { ...point.system, frequencyHz: 400 } }],
    [{ ...point, system: { points: { "a b": {} }, elements: {} } }],
    [{ ...point, system: { points: { constructor: {} }, elements: {} } }],
    [{ ...point, system: { points: { p1: { kind: "tower" } }, elements: {} } }],
    [{ ...point, system: { points: { p1: { earthOhms: 0 } }, elements: {} } }],
    [withElement({})],
    [withElement({ kind: "wire" })],
    [withElement({ kind: "lead", from: "p1", to: "p2" })],
    [withElement({ kind: "lead", from: "p1", to: "p2", phases: "BA" })],
    [withElement({ kind: "lead", from: "p1", to: "p2", phases: "" })],
    [withElement({ kind: "lead", from: 1, to: "p2", phases: "A" })],
    [withElement({ kind: "source", at: "p1", phases: "ABC" })],
    [withElement({ kind: "source", at: "p1", phases: "ABC", kvLL: 0 })],
    [withElement({ kind: "source", at: "p1", phases: "ABC", kvLL: 12, z1Ohms: [1] })],
    [withElement({ kind: "cutout", from: "p1", to: "p2", phases: "A", fuse: { type: "X", amps: 1 } })],
    [withElement({ kind: "meter", from: "p1", to: "p2", phases: "A", count: 1.5 })],
    [withElement({ kind: "span", from: "p1", to: "p2", phases: "A", lengthM: -1 })],
    [withJob({ permit: "yes" })],
    [withJob({ tools: "stick" })],
    [withJob({ tools: [1] })],
    [withJob({ steps: {} })],
    [withJob({ steps: [{}] })],
    [withJob({ steps: [{ do: "jump" }] })],
    [withJob({ steps: [{ do: "open" }] })],
    [withJob({ steps: [{ do: "wait", seconds: -1 }] })],
    [withJob({ steps: [{ do: "set-position", element: "c1" }] })],
    [withJob({ workPoints: { w1: { at: "p1" } } })],
    [withJob({ workPoints: { w1: { at: "p1", conductors: "AA" } } })],
    [{ ...point, scenario: [] }],
    [{ ...point, settings: { hazardVolts: 0 } }],
    [{ ...point, settings: { reasons: { hazardVolts: 3 } } }],
    [{ ...point, settings: { rules: { "load-break": { off: true } } } }],
  ])("%j", (file) => {
    expect(isValid(file)).toBe(false);
    expect(isUnreadable(readDocument(JSON.stringify(file)))).toBe(true);
  });

  test("the reader takes no demo with a value replaced that the schema refuses, but for what it repairs", () => {
    fc.assert(
      fc.property(fc.constantFrom(...files), fc.nat(), fc.jsonValue({ maxDepth: 2 }), (name, pick, value) => {
        const file = JSON.parse(readFileSync(`${DEMOS}/${name}`, "utf8")) as object;
        const places: (() => void)[] = [];
        const visit = (it: object): void => {
          for (const [key, member] of Object.entries(it)) {
            places.push(() => void ((it as Record<string, unknown>)[key] = value));
            if (typeof member === "object" && member !== null) visit(member as object);
          }
        };
        visit(file);
        places[pick % places.length]!();
        if (!isUnreadable(readDocument(JSON.stringify(file)))) expect(isValid(file)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});
