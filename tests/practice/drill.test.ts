import { describe, expect, test } from "vitest";
import {
  DRILL_KINDS,
  type DrillKind,
  type DrillOption,
  type DrillQuestion,
  drillOf,
  type ElementId,
  jobOf,
  type Level,
  type Message,
  scoreOfAnswer,
  settingsOf,
  type StillhotDocument,
  threatsByBruteForce,
} from "../../src/core";
import { look, statesOf } from "../secondOpinion/hazard";
import { limitsOf, nominalOf, type Plain } from "../secondOpinion/plain";

const asked: DrillQuestion[] = ([1, 2, 3] as Level[]).flatMap((level) =>
  drillOf({ level, seed: 11 + level, count: 8 }),
);
const ofKind = (kind: DrillKind) => asked.filter((it) => it.kind === kind);
const plainOf = ({ system }: StillhotDocument) => system as unknown as Plain;

/** A number in an option's sentence; none is nothing. */
const toldIn = ({ text }: DrillOption, gap: string): number =>
  Number(String((text as Message).with?.[gap] ?? 0).replaceAll("\u00a0", ""));

test("G3 a drill has as many questions as were asked for, the kinds in turn, the same every time", () => {
  expect(asked).toHaveLength(24);
  expect(new Set(asked.map(({ kind }) => kind))).toEqual(new Set(DRILL_KINDS));
  expect(drillOf({ level: 1, seed: 12, count: 8 })).toEqual(asked.slice(0, 8));
});

test("G3 every question has something right and something wrong to choose", () => {
  for (const { kind, options, answer, answering } of asked) {
    expect(answer.length).toBeGreaterThan(0);
    expect(answer.every((it) => it >= 0 && it < options.length)).toBe(true);
    expect(
      answering === "order" ? new Set(answer).size === options.length : answer.length < options.length,
    ).toBe(true);
    // An order may hold one step twice.
    if (kind !== "mistake")
      expect(new Set(options.map((it) => JSON.stringify(it))).size).toBe(options.length);
  }
});

describe("the answers are those of others, who know nothing of the core", () => {
  const HOT = ["energized", "backfed", "induced", "faulted", "unknown"];

  test("what is live: the second implementation", () => {
    expect(ofKind("live").length).toBeGreaterThan(0);
    for (const { document, options, answer } of ofKind("live")) {
      const seen = look(plainOf(document), nominalOf(plainOf(document)));
      const states = statesOf(seen, seen, limitsOf());
      const hot = options.flatMap(({ conductor }, at) => (HOT.includes(states.get(conductor!)!) ? [at] : []));
      expect(answer).toEqual(hot);
    }
  });

  test("what the detector shows: the second solution's volts", () => {
    expect(ofKind("detector").length).toBeGreaterThan(0);
    for (const { document, options, answer, conductor } of ofKind("detector")) {
      const { volts } = look(plainOf(document), nominalOf(plainOf(document))).drawn;
      const theirs = Math.hypot(...volts.get(conductor!)!);
      const told = toldIn(options[answer[0]!]!, "volts");
      expect(Math.abs(theirs - told)).toBeLessThanOrEqual(told === 0 ? 50 : 0.06 * told);
    }
  });

  test("what a tool would break: the second solution's amperes", () => {
    expect(ofKind("tool").length).toBeGreaterThan(0);
    for (const { document, options, answer, about } of ofKind("tool")) {
      const { amps } = look(plainOf(document), nominalOf(plainOf(document))).drawn;
      const theirs = Math.max(...[...amps.get(about!)!.values()].map((it) => Math.hypot(...it)));
      const told = toldIn(options[answer[0]!]!, "amps");
      expect(Math.abs(theirs - told)).toBeLessThanOrEqual(0.01 * told);
    }
  });

  test("what makes it live, and what to look at first: every set of one, by brute force", () => {
    const these = [...ofKind("one-wrong"), ...ofKind("look")];
    expect(these.length).toBeGreaterThan(0);
    for (const { document, options, answer } of these) {
      const workPoint = Object.values(jobOf(document).workPoints)[0]!;
      const single = threatsByBruteForce({
        system: document.system,
        settings: settingsOf(document),
        workPoint,
      }).filter(({ strength }) => strength === 1);
      const blamed = new Set<string>(single.map(({ upsets }) => upsets[0]!.element));
      expect(answer).toEqual(
        options.flatMap(({ at }, index) => (blamed.has(at as ElementId) ? [index] : [])),
      );
    }
  });
});

test("G4 guessing earns nothing on the average, pressing everything or nothing earns nothing", () => {
  for (const question of asked) {
    const { options, answering, answer } = question;
    const all = options.map((_, at) => at);
    expect(scoreOfAnswer(question, answer)).toBe(1);
    expect(scoreOfAnswer(question, [])).toBe(0);
    if (answering === "order") continue;
    expect(scoreOfAnswer(question, all)).toBeCloseTo(0);
    const guesses =
      answering === "one"
        ? all.map((it) => [it])
        : Array.from({ length: 2 ** options.length }, (_, bits) => all.filter((at) => (bits >> at) & 1));
    const sum = guesses.reduce((total, it) => total + scoreOfAnswer(question, it), 0);
    expect(sum / guesses.length).toBeCloseTo(0);
  }
});
