import {
  jobOf,
  type Reveal,
  scenarioOf,
  type ScenarioStep,
  type Step,
  type StillhotDocument,
  type Trap,
} from "../document";
import { plan, isHit } from "../procedure";
import { isRefusal, type Message, say } from "../terms";
import type { Action } from "./actions";
import { act, startAttempt, worldOf } from "./act";
import type { Attempt } from "./attempt";
import { whenTrue } from "./conditions";
import { scoreOf } from "./scoring";
import { factsOf, mapWith, nameOfFact, truthOf } from "./truth";
import { placesOfFact, revealsOf } from "./world";

/** Finds an order of steps for a drawing: the planner, handed in by whoever has it. */
export type Planner = (document: StillhotDocument) => readonly Step[];

/** The program's own planner, without its alternatives. */
export const planned: Planner = (document) =>
  plan(document, { alternatives: false }).steps.map(({ why: _why, ...step }): Step => step);

/** An attempt played from beginning to end, and the first action that could not even be asked for. */
export interface WholeAttempt {
  readonly attempt: Attempt;
  readonly refused?: { readonly action: Action; readonly why: Message };
}

/** Plays a whole order of steps as one attempt, and finishes it. */
export function playThrough(
  document: StillhotDocument,
  steps: readonly ScenarioStep[],
  options: Parameters<typeof startAttempt>[1] = {},
): WholeAttempt {
  let attempt = startAttempt(document, options);
  for (const action of [...steps, { do: "finish" } as const]) {
    const acted = act(attempt, action);
    if (isRefusal(acted)) {
      if (worldOf(attempt).over !== "") return { attempt };
      return { attempt, refused: { action, why: acted.refused } };
    }
    attempt = acted.attempt;
  }
  return { attempt };
}

/**
 * What a careful person does before anything else: looks at the poles where the work is, and finds out each hidden fact by
 * the first way that shows it.
 */
function findingOut(document: StillhotDocument): Step[] {
  const steps: Step[] = Object.values(jobOf(document).workPoints).map(({ at }): Step => ({
    do: "inspect",
    at,
  }));
  for (const id of Object.keys(scenarioOf(document).truth ?? {})) {
    const [way] = revealsOf(document, id);
    const [place] = placesOfFact(document, id);
    if (way !== undefined) steps.push(stepFor(way));
    else if (place !== undefined) steps.push({ do: "inspect", at: place });
  }
  const seen = new Set<string>();
  return steps.filter((it) => {
    const text = JSON.stringify(it);
    return !seen.has(text) && seen.add(text);
  });
}

/** The step by which a way shows what it shows. */
export const stepFor = ({ by, at, element }: Reveal): Step =>
  ({
    do: by,
    ...(at === undefined ? {} : { at }),
    ...(element === undefined ? {} : { element }),
  }) as Step;

/** The steps that should play to full marks: the file's own, or else a planner's on the truth, after finding out. */
export const answerTo = (document: StillhotDocument, planner?: Planner): readonly ScenarioStep[] =>
  scenarioOf(document).answer ??
  (planner === undefined ? [] : [...findingOut(document), ...planner(truthOf(document))]);

/** Whether a scenario's own answer earns full marks, and the attempt that tried it. */
export interface Solvable {
  readonly solved: boolean;
  readonly attempt: Attempt;
  /** what keeps the answer from full marks */
  readonly why: readonly Message[];
}

/** Whether the scenario can be solved: its answer is played as an apprentice would have to, and earns every mark. */
export function canBeSolved(document: StillhotDocument, planner?: Planner): Solvable {
  const steps = answerTo(document, planner);
  const { attempt, refused } = playThrough(document, steps);
  if (steps.length === 0) return { solved: false, attempt, why: [say("checks.noAnswer")] };
  const { criteria, dangers, percent, passed } = scoreOf(attempt);
  const why: Message[] = [
    ...(refused === undefined ? [] : [say("checks.refused", { verb: refused.action.do, why: refused.why })]),
    ...dangers.map(({ entry, why: danger }) => say("checks.danger", { n: entry, danger })),
    ...criteria
      .filter(({ met }) => !met)
      .map(({ criterion: { text } }) => say("checks.missed", { criterion: text })),
  ];
  return { solved: passed && percent === 100 && refused === undefined, attempt, why };
}

/** A trap, and the entry of an attempt by which somebody fell into it. */
export interface TrapResult {
  readonly trap: Trap;
  readonly entry?: number;
}

/**
 * Traps of a scenario: those that it names, and for each hidden fact without one the danger that only somebody runs into
 * who does not know of it.
 */
export function trapListOf(document: StillhotDocument): (Trap | FactTrap)[] {
  const named = scenarioOf(document).traps ?? [];
  const own = [...factsOf(document)]
    .filter(([id, fact]) => !named.some((it) => it.fact === id) && !("after" in fact))
    .map(([id]): FactTrap => ({ id, label: nameOfFact(document, id), fact: id, when: undefined }));
  return [...named, ...own];
}

/** A trap that a hidden fact sets by itself. */
export type FactTrap = Omit<Trap, "when"> & { readonly when: undefined };

/** Which traps an attempt fell into, and by which entry. */
export function trapsCaught(attempt: Attempt): Map<string, number> {
  const { document, log } = attempt;
  const caught = new Map<string, number>();
  for (const { id, fact, when } of trapListOf(document)) {
    const entry = when === undefined ? surprisedBy(attempt, fact!) : whenTrue(when, document, log);
    if (entry !== undefined) caught.set(id, entry);
  }
  return caught;
}

/** The first danger that the truth holds and the map does not, met before a fact was known. */
function surprisedBy({ log }: Attempt, fact: string): number | undefined {
  const known = log.find(({ result }) => result.reveals?.includes(fact))?.n ?? Infinity;
  return log.find(({ n, result: { findings = [], coached = [], consequence } }) => {
    if (n > known) return false;
    const expected = new Set(coached.map(({ rule, where }) => `${rule} ${where}`));
    return (
      isHit(consequence) ||
      findings.some(({ rule, where, severity }) => severity === "danger" && !expected.has(`${rule} ${where}`))
    );
  })?.n;
}

/** A trap, whether it can be fallen into, and what happens to whoever does. */
export interface TrapCheck {
  readonly trap: Trap | FactTrap;
  readonly canBeFallenInto: boolean;
  readonly attempt?: Attempt;
  /** the entry of that attempt at which it closes */
  readonly entry?: number;
}

/**
 * Checks every trap: its own steps, or else an order planned by somebody who knows everything but that one fact, are
 * played against the truth, and the trap has to close.
 */
export function trapsOf(document: StillhotDocument, planner?: Planner): TrapCheck[] {
  return trapListOf(document).map((trap): TrapCheck => {
    const steps =
      trap.fall ??
      (trap.fact === undefined || planner === undefined ? undefined : naive(document, trap.fact, planner));
    if (steps === undefined) return { trap, canBeFallenInto: false };
    const { attempt } = playThrough(document, steps, { mode: "practice" });
    const entry = trapsCaught(attempt).get(trap.id);
    return { trap, canBeFallenInto: entry !== undefined, attempt, ...(entry === undefined ? {} : { entry }) };
  });
}

/** What somebody does who knows all but one fact. */
function naive(document: StillhotDocument, fact: string, planner: Planner): readonly Step[] {
  const others = [...factsOf(document).keys()].filter((id) => id !== fact);
  return planner(mapWith(document, others));
}
