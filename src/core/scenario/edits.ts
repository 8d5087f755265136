import {
  amended,
  conductorsOf,
  type Edit,
  type HiddenFact,
  type Inject,
  jobOf,
  nameIn,
  pointName,
  type SavedElement,
  scenarioOf,
  type ScenarioStep,
  type Step,
  type StillhotDocument,
  type System,
} from "../document";
import { change, elementOf, nextId, pointOf, putPart } from "../document/edits/change";
import { endsOf } from "../network";
import { listOf } from "../procedure/job/names";
import { isRefusal, type JsonObject, type Letter, type Message, refuse, type Refusal, say } from "../terms";
import { elementIn } from "./world";

/** An id that no fact and no inject has. */
export const newFactId = (document: StillhotDocument): string =>
  nextId(
    "f",
    (id) =>
      Object.hasOwn(scenarioOf(document).truth ?? {}, id) ||
      Object.hasOwn(scenarioOf(document).injects ?? {}, id),
  );

/** A scenario with these hidden facts in place of its own. */
export const withTruth = (
  { scenario }: StillhotDocument,
  truth: Readonly<Record<string, HiddenFact>>,
): JsonObject => {
  const { truth: _, ...rest } = scenario ?? {};
  return Object.keys(truth).length === 0 ? rest : { ...rest, truth: truth as unknown as JsonObject };
};

/**
 * Hides things that are drawn: they stay true and leave the map. Points that then carry nothing go with them, unless work
 * is done there.
 *
 * @param label what the fact is called afterwards
 */
export const hide =
  (ids: readonly string[], label: string): Edit =>
  (before) => {
    const off = takenOff(before, ids);
    if (isRefusal(off)) return off;
    const fact: HiddenFact = {
      label,
      add: off.add,
    };
    const id = newFactId(before);
    const truth = { ...scenarioOf(before).truth, [id]: fact };
    return leavingTheMap(before, off, id, (scenario) => withTruth({ ...before, scenario }, truth));
  };

/** Things that are drawn come only in the middle: they leave the map and the truth, until something brings them. */
export const comeLater =
  (ids: readonly string[], after: Inject["after"], label: string): Edit =>
  (before) => {
    const off = takenOff(before, ids);
    if (isRefusal(off)) return off;
    const inject: Inject = {
      label,
      after,
      add: off.add,
    };
    const id = newFactId(before);
    const injects = { ...scenarioOf(before).injects, [id]: inject } as unknown as JsonObject;
    return leavingTheMap(before, off, id, (scenario) => ({ ...scenario, injects }));
  };

/** What leaves the map, and the map without it. */
export interface TakenOff {
  readonly names: Message;
  readonly add: NonNullable<HiddenFact["add"]>;
  readonly map: System;
}

/**
 * Things of a drawing, what joins or runs beside them, and the points that then carry nothing. Refused where the map would
 * have nothing left of what is worked on.
 */
export function takenOff(before: StillhotDocument, ids: readonly string[]): TakenOff | Refusal {
  const missing = ids.find((id) => elementOf(before, id) === undefined && pointOf(before, id) === undefined);
  if (missing !== undefined) return refuse(say("edit.noThing", { id: missing }));
  const all = Object.entries(before.system.elements);
  const joined = all.flatMap(([id]) =>
    ids.includes(id) || pointsOf(before.system, id).some((point) => ids.includes(point)) ? [id] : [],
  );
  const beside = all.flatMap(([id, it]) =>
    joined.includes(it["span"] as string) && !joined.includes(id) ? [id] : [],
  );
  const elements = [...joined, ...beside];
  const left = Object.keys(before.system.elements).filter((id) => !elements.includes(id));
  const carried = new Set(left.flatMap((id) => pointsOf(before.system, id)));
  const touched = new Set([...elements.flatMap((id) => pointsOf(before.system, id)), ...ids]);
  const workedAt = new Set<string>(Object.values(jobOf(before).workPoints).map(({ at }) => at));
  const points = Object.keys(before.system.points).filter(
    (id) => touched.has(id) && !carried.has(id) && !workedAt.has(id),
  );
  const records = (map: Readonly<Record<string, JsonObject>>, of: readonly string[]) =>
    Object.fromEntries(of.map((id) => [id, map[id]!]));
  const map = amended(before.system, [{ remove: [...elements, ...points] }]);
  const bare = Object.values(jobOf(before).workPoints).find(({ at, conductors }) => {
    const there = conductorsOf(map).get(at) ?? [];
    return [...conductors].some((letter) => !there.includes(letter as Letter));
  });
  if (bare !== undefined) return refuse(say("scenario.edit.workThere", { name: pointName(before, bare.at) }));
  return {
    names: listOf(ids.map((id) => nameIn(before, id))),
    add: {
      points: records(before.system.points, points),
      elements: records(before.system.elements, elements) as Record<string, SavedElement>,
    },
    map,
  };
}

