import { describe, expect, test } from "vitest";
import { drawn } from "../../../tests/support/drawn";
import { circuitOf } from "./circuitOf";
import { groupsAsDrawn } from "./inStep";

const SOURCE = { kind: "source", at: "p1", phases: "ABC", kvLL: 0.48 };
const MACHINE = { kind: "generator", at: "p2", phases: "ABC", kva: 50, volts: 480, on: true };
const BETWEEN = { from: "p1", to: "p2", phases: "ABC" };
const BANK = { kind: "transformer", connection: "Yg-Yg", kva: 75, primaryKv: 0.48, secondaryV: 480 };

describe("S12 a machine is in step with the utility where a phase of both is joined, and nothing else is", () => {
  const cases: readonly (readonly [name: string, elements: Record<string, object>, groups: number])[] = [
    ["joined by a lead", { s1: SOURCE, g1: MACHINE, b: { kind: "lead", ...BETWEEN } }, 1],
    [
      "on one phase alone",
      { s1: SOURCE, g1: { ...MACHINE, phases: "B" }, b: { kind: "lead", ...BETWEEN } },
      1,
    ],
    ["joined by a transformer", { s1: SOURCE, g1: MACHINE, b: { ...BANK, ...BETWEEN } }, 1],
    ["joined by a regulator", { s1: SOURCE, g1: MACHINE, b: { kind: "regulator", ...BETWEEN } }, 1],
    [
      "joined by one phase of three",
      { s1: SOURCE, g1: MACHINE, b: { kind: "lead", ...BETWEEN, cut: "AB" } },
      1,
    ],
    [
      "joined by the neutral alone",
      { s1: SOURCE, g1: MACHINE, b: { kind: "lead", ...BETWEEN, cut: "ABC" } },
      2,
    ],
    [
      "joined by a phase that it is not on",
      { s1: SOURCE, g1: { ...MACHINE, phases: "A" }, b: { kind: "lead", ...BETWEEN, cut: "A" } },
      2,
    ],
    ["parted", { s1: SOURCE, g1: MACHINE, b: { kind: "span", ...BETWEEN, parted: "ABC" } }, 2],
    [
      "joined to a source that is off",
      { s1: { ...SOURCE, on: false }, g1: MACHINE, b: { kind: "lead", ...BETWEEN } },
      1,
    ],
    ["two machines on one bus", { g1: MACHINE, g2: MACHINE, b: { kind: "lead", ...BETWEEN } }, 2],
    [
      "two machines with the utility",
      { s1: SOURCE, g1: MACHINE, g2: MACHINE, b: { kind: "lead", ...BETWEEN } },
      1,
    ],
    [
      "a source that is not in step",
      { s1: { ...SOURCE, inStep: false }, g1: MACHINE, b: { kind: "lead", ...BETWEEN } },
      2,
    ],
    ["two stations", { s1: SOURCE, s2: { ...SOURCE, at: "p3" } }, 1],
    [
      "two stations of two systems, joined",
      { s1: SOURCE, s2: { ...SOURCE, at: "p2", inStep: false }, b: { kind: "lead", ...BETWEEN } },
      2,
    ],
    [
      "a circuit beside",
      {
        s1: SOURCE,
        b: { kind: "span", ...BETWEEN },
        n: { kind: "nearby", span: "b", relation: "parallel", kvLL: 69, spacingM: 3 },
      },
      2,
    ],
    [
      "a circuit that only crosses",
      {
        s1: SOURCE,
        b: { kind: "span", ...BETWEEN },
        n: { kind: "nearby", span: "b", relation: "crossing", kvLL: 69 },
      },
      1,
    ],
  ];
  test.each(cases)("%s", (_name, elements, groups) => {
    expect(groupsAsDrawn(circuitOf(drawn({ elements }).system)).all).toHaveLength(groups);
  });
});
