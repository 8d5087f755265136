import { type DeviceKind, isBeside, isConductor, isCustomers, isFault, isGroundSet } from "../devices";
import type { StructureId } from "../terms";
import { savedElement } from "./elementsAt";
import { hopsFromSource } from "./hops";
import { naturalOrder } from "./naturalOrder";
import { perObject } from "./perObject";
import { type Structure, structuresAround, structuresOf } from "./structures";
import type { System } from "./types";

/** Which of several that are called alike one is. */
export interface Count {
  readonly n: number;
  readonly of: number;
}

interface Past {
  /** the nearest structure toward the source that has a label */
  readonly past: StructureId | undefined;
}

/** It alone of its kind there carries such a thing: *pole with recloser past Pole 30*. */
interface ByThing extends Past {
  readonly by: "thing";
  /** the kind of what it carries */
  readonly thing: DeviceKind;
  /** what is written on that, where its kind is not enough */
  readonly label: string | undefined;
  /** nothing else past the same one is such a thing: it may go by itself */
  readonly isAlone: boolean;
}

/** It stands on the way to one that can be found, counted along it: *1st pole past Pole 30 toward Pole 32*. */
interface ByWay extends Past, Count {
  readonly by: "way";
  readonly toward: StructureId;
}

/** It leads to nothing that can be found: counted along the line from the last that can. */
interface ByCount extends Past, Count {
  readonly by: "count";
  /** one past the same label that can be found, and that this one lies behind */
  readonly branchOf: StructureId | undefined;
  /** others of its kind past the same label can be found otherwise */
  readonly hasOthers: boolean;
}

type Told = ByThing | ByWay | ByCount;

/**
 * By what a person finds each structure without a label: first by what it alone carries, else by where it stands between
 * two that can be found, and only among those that are truly alike by counting.
 */
export const toldWithoutNumber = perObject((system: System): ReadonlyMap<string, Told> => {
  const tree = grownFromSources(system);
  const unlabelled = tree.filter((it) => !isLabelled(it));
  const [unclear, told] = [unclearAmong(unlabelled), new Map<string, Told>()];
  // Before the first number only the way tells: elsewhere there may be another such thing.
  for (const [branch, toward] of waysTo(tree, isLabelled))
    if (unclear.has(branch) && branch.past === undefined)
      told.set(branch.structure.id, toldByWay(branch, toward));
  for (const [branch, by] of toldByThing(system, unlabelled))
    if (unclear.has(branch) && !told.has(branch.structure.id)) told.set(branch.structure.id, by);
  for (const isFound of [isLabelled, (it: Branch) => isLabelled(it) || told.has(it.structure.id)])
    for (const [branch, toward] of waysTo(tree, isFound))
      if (unclear.has(branch) && !told.has(branch.structure.id))
        told.set(branch.structure.id, toldByWay(branch, toward));
  const otherwise = new Set(unlabelled.filter(({ structure }) => told.has(structure.id)).map(sortOf));
  return new Map([...told, ...toldByCount(unlabelled, unclear, told, otherwise)]);
});

/** A structure where it hangs in what is fed from the sources. */
interface Branch extends Past {
  readonly structure: Structure;
  readonly parent: Branch | undefined;
  /** how many without a label of each kind stand on the way from the last one with a label, itself included */
  readonly along: ReadonlyMap<string, number>;
}

const isLabelled = ({ structure }: Branch): boolean => structure.label !== "";

/** Structures of one kind past the same label are of one sort. */
const sortOf = ({ past, structure }: Branch): string => `${past ?? ""} ${structure.kind}`;

/** Every structure after the one that leads to it, nearest the sources first. */
function grownFromSources(system: System): readonly Branch[] {
  const hops = hopsFromSource(system);
  const far = ({ points }: Structure) => hops.get(points[0] ?? "") ?? Number.MAX_VALUE;
  const order = [...structuresOf(system).values()].sort(
    (a, b) => far(a) - far(b) || naturalOrder(a.id, b.id),
  );
  const branches = new Map<StructureId, Branch>();
  const grow = (structure: Structure, parent: Branch | undefined): Branch => {
    const past = parent === undefined || isLabelled(parent) ? parent?.structure.id : parent.past;
    const along = new Map(parent?.along);
    if (structure.label !== "") along.clear();
    else along.set(structure.kind, (along.get(structure.kind) ?? 0) + 1);
    const branch = { structure, parent, past, along };
    branches.set(structure.id, branch);
    return branch;
  };
  for (const structure of order) {
    const here = branches.get(structure.id) ?? grow(structure, undefined);
    for (const there of structuresAround(system, structure)) if (!branches.has(there.id)) grow(there, here);
  }
  return order.map(({ id }) => branches.get(id)!);
}

