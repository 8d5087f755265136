import { describe, expect, test } from "vitest";
import {
  ANYWHERE,
  type AttemptAct,
  attemptActsFor,
  ON_THE_RADIO,
  toolsOf,
} from "../../src/app/scenario/acts";
import {
  act,
  type Attempt,
  answerTo,
  type ElementId,
  isRefusal,
  nextGroundId,
  type Owner,
  type PointId,
  type ScenarioStep,
  scenarioOf,
  scoreOf,
  STEP_VERBS,
  startAttempt,
  type StillhotDocument,
  type WorkPointId,
  worldOf,
} from "../../src/core";
import { demoDrawings } from "../support/demoDrawings";
import { files, scenarioFile } from "./library";

/** What one can point at to do a step: things that the apprentice knows of, and no others. */
function ownersOf({ system, job }: StillhotDocument, step: ScenarioStep): Owner[] {
  const { element, at } = placesOf(step);
  const workPoints = (job?.["workPoints"] ?? {}) as object;
  return [
    ...(element !== undefined && Object.hasOwn(system.elements, element)
      ? [{ of: "element", id: element as ElementId } as const]
      : []),
    ...(at !== undefined && Object.hasOwn(system.points, at)
      ? [{ of: "point", id: at as PointId } as const]
      : []),
    ...(at !== undefined && Object.hasOwn(workPoints, at)
      ? [{ of: "workPoint", id: at as WorkPointId } as const]
      : []),
  ];
}

const placesOf = (step: ScenarioStep) => step as { readonly element?: string; readonly at?: string };

type Keys = Readonly<Record<string, unknown>>;

/** Whether what the screen asks beside a verb can be answered so that this step comes out. */
function comesOutOf(document: StillhotDocument, step: ScenarioStep, offer: AttemptAct): boolean {
  const asks = (what: AttemptAct["asks"][number]): boolean => offer.asks.includes(what);
  return Object.entries(step).every(([key, value]) => {
    switch (key) {
      case "do":
        return offer.verb === value;
      case "phases":
        return asks("phases") && [...(value as string)].every((it) => offer.letters.includes(it));
      case "with":
        return asks("tool") && toolsOf(document).includes(value as string);
      case "method":
      case "gloveClass":
        return asks("method");
      case "expect":
        return asks("expect");
      case "to":
      case "cable":
        return asks("ground");
      case "first":
        return asks("ground") || asks("first");
      case "seconds":
        return asks("seconds");
      case "position":
        return asks("position");
      case "element":
        return step.do === "ground"
          ? value === nextGroundId(document.system)
          : (offer.step as Keys)["element"] === value;
      default:
        return (offer.step as Keys)[key] === value;
    }
  });
}

/** Whether the play screen, as the attempt stands, offers a step: a button, with what it asks beside. */
function isOffered(attempt: Attempt, step: ScenarioStep): boolean {
  const { element, at } = placesOf(step);
  if (ON_THE_RADIO.some((it) => it === step.do) && element === undefined && at === undefined) return true;
  const { document } = worldOf(attempt).known;
  const offers = [...ANYWHERE, ...ownersOf(document, step).flatMap((it) => attemptActsFor(document, it))];
  return offers.some((it) => comesOutOf(document, step, it));
}

/** Steps of an order that the screen does not offer when their turn comes, and the attempt after all of them. */
function played(document: StillhotDocument, steps: readonly ScenarioStep[]) {
  const missing: string[] = [];
  let attempt = startAttempt(document);
  for (const step of steps) {
    if (!isOffered(attempt, step)) missing.push(JSON.stringify(step));
    const acted = act(attempt, step);
    if (isRefusal(acted)) break;
    attempt = acted.attempt;
  }
  const done = act(attempt, { do: "finish" });
  return { missing, attempt: isRefusal(done) ? attempt : done.attempt };
}

describe("a perfect player is offered every step of the answer, and gets full marks for it", () => {
  test.each(files)("%s", (id) => {
    const document = scenarioFile(id);
    const { missing, attempt } = played(document, answerTo(document));
    expect(missing).toEqual([]);
    expect(scoreOf(attempt)).toMatchObject({ percent: 100, passed: true, dangers: [] });
  });
});

/** Verbs that no press of an attempt offers, and why. */
const NOT_OFFERED: Readonly<Record<string, string>> = {
  "hand-over": "nobody else is there to take a tag, a set or a permit over",
  note: "what is written down is for the job's own log",
};

/** Everything that can be pointed at. */
const allOwners = ({ system, job }: StillhotDocument): Owner[] => [
  ...Object.keys(system.elements).map((id): Owner => ({ of: "element", id: id as ElementId })),
  ...Object.keys(system.points).map((id): Owner => ({ of: "point", id: id as PointId })),
  ...Object.keys((job?.["workPoints"] ?? {}) as object).map((id): Owner => ({
    of: "workPoint",
    id: id as WorkPointId,
  })),
];

test("every verb is offered somewhere in an attempt, or there is a reason why not", () => {
  const offered = new Set<string>([...ON_THE_RADIO, ...ANYWHERE.map(({ verb }) => verb)]);
  const look = (document: StillhotDocument): void => {
    for (const owner of allOwners(document))
      for (const { verb } of attemptActsFor(document, owner)) offered.add(verb);
  };
  for (const [, document] of demoDrawings()) look(document);
  for (const id of files) {
    look(worldOf(startAttempt(scenarioFile(id))).known.document);
    // That each of these is offered when its turn comes is asked above.
    for (const step of answerTo(scenarioFile(id))) offered.add(step.do);
  }
  expect(STEP_VERBS.filter((it) => !offered.has(it)).sort()).toEqual(Object.keys(NOT_OFFERED).sort());
});

describe("no dangerous way passes", () => {
  const falls = files.flatMap((id) =>
    (scenarioOf(scenarioFile(id)).traps ?? []).flatMap(({ id: trap, fall }) =>
      fall === undefined ? [] : [[id, trap, fall] as const],
    ),
  );
  test.each(falls)("%s: %s", (id, _trap, fall) => {
    const { attempt } = played(scenarioFile(id), fall);
    expect(scoreOf(attempt).passed).toBe(false);
  });

  test("a customer's machine that is started again earns no mark", () => {
    let asked = 0;
    for (const id of files) {
      const document = scenarioFile(id);
      const answer = answerTo(document);
      const stopped = answer.find((it) => it.do === "stop");
      if (stopped === undefined) continue;
      asked++;
      const { attempt } = played(document, [...answer, { do: "start", element: stopped.element! }]);
      expect(scoreOf(attempt).percent, id).toBeLessThan(100);
    }
    expect(asked).toBeGreaterThan(1);
  });
});
