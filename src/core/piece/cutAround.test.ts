import { expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { jobOf } from "../document";
import type { PointId } from "../terms";
import { cutAround } from ".";

test("work that takes a fault of the piece away stays with it: without it the fault would be a short for good", () => {
  const cutWith = (does: string) =>
    cutAround(
      draw(`
        s1 source sub   ABC kvLL=12.47
        m1 span   sub-a ABC lengthM=800
        m2 span   a-b   ABC lengthM=800
        c1 cutout b-x   A   open=A
        m3 span   x-y   A   lengthM=200
        f1 fault  y     A
        w1 work   x     A
        w2 work   a     ABC ${does}
      `),
      ["x" as PointId],
      1,
    );
  expect(cutWith("").parts).toHaveLength(1);
  expect(Object.keys(jobOf(cutWith("").document).workPoints)).toEqual(["w1"]);
  expect(Object.keys(jobOf(cutWith("does=f1").document).workPoints)).toEqual(["w1", "w2"]);
});
