import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { draw, parseSteps } from "../../../../tests/support/jobNotation";
import { isUnreadable, jobOf, readDocument, type StillhotDocument } from "../../document";
import { type ConductorId } from "../../terms";
import {
  advance,
  beginJob,
  notAsExpected,
  planChanged,
  play,
  rehearsalJson,
  rehearsalText,
  rehearse,
} from "..";
import { english, spell } from "../../../../tests/support/words";

const read = readDocument(readFileSync("shared/demos/quarry-lane.stillhot.json", "utf8"));
if (isUnreadable(read)) throw new Error("the demo does not read");
const demo = read.document;
const points = Object.keys(demo.system.points);

const withSteps = (text: string): StillhotDocument => ({
  ...demo,
  job: { ...demo.job, steps: parseSteps(text, points) },
});

const PERMIT = "brief; request-permit; receive-permit; confirm";
const DEAD = `${PERMIT}; open c1 A with load-break-tool; tag c1; tag tie; lift k1 A with clamp-stick; block k1; tag k1`;
const PROVEN = `${DEAD}; check-detector; test p1b A; check-detector`;
const WORK = `${PROVEN}; ground p1b A to neutral cable 2/0; barricade p1b; work w1`;
const CLEAR = "all-clear; confirm; unground g1; all-clear; confirm; release-permit; confirm";
const TAGS_OFF = "untag c1; untag tie; untag k1; unblock k1";
const CLOSED = "attach k1 A with clamp-stick; stand-clear; close c1 A with load-break-tool";
const WHOLE = `${WORK}; ${CLEAR}; ${TAGS_OFF}; ${CLOSED}`;

const spoken = (document: StillhotDocument): string[] =>
  rehearse(document).steps.flatMap(({ n, findings }) =>
    findings.filter((it) => it.severity !== "note").map((it) => `${n} ${it.severity} ${it.rule} ${it.where}`),
  );

describe("The job of the demo, as its file has it", () => {
  const rehearsal = rehearse(demo);

  test("goes without a danger or a warning", () => {
    expect(rehearsal.ok).toBe(true);
    expect(spoken(demo)).toEqual([]);
  });

  test("work begins grounded", () => {
    const verdicts = rehearsalJson(rehearsal, english).steps.map(
      ({ workPoints }) => workPoints["w1"]!.verdict,
    );
    expect(verdicts).toEqual([
      ...Array<string>(7).fill("live"),
      ...Array<string>(2).fill("could-go-live"),
      ...Array<string>(4).fill("isolated"),
      ...Array<string>(3).fill("grounded"),
    ]);
  });

  test("with people still on the line nothing is left behind yet", () => {
    expect(rehearsal.findings.every((it) => it.severity === "note")).toBe(true);
  });

  test("each operation says what it broke and what the detector showed", () => {
    const told = rehearsal.steps.map(({ consequence }) => spell(consequence.text));
    expect(told[4]).toBe("Pole Q1, sideline cutout breaks 2.62 A by the load-break tool, rated 600 A");
    expect(told[7]).toBe("Pole Q1, tap clamp opens with no current through it");
    expect(told[11]).toBe("Pole Q1, cutout top, phase A shows no voltage");
    expect(rehearsal.steps.every(({ consequence }) => consequence.kind === "none")).toBe(true);
  });
});

describe("The whole job, there and back", () => {
  const whole = withSteps(WHOLE);
  const rehearsal = rehearse(whole);

  test("goes without a danger or a warning, and leaves nothing behind", () => {
    expect(spoken(whole)).toEqual([]);
    expect(rehearsal.findings).toEqual([]);
  });

  test("stands at the end exactly as it was found: the same object", () => {
    expect(rehearsal.steps.at(-1)!.state.document).toBe(whole);
  });

  test("is played alike twice, and a step is undone by the state before it", () => {
    const again = withSteps(WHOLE);
    expect(rehearsalJson(rehearse(again), english)).toEqual(rehearsalJson(rehearsal, english));
    let state = beginJob(whole);
    for (const { step, state: wanted } of rehearsal.steps) {
      const frozen = JSON.stringify(state.document);
      const next = advance(state, step);
      expect(JSON.stringify(state.document)).toBe(frozen);
      expect(next).toEqual(wanted);
      state = next;
    }
  });

  test("marks of what is done do not matter", () => {
    const done = jobOf(whole).steps.map((step) => ({ ...step, done: true }));
    const marked = { ...whole, job: { ...whole.job, steps: done as never } };
    expect(rehearsalJson(rehearse(marked), english)).toEqual(rehearsalJson(rehearsal, english));
  });

  test("hardly a step of it can be left out without something being said", () => {
    const steps = jobOf(whole).steps;
    const everything = (document: StillhotDocument): string[] => {
      const played = rehearse(document);
      return [...played.steps.flatMap(({ findings }) => findings), ...played.findings].map(
        ({ rule, severity, where }) => `${severity} ${rule} ${where}`,
      );
    };
    const usual = everything(whole);
    const silent = steps.flatMap((step, index) => {
      const fewer = {
        ...whole,
        job: { ...whole.job, steps: steps.filter((_, at) => at !== index) as never },
      };
      return everything(fewer).some((it) => !usual.includes(it)) ? [] : [`${index + 1} ${step.do}`];
    });
    // With the clamp tagged and blocked no two mistakes lift the pole; the work is what the rest is for; only the last
    // all-clear has to be repeated back, and the operator's answer to a release is no order.
    expect(silent).toEqual(["15 barricade", "16 work", "18 confirm", "23 confirm"]);
  });
});