/** Those of which one thing that they carry, or what is written on it, is the only such past the same label. */
function* toldByThing(system: System, unlabelled: readonly Branch[]): Iterable<[Branch, ByThing]> {
  const carried = new Map(unlabelled.map((it) => [it, carriedBy(system, it.structure)]));
  const carriers = new Map<string, number>();
  const many = new Map<string, number>();
  const count = (counts: Map<string, number>, key: string) => counts.set(key, (counts.get(key) ?? 0) + 1);
  for (const [branch, things] of carried) {
    for (const key of things.map(keyOf)) count(many, key);
    for (const key of new Set(things.map(keyOf))) {
      count(carriers, `${sortOf(branch)} ${key}`);
      count(carriers, `${branch.past ?? ""} ${key}`);
    }
  }
  for (const [branch, things] of carried) {
    const [rarest] = things
      .filter((it) => carriers.get(`${sortOf(branch)} ${keyOf(it)}`) === 1)
      .sort((a, b) => weight(a) - weight(b) || manyOf(a) - manyOf(b));
    if (rarest === undefined) continue;
    const isOnlyHere = things.filter((it) => keyOf(it) === keyOf(rarest)).length === 1;
    const isAlone = isOnlyHere && carriers.get(`${branch.past ?? ""} ${keyOf(rarest)}`) === 1;
    yield [branch, { by: "thing", past: branch.past, ...rarest, isAlone }];
  }

  function manyOf(thing: Carried): number {
    return many.get(keyOf(thing))!;
  }
}

/** All but those that are the only one of their kind past a number, or in the drawing: these need nothing more to be found. */
function unclearAmong(unlabelled: readonly Branch[]): ReadonlySet<Branch> {
  const many = new Map<string, number>();
  const keys = (it: Branch) => [sortOf(it), it.structure.kind];
  for (const key of unlabelled.flatMap(keys)) many.set(key, (many.get(key) ?? 0) + 1);
  return new Set(
    unlabelled.filter((it) => many.get(it.past === undefined ? it.structure.kind : sortOf(it))! > 1),
  );
}

/** What the crew knows by sight comes before what is a customer's, and both before what has to be read. */
const weight = ({ thing, label }: Carried): number =>
  Number(isCustomers({ kind: thing })) + 2 * Number(label !== undefined);

type Carried = Pick<ByThing, "thing" | "label">;

const keyOf = ({ thing, label }: Carried): string =>
  label === undefined ? thing : `"${label.toLowerCase()}`;

/** What stays on a structure and can be seen from below: kinds first, then what is written on them. */
function carriedBy(system: System, { elements }: Structure): readonly Carried[] {
  const things = elements
    .map((id) => savedElement(system.elements, id)!)
    .filter((it) => !isConductor(it) && !isGroundSet(it) && !isFault(it) && !isBeside(it));
  const kinds = things.map((it) => ({ thing: it.kind, label: undefined }));
  const labels = things.flatMap((it) => {
    const { label } = it as { label?: unknown };
    return typeof label === "string" && isMark(label) ? { thing: it.kind, label } : [];
  });
  return [...kinds, ...labels];
}

/** A short label with a figure stands on the thing itself; a longer one tells of it, and one of words alone may be its kind. */
const isMark = (label: string): boolean => label.length <= 24 && /\p{N}/u.test(label);

/** Of every structure without a label the nearest that can be found of those that it leads to. */
function waysTo(tree: readonly Branch[], isFound: (branch: Branch) => boolean): ReadonlyMap<Branch, Branch> {
  const ways = new Map<Branch, Branch>();
  const away = new Map<Branch, number>();
  for (const branch of tree.toReversed()) {
    const { parent } = branch;
    if (parent === undefined || isLabelled(parent)) continue;
    const isEnd = isFound(branch);
    const target = isEnd ? branch : ways.get(branch);
    if (target === undefined) continue;
    const far = isEnd ? 1 : away.get(branch)! + 1;
    if (far > (away.get(parent) ?? Number.MAX_VALUE)) continue;
    away.set(parent, far);
    ways.set(parent, target);
  }
  return ways;
}

const toldByWay = ({ structure, past, along }: Branch, toward: Branch): ByWay => ({
  by: "way",
  past,
  toward: toward.structure.id,
  n: along.get(structure.kind)!,
  of: toward.parent!.along.get(structure.kind)!,
});

/** The others, along the line from the last that can be found. */
function* toldByCount(
  unlabelled: readonly Branch[],
  unclear: ReadonlySet<Branch>,
  told: ReadonlyMap<string, Told>,
  otherwise: ReadonlySet<string>,
): Iterable<[string, ByCount]> {
  const heaps = new Map<string, Branch[]>();
  const branchOf = new Map<Branch, StructureId | undefined>();
  for (const branch of unlabelled) {
    const { parent, structure } = branch;
    const isBehind = parent !== undefined && !isLabelled(parent);
    const from = isBehind && told.has(parent.structure.id) ? parent.structure.id : branchOf.get(parent!);
    branchOf.set(branch, from);
    if (told.has(structure.id)) continue;
    const key = `${unclear.has(branch) ? (from ?? "") : "alone"}/${sortOf(branch)}`;
    const its = heaps.get(key);
    if (its === undefined) heaps.set(key, [branch]);
    else its.push(branch);
  }
  for (const alike of heaps.values())
    for (const [turn, branch] of alike.entries())
      yield [
        branch.structure.id,
        {
          by: "count",
          past: branch.past,
          branchOf: unclear.has(branch) ? branchOf.get(branch) : undefined,
          hasOthers: otherwise.has(sortOf(branch)),
          n: turn + 1,
          of: alike.length,
        },
      ];
}
