import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import {
  canBeSolved,
  classCsv,
  compareMany,
  english,
  isUnreadable,
  planned,
  playThrough,
  readDocument,
  scenarioOf,
  scoreOf,
  type StillhotDocument,
  trapsOf,
  variantNumber,
  variantOf,
  writeDocument,
  xapiOf,
} from "../../src/core";
import { perObject } from "../../src/core/document";
import { withoutFact } from "../../src/core/practice/variants/without";
import { reworded } from "../../src/core/practice/variants/words";
import { spell } from "../support/words";
import { listed, scenarioFile } from "./library";
import { isLong } from "../support/long";

/** What holds of a scenario and of each of its variants: it reads, its answer earns as much as ever, its traps close. */
function holds(variant: StillhotDocument, most: number) {
  const read = readDocument(writeDocument(variant));
  expect(isUnreadable(read) ? read.problems : read.warnings).toEqual([]);
  const { why, attempt } = canBeSolved(variant, planned);
  expect(why.map((it) => spell(it))).toEqual([]);
  expect([scoreOf(attempt).of, scoreOf(attempt).earned]).toEqual([most, most]);
  const missed = trapsOf(variant, planned).filter(({ canBeFallenInto }) => !canBeFallenInto);
  expect(missed.map(({ trap }) => trap.id)).toEqual([]);
}

const mostOf = perObject((file: StillhotDocument) => scoreOf(canBeSolved(file, planned).attempt).of);

describe.each(listed.map(({ id }) => id))("G8 variants of %s", (id) => {
  const file = scenarioFile(id);
  const most = mostOf(file);
  // So that the letters go on by none, by one and by two, whatever chance says; for every other scenario two of them.
  const turn = listed.findIndex((it) => it.id === id) % 2;
  test.each([1, 2, 3, 4].filter((number) => isLong || number % 2 === turn))(
    "variant %d is solved for the same points, and its traps close",
    (number) => {
      holds(variantOf(file, number), most);
    },
  );

  test("a variant shares no name of a place with the file, and no number of a pole", () => {
    const labels = ({ system }: StillhotDocument) =>
      Object.values((system.structures ?? {}) as Record<string, { label?: string; kind?: string }>).flatMap(
        ({ label = "" }) => /\b(?:pole|pad) (\d+)|(.+) station$/i.exec(label)?.[0] ?? [],
      );
    const own = new Set(labels(file));
    expect(own.size).toBeGreaterThan(0);
    expect(labels(variantOf(file, 5)).filter((it) => own.has(it))).toEqual([]);
  });
});

test.each(
  listed.flatMap(({ id }) => (scenarioOf(scenarioFile(id)).without ?? []).map((fact) => [id, fact] as const)),
)("G8 %s without what it hides, %s, is solved for the same points", (id, fact) => {
  const file = scenarioFile(id);
  holds(withoutFact(file, fact), mostOf(file));
});

test("of many variants some hide nothing where the file allows it, and secrets stand at other addresses and phases", () => {
  const lindens = scenarioFile("lindens");
  const numbers = Array.from({ length: 40 }, (_, index) => index + 1);
  const hidden = numbers.map((it) => Object.keys(scenarioOf(variantOf(lindens, it)).truth ?? {}).length);
  expect(new Set(hidden)).toEqual(new Set([0, 1]));
  const fused = numbers.map((it) =>
    JSON.stringify(scenarioOf(variantOf(scenarioFile("quillfield"), it)).truth!["fused"]!.fused),
  );
  expect(new Set(fused)).toEqual(new Set(['{"d1":"A"}', '{"d1":"B"}', '{"d1":"C"}']));
  const homes = numbers.map((it) => {
    const { system } = variantOf(scenarioFile("orchard-close"), it);
    return /^\d+/.exec((system.structures as Record<string, { label: string }>)["h2"]!.label)![0];
  });
  expect(new Set(homes)).toEqual(new Set(["6", "8", "10"]));
});

const rewording = {
  names: new Map([["Alder Court", "Ferry Street"]]),
  houses: new Map([
    ["1 Alder Court", "3 Alder Court"],
    ["3 Alder Court", "1 Alder Court"],
  ]),
  numbers: new Map([
    ["1", "5"],
    ["2", "6"],
    ["12", "18"],
    ["14", "20"],
  ]),
  turn: 1,
};

/** Words that are names, pole numbers and phases go over; amounts, articles, amperes and paragraphs stay. */
test.each([
  ["1 Alder Court and 3 Alder Court", "3 Ferry Street and 1 Ferry Street"],
  ["11 Alder Court", "11 Ferry Street"],
  ["Pole 12 carries 12 470 V, 12.47 kV and 12 A", "Pole 18 carries 12 470 V, 12.47 kV and 12 A"],
  ["cutout 12 and pole 14B", "cutout 18 and pole 20B"],
  ["between pads 1 and 2, 1 to 6", "between pads 5 and 6, 1 to 6"],
  ["A blade of B is open on A.", "A blade of C is open on B."],
  ["A, B and C; phases AC", "B, C and A; phases AB"],
  ["A closed tie on phase A draws 1.04 A on B", "A closed tie on phase B draws 1.04 A on C"],
  ["29 CFR 1910.269(n)(12)", "29 CFR 1910.269(n)(12)"],
])("%s", (text, expected) => {
  expect(reworded(text, rewording)).toBe(expected);
});

test("the same number gives the same bytes for ever, and a name the same number", () => {
  const bytes = writeDocument(variantOf(scenarioFile("lindens"), 7));
  expect(createHash("sha256").update(bytes).digest("hex").slice(0, 16)).toMatchInlineSnapshot(
    `"41f35aeae2125c5e"`,
  );
  expect(variantNumber("Kim Ostby")).toBe(4791);
  expect(["kim  ostby", " KIM-OSTBY"].map(variantNumber)).toEqual([4791, 4791]);
  expect(variantNumber(" ")).toBe(0);
  const file = scenarioFile("lindens");
  expect(variantOf(file, 0)).toBe(file);
});

test("a class with a variant each is one class, and table, CSV and xAPI say which", () => {
  const file = scenarioFile("first-cutout");
  const attempts = [0, 3, 4].map(
    (number) => playThrough(variantOf(file, number), [], { who: `learner ${number}` }).attempt,
  );
  const [view, ...others] = compareMany(attempts);
  expect(others).toEqual([]);
  expect(view!.rows.map(({ variant }) => variant)).toEqual([undefined, 3, 4]);
  const [head, ...rows] = classCsv(attempts, english).trim().split("\r\n");
  const column = head!.split(",").indexOf("variant");
  expect(rows.map((it) => it.split(",")[column])).toEqual(["", "3", "4"]);
  const [statement] = xapiOf(attempts[1]!) as { context: { extensions: Record<string, unknown> } }[];
  expect(statement!.context.extensions["urn:stillhot:extension:variant"]).toEqual({
    of: file.title,
    number: 3,
    version: 1,
  });
});