/** Each spoiled attempt: what is said of which step, and what it would have done. */
describe("Work that goes wrong goes wrong the right way", () => {
  interface Spoiled {
    readonly why: string;
    readonly steps: string;
    readonly said: readonly string[];
    /** kind, amperes, volts and words of what came of the step that went wrong */
    readonly came?: readonly [n: number, kind: string, amps: number, volts: number, words: RegExp];
  }
  const attempts: readonly Spoiled[] = [
    {
      why: "lifts the clamp under load",
      steps: `${PERMIT}; lift k1 A with clamp-stick`,
      said: ["5 danger load-break k1"],
      came: [
        5,
        "arc",
        2.62,
        7200,
        /2\.62 A is drawn out as an arc at Pole Q1, tap clamp A, which may break 0\.5 A/,
      ],
    },
    {
      why: "grounds before testing, and the line is still live",
      steps: `${PERMIT}; open c1 A with load-break-tool; tag c1; ground p1b A cable 2/0`,
      said: ["7 danger test-before-ground g1", "7 danger ground-on-live g1", "7 danger neutral-volts p1/N"],
      came: [
        7,
        "fault",
        1539,
        7200,
        /1539 A flows through the set at the end of the stick; no link on the way melts/,
      ],
    },
    {
      why: "grounds before testing, and it is dead by luck",
      steps: `${DEAD}; ground p1b A cable 2/0; barricade p1b; work w1`,
      said: ["11 danger test-before-ground g1", "13 danger work-not-safe w1"],
    },
    {
      why: "tests with an unproven detector",
      steps: WORK.replace("check-detector; test", "test"),
      said: ["11 danger detector-check p1b", "15 danger work-not-safe w1"],
    },
    {
      why: "does not prove the detector again",
      steps: WORK.replace("test p1b A; check-detector", "test p1b A"),
      said: ["13 warning detector-check p1b"],
    },
    {
      why: "forgets to tag the far tie",
      steps: WORK.replace("tag tie; ", ""),
      said: ["11 danger tag-each tie", "13 danger tag-each tie", "15 danger tag-each tie"],
    },
    {
      why: "forgets that the far tie is a way in, and works on the sideline with it closed",
      steps: `${PERMIT}; close tie; open c1 A with load-break-tool; tag c1; check-detector; test p1c A; check-detector; ground p1c A cable 2/0`,
      said: ["11 danger test-live p1c/A", "11 danger ground-on-live g1"],
      came: [9, "none", 0, 7190, /Pole Q1, cutout bottom, phase A shows voltage: 7\d\d\d V/],
    },
    {
      why: "closes onto its own grounds",
      steps: `${WORK}; all-clear; confirm; release-permit; ${TAGS_OFF}; attach k1 A with clamp-stick`,
      said: ["19 danger release-order g1", "24 danger neutral-volts p1/N", "24 danger grounds-left k1"],
      came: [24, "fault", 1539, 7200, /Pole Q1, tap clamp closes onto ground set at Pole Q1: 1539 A flows/],
    },
    {
      why: "closes the cutout onto grounds that the link clears",
      steps: `${PERMIT}; open c1 A with load-break-tool; ground p1c A cable 2/0; stand-clear; close c1`,
      said: ["8 danger grounds-left c1", "8 warning fuse-on-close c1"],
      came: [
        8,
        "fault",
        1539,
        7200,
        /the 25K link of Pole Q1, sideline cutout carries 1539 A and melts within half a cycle/,
      ],
    },
    {
      why: "picks the load up with the clamp",
      steps: `${WORK}; ${CLEAR}; ${TAGS_OFF}; stand-clear; close c1; attach k1 A with clamp-stick`,
      said: ["30 danger pick-up-order k1"],
      came: [30, "arc", 2.62, 7200, /the jaw of Pole Q1, tap clamp makes 2\.62 A with 7200 V across the gap/],
    },
    {
      why: "leaves a tag",
      steps: `${WORK}; ${CLEAR}; ${TAGS_OFF.replace("untag c1; ", "")}; ${CLOSED}`,
      said: ["29 danger tagged-operated c1"],
    },
    {
      why: "energizes the line with hands on it",
      steps: `${DEAD}; work w1; untag k1; unblock k1; attach k1 A`,
      said: [
        "11 warning equipotential w1",
        "11 danger work-not-safe w1",
        "12 danger release-order k1",
        "13 danger release-order k1",
        "14 danger all-clear-first k1",
        "14 danger permit-release k1",
      ],
      came: [
        14,
        "shock",
        7.2,
        7200,
        /hands are on Pole Q1, cutout top at 7200 V: 7200 mA through 1000 Ω of body/,
      ],
    },
    {
      why: "works on it live",
      steps: `${PERMIT}; work w1`,
      said: ["5 warning equipotential w1", "5 danger work-not-safe w1"],
      came: [5, "shock", 7.2, 7200, /7199 mA/],
    },
  ];

  // 1910.269(m)(3)(xiii): tags come off the point that is closed.
  test("the tag of a far tie that stays open is told when all is done", () => {
    const left = withSteps(`${WORK}; ${CLEAR}; ${TAGS_OFF.replace("untag tie; ", "")}; ${CLOSED}`);
    expect(spoken(left)).toEqual([]);
    expect(rehearse(left).findings.map(({ rule, where }) => `${rule} ${where}`)).toEqual(["left-behind tie"]);
  });

  test.each(attempts)("$why", ({ steps, said, came }) => {
    const document = withSteps(steps);
    for (const line of said) expect(spoken(document)).toContain(line);
    if (came === undefined) return;
    const [n, kind, amps, volts, words] = came;
    const { consequence } = rehearse(document).steps[n - 1]!;
    expect(consequence.kind).toBe(kind);
    expect(Math.abs(consequence.amps - amps)).toBeLessThanOrEqual(0.01 * amps);
    expect(Math.abs(consequence.volts - volts)).toBeLessThanOrEqual(0.01 * volts);
    expect(spell(consequence.text)).toMatch(words);
  });
});

