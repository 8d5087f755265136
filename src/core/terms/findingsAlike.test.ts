import { expect, test } from "vitest";
import type { Finding } from "./finding";
import { findingsAlike } from "./findingsAlike";
import { say } from "./message";

const neutral = (where: string, volts: number, severity: Finding["severity"] = "danger"): Finding => ({
  rule: "neutral-volts",
  severity,
  where,
  message: say("hazard.neutralVolts", { where, volts }),
  citation: "common practice, no source",
});
const parted = (where: string): Finding => ({
  ...neutral(where, 0),
  rule: "broken-energized",
  message: say("hazard.brokenEnergized", { name: "span", phases: "A" }),
});

test.each([
  [
    "one cause at three places",
    [neutral("p1/N", 53), neutral("p2/N", 53), neutral("p3/N", 53)],
    ["p1/N p2/N p3/N"],
  ],
  ["another figure stands by itself", [neutral("p1/N", 53), neutral("p2/N", 61)], ["p1/N", "p2/N"]],
  ["and so does what is worse", [neutral("p1/N", 53, "warning"), neutral("p2/N", 53)], ["p1/N", "p2/N"]],
  ["what names no place stays as it is", [parted("sp1"), parted("sp2")], ["sp1", "sp2"]],
  [
    "none is lost, in their order",
    [neutral("p1/N", 53), parted("sp1"), neutral("p2/N", 53)],
    ["p1/N p2/N", "sp1"],
  ],
] as const)("%s", (_why, findings, wanted) => {
  const told = findingsAlike(findings).map(({ finding, also }) => [finding.where, ...also].join(" "));
  expect(told).toEqual(wanted);
});
