import { type CircuitElement, deviceOf, isLine, isSupply } from "../../devices";
import {
  complete,
  elementsAt,
  endPointsOf,
  MOST_TOLD_APART,
  perObject,
  savedElement,
  structureOf,
  structuresOf,
  type System,
  titleOfStructure,
  isPole,
  isPadLike,
  isHouse,
} from "../../document";
import type { ElementId } from "../../terms";
import { type Titles, titlesOf } from "../labels";

/** Places that are drawn on one plate: a structure, and the houses at the end of its services. */
export interface PlateGroup extends Titles {
  readonly id: string;
  readonly kind: "pole" | "pad" | "vault" | "station" | "service";
}

/** A point in the tree along which a drawing is laid out: from the source outward, as the current comes. */
export interface TreeBranch {
  readonly id: string;
  readonly plate: PlateGroup;
  /** the element by which the tree comes here */
  readonly by: ElementId | undefined;
  readonly parent: TreeBranch | undefined;
  readonly onward: TreeBranch[];
  /** what stands at this point alone */
  readonly hung: ElementId[];
}

/** The trees of a drawing, and the elements that join two places of a tree that are joined already. */
export interface Tree {
  readonly roots: readonly TreeBranch[];
  readonly branches: ReadonlyMap<string, TreeBranch>;
  readonly ties: readonly ElementId[];
  /** plates with more on them than anybody could make out, with all the places on each */
  readonly crowds: ReadonlyMap<PlateGroup, readonly TreeBranch[]>;
}

/** How long a way through an element counts: the line itself is followed before a secondary is. */
function lengthOf(element: CircuitElement): number {
  if (!isLine(element)) return 0.001;
  return element.construction === "secondary" ? 1000 : 1;
}

/** Longer than any way. */
const LAST = 1e9;

/** Follows a drawing outward from its sources, through whatever is open as through what is closed. */
export const treeOf = perObject((system: System): Tree => {
  const tree = followed(system);
  const closing = closingOf(tree, system);
  return closing.size === 0 ? tree : followed(system, closing);
});

/**
 * The cables by which loops of pads come back to their second risers: such a loop is followed from its one riser to its
 * other one, wherever along it is open, and stands in one row.
 */
function closingOf({ branches, ties }: Tree, system: System): ReadonlySet<ElementId> {
  const closing = new Set<ElementId>();
  for (const id of ties) {
    const risers = endPointsOf(savedElement(system.elements, id)).map((it) => riserOf(branches.get(it)));
    const [one, other] = risers;
    if (one === undefined || other === undefined || one.by === other.by) continue;
    closing.add((depthOf(one) > depthOf(other) ? one : other).by!);
  }
  return closing;
}

/** The first place off a pole on the way to a place among pads; nothing where that is on none or comes from none. */
function riserOf(branch: TreeBranch | undefined): TreeBranch | undefined {
  for (let at = branch; at?.parent !== undefined && isPadLike(at.plate); at = at.parent)
    if (isPole(at.parent.plate)) return at;
  return undefined;
}

function depthOf({ parent }: TreeBranch): number {
  let depth = 0;
  for (let at = parent; at !== undefined; at = at.parent) depth++;
  return depth;
}

