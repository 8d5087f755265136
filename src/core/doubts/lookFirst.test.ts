import { describe, expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import type { StillhotDocument } from "../document";
import type { WorkPointId } from "../terms";
import { doubtsAround } from "./doubts";
import { lookFirst } from "./lookFirst";
import { rangesOf } from "./ranges";
import { jobOf } from "../document";

const W1 = "w1" as WorkPointId;
const doubtsOf = (document: StillhotDocument): string[] =>
  doubtsAround(document.system, jobOf(document).workPoints[W1]!).map((it) =>
    [
      it.doubt,
      it.where,
      ...(it.other === undefined ? [] : [it.other]),
      ...(it.phases === undefined ? [] : [it.phases]),
    ].join(" "),
  );
const looks = (document: StillhotDocument) =>
  lookFirst(document, W1).entries.map(({ doubt, pair, verdict, margin, groundsHold }) =>
    [
      doubt.doubt,
      doubt.where,
      ...(pair === null ? [] : ["+", pair.doubt, pair.where]),
      verdict,
      String(margin),
      ...(groundsHold ? ["held"] : []),
    ].join(" "),
  );

test("where many switches stand open side by side, the ranges say that not all numbers were asked", () => {
  const document = draw(`
    s1 source p1 ABC kvLL=12.47
    ${Array.from({ length: 16 }, (_, n) => `d${n} disconnect p1-p2 ABC open=ABC`).join("\n    ")}
    w1 work p2 ABC
  `);
  // What is not asked is said, and the verdict is that of the numbers as drawn at least.
  const short = rangesOf(document, W1, { when: "drawn", mostWork: 3e5 });
  expect(short.asked).toBeLessThan(short.of);
  expect(short.verdict).toBe(short.drawnVerdict);
});

/** A tap that is opened at its cutout: the work is on the line beyond it. */
const TAP = `
  s1  source    p1     ABC  kvLL=12.47 evidence=seen
  c1  cutout    p1-p2  A    open=A
  sp1 span      p2-p3  A
  w1  work      p2     A
`;

describe("each kind of thing names its own doubts", () => {
  test.each([
    ["what opens stands the other way", TAP, "other-position c1"],
    ["a line goes on beyond its last pole", TAP, "goes-on p3"],
    ["another circuit crosses an overhead line", TAP, "crossing sp1"],
    ["a line that is drawn is not there", TAP, "no-span sp1"],
    ["the neutral of a line is open", TAP, "open-neutral sp1"],
    ["a rod is missing", TAP, "no-rod p3"],
    ["each phase with its own handle", `${TAP}\nc1 cutout p1-p2 ABC open=ABC`, "other-position c1 B"],
    [
      "another bank feeds the secondary",
      `${TAP}\nt1 transformer p3-p4 A connection=single kva=25 primaryKv=7.2 secondaryV=240`,
      "second-transformer t1",
    ],
    [
      "a bank is connected otherwise",
      `s1 source p1 ABC kvLL=12.47\nd1 disconnect p1-p2 ABC open=ABC\nt1 transformer p2-p3 ABC connection=Yg-Yg kva=75 primaryKv=12.47 secondaryV=208\nw1 work p2 A`,
      "other-connection t1",
    ],
    [
      "two switches at one place, one open, are taken for each other",
      `${TAP}\nc2 cutout p1-p5 A`,
      "swapped-labels c1 c2",
    ],
    ["a customer's machine", `${TAP}\nld1 load p3 A kw=5 customers=1`, "machine ld1"],
    ["a machine that is drawn", `${TAP}\ngen1 generator p3 A kva=10 volts=12470`, "machine gen1"],
    ["a set that is not bonded to the pole", `${TAP}\ng1 ground p2 A`, "no-pole-bond g1"],
    ["a set of a thinner cable", `${TAP}\ng1 ground p2 A cable=2/0`, "thin-ground g1"],
    [
      "two cables that leave one place",
      `s1 source p1 ABC kvLL=12.47\ne1 elbow p1-p2 A open=A\nsp1 span p2-p3 A construction=cable\nsp2 span p2-p4 A construction=cable\nw1 work p2 A`,
      "other-cable sp1 sp2",
    ],
  ])("%s", (_, text, wanted) => expect(doubtsOf(draw(text))).toContain(wanted));

  test.each([
    ["a thing that was seen", TAP.replace("open=A", "open=A evidence=seen"), "c1"],
    ["a line that was seen", TAP.replace("sp1 span      p2-p3  A", "sp1 span p2-p3 A evidence=seen"), "sp1"],
    ["a point that was seen", `${TAP}\np3 point evidence=seen`, "p3"],
  ])("what was seen is not in doubt: %s", (_, text, id) =>
    expect(doubtsOf(draw(text)).filter((it) => it.split(" ").includes(id))).toEqual([]),
  );

  test("a line that goes on to a source does not end, nor one with two lines at its pole", () => {
    const document = draw(
      `${TAP}\nsp2 span p3-p4 A\nd9 disconnect p4-p5 A open=A\ns2 source p5 ABC kvLL=12.47`,
    );
    expect(doubtsOf(document).filter((it) => it.startsWith("goes-on"))).toEqual([]);
  });
});

describe("what to look at first", () => {
  test("what makes the work point live at once comes first, the nearest before the rest", () => {
    expect(looks(draw(TAP)).slice(0, 2)).toEqual(["other-position c1 live 0", "goes-on p3 live 0"]);
  });

  test("grounds that hold are told, and the drawing's own verdict stands", () => {
    const lines = looks(draw(`${TAP}\ng1 ground p2 A cable=2/0`));
    expect(lines).toContain("goes-on p3 live 0 held");
  });

  test("a set whose cable parts when it is one size thinner is looked at", () => {
    const strong = `
      s1 source p1 ABC kvLL=12.47 z1Ohms=[0,0.27] z0Ohms=[0,0.27] evidence=seen
      c1 cutout p1-p2 A open=A
      g1 ground p2 A cable=4/0
      w1 work p2 A`;
    expect(looks(draw(strong))).toContain("thin-ground g1 could-go-live 1");
  });

  test("two that are harmless each: a tie beyond a switch that is open, too", () => {
    const tie = `
      s1 source p1 ABC kvLL=12.47 evidence=seen
      c1 cutout p1-p2 A open=A evidence=seen
      d1 disconnect p2-p3 A open=A tagged=true blocked=true
      d2 disconnect p3-p4 A open=A tagged=true blocked=true
      s2 source p4 ABC kvLL=12.47 evidence=seen
      p1 point evidence=seen
      p2 point evidence=seen
      p3 point evidence=seen
      p4 point evidence=seen
      w1 work p2 A`;
    const lines = looks(draw(tie));
    expect(lines).toContain("other-position d1 + other-position d2 live 0");
  });

  test("where everything is live and over the limit there is nothing to look for", () => {
    expect(looks(draw(TAP.replace("open=A", "")))).toEqual([]);
  });

  test("what is cut short says so", () => {
    const { asked, entries } = lookFirst(draw(TAP), W1, { mostWork: 1 });
    expect(entries).toEqual([]);
    expect(asked.singles).toBeLessThan(asked.ofSingles);
  });

  test("with an order of steps: as it stands when hands go to the work", () => {
    const document = draw(
      TAP.replace("open=A", ""),
      "open c1 A; check-detector; test p2 A; ground p2 A element=g1 cable=2/0; work w1",
    );
    expect(lookFirst(document, W1).entries).toEqual([]);
    const { entries } = lookFirst(document, W1, { when: "working" });
    expect(entries.find((it) => it.doubt.doubt === "goes-on")).toMatchObject({
      doubt: { where: "p3" },
      verdict: "live",
      groundsHold: true,
    });
  });
});
