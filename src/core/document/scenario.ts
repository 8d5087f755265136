import { type Field, field } from "../devices";
import { isObject, type Json, type JsonObject, type Message, say } from "../terms";
import { amended, idsOf } from "./amend";
import { checkJob } from "./checkJob";
import { checkSystem } from "./checkSystem";
import { perObject } from "./perObject";
import { below, Report } from "./problem";
import { HINT_STRENGTHS, type Scenario } from "./scenarioTypes";
import {
  anyObject,
  type Gathered,
  list,
  map,
  needed,
  record,
  refTo,
  type RecordShape,
  phaseLetters,
  somePhases,
  usual,
  value,
  within,
  words,
  type Form,
} from "./shape";
import { STEP_VERBS, stepFields } from "../steps";
import type { StillhotDocument, System } from "./types";

const ROUTE = [
  "step",
  "tries",
  "rule",
  "knows",
  "consequence",
  "verdict",
  "restored",
  "answered",
  "predicted",
  "finishedWithin",
];
const GROUPS = ["any", "all", "not"];

/** A few words that most often are an id of this kind, and may be others: a ground set of a step has no id on the map. */
const wordsOr = (to: string): RecordShape => ({ ...words(100), form: { as: "id", to } });

const stepPattern: RecordShape = record({
  do: value(field.choice([...STEP_VERBS, "go"], "open")),
  element: refTo("element"),
  at: refTo("place"),
  phases: phaseLetters(),
  with: wordsOr("tool"),
  to: words(100),
});

const condition: RecordShape = within("condition", () => conditionRecord);
const conditionRecord: RecordShape = record(
  {
    step: stepPattern,
    tries: stepPattern,
    rule: refTo("rule"),
    knows: refTo("fact"),
    consequence: value(field.choice(["arc", "fault", "shock"], "arc")),
    verdict: value(field.choice(["live", "could-go-live", "grounded", "isolated"], "live")),
    restored: value(field.flag(true)),
    answered: refTo("inject"),
    predicted: value(field.flag(true)),
    finishedWithin: value(field.amount("min", 30, { above: 0, max: 1440 })),
    any: list(condition),
    all: list(condition),
    not: condition,
    before: stepPattern,
    after: stepPattern,
    where: wordsOr("thing"),
    workPoint: refTo("workPoint"),
  },
  (found) => {
    const asked = [...ROUTE, ...GROUPS].filter((key) => found[key] !== undefined);
    return asked.length === 1
      ? undefined
      : say("scenario.read.oneQuestion", {
          keys: [...ROUTE, ...GROUPS].join(", "),
          found: asked.length === 0 ? "none" : asked.join(", "),
        });
  },
  [...ROUTE, ...GROUPS],
);

/** Shapes that the JSON Schema keeps under `$defs`, since they stand within themselves. */
export const scenarioDefs = (): JsonObject => ({
  condition: conditionRecord.schema,
  scenarioStep: {
    anyOf: [
      {
        type: "object",
        properties: { do: { const: "go" }, at: { type: "string" } },
        required: ["do", "at"],
      },
      { $ref: "#/$defs/step" },
    ],
  },
});

/** A step is asked for key by key; what it leads to is looked up as everywhere in a scenario. */
function stepForm(): RecordShape {
  const { done: _done, element: _element, at: _at, do: _do, phases: _phases, ...others } = stepFields;
  return record({
    do: needed(value(field.choice([...STEP_VERBS, "go"], "open"))),
    element: usual(refTo("element")),
    at: usual(refTo("place")),
    phases: usual(phaseLetters()),
    ...Object.fromEntries(Object.entries(others).map(([key, it]) => [key, value(it as Field<unknown>)])),
    with: wordsOr("tool"),
  });
}

/** Steps are checked whole by `checkSteps`, against the drawing as it truly stands. */
const scenarioSteps: RecordShape = {
  schema: { type: "array", items: { $ref: "#/$defs/scenarioStep" } },
  form: list(stepForm()).form,
  check(found, path, { report }) {
    if (!Array.isArray(found)) report.addExpected(path, found, say("file.expectedList"));
  },
};

const amendment = {
  add: record({ structures: map(anyObject()), points: map(anyObject()), elements: map(anyObject()) }),
  set: map(anyObject(), "thing"),
  remove: list(refTo("thing")),
};

const isEmptyFact = (found: JsonObject): Message | undefined =>
  ["add", "set", "remove", "seized", "fused"].every((key) => found[key] === undefined)
    ? say("scenario.read.nothingHidden")
    : undefined;

const fact = record(
  {
    label: needed(words(200)),
    text: usual(words()),
    ...amendment,
    seized: map(somePhases(), "element"),
    fused: map(somePhases(), "element"),
  },
  isEmptyFact,
);

const reveal = record(
  {
    by: needed(value(field.choice(["inspect", "test", "ask"], "inspect"))),
    at: usual(refTo("stand")),
    element: refTo("element"),
    text: needed(words()),
    shows: usual(list(refTo("fact"))),
  },
  (found) =>
    found["by"] !== "ask" && found["at"] === undefined && found["element"] === undefined
      ? say("scenario.read.revealPlace")
      : undefined,
);

