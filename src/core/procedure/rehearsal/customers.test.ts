import { expect, test } from "vitest";
import { draw, TAP } from "../../../../tests/support/jobNotation";
import { customersOutIn } from "./customers";
import { rehearse } from "./rehearse";

const counts = (drawing: string, steps: string) => customersOutIn(rehearse(draw(drawing, steps)));

test.each([
  ["nobody is out", TAP, "brief", { asFound: 0, during: 0, worst: 0, end: 0, steps: 0 }],
  ["out and back", TAP, "open c2; note; close c2", { asFound: 0, during: 0, worst: 3, end: 0, steps: 6 }],
  [
    "out while work goes on",
    TAP,
    "open c2; work w1; all-clear; close c2",
    { asFound: 0, during: 3, worst: 3, end: 0, steps: 9 },
  ],
  [
    "dark before and after is not nobody",
    `${TAP}\nc1 cutout p2-p3 A fuse=K25 blown=A`,
    "brief",
    { asFound: 3, during: 0, worst: 3, end: 3, steps: 3 },
  ],
  [
    "a machine of one's own is no supply",
    `${TAP}\ngx generator h1 12 kva=9 volts=240`,
    "open c2; start gx",
    { asFound: 0, during: 0, worst: 3, end: 3, steps: 6 },
  ],
] as const)("Customers without supply: %s", (_why, drawing, steps, wanted) =>
  expect(counts(drawing, steps)).toEqual(wanted),
);