test("Trusts an opened phase of a delta bank: the bank holds it at full voltage", () => {
  const bank = draw(
    `
    s1   source      sub    ABC kvLL=12.47
    c1   cutout      sub-p1 ABC fuse=K25
    t1   transformer p1-p2  ABC connection=Yg-D kva=150 primaryKv=12.47 secondaryV=240
    ld1  load        p2     ABC connection=delta kw=20
    w1   work        p1     A
    `,
    "brief; open c1 A with load-break-tool; tag c1; ground p1 A cable 2/0",
  );
  const last = rehearse(bank).steps.at(-1)!;
  expect(last.findings.map((it) => it.rule)).toEqual(
    expect.arrayContaining(["open-phase-backfeed", "ground-on-live", "test-before-ground"]),
  );
  const words = spell(last.findings.find((it) => it.rule === "open-phase-backfeed")!.message);
  expect(words).toMatch(
    /^pole without a number, below the cutout, phase A is taken for dead, and transformer at pole without a number holds it at 7\d\d\d V from its other phases$/,
  );
  expect(last.consequence.kind).toBe("fault");
});

describe("A change of the plan after the briefing", () => {
  const begun = play(beginJob(demo), { do: "brief" }).state;
  const first = (state: typeof begun) =>
    play(state, { do: "tag", element: "tie" as never }).findings.map((it) => it.rule);

  test("asks for another one", () => {
    expect(first(begun)).toEqual([]);
    expect(first(planChanged(begun))).toEqual(["brief-again"]);
    expect(first(play(planChanged(begun), { do: "brief" }).state)).toEqual([]);
  });

  test("before it there is nothing to brief again", () => {
    expect(planChanged(beginJob(demo)).briefAgain).toBeUndefined();
  });
});

describe("What was not as expected", () => {
  const proven = play(beginJob(demo), { do: "check-detector" }).state;

  test.each([true, false])(
    "the detector is proven again before the next test (a voltage: %s)",
    (isVoltage) => {
      expect(proven.detector).toBe("proven");
      expect(notAsExpected(proven, isVoltage).detector).toBe("unproven");
    },
  );
});

describe("A rule that is turned off", () => {
  test("says nothing, and its reason is kept for the sheet", () => {
    const off = {
      ...withSteps(`${PERMIT}; lift k1 A`),
      settings: { rules: { "load-break": { off: true, reason: "company procedure 12" } } },
    };
    expect(spoken(off)).toEqual([]);
    expect(rehearse(off).steps.at(-1)!.consequence.kind).toBe("arc");
  });
});

describe("A rehearsal as text", () => {
  test("says what, where, why and what to do", () => {
    const text = rehearsalText(
      rehearse(withSteps(`brief; open c1 A with load-break-tool; ground p1b A cable 2/0`)),
      "quarry-lane.stillhot.json",
      english,
    );
    expect(text).toMatchSnapshot();
  });
});

test("readings follow the conductor: the neutral end of a test on two conductors", () => {
  const rehearsal = rehearse(withSteps(`${PERMIT}; check-detector; test p1 AB`));
  expect([...rehearsal.steps.at(-1)!.state.readings.keys()]).toEqual([
    "p1/A",
    "p1/B",
  ] satisfies ConductorId[]);
});