const inject = record({
  label: needed(words(200)),
  after: needed(
    record(
      {
        step: value(field.amount("", 1, { min: 0, max: 10_000, whole: true })),
        seconds: value(field.amount("s", 0, { min: 0, max: 86_400 })),
        plusUpTo: value(field.amount("s", 0, { min: 0, max: 86_400 })),
        match: stepPattern,
      },
      (found) =>
        ["step", "seconds", "match"].filter((key) => found[key] !== undefined).length === 1
          ? undefined
          : say("scenario.read.oneTrigger"),
      ["step", "seconds", "match"],
    ),
  ),
  what: usual(words()),
  expected: usual(words()),
  expects: condition,
  note: words(),
  ...amendment,
});

const criterion = record({
  id: needed(refTo("own")),
  kind: needed(value(field.choice(["must", "never", "good"], "must"))),
  text: needed(words()),
  when: needed(condition),
  objective: usual(refTo("objective")),
  weight: usual(value(field.amount("", 1, { min: 0, max: 1000 }))),
  severity: usual(value(field.choice(["danger", "warning", "note"], "warning"))),
  citation: words(),
  why: words(),
});

const trap = record({
  id: needed(refTo("own")),
  label: needed(words(200)),
  fact: usual(refTo("fact")),
  when: needed(condition),
  text: usual(words()),
  objective: refTo("objective"),
  fall: scenarioSteps,
});

const hint = record(
  {
    id: needed(refTo("own")),
    until: condition,
    ...Object.fromEntries(HINT_STRENGTHS.map((strength) => [strength, usual(words())])),
  },
  (found) =>
    HINT_STRENGTHS.every((it) => found[it] === undefined)
      ? say("scenario.read.emptyHint", { strengths: HINT_STRENGTHS.join(", ") })
      : undefined,
);

const scenarioKeys = {
  level: value(field.amount("", 1, { min: 1, max: 5, whole: true })),
  objectives: list(record({ id: needed(refTo("own")), text: needed(words()), tasks: list(words(100)) })),
  prebrief: words(20_000),
  assume: list(words()),
  mode: value(field.choice(["practice", "exam"], "practice")),
  minutes: value(field.amount("min", 30, { above: 0, max: 1440 })),
  passMark: value(field.amount("%", 0, { min: 0, max: 100 })),
  seed: value(field.amount("", 1, { min: 0, max: 2 ** 32 - 1, whole: true })),
  truth: map(fact),
  reveals: list(reveal),
  injects: map(inject),
  operator: record({ permit: usual(words()), repeat: usual(list(words(200))) }),
  criteria: list(criterion),
  traps: list(trap),
  hints: list(hint),
  debrief: record({
    reactions: usual(list(words())),
    happened: usual(list(words())),
    why: usual(list(words())),
    takeAway: usual(list(words())),
  }),
  answer: scenarioSteps,
  without: list(refTo("fact")),
  variant: record({
    of: needed(words(200)),
    number: needed(value(field.amount("", 1, { min: 1, max: 9999, whole: true }))),
    version: needed(value(field.amount("", 1, { min: 1, max: 99, whole: true }))),
  }),
};
const scenarioShape = record(scenarioKeys);

/** Keys of a scenario, in the order in which they are written. */
export const SCENARIO_KEYS: readonly string[] = Object.keys(scenarioKeys);

/** The scenario's part of the JSON Schema. */
export const scenarioSchema = (): JsonObject => scenarioShape.schema;

/** How each key of a scenario is asked for, by the definition that it is checked by; which variant it is nobody is asked. */
export const scenarioForms: Readonly<Record<string, Form>> = Object.fromEntries(
  Object.entries(scenarioKeys)
    .filter(([key]) => key !== "variant")
    .map(([key, { form }]) => [key, form]),
);

/** The scenario of a file; nothing where it has none. */
export const scenarioOf = (document: StillhotDocument): Scenario => document.scenario ?? {};

/**
 * Checks what an instructor hides and how an attempt is scored: every key by itself, every id that it names, and the
 * drawing that the hidden facts make.
 *
 * @param system absent where the file's own drawing has problems: then only the scenario's shape is checked
 */
export function checkScenario(
  report: Report,
  scenario: Json | undefined,
  system: System | undefined,
  job: Json | undefined,
): void {
  if (scenario === undefined) return;
  if (!isObject(scenario)) return report.addExpected("scenario", scenario, say("file.expectedObject"));
  const { problems, unknown, references } = shapeFacts(scenario);
  for (const { path, message } of problems) report.add(path, message);
  report.unknown.push(...unknown);
  if (problems.length > 0 || system === undefined) return;
  checkIds(report, scenario, references, system, job);
  if (report.problems.some(({ path }) => path.startsWith("scenario"))) return;
  checkTruth(report, scenario, system, job);
}

