import { broughtBy, type CircuitElement, isBeside, isLine, type Part } from "../devices";
import { besideOthers, complete, completePoint, type System, touchedSince } from "../document";
import type { PointId } from "../terms";
import { rodsOf } from "./buildCircuit";
import type { Circuit } from "./circuit";
import { partsOfElement } from "./places";
import { indexOfElement, rowsOf } from "./rows";

/** Above so many changed elements building anew is as quick. */
const MOST_CARRIED_OVER = 40;

/** Indices of the elements that differ from a circuit's; undefined where more differs than those and the ohms of rods. */
function changedElements(before: Circuit, system: System): number[] | undefined {
  if (system.frequencyHz !== before.frequencyHz) return undefined;
  const touched = touchedSince((it) => it === before.system, system);
  const changed =
    touched === undefined
      ? standOnSameNodes(before, system)
        ? comparedElements(before, system)
        : undefined
      : [...touched.points].every((id) => hasRodLike(before.system, system, id))
        ? indicesOf(before, system, touched.elements)
        : undefined;
  return changed === undefined || changed.length > MOST_CARRIED_OVER ? undefined : changed;
}

/** Whether the same points stand in the same order, each with a rod where it had one. */
function standOnSameNodes({ system: before, pointIds }: Circuit, { points }: System): boolean {
  if (points === before.points) return true;
  const ids = Object.keys(points) as PointId[];
  return (
    ids.length === pointIds.length &&
    ids.every((id, index) => id === pointIds[index] && hasRodLike(before, { points }, id))
  );
}

function comparedElements(before: Circuit, system: System): number[] | undefined {
  const { elementIds } = before;
  if (Object.keys(system.elements).length !== elementIds.length) return undefined;
  const changed: number[] = [];
  for (let index = 0; index < elementIds.length; index++) {
    const id = elementIds[index]!;
    const saved = system.elements[id];
    if (saved === undefined) return undefined;
    if (saved !== before.system.elements[id]) changed.push(index);
  }
  return changed;
}

type Points = Pick<System, "points">;

/** A point that only moved, has another name, or a rod of other ohms, leaves the nodes of its circuit as they are. */
function hasRodLike(before: Points, after: Points, id: string): boolean {
  const [was, is] = [before, after].map(({ points }) =>
    Object.hasOwn(points, id) ? points[id as PointId] : undefined,
  );
  if (was === undefined || is === undefined) return false;
  return (
    was === is || (completePoint(was).earthOhms === undefined) === (completePoint(is).earthOhms === undefined)
  );
}

function indicesOf(before: Circuit, system: System, ids: ReadonlySet<string>): number[] | undefined {
  const indices: number[] = [];
  for (const id of ids) {
    const index = indexOfElement(before, id);
    if (index === undefined || !Object.hasOwn(system.elements, id)) return undefined;
    indices.push(index);
  }
  return indices;
}

/**
 * The circuit of a system that differs from another's only in what is open, on or rated of a few elements and in the ohms
 * of rods, or undefined where nodes or nominal volts could differ.
 */
export function carriedOver(before: Circuit, system: System): Circuit | undefined {
  const { elementIds } = before;
  const changed = changedElements(before, system);
  if (changed === undefined) return undefined;
  const parts = before.parts.slice();
  for (const index of changed) {
    const was = complete(before.system.elements[elementIds[index]!]!);
    const is = complete(system.elements[elementIds[index]!]!);
    if (!standsAlike(was, is) || (isLine(is) && hasNearby(before))) return undefined;
    const fresh = partsOfElement({ ...before, system }, index);
    if (!lieAlike(before.parts[index]!, fresh)) return undefined;
    parts[index] = fresh;
  }
  const otherwise = changed.filter((index) => !saysTheSame(before.parts[index]!, parts[index]!));
  const { rods, areSameRods } = rodsAfter(before, system);
  return otherwise.length === 0 && areSameRods
    ? { ...before, system }
    : { ...withParts(before, system, parts, otherwise), rods, values: {} };
}

