import { expect, test } from "vitest";
import type { Assessment, StillhotDocument } from "../../src/core";
import { asText, jsonLine, wrapped } from "../../src/cli/print";
import { answerOf } from "../../src/cli/answer";

test("C5 what is not finite is printed as over every limit", () => {
  const text = jsonLine({ volts: Infinity, amps: NaN, margin: null, off: -Infinity });
  expect(text).not.toMatch(/null.*null/);
  const read = JSON.parse(text) as Record<string, number | null>;
  for (const key of ["volts", "amps", "off"]) expect(read[key]! > 1e300, key).toBe(true);
  expect(read["margin"]).toBe(null);
});

test("C5 a number that could not be computed is a danger, with its angle as 0", () => {
  const assessment = {
    conductors: {
      "p1/A": { state: "energized", volts: Infinity, voltsLoadsOff: 7200, angleDeg: NaN, sources: ["s1"] },
    },
    elements: { c1: { amps: { A: 1 }, angleDeg: { A: NaN } } },
    workPoints: {},
    findings: [],
  } as unknown as Assessment;
  const document = { system: { frequencyHz: 60, points: {}, elements: {} } } as unknown as StillhotDocument;
  const { ok, json } = answerOf(document, assessment);
  expect(ok).toBe(false);
  const read = JSON.parse(jsonLine(json));
  expect(read.findings).toEqual([
    expect.objectContaining({ rule: "unsolved", severity: "danger", where: "p1/A" }),
  ]);
  expect(read.conductors["p1/A"].angleDeg).toBe(0);
  expect(read.elements.c1.angleDeg.A).toBe(0);
});

test("a line of JSON stays one line whatever is in it", () => {
  const label = "a\u2028b\u0085c\nd";
  const text = jsonLine({ label });
  expect(text.trimEnd()).not.toMatch(/[\n\u0085\u2028]/);
  expect(JSON.parse(text)).toEqual({ label });
});

test.each([
  ["plain words", "plain words\n"],
  ["\u001b[31mred", "\\u001b[31mred\n"],
  ["one\nGROUNDED", "one\\u000aGROUNDED\n"],
  ["\u202eturned", "\\u202eturned\n"],
  ["Ångström · Ω", "Ångström · Ω\n"],
])("text for a person: %j", (line, wanted) => expect(asText([line])).toBe(wanted));

test("a number stays with its unit when a line is wrapped", () => {
  const words = Array.from({ length: 30 }, () => "7200 V").join(" and ");
  for (const line of wrapped("  ", words, "  ")) {
    expect(line).not.toMatch(/\d$/);
    expect(line.length).toBeLessThanOrEqual(100);
  }
});
