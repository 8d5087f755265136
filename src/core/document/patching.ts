import { enablePatches, Immer, type Patch } from "immer";
import type { JsonObject } from "../terms";
import { noteStep } from "./touched";
import type { SavedElement, SavedPoint, SavedStructure, StillhotDocument } from "./types";

enablePatches();

/** Left to itself it would look through all ten thousand records after each edit for some that are not frozen. */
const immer = new Immer({ autoFreeze: false });

/** A document after a recipe, with the patches there and back. */
export interface Produced {
  readonly after: StillhotDocument;
  readonly forward: readonly Patch[];
  readonly inverse: readonly Patch[];
}

/** Runs a recipe on a document. What it leaves alone stays the same object. */
export function produced<Draft>(before: StillhotDocument, recipe: (draft: Draft) => void): Produced {
  const [after, forward, inverse] = immer.produceWithPatches(before, (draft) => recipe(draft as Draft));
  finish(before, after, forward);
  return { after, forward, inverse };
}

/** Structures, points and elements as they are saved, by id. */
export interface Records {
  readonly structures?: Readonly<Record<string, SavedStructure>>;
  readonly points?: Readonly<Record<string, SavedPoint>>;
  readonly elements?: Readonly<Record<string, SavedElement>>;
}

/**
 * Records put in place of what stands under their ids, with the patches that a recipe would give. Of the ten
 * thousand records beside them immer copies the keys ten times slower, and it would have to within the frame of the edit.
 */
export function withRecords(before: StillhotDocument, records: Records): Produced {
  const system: Record<string, unknown> = { ...before.system };
  const forward: Patch[] = [];
  const inverse: Patch[] = [];
  for (const kind of ["structures", "points", "elements"] as const) {
    const put: Readonly<Record<string, JsonObject>> = records[kind] ?? {};
    if (Object.keys(put).length === 0) continue;
    const were: typeof put | undefined = before.system[kind];
    if (were === undefined) {
      system[kind] = put;
      forward.push({ op: "add", path: ["system", kind], value: put });
      inverse.push({ op: "remove", path: ["system", kind] });
      continue;
    }
    system[kind] = copyWith(were, put);
    for (const [id, value] of Object.entries(put)) {
      const path = ["system", kind, id];
      const isNew = !Object.hasOwn(were, id);
      forward.push({ op: isNew ? "add" : "replace", path, value });
      inverse.push(isNew ? { op: "remove", path } : { op: "replace", path, value: were[id] });
    }
  }
  const after = { ...before, system } as unknown as StillhotDocument;
  finish(before, after, forward);
  return { after, forward, inverse };
}

/** Ids in their order, kept while records only take each other's place. */
const knownIds = new WeakMap<object, readonly string[]>();

function copyWith<Saved>(
  records: Readonly<Record<string, Saved>>,
  put: Readonly<Record<string, Saved>>,
): Record<string, Saved> {
  const ids = knownIds.get(records) ?? Object.keys(records);
  const copy: Record<string, Saved> = {};
  for (const id of ids) copy[id] = records[id]!;
  Object.assign(copy, put);
  if (Object.keys(put).every((id) => Object.hasOwn(records, id))) knownIds.set(copy, ids);
  return copy;
}

/** Puts patches on a document. */
export function patched(before: StillhotDocument, patches: readonly Patch[]): StillhotDocument {
  const records = recordsIn(patches);
  if (records !== undefined) return withRecords(before, records).after;
  const after = immer.applyPatches(before, [...patches]);
  finish(before, after, patches);
  return after;
}

/** What patches put, where that is whole records and nothing else. */
function recordsIn(patches: readonly Patch[]): Records | undefined {
  const records = { structures: {}, points: {}, elements: {} } as Record<string, Record<string, JsonObject>>;
  for (const { op, path, value } of patches) {
    const [part, kind, id, ...further] = path as readonly string[];
    if (op === "remove" || part !== "system" || id === undefined || further.length > 0) return undefined;
    if (kind === undefined || !Object.hasOwn(records, kind)) return undefined;
    records[kind]![id] = value as JsonObject;
  }
  return records;
}

function finish(before: StillhotDocument, after: StillhotDocument, patches: readonly Patch[]): void {
  freezeTouched(after, patches);
  noteStep(before.system, after.system, patches);
  if (after !== before) made.set(after, { before: new WeakRef(before), patches });
}

/** How each document was made of another, which is not kept for it. */
const made = new WeakMap<
  StillhotDocument,
  { readonly before: WeakRef<StillhotDocument>; readonly patches: readonly Patch[] }
>();

/** So many edits in a row are told one by one; beyond, a whole copy is as short. */
const MOST_EDITS = 32;

/** Patches that make one document of another; nothing where no edits lead from the one to the other. */
export function patchesBetween(
  before: StillhotDocument,
  after: StillhotDocument,
): readonly Patch[] | undefined {
  const edits: (readonly Patch[])[] = [];
  for (let at = after; at !== before;) {
    const step = made.get(at);
    const earlier = step?.before.deref();
    if (step === undefined || earlier === undefined || edits.length === MOST_EDITS) return undefined;
    edits.push(step.patches);
    at = earlier;
  }
  return edits.reverse().flat();
}

/** A document is never changed where it stands: what patches put, and all that it lies in, is frozen. */
function freezeTouched(document: StillhotDocument, patches: readonly Patch[]): void {
  const frozen = new Set<object>();
  for (const { path, op } of patches) {
    let at: unknown = document;
    for (const key of path) {
      if (typeof at !== "object" || at === null) break;
      if (!frozen.has(at)) frozen.add(Object.freeze(at));
      at = (at as Readonly<Record<string | number, unknown>>)[key];
    }
    if (op !== "remove") freezeWhole(at);
  }
}

function freezeWhole(value: unknown): void {
  if (typeof value !== "object" || value === null || Object.isFrozen(value)) return;
  Object.freeze(value);
  Object.values(value).forEach(freezeWhole);
}