/** Rods of points that are another list: where only elements changed they are not looked at. */
function rodsAfter(before: Circuit, system: System): Pick<Circuit, "rods"> & { areSameRods: boolean } {
  if (system.points === before.system.points) return { rods: before.rods, areSameRods: true };
  const rods = rodsOf(system, before.pointIds, before.nodeOf);
  return { rods, areSameRods: rods.every(({ ohms }, index) => ohms === before.rods[index]!.ohms) };
}

/** A label or a place on the paper is nothing to a circuit. */
const saysTheSame = (was: readonly Part[], is: readonly Part[]): boolean =>
  JSON.stringify(was) === JSON.stringify(is);

const hasNearby = ({ system }: Circuit): boolean => besideOthers(system).length > 0;

/** Keys that say on what an element hangs, and what they say of nominal volts. */
const STANDS_BY = [
  "from",
  "to",
  "at",
  "alt",
  "phases",
  "kvLL",
  "volts",
  "primaryKv",
  "secondaryV",
  "thirdV",
] as const;

/** Whether an element still hangs on the same conductors and says the same of nominal volts. */
function standsAlike(was: CircuitElement, is: CircuitElement): boolean {
  if (was.kind !== is.kind || isBeside(was)) return false;
  const [before, after] = [was, is] as unknown as readonly Readonly<Record<string, unknown>>[];
  return (
    STANDS_BY.every((key) => before![key] === after![key]) && broughtBy(was).join() === broughtBy(is).join()
  );
}

/** Whether two lists of parts join the same nodes in the same order. */
const lieAlike = (was: readonly Part[], is: readonly Part[]): boolean => layOf(was) === layOf(is);

const layOf = (parts: readonly Part[]): string =>
  parts
    .map((part) => {
      switch (part.part) {
        case "join":
          return `join ${part.from} ${part.to} ${part.common ?? ""}`;
        case "stretch":
          return `stretch ${part.letters.join("")} ${part.lettersBeyond?.join("") ?? ""}`;
        case "unit":
          return `unit ${[...part.primary, ...part.secondary].map(({ plus, minus }) => `${plus} ${minus}`).join()}`;
        case "branch":
          return `branch ${part.role} ${part.from} ${part.to}`;
        case "emf":
          return `emf ${part.legs.map(({ node }) => node).join()} ${part.star}`;
        case "alongside":
          return "alongside";
      }
    })
    .join(";");

/** A circuit with other parts in the same places. */
function withParts(
  before: Circuit,
  system: System,
  parts: Circuit["parts"],
  changed: readonly number[],
): Circuit {
  const closed = before.joins.closed.slice();
  const ratio = before.joins.ratio.slice();
  const [stretches, units, branches, emfs] = [
    before.stretches.slice(),
    before.units.slice(),
    before.branches.slice(),
    before.emfs.slice(),
  ];
  for (const element of changed) {
    const rows = rowsOf(before, element);
    if (rows === undefined) continue;
    // Columns keep the order of an element's list of parts.
    const own = <Kind extends Part["part"]>(kind: Kind) =>
      parts[element]!.filter((it): it is Extract<Part, { part: Kind }> => it.part === kind);
    own("join").forEach((join, nth) => {
      closed[rows.join[nth]!] = join.closed ? 1 : 0;
      ratio[rows.join[nth]!] = join.ratio ?? 1;
    });
    replace(stretches, rows.stretch, own("stretch"));
    replace(units, rows.unit, own("unit"));
    replace(branches, rows.branch, own("branch"));
    replace(emfs, rows.emf, own("emf"));
  }
  return {
    ...before,
    system,
    parts,
    joins: { ...before.joins, closed, ratio },
    stretches,
    units,
    branches,
    emfs,
  };
}

function replace<Row extends { readonly part: Part }>(
  column: Row[],
  rows: readonly number[],
  parts: readonly Row["part"][],
): void {
  parts.forEach((part, nth) => (column[rows[nth]!] = { ...column[rows[nth]!]!, part }));
}
