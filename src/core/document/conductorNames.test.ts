import { expect, test } from "vitest";
import { type ConductorId } from "../terms";
import { conductorNames } from "./conductorNames";
import type { System } from "./types";
import { spell } from "../../../tests/support/words";

const system = {
  frequencyHz: 60,
  points: { p4: { label: "Pole 4" }, p5: {}, s1: { label: "T1 secondary" } },
  elements: {},
} as unknown as System;

test.each([
  ["one phase", ["p4/A"], "Pole 4, phase A"],
  ["phases of a pole together", ["p4/A", "p4/B"], "Pole 4, phases A B"],
  ["a neutral", ["p4/N"], "Pole 4, neutral"],
  ["phases and a neutral", ["p4/A", "p4/N"], "Pole 4, phase A and neutral"],
  ["legs", ["s1/1", "s1/2"], "T1 secondary, legs 1 2"],
  ["a pole without a label", ["p5/C"], "pole without a number, phase C"],
  ["several poles", ["p4/A", "s1/1"], "Pole 4, phase A; T1 secondary, leg 1"],
  ["a pole that is not there", ["p9/A"], "something that is not drawn, phase A"],
  ["nothing", [], "nothing"],
])("%s", (_name, ids, said) => {
  expect(spell(conductorNames({ system }, ids as ConductorId[]))).toBe(said);
});

test("no more than a few points are told", () => {
  const ids = ["p4/A", "p5/A", "s1/1"] as ConductorId[];
  expect(spell(conductorNames({ system }, ids, 1))).toBe("Pole 4, phase A; and 2 more");
});