/** @param apart elements that are not followed where another way leads to what is behind them */
function followed(system: System, apart: ReadonlySet<string> = new Set()): Tree {
  const plates = new Map<string, PlateGroup>();
  const structures = [...structuresOf(system).values()];
  const titles = titlesOf(structures.map((it) => titleOfStructure(system, it)));
  for (const [nth, { id, kind }] of structures.entries()) plates.set(id, { id, kind, ...titles[nth]! });
  const branches = new Map<string, TreeBranch>();
  const roots: TreeBranch[] = [];
  const used = new Set<string>();
  for (const start of startsOf(system)) {
    if (branches.has(start)) continue;
    const queue = new Waiting();
    queue.add(0, { id: start });
    for (let next; (next = queue.take()) !== undefined;) {
      const { id, by, from, length } = next;
      if (branches.has(id)) continue;
      const parent = from === undefined ? undefined : branches.get(from)!;
      const own = plates.get(structureOf(system, id)!.id)!;
      // A house at the end of a service is drawn with the pole that feeds it.
      const plate = parent !== undefined && isHouse(own) ? parent.plate : own;
      const branch: TreeBranch = { id, plate, by, parent, onward: [], hung: [] };
      branches.set(id, branch);
      if (parent === undefined) roots.push(branch);
      else parent.onward.push(branch);
      if (by !== undefined) used.add(by);
      for (const at of elementsAt(system).get(id) ?? []) {
        const element = complete(savedElement(system.elements, at)!);
        if ("at" in element) {
          branch.hung.push(at as ElementId);
          continue;
        }
        for (const end of endPointsOf(savedElement(system.elements, at)))
          if (!branches.has(end))
            queue.add(
              length + lengthOf(element) + (apart.has(at) ? LAST : 0),
              { id: end, by: at as ElementId, from: id },
              structureOf(system, end)?.id === own.id,
            );
      }
    }
  }
  const ties = Object.keys(system.elements).filter((id) => {
    const saved = savedElement(system.elements, id)!;
    return deviceOf(saved.kind).ends.length > 1 && !used.has(id);
  });
  return { roots, branches, ties: ties as ElementId[], crowds: crowdsAmong(branches.values()) };
}

/** How many devices are on a plate whose places are given. */
export const devicesOn = (on: readonly TreeBranch[]): number =>
  on.reduce((sum, { hung, parent, plate }) => sum + hung.length + (parent?.plate === plate ? 1 : 0), 0);

function crowdsAmong(branches: Iterable<TreeBranch>): Tree["crowds"] {
  const onPlates = new Map<PlateGroup, TreeBranch[]>();
  for (const branch of branches) {
    const on = onPlates.get(branch.plate);
    if (on === undefined) onPlates.set(branch.plate, [branch]);
    else on.push(branch);
  }
  return new Map([...onPlates].filter(([, on]) => on.length + devicesOn(on) > MOST_TOLD_APART));
}

/** Sources first, in the order of the drawing, and then whatever these do not lead to. */
function* startsOf({ points, elements }: System): Iterable<string> {
  for (const id in elements) {
    const saved = savedElement(elements, id)!;
    if (isSupply(saved) && typeof saved["at"] === "string" && Object.hasOwn(points, saved["at"]))
      yield saved["at"];
  }
  yield* Object.keys(points);
}

interface Hop {
  readonly id: string;
  readonly by?: ElementId;
  readonly from?: string;
}

/** Steps by their length, the shortest first and those of one length as they came. */
class Waiting {
  readonly #steps: (Hop & { readonly length: number; readonly rank: number; readonly nth: number })[] = [];
  #count = 0;

  /** @param isNext all of a structure comes before anything else does */
  add(length: number, step: Hop, isNext = false) {
    const heap = this.#steps;
    let at = heap.push({ ...step, length, rank: isNext ? -1 : length, nth: this.#count++ }) - 1;
    for (let up; at > 0 && isBefore(heap[at]!, heap[(up = (at - 1) >> 1)]!); at = up)
      [heap[at], heap[up]] = [heap[up]!, heap[at]!];
  }

  take() {
    const heap = this.#steps;
    const first = heap[0];
    const last = heap.pop();
    if (first === undefined || last === first) return first;
    heap[0] = last!;
    for (let at = 0; ;) {
      const down = [2 * at + 1, 2 * at + 2].filter((it) => it < heap.length);
      const least = down.reduce((best, it) => (isBefore(heap[it]!, heap[best]!) ? it : best), at);
      if (least === at) return first;
      [heap[at], heap[least]] = [heap[least]!, heap[at]!];
      at = least;
    }
  }
}

const isBefore = (one: { rank: number; nth: number }, other: { rank: number; nth: number }): boolean =>
  one.rank < other.rank || (one.rank === other.rank && one.nth < other.nth);