/** The edit that leaves the map without what goes, with what the scenario then says of it. */
export const leavingTheMap = (
  before: StillhotDocument,
  { names, map }: Pick<TakenOff, "names" | "map">,
  made: string,
  inScenario: (scenario: JsonObject) => JsonObject,
) =>
  change(
    say("scenario.edit.hide", { names }),
    before,
    (draft) => {
      draft.system = map;
      const { scenario, job } = answerFromJob(before);
      if (job !== undefined) draft.job = job;
      putPart(draft, "scenario", inScenario(scenario));
    },
    { made: [made] },
  );

/** What the map shows is not there at all. */
export const notThere =
  (id: string, label: string): Edit =>
  (before) => {
    const name = nameIn(before, id);
    const fact: HiddenFact = {
      label,
      remove: [id],
    };
    return addFact(before, fact, id, name, "scenario.edit.set");
  };

/** Steps of the job become the scenario's answer: they may name what is hidden, and an apprentice is to find them. */
function answerFromJob({ scenario = {}, job }: StillhotDocument): { scenario: JsonObject; job?: JsonObject } {
  const { steps, ...rest } = job ?? {};
  if (!Array.isArray(steps) || steps.length === 0) return { scenario };
  return { scenario: { ...scenario, answer: scenario["answer"] ?? steps }, job: rest };
}

const pointsOf = (system: System, id: string): string[] => {
  const element = elementIn(system, id);
  return element === undefined ? [] : endsOf(element).map(([, point]) => point);
};

/** Puts a hidden fact on the map: what is true is shown. */
export const unhide =
  (fact: string): Edit =>
  (before) => {
    const { [fact]: hidden, ...truth } = scenarioOf(before).truth ?? {};
    if (hidden === undefined) return refuse(say("scenario.edit.noFact", { id: fact }));
    return change(say("scenario.edit.unhide", { label: hidden.label }), before, (draft) => {
      draft.system = amended(before.system, [hidden]);
      putPart(draft, "scenario", withTruth(before, truth));
    });
  };

/** Takes a hidden fact away: what the map shows is true. Steps that name what it added go with it, and so do its reveals. */
export const forget =
  (fact: string): Edit =>
  (before) => {
    const { [fact]: hidden, ...truth } = scenarioOf(before).truth ?? {};
    if (hidden === undefined) return refuse(say("scenario.edit.noFact", { id: fact }));
    const gone = [...Object.keys(hidden.add?.elements ?? {}), ...Object.keys(hidden.add?.points ?? {})];
    const { answer, reveals, traps } = scenarioOf(before);
    const stays = (step: ScenarioStep) => !gone.some((id) => id === (step as Step).element || id === step.at);
    const scenario = {
      ...before.scenario,
      ...(answer === undefined ? {} : { answer: answer.filter(stays) }),
      ...(reveals === undefined
        ? {}
        : { reveals: reveals.filter(({ shows }) => shows === undefined || shows.some((it) => it !== fact)) }),
      ...(traps === undefined ? {} : { traps: traps.filter((it) => it.fact !== fact) }),
    } as unknown as JsonObject;
    return change(say("edit.setScenario"), before, (draft) =>
      putPart(draft, "scenario", withTruth({ ...before, scenario }, truth)),
    );
  };

/** Makes a thing otherwise in truth than the map shows it: another position, another label, another connection. */
export const makeTrue =
  (id: string, keys: JsonObject, label: string): Edit =>
  (before) => {
    const name = nameIn(before, id);
    const fact: HiddenFact = {
      label,
      set: { [id]: keys },
    };
    return addFact(before, fact, id, name, "scenario.edit.set");
  };

/** Makes a device that does not move, or whose handle moves alone. */
export const makeStuck =
  (id: string, how: "seized" | "fused", phases: string | true, label: string): Edit =>
  (before) => {
    const name = nameIn(before, id);
    const fact: HiddenFact = {
      label,
      [how]: { [id]: phases },
    };
    return addFact(before, fact, id, name, "scenario.edit.stuck");
  };

function addFact(
  before: StillhotDocument,
  fact: HiddenFact,
  about: string,
  name: string | Message,
  label: "scenario.edit.set" | "scenario.edit.stuck",
) {
  const { structures = {} } = before.system;
  if (![before.system.elements, before.system.points, structures].some((map) => Object.hasOwn(map, about)))
    return refuse(say("edit.noThing", { id: about }));
  const id = newFactId(before);
  const truth = { ...scenarioOf(before).truth, [id]: fact };
  return change(
    say(label, { name }),
    before,
    (draft) => putPart(draft, "scenario", withTruth(before, truth)),
    { made: [id] },
  );
}
