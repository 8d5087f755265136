import { expect, test } from "vitest";
import { draw } from "../../../../tests/support/jobNotation";
import { plan } from ".";

/** A section between a switch and its end, and who holds the permit of it. */
const SECTION = `
  s1    source       sub     ABC  kvLL=12.47
  main  span         sub-p1  ABC  lengthM=1500
  sp1   span         p2-p3   ABC  lengthM=150
  sp2   span         p3-p4   ABC  lengthM=150
  ld4   load         p4      ABC  kw=90 customers=25
  w1    work         p3      ABC
  job   crew=Crew_2 permit=held permitHolder=Crew_1
`;

/** The steps that are about the permit, as `verb to`. */
const permitSteps = (drawing: string): string => {
  const planned = plan(draw(drawing), { alternatives: false });
  expect(planned.findings).toEqual([]);
  return planned.steps
    .flatMap(({ do: verb, to, permit }) =>
      permit === true || verb.endsWith("-permit") ? [`${verb} ${to ?? ""}`.trim()] : [],
    )
    .join(", ");
};

// 29 CFR 1910.269(m)(3)(ix) and (xi): a clearance is handed over, and given back by the one who holds it.
test.each([
  [
    "nothing of the other crew hangs there any more",
    "sw1 disconnect p1-p2 ABC gang=true loadBreakAmps=600",
    "hand-over Crew_2, release-permit",
  ],
  [
    "the other crew's tag hangs there still",
    "sw1 disconnect p1-p2 ABC gang=true loadBreakAmps=600 open=ABC tagged=true blocked=true taggedBy=Crew_1",
    "hand-over Crew_2, hand-over Crew_1",
  ],
])("a permit that another crew holds is handed over: %s", (_why, drawn, wanted) => {
  expect(permitSteps(`${SECTION}\n${drawn}`)).toBe(wanted);
});

test("a permit of the crew's own is not handed over", () => {
  const own = `${SECTION}\nsw1 disconnect p1-p2 ABC gang=true loadBreakAmps=600\njob crew=Crew_2 permit=held permitHolder=Crew_2`;
  expect(permitSteps(own)).toBe("release-permit");
});
