import { elementOfKind } from "./elements";
import { DEVICES, field, isConductor, isGroundSet } from "../devices";
import { type ElementId, isObject, type Json, type JsonObject, type Letter, LETTERS, say } from "../terms";
import { checkFields, reportFacts } from "./checkFields";
import { isMap, missing, records } from "./checkSystem";
import { conductorsOf } from "./conductors";
import { needsOf, stepFields, type StepVerb, takesStructure } from "../steps";
import { jobFields, LEFT_AS, workPointFields } from "./jobFields";
import { perObject } from "./perObject";
import { below, type Report } from "./problem";
import type { SavedElement, System } from "./types";

const OTHER_KEYS = ["workPoints", "tools", "leave", "steps"];

/**
 * Checks a job against its system: work points and steps name what is there.
 *
 * @param system absent where it has problems of its own: then only the job's shape is checked
 */
export function checkJob(report: Report, job: Json | undefined, system: System | undefined): void {
  if (job === undefined) return;
  if (!isObject(job)) return report.addExpected("job", job, say("file.expectedObject"));
  reportFacts(report, "job", checkFields(jobFields, job, OTHER_KEYS));
  const { workPoints = {}, tools = [], steps = [] } = job;
  if (isMap(report, "job.workPoints", workPoints))
    for (const [id, workPoint] of records(report, "job.workPoints", workPoints))
      checkWorkPoint(report, below("job.workPoints", id), workPoint, system);
  checkTools(report, tools);
  checkLeave(report, job["leave"], system);
  if (!Array.isArray(steps)) return report.addExpected("job.steps", steps, say("file.expectedList"));
  checkSteps(report, steps as readonly Json[], isObject(workPoints) ? workPoints : undefined, system);
}

const workPointFacts = perObject((workPoint: JsonObject) => checkFields(workPointFields, workPoint));
const stepFacts = perObject((step: JsonObject) => checkFields(stepFields, step));

function checkWorkPoint(
  report: Report,
  path: string,
  workPoint: JsonObject,
  system: System | undefined,
): void {
  const facts = workPointFacts(workPoint);
  reportFacts(report, path, facts);
  if (facts.problems.length > 0 || system === undefined) return;
  const at = workPoint["at"] as string;
  const there = conductorsOf(system).get(at);
  if (there === undefined) return report.addExpected(`${path}.at`, at, say("file.idOfPoint"));
  checkLetters(report, `${path}.conductors`, workPoint["conductors"] as string, at, there);
  ((workPoint["does"] ?? []) as readonly string[]).forEach((id, index) => {
    if (savedElement(system, id) === undefined)
      report.addExpected(below(`${path}.does`, index), id, say("file.idOfElement"));
  });
}

/** How things are to be left: a word for each element that is named. */
function checkLeave(report: Report, leave: Json | undefined, system: System | undefined): void {
  if (leave === undefined || !isMap(report, "job.leave", leave)) return;
  for (const [id, word] of Object.entries(leave)) {
    const path = below("job.leave", id);
    if (!(LEFT_AS as readonly Json[]).includes(word!))
      report.addExpected(path, word, say("read.oneOf", { choices: LEFT_AS.join(", ") }));
    else if (system !== undefined && savedElement(system, id) === undefined)
      report.addExpected(path, id, say("file.idOfElement"));
  }
}

/** Letters, each once and at least one, of a point's conductors. */
function checkLetters(
  report: Report,
  path: string,
  found: string,
  at: string,
  there: readonly Letter[],
): void {
  const letters = [...found];
  const foreign = letters.find((it) => !there.includes(it as Letter) && LETTERS.includes(it as Letter));
  if (foreign !== undefined) return report.add(path, missing(foreign, at, there));
  if (
    letters.length === 0 ||
    new Set(letters).size < letters.length ||
    letters.some((it) => !there.includes(it as Letter))
  )
    report.addExpected(path, found, say("file.conductors", { point: at, letters: there.join("") }));
}

function checkTools(report: Report, tools: Json): void {
  if (!Array.isArray(tools)) return report.addExpected("job.tools", tools, say("file.expectedList"));
  (tools as readonly Json[]).forEach((tool, index) => {
    if (typeof tool !== "string" || tool.length > 100)
      report.addExpected(below("job.tools", index), tool, say("file.expectedText", { most: 100 }));
  });
}

/** Ground sets that steps put on, by id. */
type Grounds = Map<string, { readonly phases: string; readonly isOn: boolean }>;

function checkSteps(
  report: Report,
  steps: readonly Json[],
  workPoints: JsonObject | undefined,
  system: System | undefined,
): void {
  const grounds: Grounds = new Map();
  steps.forEach((step, index) => {
    const path = below("job.steps", index);
    if (!isObject(step)) return report.addExpected(path, step, say("file.expectedObject"));
    const facts = stepFacts(step);
    reportFacts(report, path, facts);
    if (facts.problems.length > 0) return;
    const verb = step["do"] as StepVerb;
    for (const keys of needsOf(verb))
      if (keys.every((key) => step[key] === undefined))
        return report.add(
          `${path}.${keys[0]!}`,
          say("file.stepKey", {
            verb,
            keys: needsOf(verb)
              .map((them) => them.join(" or "))
              .join(", "),
          }),
        );
    if (system !== undefined) checkStep(report, path, step, verb, { system, workPoints, grounds });
  });
}

