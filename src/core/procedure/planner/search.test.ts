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

/** A line of so many three-phase cutouts in series, with work at its end. */
const inSeries = (count: number) =>
  draw(`
    s1  source  p0  ABC  kvLL=12.47
    ${Array.from({ length: count }, (_, k) => `sp${k} span p${k}-q${k} ABC\n c${k} cutout q${k}-p${k + 1} ABC fuse=K200`).join("\n")}
    w1  work    p${count}  ABC
  `);

test("of sixty cutouts in series the three poles of the nearest are found among the first sets looked at", () => {
  const document = inSeries(60);
  const [first] = choices(document, demandOf(document, NO_WISHES), { ways: [], stuck: [] }, 10);
  expect((first?.openings ?? []).map(({ key }) => key)).toEqual(["c59/A", "c59/B", "c59/C"]);
});
