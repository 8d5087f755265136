import { describe, expect, test } from "vitest";
import { DRILL_KINDS, drillOf } from "../../core";
import { Exercise, lettersOn, QUESTIONS, shownOf } from "./exercise.svelte";

const ASKING = { level: 2, seed: 11 } as const;

describe("G4 an exercise counts what was answered", () => {
  test("asked one by one, the questions are those of the drill of its seed", () => {
    const exercise = new Exercise(ASKING);
    for (const expected of drillOf({ ...ASKING, count: QUESTIONS })) {
      expect(exercise.question).toEqual(expected);
      exercise.next();
    }
    expect(exercise.isOver).toBe(true);
  });

  test("what is right makes all points, what is wrong takes some away, and nothing changes after the answer", () => {
    const exercise = new Exercise(ASKING);
    const { answer, options } = exercise.question!;
    for (const it of answer) exercise.choose(it);
    exercise.answer();
    expect(exercise.points).toBe(1);
    exercise.choose(options.findIndex((_, index) => !answer.includes(index)));
    exercise.answer();
    expect([exercise.given, exercise.points]).toEqual([[...answer], 1]);
    exercise.next();
    const wrong = exercise.question!.options.findIndex(
      (_, index) => !exercise.question!.answer.includes(index),
    );
    if (exercise.question!.answering !== "order") {
      exercise.choose(wrong);
      exercise.answer();
      expect(exercise.points).toBeLessThan(1);
    }
  });

  test("what is tapped on the drawing is chosen, and taken back by a second tap", () => {
    const exercise = new Exercise({ level: 1, seed: 3 });
    while (!exercise.isOver && exercise.question!.kind !== "live") exercise.next();
    const { options } = exercise.question!;
    const owner = { of: "point", id: options[1]!.at } as never;
    exercise.chooseAt(owner);
    expect(exercise.given).toEqual([1]);
    exercise.chooseAt({ of: "point", id: "nowhere" } as never);
    exercise.chooseAt(owner);
    expect(exercise.given).toEqual([]);
  });
});

test("before the answer the drawing tells no state, and each option that stands on it has its letter", () => {
  const questions = drillOf({ level: 3, seed: 2, count: DRILL_KINDS.length });
  for (const question of questions) {
    const states = (isAnswered: boolean) =>
      new Set(Object.values(shownOf(question.document, isAnswered).conductors).map(({ state }) => state));
    expect([...states(false)]).toEqual(["neutral"]);
    expect(states(true).size).toBeGreaterThan(1);
    const letters = lettersOn(question);
    for (const { at } of question.options)
      if (at !== undefined) expect(letters.get(at)?.text).toMatch(/[a-z]/);
  }
});
