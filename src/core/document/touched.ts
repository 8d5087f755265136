import type { Patch } from "immer";
import type { System } from "./types";

/** Ids of the records in which one drawing differs from another: put in, put otherwise or taken out. */
export interface TouchedRecords {
  readonly structures: ReadonlySet<string>;
  readonly points: ReadonlySet<string>;
  readonly elements: ReadonlySet<string>;
}

/** How a drawing was made from another; that one is not kept for it. */
interface EditMade extends TouchedRecords {
  readonly before: WeakRef<System>;
}

const steps = new WeakMap<System, EditMade>();

/** Remembers which records an edit touched, so that whatever is derived from the drawing need look at no others. */
export function noteStep(before: System, after: System, patches: readonly Patch[]): void {
  if (before === after || steps.has(after)) return;
  const touched = touchedBy(patches);
  if (touched !== undefined) steps.set(after, { ...touched, before: new WeakRef(before) });
}

/**
 * Which records patches touch; nothing where they replace more than records, or where records might come to stand in
 * another order than that in which they were put in.
 */
export function touchedBy(patches: readonly Patch[]): TouchedRecords | undefined {
  const touched = { structures: new Set<string>(), points: new Set<string>(), elements: new Set<string>() };
  const removed = new Set<string>();
  for (const { path, op } of patches) {
    if (path[0] !== "system") continue;
    const [, map, id] = path;
    if (map !== "structures" && map !== "points" && map !== "elements") return undefined;
    if (typeof id !== "string") return undefined;
    if (isIndex(id) || removed.has(`${map} ${id}`)) return undefined;
    if (op === "remove" && path.length === 3) removed.add(`${map} ${id}`);
    touched[map].add(id);
  }
  return touched;
}

/** JavaScript puts keys like `12` before all others. */
const isIndex = (id: string): boolean => /^\d+$/.test(id);

/** So many edits in a row are followed; what was not asked for longer is worked out anew. */
const MOST_STEPS = 32;

interface KnownEdit extends TouchedRecords {
  readonly before: System;
  readonly after: System;
}

/** The edits that lead to a drawing from the last one that is known, in their order; nothing where none is. */
function wayFrom(isKnown: (system: System) => boolean, system: System): KnownEdit[] | undefined {
  const way: KnownEdit[] = [];
  let at = system;
  while (!isKnown(at)) {
    const step = steps.get(at);
    const before = step?.before.deref();
    if (step === undefined || before === undefined || way.length === MOST_STEPS) return undefined;
    const { structures, points, elements } = step;
    way.push({ before, after: at, structures, points, elements });
    at = before;
  }
  return way.reverse();
}

/** In which records a drawing may differ from the last one that is known; nothing where no edits lead here from one. */
export function touchedSince(
  isKnown: (system: System) => boolean,
  system: System,
): (TouchedRecords & { readonly from: System }) | undefined {
  const way = wayFrom(isKnown, system);
  if (way === undefined) return undefined;
  return {
    from: way[0]?.before ?? system,
    structures: new Set(way.flatMap(({ structures }) => [...structures])),
    points: new Set(way.flatMap(({ points }) => [...points])),
    elements: new Set(way.flatMap(({ elements }) => [...elements])),
  };
}

/**
 * Remembers an answer for each drawing. Where the answer about the drawing that it was edited from is known, it is made
 * from that one, edit by edit.
 *
 * @param build the answer from the drawing alone
 * @param carry the same answer from the one before a few records changed; undefined where that cannot be told
 */
export function perDrawing<Answer>(
  build: (system: System) => Answer,
  carry: (was: Answer, before: System, after: System, touched: TouchedRecords) => Answer | undefined,
): (system: System) => Answer {
  const known = new WeakMap<System, { readonly it: Answer }>();
  /** kept, so that the next edit finds it */
  let newest: { readonly system: System; readonly it: Answer } | undefined;
  const carried = (system: System): { readonly it: Answer } | undefined => {
    const way = wayFrom((it) => known.has(it), system);
    if (way === undefined) return undefined;
    let found = known.get(way[0]?.before ?? system)!;
    for (const { before, after, ...touched } of way) {
      const it = carry(found.it, before, after, touched);
      if (it === undefined) return undefined;
      found = { it };
      known.set(after, found);
    }
    return found;
  };
  return (system) => {
    const found = carried(system) ?? { it: build(system) };
    known.set(system, found);
    if (newest?.system !== system) newest = { system, it: found.it };
    return found.it;
  };
}
