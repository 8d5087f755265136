import { type CircuitElement, isLine, isSupply, isTransformer } from "../../devices";
import { complete, naturalOrder, type StillhotDocument } from "../../document";
import type { ElementId } from "../../terms";

/** A place where lines meet, a point or the middle of a transfer switch, with what goes on from there away from the source. */
export interface TidyBranch {
  /** id of its point; the middle of a transfer switch has the switch's id with a space before it, which no point has */
  readonly id: string;
  readonly parent: TidyBranch | undefined;
  /** what goes on from here, the main line first */
  readonly onward: readonly TidyBranch[];
  /** how far it wants to stand from its parent, in units of the drawing */
  readonly length: number;
  /** what leads to it; nothing leads to a root */
  readonly by: TidyLine | undefined;
  /** one-ended elements that hang here */
  readonly hung: readonly CircuitElement["kind"][];
}

/** One stretch between two places. */
export interface TidyLine {
  readonly element: ElementId;
  readonly kind: CircuitElement["kind"];
  readonly phases: string;
  readonly a: string;
  readonly b: string;
  readonly length: number;
  /** goes last: the tree would rather not hang by it */
  readonly isTie: boolean;
}

/** A drawing as trees, and what closes loops between their branches. */
export interface Forest {
  /** one root for each part of the drawing that nothing joins to the others */
  readonly roots: readonly TidyBranch[];
  /** what joins two places that the trees hold already */
  readonly ties: readonly TidyLine[];
}

/** Lengths that leave room for the lettering at both ends. */
const LINE = 160;
const DEVICE = 120;

/** The middle of a transfer switch. */
export const jointOf = (transfer: string): string => ` ${transfer}`;

/** Whether an id is a place that is made for the layout, and no point of the drawing. */
export const isJoint = (id: string): boolean => id.startsWith(" ");

/**
 * The drawing as trees that hang on their sources. Whatever is normally open is gone through last, so that a loop is cut
 * where the crew would cut it.
 */
export function forestOf({ system }: StillhotDocument): Forest {
  const ids = (Object.keys(system.elements) as ElementId[]).sort(naturalOrder);
  const elements = ids.map((id) => [id, complete(system.elements[id]!)] as const);
  const ways = elements.flatMap(([id, element]) => waysOf(id, element));
  const waysAt = grouped(ways.flatMap((way) => [[way.a, way] as const, [way.b, way] as const]));
  const hungAt = grouped(elements.flatMap(([, it]) => ("at" in it ? [[it.at, it.kind] as const] : [])));
  const sources = elements.flatMap(([, it]) => (isSupply(it) ? [it.at] : []));
  const seen = new Set<string>();
  const used = new Set<TidyLine>();
  const roots: TidyBranch[] = [];
  for (const start of [...sources, ...Object.keys(system.points).sort(naturalOrder)])
    if (!seen.has(start)) roots.push(grownFrom(start, { waysAt, hungAt, seen, used }));
  return { roots, ties: ways.filter((it) => !used.has(it)) };
}

interface Growing {
  readonly waysAt: ReadonlyMap<string, readonly TidyLine[]>;
  readonly hungAt: ReadonlyMap<string, readonly CircuitElement["kind"][]>;
  readonly seen: Set<string>;
  readonly used: Set<TidyLine>;
}

type Draft = Omit<TidyBranch, "onward" | "parent"> & { parent: Draft | undefined; onward: Draft[] };

/** Goes outward from one place, level by level, and by the ties only where nothing else leads on. */
function grownFrom(start: string, { waysAt, hungAt, seen, used }: Growing): TidyBranch {
  const place = (id: string, parent: Draft | undefined, by: TidyLine | undefined): Draft => {
    seen.add(id);
    return { id, parent, onward: [], length: by?.length ?? 0, by, hung: hungAt.get(id) ?? [] };
  };
  const root = place(start, undefined, undefined);
  const queue: Draft[] = [root];
  const later: [Draft, TidyLine][] = [];
  const order: Draft[] = [];
  const follow = (from: Draft, way: TidyLine) => {
    const far = way.a === from.id ? way.b : way.a;
    if (seen.has(far)) return;
    used.add(way);
    const next = place(far, from, way);
    from.onward.push(next);
    queue.push(next);
  };
  for (let next = 0, late = 0; next < queue.length || late < later.length;) {
    if (next === queue.length) {
      follow(...later[late++]!);
      continue;
    }
    const here = queue[next++]!;
    order.push(here);
    for (const way of waysAt.get(here.id) ?? [])
      if (way.isTie) later.push([here, way]);
      else follow(here, way);
  }
  const sizes = new Map<Draft, number>();
  for (const it of order.toReversed()) {
    sizes.set(
      it,
      it.onward.reduce((sum, next) => sum + sizes.get(next)!, 1),
    );
    it.onward.sort((one, other) => asMain(other, sizes.get(other)!) - asMain(one, sizes.get(one)!));
  }
  return root;
}

/** How much a branch is the line that goes on: the most phases, then a line before a device, then what has most behind it. */
function asMain({ by }: Draft, size: number): number {
  if (by === undefined || by.isTie) return 0;
  return by.phases.length * 1e8 + (isLine(by) ? 1e7 : 0) + Math.min(size, 1e6);
}

function waysOf(element: ElementId, it: CircuitElement): TidyLine[] {
  if (!("from" in it)) return [];
  const length = isLine(it) ? LINE : DEVICE;
  const isTie = "normallyOpen" in it && it.normallyOpen;
  const way = (a: string, b: string, own: number, phases = it.phases): TidyLine => ({
    element,
    kind: it.kind,
    phases,
    a,
    b,
    length: own,
    isTie,
  });
  if (!("alt" in it)) return [way(it.from, it.to, length)];
  // What a third winding feeds goes its own way from the primary, as beside a second transformer.
  if (isTransformer(it)) return [way(it.from, it.to, length), way(it.from, it.alt, length, "")];
  const joint = jointOf(element);
  // The line through the switch goes to the customer: the generator stands beside it, whatever hangs on it.
  return [way(joint, it.to, DEVICE / 2), way(it.from, joint, DEVICE / 2), way(joint, it.alt, DEVICE, "")];
}

function grouped<Key, Value>(
  entries: readonly (readonly [Key, Value])[],
): ReadonlyMap<Key, readonly Value[]> {
  const groups = new Map<Key, Value[]>();
  for (const [key, value] of entries) {
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [value]);
    else group.push(value);
  }
  return groups;
}
