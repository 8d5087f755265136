import { expect, test } from "vitest";
import { draw } from "../../../../tests/support/jobNotation";
import { demandOf } from "./demand";
import { choices } from "./search";
import { NO_WISHES } from "./wishes";

const SIDE_BY_SIDE = draw(`
  s1   source  sub    ABC kvLL=12.47
  main span    sub-p1 ABC lengthM=2000
  c1   cutout  p1-p2  A   fuse=K25
  ${Array.from({ length: 40 }, (_, k) => `d${k} disconnect p2-p3 A loadBreakAmps=600`).join("\n")}
  sp   span    p3-p4  A
  ld   load    p4     A   kw=50 customers=5
  w1   work    p3     A
`);

/** Elements that the first set found opens, with so many sets looked at in each order. */
function firstFound(mostSets: number): string[] {
  const demand = demandOf(SIDE_BY_SIDE, NO_WISHES);
  const [first] = choices(SIDE_BY_SIDE, demand, { ways: [], stuck: [] }, mostSets);
  return (first?.openings ?? []).map(({ element }) => element);
}

test.each([10, 1000])("the one thing before many side by side is found, %d sets looked at", (mostSets) =>
  expect(firstFound(mostSets)).toEqual(["c1"]),
);