interface Surroundings {
  readonly system: System;
  /** absent where they are no map at all, which is said elsewhere */
  readonly workPoints: JsonObject | undefined;
  readonly grounds: Grounds;
}

function checkStep(
  report: Report,
  path: string,
  step: JsonObject,
  verb: StepVerb,
  around: Surroundings,
): void {
  const { system, workPoints, grounds } = around;
  const { element, at } = step as { element?: string; at?: string };
  const phases = step["phases"] as string | undefined;
  if (verb === "work") {
    if (workPoints !== undefined && !Object.hasOwn(workPoints, at!))
      report.addExpected(`${path}.at`, at, say("file.idOfWorkPoint"));
    return;
  }
  const there = at === undefined ? undefined : conductorsOf(system).get(at);
  const isStructure = at !== undefined && takesStructure(verb) && Object.hasOwn(system.structures ?? {}, at);
  if (at !== undefined && there === undefined && !isStructure)
    return report.addExpected(`${path}.at`, at, say("file.idOfPoint"));
  if (verb === "ground") return checkGround(report, path, step, { at: at!, there: there!, ...around });
  if (verb === "set-position" && step["position"] === undefined)
    checkOneOf(
      report,
      `${path}.to`,
      step["to"],
      elementOfKind(system, element, "regulator") !== undefined
        ? { as: "choice", choices: ["neutral"] }
        : DEVICES.transfer.fields.position.input,
    );
  const own = element === undefined ? undefined : phasesOf(element, system, grounds);
  if (element !== undefined && own === undefined)
    return report.addExpected(`${path}.element`, element, say("file.idOfStepElement"));
  if (verb === "unground" && grounds.has(element!))
    grounds.set(element!, { ...grounds.get(element!)!, isOn: false });
  if (phases === undefined) return;
  if (own !== undefined) {
    const reading = field.phases().read(phases, { phases: own });
    if (!("value" in reading)) report.add(`${path}.phases`, reading.problem);
  } else if (there !== undefined && phases !== "") checkLetters(report, `${path}.phases`, phases, at!, there);
}

/** Letters that a step may name of an element: its own phases, and the neutral where that can be cut. */
function phasesOf(element: string, system: System, grounds: Grounds): string | undefined {
  const set = grounds.get(element);
  if (set !== undefined) return set.phases;
  const saved = savedElement(system, element);
  if (saved === undefined) return undefined;
  const own = typeof saved["phases"] === "string" ? saved["phases"] : "";
  return isConductor(saved) ? `${own}N` : own;
}

const savedElement = (system: System, id: string): SavedElement | undefined =>
  Object.hasOwn(system.elements, id)
    ? (system.elements as Readonly<Record<string, SavedElement>>)[id]
    : undefined;

function checkOneOf(
  report: Report,
  path: string,
  found: Json | undefined,
  input: { readonly as: string; readonly choices?: readonly (string | number)[] },
): void {
  const choices = input.choices ?? [];
  if (!choices.includes(found as string))
    report.addExpected(path, found, say("read.oneOf", { choices: choices.join(", ") }));
}

function checkGround(
  report: Report,
  path: string,
  step: JsonObject,
  { at, there, system, grounds }: Surroundings & { readonly at: string; readonly there: readonly Letter[] },
): void {
  const to = step["to"] ?? "neutral";
  const phases = (step["phases"] as string | undefined) ?? there.filter((it) => it !== "N").join("");
  checkOneOf(report, `${path}.to`, to, DEVICES.ground.fields.to.input);
  checkLetters(
    report,
    `${path}.phases`,
    phases,
    at,
    there.filter((it) => it !== "N"),
  );
  if (to !== "earth" && !there.includes("N")) report.add(`${path}.to`, missing("N", at, there));
  const id =
    (step["element"] as string | undefined) ?? nextGroundId(system, (it) => grounds.get(it)?.isOn === true);
  const drawn = savedElement(system, id);
  if (drawn !== undefined && !isGroundSet(drawn))
    return report.addExpected(`${path}.element`, id, say("file.groundNotGround", { element: id }));
  if (grounds.get(id)?.isOn === true)
    return report.add(`${path}.element`, say("file.groundTwice", { element: id }));
  grounds.set(id, { phases, isOn: true });
}

/** The id of a ground set that a step puts on without naming one: the first of `g1`, `g2`, … that nothing has. */
export function nextGroundId(system: System, isTaken: (id: string) => boolean = () => false): ElementId {
  for (let n = 1; ; n++) {
    const id = `g${n}` as ElementId;
    if (!Object.hasOwn(system.elements, id) && !isTaken(id)) return id;
  }
}
