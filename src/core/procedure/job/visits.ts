import {
  endPointsOf,
  jobOf,
  savedElement,
  type Step,
  type StillhotDocument,
  structureName,
  structureOf,
} from "../../document";
import { isClosing, stepOf } from "../../steps";
import { type Message, say, type StructureId, type WorkPointId } from "../../terms";
import { groundIdOf } from "./positions";

/** Steps that follow one another at one structure. */
export interface Visit {
  /** where one stands; nothing for what is done before anybody has gone anywhere */
  readonly structure: StructureId | undefined;
  /** numbers of its steps, from 1, in a row */
  readonly steps: readonly number[];
}

/**
 * Steps by where one stands. What is done from anywhere goes with what comes before it; a detector is proven where it is
 * used next, and one stands clear of what is closed next. A step on a span is at the structure on its source side.
 */
export function visitsOf(document: StillhotDocument, steps: readonly Step[]): Visit[] {
  const places = placesOf(document, steps);
  const visits: { structure: StructureId | undefined; steps: number[] }[] = [];
  steps.forEach((_, index) => {
    const last = visits.at(-1);
    const place = places[goesWithNext(steps, index) ? index + 1 : index];
    if (last !== undefined && (place === undefined || place === last.structure)) last.steps.push(index + 1);
    else visits.push({ structure: place, steps: [index + 1] });
  });
  return visits;
}

/** Where a visit is, and how many steps it has: `At Pole 30: 4 steps`. */
export function visitSentence(document: StillhotDocument, { structure, steps }: Visit): Message {
  const count = steps.length;
  if (structure === undefined) return say(count === 1 ? "visit.before.one" : "visit.before", { count });
  const name = structureName(document, structure);
  return say(count === 1 ? "visit.at.one" : "visit.at", { name, count });
}

/**
 * A drawing in which the ground sets stand that steps put on, so that steps that take them off can be told before any of
 * them was done.
 */
export function withSetsOf(document: StillhotDocument, steps: readonly Step[]): StillhotDocument {
  const { system } = document;
  const sets = steps.flatMap((step): (readonly [string, object])[] =>
    step.do === "ground" && Object.hasOwn(system.points, step.at)
      ? [[groundIdOf(system, step), { kind: "ground", at: step.at, phases: step.phases ?? "" }]]
      : [],
  );
  const elements = { ...Object.fromEntries(sets), ...system.elements } as typeof system.elements;
  return sets.length === 0 ? document : { ...document, system: { ...system, elements } };
}

/** A detector is checked where it is used, before a test, and one stands clear where something is closed. */
function goesWithNext(steps: readonly Step[], index: number): boolean {
  const next = steps[index + 1];
  if (next === undefined) return false;
  const { do: verb } = steps[index]!;
  return (verb === "check-detector" && next.do === "test") || (verb === "stand-clear" && isClosing(next));
}

/** The structure that each step is done at; nothing for what is done from anywhere. */
function placesOf(document: StillhotDocument, steps: readonly Step[]): (StructureId | undefined)[] {
  const { system } = document;
  const { workPoints } = jobOf(document);
  /** where sets are that the steps themselves put on */
  const sets = new Map<string, string>();
  return steps.map((step) => {
    if (stepOf(step.do).anywhere === true) return undefined;
    if (step.do === "ground") sets.set(groundIdOf(system, step), step.at);
    const { element = "" } = step;
    const at = step.at ?? sets.get(element) ?? element;
    const place = Object.hasOwn(workPoints, at) ? workPoints[at as WorkPointId]!.at : at;
    return (structureOf(system, place) ?? structureOf(system, sourceSideOf(document, place)))?.id;
  });
}

/** The point on the source side of a span, or of the span that a circuit beside it names. */
function sourceSideOf({ system }: StillhotDocument, id: string): string {
  const saved = savedElement(system.elements, id);
  const beside = saved?.["span"];
  const line = typeof beside === "string" ? savedElement(system.elements, beside) : saved;
  return endPointsOf(line)[0] ?? "";
}
