import { expect, test } from "vitest";
import { draw, TAP } from "../../../../tests/support/jobNotation";
import { customersOutIn, darkStepsIn } from "./customers";
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

const DARK_STREET = `${TAP}
  c3  cutout       p4-p7 A  fuse=K10 open=A
  t2  transformer  p7-p8 A  connection=single kva=25 primaryKv=7.2 secondaryV=240
  ld2 load         p8    12 connection=delta kw=8 customers=18
`;

test.each([
  ["nobody is out", TAP, "brief; note", 0],
  ["three for two steps", TAP, "open c2; note; close c2", 6],
  ["who is dark before and after counts for nothing", DARK_STREET, "note; note; note", 0],
  ["beside them three for two steps", DARK_STREET, "open c2; note; close c2", 6],
  ["who goes dark for good on the way takes nothing off it", TAP, "note; note; open c2; note", 0],
  ["who comes back counts until then", DARK_STREET, "note; close c3; note", 18],
  ["eighteen wait a step for three who stay dark", DARK_STREET, "note; close c3; open c2; note", 15],
] as const)("Customer steps of those who get it back: %s", (_why, drawing, steps, wanted) =>
  expect(darkStepsIn(rehearse(draw(drawing, steps)))).toBe(wanted),
);
