import { deviceOf, hasPositions, openingOf } from "../devices";
import { complete, elementsAt, endPointsOf, type System } from "../document";
import type { ElementId, PointId } from "../terms";

/** A place where a drawing could be cut: all that hangs there on nothing but this one point. */
export interface Seam {
  readonly at: PointId;
  /** the device or span by which one comes to it from the place of the work */
  readonly by: ElementId | undefined;
  /** openings on the way to it, the one beside it among them */
  readonly openings: number;
  readonly points: readonly PointId[];
  readonly elements: readonly ElementId[];
}

/** Whether a seam is to be cut. What is not cut is looked into for seams further out. */
export type IsCut = (seam: Seam) => boolean;

/**
 * Walks outward from a place and cuts at the first seams that may be cut. What hangs on several points at once, such as
 * both ends of a loop, is never cut between them. Found by depth-first search: a part hangs on one point where nothing in
 * it leads back beyond that point.
 * Source: Hopcroft and Tarjan, Algorithm 447 (1973).
 */
export function seamsAround(system: System, place: readonly PointId[], isCut: IsCut): Seam[] {
  const walk = walked(system, place);
  const openings = openingsTo(system, place);
  const seams: Seam[] = [];
  const queue: number[] = [0];
  for (let next = 0; next < queue.length; next++) {
    const here = queue[next]!;
    const inside = walk.children[here]!;
    if (!walk.isPoint(here) || here === 0) {
      queue.push(...inside);
      continue;
    }
    const hanging = inside.filter((child) => walk.low[child]! >= here);
    const at = walk.idOf(here) as PointId;
    const seam: Seam = {
      at,
      by: walk.byOf(here) as ElementId | undefined,
      openings: openings.get(at)!,
      ...walk.under(hanging),
    };
    const cut = !walk.isPlace(here) && hanging.length > 0 && isCut(seam);
    if (cut) seams.push(seam);
    queue.push(...(cut ? inside.filter((it) => !hanging.includes(it)) : inside));
  }
  return seams;
}

/** Least number of openable devices on the way to each point from a place, open or closed. */
function openingsTo(system: System, place: readonly PointId[]): ReadonlyMap<string, number> {
  const at = elementsAt(system);
  const least = new Map<string, number>(place.map((it) => [it, 0]));
  let level = [...place] as string[];
  for (let count = 0; level.length > 0; count++) {
    const further: string[] = [];
    for (let next = 0; next < level.length; next++) {
      const here = level[next]!;
      if (least.get(here) !== count) continue;
      for (const id of at.get(here) ?? []) {
        const saved = system.elements[id as ElementId]!;
        const cost = isOpening(saved) ? 1 : 0;
        for (const far of endPointsOf(saved)) {
          if ((least.get(far) ?? Infinity) <= count + cost) continue;
          least.set(far, count + cost);
          (cost === 0 ? level : further).push(far);
        }
      }
    }
    level = further;
  }
  return least;
}

const isOpening = (saved: System["elements"][ElementId]): boolean =>
  hasPositions(saved) || openingOf(complete(saved)) !== undefined;

/**
 * Points and elements in the order in which a depth-first walk from the place comes to them, numbered so; 0 is the place
 * as a whole. `low` is the earliest that anything under a node leads back to.
 */
function walked(system: System, place: readonly PointId[]) {
  const at = elementsAt(system);
  const beside = besidesOf(system);
  const number = new Map<string, number>();
  const ids: string[] = [""];
  const isElement: boolean[] = [false];
  const parent: number[] = [-1];
  const low: number[] = [0];
  const last: number[] = [0];
  const children: number[][] = [[]];
  const neighbours = (node: number): readonly string[] => {
    if (node === 0) return place.map((it) => `p ${it}`);
    const id = ids[node]!;
    if (!isElement[node]) return (at.get(id) ?? []).map((it) => `e ${it}`);
    return [
      ...endPointsOf(system.elements[id as ElementId]).map((it) => `p ${it}`),
      ...(beside.get(id) ?? []).map((it) => `e ${it}`),
    ];
  };
  const stack: { node: number; around: readonly string[]; next: number }[] = [
    { node: 0, around: neighbours(0), next: 0 },
  ];
  while (stack.length > 0) {
    const top = stack.at(-1)!;
    const { node } = top;
    const name = top.around[top.next++];
    if (name === undefined) {
      stack.pop();
      last[node] = ids.length - 1;
      const before = parent[node]!;
      if (before !== -1) low[before] = Math.min(low[before]!, low[node]!);
      continue;
    }
    const known = number.get(name);
    if (known !== undefined) {
      if (known !== parent[node]) low[node] = Math.min(low[node]!, known);
      continue;
    }
    const fresh = ids.length;
    number.set(name, fresh);
    ids.push(name.slice(2));
    isElement.push(name.startsWith("e"));
    parent.push(node);
    // Each point of the place leads back to it.
    low.push(node !== 0 && !name.startsWith("e") && place.includes(name.slice(2) as PointId) ? 0 : fresh);
    last.push(fresh);
    children.push([]);
    children[node]!.push(fresh);
    stack.push({ node: fresh, around: neighbours(fresh), next: 0 });
  }
  const onPlace = new Set<string>(place);
  return {
    children,
    low,
    idOf: (node: number) => ids[node]!,
    isPoint: (node: number) => !isElement[node]!,
    isPlace: (node: number) => onPlace.has(ids[node]!) && !isElement[node]!,
    byOf: (node: number) => (isElement[parent[node]!] ? ids[parent[node]!] : undefined),
    under(roots: readonly number[]) {
      const points: PointId[] = [];
      const elements: ElementId[] = [];
      for (const root of roots)
        for (let node = root; node <= last[root]!; node++)
          if (isElement[node]) elements.push(ids[node] as ElementId);
          else points.push(ids[node] as PointId);
      return { points, elements };
    },
  };
}

/** Elements that stand at a span instead of at a point, by that span, and the spans by them. */
function besidesOf({ elements }: System): ReadonlyMap<string, readonly string[]> {
  const besides = new Map<string, string[]>();
  const add = (a: string, b: string) => besides.set(a, [...(besides.get(a) ?? []), b]);
  for (const [id, saved] of Object.entries(elements))
    if (deviceOf(saved.kind).ends.length === 0 && typeof saved["span"] === "string") {
      add(id, saved["span"]);
      add(saved["span"], id);
    }
  return besides;
}
