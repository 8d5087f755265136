import type { Patch } from "immer";
import { type DeviceKind, deviceOf } from "../../devices";
import { type JsonObject, type Message, refuse, type Refusal, say } from "../../terms";
import { objectionAfter } from "../check";
import { canonicalText } from "../canonical";
import { savedElement, savedPoint } from "../elementsAt";
import { type Produced, produced, type Records, withRecords } from "../patching";
import type { SavedElement, SavedPoint, SavedStructure, StillhotDocument } from "../types";

/** What an edit does to a document, and how to take it back. */
export interface Change {
  readonly label: Message;
  readonly after: StillhotDocument;
  readonly forward: readonly Patch[];
  readonly inverse: readonly Patch[];
  /** ids of what it added, for the selection */
  readonly made?: readonly string[];
  /** what else it had to change, to be said to whoever made the edit */
  readonly also?: readonly Message[];
}

/** An edit: asking whether it can be done is doing it and leaving the result. */
export type Edit = (before: StillhotDocument) => Change | Refusal;

/** A document as an edit may change it, record by record. */
export interface Draft {
  title: string;
  notes?: string;
  system: {
    frequencyHz: 50 | 60;
    structures?: Record<string, SavedStructure>;
    points: Record<string, SavedPoint>;
    elements: Record<string, SavedElement>;
  };
  job?: JsonObject;
  scenario?: JsonObject;
  settings?: JsonObject;
  log?: readonly JsonObject[];
}

/**
 * Runs a recipe on a document. Refused when nothing changes, and when the result would not read back as it is: the
 * reader says why.
 */
export function change(
  label: Message,
  before: StillhotDocument,
  recipe: (draft: Draft) => void,
  extras: Pick<Change, "made" | "also"> = {},
): Change | Refusal {
  return checked(label, before, [produced<Draft>(before, recipe)], extras);
}

/** Puts structures, points and elements in place of what stands under their ids. Refused as a recipe is; equal ones are left alone. */
export function putRecords(
  label: Message,
  before: StillhotDocument,
  { structures = {}, points = {}, elements = {} }: Records,
  extras: Pick<Change, "made" | "also"> = {},
): Change | Refusal {
  const others = {
    structures: otherThan(before.system.structures ?? {}, structures),
    points: otherThan(before.system.points, points),
    elements: otherThan(before.system.elements, elements),
  };
  return checked(label, before, [withRecords(before, others)], extras);
}

const otherThan = <Saved extends object>(
  were: Readonly<Record<string, Saved>>,
  put: Readonly<Record<string, Saved>>,
): Record<string, Saved> =>
  Object.fromEntries(
    Object.entries(put).filter(
      ([id, record]) => !Object.hasOwn(were, id) || textOf(were[id]!) !== textOf(record),
    ),
  );

/** What was produced in one or more steps, as one edit of the document that the first of them began with. */
export function checked(
  label: Message,
  before: StillhotDocument,
  steps: readonly Produced[],
  extras: Pick<Change, "made" | "also"> = {},
): Change | Refusal {
  const forward = steps.flatMap((it) => it.forward);
  const inverse = steps.toReversed().flatMap((it) => it.inverse);
  const { after } = steps.at(-1)!;
  if (forward.length === 0) return refuse(say("edit.nothing"));
  const objection = objectionAfter(before, after, forward);
  return objection === undefined ? { label, after, forward, inverse, ...extras } : refuse(objection);
}

/** Several edits as one: one entry in the history. The first that is refused refuses all. */
export const together =
  (label: Message, several: readonly Edit[]): Edit =>
  (before) => {
    const steps: Change[] = [];
    for (const edit of several) {
      const step = edit(steps.at(-1)?.after ?? before);
      if ("refused" in step) return step;
      steps.push(step);
    }
    const last = steps.at(-1);
    if (last === undefined) return refuse(say("edit.nothing"));
    return {
      label,
      after: last.after,
      forward: steps.flatMap((it) => it.forward),
      inverse: steps.toReversed().flatMap((it) => it.inverse),
      made: steps.flatMap((it) => it.made ?? []),
      also: steps.flatMap((it) => it.also ?? []),
    };
  };

/** A record with some keys changed; `undefined` takes a key away. */
export function withKeys<Saved extends JsonObject>(record: Saved, keys: JsonObject): Saved {
  const merged: Record<string, JsonObject[string]> = { ...record };
  for (const [key, value] of Object.entries(keys)) {
    if (value === undefined) delete merged[key];
    else merged[key] = plain(value);
  }
  return merged as Saved;
}

/** −0 is written as 0, and a key without a value is not written: neither may stand in a document. */
export function plain<Value>(value: Value): Value {
  if (typeof value === "number") return (value + 0) as Value;
  if (Array.isArray(value)) return value.map(plain) as Value;
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, member]) => member !== undefined)
      .map(([key, member]) => [key, plain(member as unknown)]),
  ) as Value;
}

/** Replaces one whole record, so that a patch reads "this became that"; an equal one is left alone. */
export function put<Saved extends object>(map: Record<string, Saved>, id: string, record: Saved): void {
  // Read as a key it would become a draft, for whose place the whole map is searched once it is replaced.
  const old = Object.getOwnPropertyDescriptor(map, id)?.value as Saved | undefined;
  if (old === undefined || textOf(old) !== textOf(record)) map[id] = record;
}

/** Replaces the job, the scenario or the settings; an equal one is left alone, and an empty one is not made. */
export function putPart(draft: Draft, key: "job" | "scenario" | "settings", record: JsonObject): void {
  if (draft[key] === undefined && Object.keys(record).length === 0) return;
  put(draft as unknown as Record<string, JsonObject>, key, record);
}

const textOf = (record: object): string => canonicalText(record);

/** Whether a drawing has a point of this id. */
export const hasPoint = (document: StillhotDocument, id: string): boolean =>
  Object.hasOwn(document.system.points, id);

/** A point as saved, or nothing where the id names none. */
export const pointOf = (document: StillhotDocument, id: string): SavedPoint | undefined =>
  savedPoint(document.system.points, id);

/** An element as saved, or nothing where the id names none. */
export const elementOf = (document: StillhotDocument, id: string): SavedElement | undefined =>
  savedElement(document.system.elements, id);

/** What a person calls a record: its label, or its id. */
export const nameOf = (id: string, saved: JsonObject | undefined): string => {
  const label = saved?.["label"];
  return typeof label === "string" && label !== "" ? label : id;
};

/** Whether something of the drawing has this id, whatever it is. */
export const isId = ({ system }: StillhotDocument, id: string): boolean =>
  [system.points, system.elements, system.structures ?? {}].some((it) => Object.hasOwn(it, id));

/** The first of `p1`, `p2`, … that is not taken. */
export function nextId(prefix: string, isTaken: (id: string) => boolean): string {
  for (let n = 1; ; n++) if (!isTaken(`${prefix}${n}`)) return `${prefix}${n}`;
}

/** An id that no record has yet, for a new point. */
export const nextPointId = (document: StillhotDocument): string => nextId("p", (id) => isId(document, id));

/** An id that no record has yet, for a new element of a kind: it begins with the kind's own letter. */
export const nextElementId = (document: StillhotDocument, kind: DeviceKind): string =>
  nextId(deviceOf(kind).prefix, (id) => isId(document, id));
