import { describe, expect, test } from "vitest";
import { draw } from "../../../../tests/support/jobNotation";
import { NEW_AND_MOVED_JOBS } from "../../../../tests/trade/newAndMoved";
import { YEARS_JOBS } from "../../../../tests/trade/throughTheYear";
import { plan } from "./plan";

const planOf = (drawing: string) => plan(draw(drawing), { alternatives: false });

const switched = (drawing: string): string[] =>
  planOf(drawing)
    .steps.filter(({ do: verb }) => !["brief", "confirm", "stand-clear"].includes(verb))
    .map((it) => [it.do, it.element ?? it.at, it.expect].filter((word) => word !== undefined).join(" "));

const jobCalled = (name: string): string =>
  [...YEARS_JOBS, ...NEW_AND_MOVED_JOBS].find(({ job }) => job.includes(name))!.drawing;

describe("a job of switching alone is planned to how things are to be left", () => {
  test.each([
    ["a loop turned round", "turn the feed of a loop", 0, 0],
    ["a half handed over with a break", "not in step", 60, 0],
    ["a regulator put back", "put a regulator bank back", 0, 0],
  ])("%s: nothing found, and who is dark at the worst and at the end", (_what, name, worst, end) => {
    const { ok, findings, customers } = planOf(jobCalled(name));
    expect([ok, findings.map(({ rule }) => rule), customers.worst, customers.end]).toEqual([
      true,
      [],
      worst,
      end,
    ]);
  });

  test("in a ring the new way closes first, after a test of both sides", () =>
    expect(switched(jobCalled("turn the feed of a loop"))).toEqual([
      "request-permit",
      "receive-permit",
      "test b live",
      "test b2 live",
      "close eb2",
      "open ea2",
      "release-permit",
    ]));

  test("of two stations that nothing keeps in step the one goes off before the other comes on", () =>
    expect(switched(jobCalled("not in step"))).toEqual([
      "request-permit",
      "receive-permit",
      "open sw1",
      "close tie",
      "release-permit",
    ]));

  test("a regulator is at neutral and held before it stands beside its bypass, and stepping again at the end", () => {
    const steps = switched(jobCalled("put a regulator bank back"));
    const at = (step: string) => steps.indexOf(step);
    expect(steps).toContain("open by");
    const asked = ["set-position r1", "block r1", "close dl", "open by", "unblock r1"].map(at);
    expect(asked).toEqual(asked.toSorted((a, b) => a - b));
    expect(asked).not.toContain(-1);
  });

  test("a blown link is renewed once somebody has looked for what blew it", () =>
    expect(
      switched(`
        s1 source p1 ABC kvLL=12.47
        c1 cutout p1-p2 A fuse=K25 blown=A
        t1 transformer p2-p3 A connection=single kva=25 primaryKv=7.2 secondaryV=240
        ld1 load p3 12 kw=4 customers=2
      `),
    ).toEqual(["inspect p2", "refuse c1", "close c1"]));

  test("a recloser that was found open is closed once the line beyond was walked", () =>
    expect(
      switched(`
        s1 source p1 ABC kvLL=12.47
        rc recloser p1-p2 ABC open=ABC
        ld1 load p2 ABC kw=40 customers=20
      `),
    ).toEqual(["inspect p2", "close rc"]));

  test.each([
    ["all stands as it is to be left", ""],
    [
      "what is open hangs behind a broken wire",
      "c1 cutout p1-p2 A fuse=K25 open=A\nsp1 span p2-p3 A parted=A",
    ],
    ["somebody else's tag hangs on it", "c1 cutout p1-p2 A fuse=K25 open=A tagged=true taggedBy=Crew_2"],
  ])("no plan where %s", (_why, more) => {
    const { ok, steps } = planOf(`
      s1 source p1 ABC kvLL=12.47
      c1 cutout p1-p2 A fuse=K25
      sp1 span p2-p3 A
      ${more}
    `);
    expect([ok, steps]).toEqual([false, []]);
  });
});