const shapeFacts = perObject((scenario: JsonObject) => {
  const gathered: Gathered = { report: new Report(), references: [] };
  scenarioShape.check(scenario, "scenario", gathered);
  const { problems, unknown } = gathered.report;
  return { problems, unknown, references: gathered.references };
});

/** Every id leads somewhere, and ids of one kind differ. */
function checkIds(
  report: Report,
  scenario: JsonObject,
  references: Gathered["references"],
  system: System,
  job: Json | undefined,
): void {
  const { truth = {}, injects = {}, objectives = [] } = scenario as unknown as Scenario;
  const changes = [...Object.values(truth), ...Object.values(injects)];
  const elements = new Set([
    ...Object.keys(system.elements),
    ...changes.flatMap(({ add }) => Object.keys(add?.elements ?? {})),
  ]);
  const points = new Set([
    ...Object.keys(system.points),
    ...changes.flatMap(({ add }) => Object.keys(add?.points ?? {})),
  ]);
  const structures = new Set([
    ...Object.keys(system.structures ?? {}),
    ...changes.flatMap(({ add }) => Object.keys(add?.structures ?? {})),
  ]);
  const isPlace = (id: string) => points.has(id) || structures.has(id);
  const workPoints = new Set(
    isObject(job) && isObject(job["workPoints"]) ? Object.keys(job["workPoints"]) : [],
  );
  const facts = new Set([...Object.keys(truth), ...Object.keys(injects)]);
  const known: Readonly<Record<string, { has(id: string): boolean }>> = {
    // A ground set that a step puts on has an id of its own.
    element: { has: (id) => elements.has(id) || /^g\d+$/.test(id) },
    stand: { has: isPlace },
    thing: { has: (id) => elements.has(id) || isPlace(id) },
    place: { has: (id) => isPlace(id) || workPoints.has(id) },
    workPoint: workPoints,
    fact: facts,
    inject: new Set(Object.keys(injects)),
    objective: new Set(objectives.map(({ id }) => id)),
  };
  const own = new Map<string, string>();
  for (const { path, to, id } of references) {
    if (to === "own") {
      const list = path.replace(/\[\d+\]\.id$/, "");
      if (own.has(`${list} ${id}`))
        report.add(path, say("scenario.read.idTwice", { id, first: own.get(`${list} ${id}`)! }));
      else own.set(`${list} ${id}`, path);
    } else if (known[to] !== undefined && !known[to].has(id))
      report.addExpected(path, id, say(`scenario.read.idOf.${to as "element"}`));
  }
  for (const id of Object.keys(truth))
    if (Object.hasOwn(injects, id))
      report.add(
        below("scenario.injects", id),
        say("scenario.read.idTwice", { id, first: `scenario.truth.${id}` }),
      );
  for (const [name, changes] of [
    ["truth", truth],
    ["injects", injects],
  ] as const)
    for (const [id, { add }] of Object.entries(changes))
      for (const it of idsOf({ add }))
        if ([system.elements, system.points, system.structures ?? {}].some((map) => Object.hasOwn(map, it)))
          report.add(below(`scenario.${name}`, id) + ".add", say("scenario.read.onTheMap", { id: it }));
}

/** The drawing with every hidden fact must be one that can be read, and so must it be with every inject. */
function checkTruth(report: Report, scenario: Scenario, system: System, job: Json | undefined): void {
  const truth = amended(system, Object.values(scenario.truth ?? {}));
  const own = new Report();
  checkSystem(own, truth as unknown as Json);
  if (own.problems.length === 0) checkJob(own, withoutSteps(job), truth);
  for (const { path, message } of own.problems)
    report.add("scenario.truth", say("scenario.read.truthUnfit", { path, problem: message }));
  if (own.problems.length > 0) return;

  let later: System = truth;
  for (const [id, inject] of Object.entries(scenario.injects ?? {})) {
    const changed = amended(later, [inject]);
    const fits = new Report();
    checkSystem(fits, changed as unknown as Json);
    const [first] = fits.problems;
    if (first === undefined) later = changed;
    else
      report.add(
        below("scenario.injects", id),
        say("scenario.read.truthUnfit", { path: first.path, problem: first.message }),
      );
  }
  checkSteps(report, "scenario.answer", scenario.answer, later, job);
  (scenario.traps ?? []).forEach(({ fall }, index) =>
    checkSteps(report, `scenario.traps[${index}].fall`, fall, later, job),
  );
}

/** Steps in a scenario name what is there in truth. */
function checkSteps(
  report: Report,
  path: string,
  steps: Json | undefined,
  truth: System,
  job: Json | undefined,
): void {
  if (!Array.isArray(steps)) return;
  const own = new Report();
  const asJob = (steps as readonly Json[]).map((step) =>
    isObject(step) && step["do"] === "go" ? { ...step, do: "inspect" } : step,
  );
  checkJob(own, { ...(isObject(job) ? job : {}), steps: asJob }, truth);
  for (const { path: at, message } of own.problems)
    if (at.startsWith("job.steps")) report.add(at.replace("job.steps", path), message);
}

const withoutSteps = (job: Json | undefined): Json | undefined =>
  isObject(job) ? { ...job, steps: [] } : job;
