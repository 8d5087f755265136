import { describe, expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import type { StillhotDocument } from "../document";
import type { WorkPointId } from "../terms";
import { groundsWorth } from "./groundsWorth";

const worth = (document: StillhotDocument) => groundsWorth(document, "w1" as WorkPointId);
const left = (document: StillhotDocument): string[] =>
  worth(document)!.left.map((it) => `${it.doubt} ${it.where}`);

/** A tap whose cutout was seen open: what is in doubt is whether the line goes on beyond its last pole, and is fed. */
const TAP = `
  s1  source    p1     ABC  kvLL=12.47 z1Ohms=[0,0.6] z0Ohms=[0,0.6] evidence=seen
  c1  cutout    p1-p2  A    open=A evidence=seen
  sp1 span      p2-p3  A    lengthM=100
  p2  point     evidence=seen
  w1  work      p2     A
`;

describe("what the grounds are worth", () => {
  test("nothing is said where no set stands", () => {
    expect(worth(draw(TAP))).toBeUndefined();
  });

  test("a set that stands at the work holds what would hurt without it", () => {
    const found = worth(draw(`${TAP}\ng1 ground p2 A cable=4/0 evidence=seen`))!;
    expect(found.hurting).toBeGreaterThan(0);
    expect(found).toMatchObject({ held: found.hurting, left: [], remedy: undefined });
    expect(found.asked).toBe(found.of);
  });

  // ASTM F855 withstand currents: what lies beyond the pole may be as stiff as the substation.
  test("a cable that would part holds nothing, and the one that would hold is named", () => {
    const thin = draw(`${TAP}\ng1 ground p2 A cable=8 evidence=seen`);
    expect(left(thin)).toEqual(["goes-on p3"]);
    const { remedy } = worth(thin)!;
    expect(remedy).toHaveProperty("cable");
    const { cable } = remedy as { cable: string };
    expect(left(draw(`${TAP}\ng1 ground p2 A cable=${cable} evidence=seen`))).toEqual([]);
  });

  test("a set far off leaves the worker over the limit, and one more is named where it would hold", () => {
    const far = draw(`${TAP}
      sp2 span p2-p4 A lengthM=2000 evidence=seen
      p4 point evidence=seen
      g1 ground p4 A to=earth cable=4/0 evidence=seen`);
    expect(left(far)).toEqual(["goes-on p3"]);
    const { remedy } = worth(far)!;
    expect(remedy).toHaveProperty("setAt");
  });
});
