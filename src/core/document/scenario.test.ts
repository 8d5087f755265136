import { describe, expect, test } from "vitest";
import { amended, isUnreadable, readDocument, scenarioOf, writeDocument } from ".";
import { spell, spellProblem } from "../../../tests/support/words";

const file = (scenario: unknown, more: object = {}) =>
  JSON.stringify({
    format: "stillhot",
    formatVersion: 1,
    title: "Tap",
    system: {
      frequencyHz: 60,
      points: { p1: {}, p2: {}, p3: {} },
      elements: {
        s1: { kind: "source", phases: "A", at: "p1", kvLL: 12.47 },
        c1: { kind: "cutout", phases: "A", from: "p1", to: "p2" },
        sp1: { kind: "span", phases: "A", from: "p2", to: "p3" },
      },
    },
    job: { task: "t", workPoints: { w1: { at: "p2", conductors: "A" } } },
    scenario,
    ...more,
  });

/** What the reader says of a scenario, a line a problem. */
function problemsOf(scenario: unknown): string {
  const read = readDocument(file(scenario));
  return isUnreadable(read) ? read.problems.map(spellProblem).join("\n") : "";
}

const never = { rule: "load-break" };
const fact = { label: "tie", set: { c1: { open: "A" } } };

describe("D10 a scenario is read strictly, and each problem names its path", () => {
  test.each<[name: string, scenario: unknown, said: string]>([
    ["a list", [], "scenario: found a list of 0, expected an object"],
    ["a wrong mode", { mode: "game" }, 'scenario.mode: found "game", expected one of practice, exam'],
    ["no minutes at all", { minutes: 0 }, "scenario.minutes: found 0, expected"],
    [
      "an objective without its text",
      { objectives: [{ id: "o1" }] },
      "scenario.objectives[0].text: is missing",
    ],
    [
      "an objective twice",
      {
        objectives: [
          { id: "o1", text: "a" },
          { id: "o1", text: "b" },
        ],
      },
      "scenario.objectives[1].id: the id o1 stands already at scenario.objectives[0].id",
    ],
    [
      "a fact that hides nothing",
      { truth: { f1: { label: "x" } } },
      "scenario.truth.f1: a hidden fact must change something",
    ],
    ["a fact without a label", { truth: { f1: { remove: ["c1"] } } }, "scenario.truth.f1.label: is missing"],
    [
      "a fact about what is not there",
      { truth: { f1: { ...fact, set: { c9: { open: "A" } } } } },
      'scenario.truth.f1.set.c9: found "c9", expected the id of an element, a structure or a point of the map or of the truth',
    ],
    [
      "a truth that could not be drawn",
      { truth: { f1: { label: "x", set: { c1: { open: "B" } } } } },
      "scenario.truth: the drawing as it truly stands would not be readable: system.elements.c1.open",
    ],
    [
      "a truth without what hangs on it",
      { truth: { f1: { label: "x", remove: ["p2"] } } },
      "scenario.truth: the drawing as it truly stands would not be readable: system.elements.c1.to",
    ],
    [
      "a truth without the place of the work",
      { truth: { f1: { label: "x", remove: ["p2", "c1", "sp1"] } } },
      "scenario.truth: the drawing as it truly stands would not be readable: job.workPoints.w1.at",
    ],
    [
      "an addition that is on the map",
      { truth: { f1: { label: "x", add: { points: { p1: {} } } } } },
      "scenario.truth.f1.add: p1 is on the map already",
    ],
    [
      "an inject with two triggers",
      { injects: { i1: { label: "x", after: { step: 1, seconds: 5 } } } },
      "scenario.injects.i1.after: expected exactly one of step, seconds, match",
    ],
    [
      "an inject with a fact's id",
      { truth: { x1: fact }, injects: { x1: { label: "x", after: { step: 1 } } } },
      "scenario.injects.x1: the id x1 stands already at scenario.truth.x1",
    ],
    [
      "an inject that could not be drawn",
      { injects: { i1: { label: "x", after: { step: 1 }, remove: ["p3"] } } },
      "scenario.injects.i1: the drawing as it truly stands would not be readable",
    ],
    [
      "a reveal of nothing known",
      { reveals: [{ by: "inspect", at: "p1", text: "t", shows: ["f9"] }] },
      'scenario.reveals[0].shows[0]: found "f9", expected the id of a hidden fact or of an inject',
    ],
    [
      "a look at no place",
      { reveals: [{ by: "inspect", text: "t" }] },
      "scenario.reveals[0]: a look or a test needs the point",
    ],
    [
      "a criterion that asks nothing",
      { criteria: [{ id: "k1", kind: "must", text: "t", when: {} }] },
      "scenario.criteria[0].when: found none, expected exactly one of step, tries, rule",
    ],
    [
      "a criterion that asks two things",
      { criteria: [{ id: "k1", kind: "never", text: "t", when: { ...never, restored: true } }] },
      "scenario.criteria[0].when: found rule, restored, expected exactly one of",
    ],
    [
      "a criterion deep within another",
      {
        criteria: [
          {
            id: "k1",
            kind: "must",
            text: "t",
            when: { any: [{ all: [{ not: { step: { do: "dance" } } }] }] },
          },
        ],
      },
      'scenario.criteria[0].when.any[0].all[0].not.step.do: found "dance"',
    ],
    [
      "a criterion for no objective",
      { criteria: [{ id: "k1", kind: "must", text: "t", when: never, objective: "o9" }] },
      'scenario.criteria[0].objective: found "o9", expected the id of an objective',
    ],
    [
      "a verdict at no work point",
      { criteria: [{ id: "k1", kind: "must", text: "t", when: { verdict: "grounded", workPoint: "w9" } }] },
      'scenario.criteria[0].when.workPoint: found "w9", expected the id of a work point',
    ],
    [
      "a step with what is not there",
      { traps: [{ id: "t1", label: "x", when: { step: { do: "open", element: "c9" } } }] },
      'scenario.traps[0].when.step.element: found "c9", expected the id of an element',
    ],
    [
      "phases of a step that no point has",
      { traps: [{ id: "t1", label: "x", when: { step: { do: "open", phases: "XY" } } }] },
      'scenario.traps[0].when.step.phases: found "XY", expected letters of its phases',
    ],
    [
      "a hint without words",
      { hints: [{ id: "h1" }] },
      "scenario.hints[0]: a hint needs at least one of where, think, rule, step",
    ],
    ["an answer with an unknown step", { answer: [{ do: "dance" }] }, 'scenario.answer[0].do: found "dance"'],
    ["an answer at no place", { answer: [{ do: "go", at: "p9" }] }, 'scenario.answer[0].at: found "p9"'],
    [
      "a fall that names nothing",
      { traps: [{ id: "t1", label: "x", when: never, fall: [{ do: "open", element: "c9" }] }] },
      'scenario.traps[0].fall[0].element: found "c9"',
    ],
    [
      "phases that are none",
      { truth: { f1: { label: "x", seized: { c1: "Q" } } } },
      'scenario.truth.f1.seized.c1: found "Q", expected letters of its phases',
    ],
  ])("%s", (_name, scenario, said) => {
    expect(problemsOf(scenario)).toContain(said);
  });

  test("unknown keys are kept, and named once", () => {
    const read = readDocument(file({ mood: "calm", truth: { f1: { ...fact, colour: "red" } } }));
    if (isUnreadable(read)) throw new Error("unreadable");
    expect(spell(read.warnings[0]!.message)).toContain("scenario.truth.f1.colour, scenario.mood");
    expect(JSON.parse(writeDocument(read.document))).toMatchObject({ scenario: { mood: "calm" } });
  });

  test("facts fit together: one may hang on what another adds", () => {
    const read = readDocument(
      file({
        truth: {
          a: {
            label: "a pole",
            add: {
              points: { p9: { label: "Pole 9" } },
              elements: { sp9: { kind: "span", phases: "A", from: "p3", to: "p9" } },
            },
          },
          b: {
            label: "a generator there",
            add: {
              elements: {
                gen1: { kind: "generator", phases: "A", at: "p9", kva: 5, volts: 12470, on: true },
              },
            },
          },
        },
        answer: [
          { do: "go", at: "p9" },
          { do: "inspect", at: "p9" },
        ],
      }),
    );
    if (isUnreadable(read)) throw new Error(read.problems.map(spellProblem).join("\n"));
    expect(
      Object.keys(amended(read.document.system, Object.values(scenarioOf(read.document).truth!)).elements),
    ).toContain("gen1");
    expect(scenarioOf(read.document).answer).toHaveLength(2);
  });
});
