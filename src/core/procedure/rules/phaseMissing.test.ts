import { describe, expect, test } from "vitest";
import { draw, parseSteps, playAll } from "../../../../tests/support/jobNotation";
import { findingsAtEnd } from ".";

const BANK = `
  s1   source       sub    ABC  kvLL=12.47
  main span         sub-p1 ABC  lengthM=2000
  c1   cutout       p1-p2  ABC  fuse=K15
  t1   transformer  p2-p3  ABC  connection=D-Yg kva=75 primaryKv=12.47 secondaryV=480
`;

const found = (steps: string): string[] =>
  findingsAtEnd(playAll(draw(BANK), parseSteps(steps, [])).at(-1)!.state)
    .filter((it) => it.rule === "phase-missing")
    .map((it) => `${it.severity} ${it.where}`);

describe("phase-missing: common practice, no source: no bank is left with a phase missing", () => {
  test.each([
    ["one pole left open", "open c1 ABC; close c1 AB", ["danger t1"]],
    ["two poles left open", "open c1 ABC; close c1 A", ["danger t1"]],
    ["all of it left open", "open c1 ABC", []],
    ["all of it closed", "open c1 ABC; close c1 ABC", []],
  ])("%s", (_why, steps, wanted) => expect(found(steps)).toEqual(wanted));
});
