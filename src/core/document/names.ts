import { deviceOf, isAtCustomer, isBeside, isLine, isTransformer } from "../devices";
import {
  type ConductorId,
  type JsonObject,
  type Message,
  partsOfConductor,
  type PointId,
  say,
  type StructureId,
  type WorkPointId,
} from "../terms";
import { besideOthers } from "./besideOthers";
import { elementsAt, endPointsOf, savedElement, savedPoint } from "./elementsAt";
import { hopsFromSource } from "./hops";
import { naturalOrder } from "./naturalOrder";
import { jobOf } from "./settings";
import { perObject } from "./perObject";
import { type Count, toldWithoutNumber } from "./withoutNumber";
import {
  readable,
  type Structure,
  structureOf,
  structureOfElement,
  structureOfPoint,
  structuresOf,
} from "./structures";
import { perDrawing } from "./touched";
import type { SavedElement, StillhotDocument, System } from "./types";

type Drawn = { readonly system: System };
type Name = string | Message;

/**
 * What a person calls a thing: the structure, then what or where it is on it, *Pole 30, sideline cutout*, *Pole 30, below
 * the sideline cutout*. No id is part of it, and no two things of a drawing have one name: whoever takes one for the
 * other gets hurt. What nobody labelled goes by its kind and its neighbours, counted where there are several.
 */
export const nameIn = (document: Drawn, id: string): Name =>
  Object.hasOwn(document.system.elements, id) ? elementName(document, id) : pointName(document, id);

/** What a person calls an element, see `nameIn`. */
export const elementName = ({ system }: Drawn, id: string): Name =>
  remembered(system, `element ${id}`, () => {
    const saved = savedElement(system.elements, id);
    return saved === undefined ? say("name.unknown") : nameOfElement(system, id, saved);
  });

/** What a person calls a point or a structure, see `nameIn`. */
export const pointName = ({ system }: Drawn, id: string): Name =>
  remembered(system, id, () => {
    if (Object.hasOwn(system.points, id)) return nameOfPoint(system, id);
    const structure = structuresOf(system).get(id as StructureId);
    return structure === undefined ? say("name.unknown") : nameOfStructure(system, structure);
  });

/** What a person calls a structure, a derived one too, whose id is that of a point: see `nameIn`. */
export const structureName = ({ system }: Drawn, id: string): Name =>
  remembered(system, `structure ${id}`, () => {
    const structure = structuresOf(system).get(id as StructureId);
    return structure === undefined ? say("name.unknown") : nameOfStructure(system, structure);
  });

/** What a person calls a work point: its label, or the place where it is. */
export function workPointName(document: StillhotDocument, id: string): Name {
  const { workPoints } = jobOf(document);
  const workPoint = Object.hasOwn(workPoints, id) ? workPoints[id as WorkPointId] : undefined;
  if (workPoint === undefined) return say("name.unknown");
  return workPoint.label || pointName(document, workPoint.at);
}

/** The same with its place and conductors, as a verdict begins. */
export function workPlaceName(document: StillhotDocument, id: string): Name {
  const { at, conductors, label } = jobOf(document).workPoints[id as WorkPointId]!;
  const [place, letters] = [pointName(document, at), [...conductors].join(" ")];
  return (label ?? "") === ""
    ? say("name.conductor", { point: place, letter: letters })
    : say("name.work", { name: workPointName(document, id), conductors: letters, place });
}

/** What a finding is about, for a person: a thing or a work point by its name, anything else as it is written. */
export function nameOfWhere(document: StillhotDocument, where: string): Name {
  const { points, elements, structures = {} } = document.system;
  if (where.includes(", ")) return listOf(where.split(", ").map((it) => nameOfWhere(document, it)));
  if ([points, elements, structures].some((it) => Object.hasOwn(it, where))) return nameIn(document, where);
  if (Object.hasOwn(jobOf(document).workPoints, where)) return workPointName(document, where);
  const { point, letter } = partsOfConductor(where as ConductorId);
  return Object.hasOwn(points, point)
    ? say("name.conductor", { point: pointName(document, point), letter })
    : where;
}

/** Several things in a row as one message. */
export function listOf(things: readonly Name[]): Message {
  const items = things.map((it) => (typeof it === "string" ? say("name.plain", { name: it }) : it));
  if (items.length === 0) return say("list.none");
  return items.slice(0, -1).reduceRight((rest, first) => say("list.more", { first, rest }), items.at(-1)!);
}

/** What a person at a structure calls a thing on it: *sideline cutout*, *below the sideline cutout*. */
export function nameOnStructure({ system }: Drawn, id: string): Name {
  const saved = savedElement(system.elements, id);
  const structure = saved === undefined ? structureOfPoint(system, id) : structureOfElement(system, id);
  if (structure === undefined) return nameIn({ system }, id);
  return saved === undefined ? placeOn(system, id, structure) : ownName(system, id, saved, structure);
}

/**
 * Things whose full names are one to the ear, two or more in each heap: their labels say so, and nothing but a count tells
 * them apart. An element that is called like a place elsewhere is told with its kind, and is in no heap with it.
 */
export const calledAlike = perObject((system: System): readonly (readonly string[])[] => {
  const heaps = byLabel([
    ...Object.entries(system.structures ?? {}).map(([id, saved]) => [id, labelOf(saved)] as const),
    ...Object.keys(system.points).map((id) => {
      const structure = structureOfPoint(system, id)!;
      const label = labelOf(system.points[id as PointId]);
      if (isWholeName(label, structure)) return [id, label] as const;
      return [id, asHeard(label) === asHeard(structure.label) ? "" : onStructure(structure, label)] as const;
    }),
    ...Object.entries<SavedElement>(system.elements).map(([id, saved]) => {
      const structure = structureOfElement(system, id);
      const label = ownLabel(saved, structure);
      if (structure === undefined || isWholeName(label, structure))
        return [id, label === "" ? "" : `element ${label}`] as const;
      return [id, onStructure(structure, label)] as const;
    }),
  ]);
  return [...heaps.values()].filter((ids) => ids.length > 1);
});

const onStructure = ({ id, label }: Structure, place: string): string =>
  place === "" ? "" : `${label === "" ? id : label} ${place}`;

/** A label as the ear takes it: capitals, spaces and punctuation make no difference. */
export const asHeard = (label: string): string =>
  label
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "");

function remembered(system: System, key: string, make: () => Name): Name {
  const names = namesOf(system);
  const known = names.get(key);
  if (known !== undefined) return known;
  const name = make();
  names.set(key, name);
  return name;
}

/** Names that were asked for, kept over edits that move what is drawn and nothing of what it is called by. */
const namesOf = perDrawing<Map<string, Name>>(
  () => new Map(),
  (was, before, after, { structures, points, elements }) =>
    structures.size === 0 &&
    [...points].every((id) => isCalledAlike(savedPoint(before.points, id), savedPoint(after.points, id))) &&
    [...elements].every((id) =>
      isCalledAlike(savedElement(before.elements, id), savedElement(after.elements, id)),
    )
      ? was
      : undefined,
);

const CALLED_BY = ["label", "kind", "on", "from", "to", "alt", "at", "span"];

const isCalledAlike = (was: JsonObject | undefined, is: JsonObject | undefined): boolean =>
  was !== undefined && is !== undefined && CALLED_BY.every((key) => was[key] === is[key]);

/** A structure by its label, told apart from others that are labelled alike; else by what it carries or where it stands. */
function nameOfStructure(system: System, structure: Structure): Name {
  const { id, label, kind } = structure;
  if (label !== "") return counted(label, countOfLabel(system, structure));
  const told = toldWithoutNumber(system).get(id)!;
  const nameOf = (it: StructureId): Name => nameOfStructure(system, structuresOf(system).get(it)!);
  const past = (what: Message): Message =>
    told.past === undefined ? what : say("name.past", { what, past: nameOf(told.past) });
  if (told.by === "thing") {
    const thing = told.label ?? say(`kind.${told.thing}`);
    return past(say("name.with", { kind: say(`kind.${kind}`), thing }));
  }
  const which = countedKind(kind, told);
  if (told.by === "way") return say("name.toward", { what: past(which), toward: nameOf(told.toward) });
  if (told.branchOf !== undefined)
    return say("name.branchFrom", { what: which, structure: nameOf(told.branchOf) });
  if (told.hasOthers) return say("name.branch", { what: past(which) });
  return told.past === undefined
    ? say("name.unnumbered", { kind: which })
    : say("name.unnumberedPast", { kind: which, past: nameOf(told.past) });
}

/**
 * What is written at a structure on a picture: its label, and where several are labelled alike the count that tells them
 * apart in its name.
 */
export function titleOfStructure(system: System, structure: Structure): string {
  const { label } = structure;
  const isAlone = placeLabels(system)
    .get(asHeard(label))
    ?.every((it) => structureOf(system, it) === structure);
  return isAlone === false ? `${label} (${countOfLabel(system, structure).n})` : label;
}

/** Which of those that are labelled alike a structure is; a derived one goes by the point whose label it has. */
function countOfLabel(system: System, { id, label, isDerived, points }: Structure): Count {
  const bearer = isDerived ? points.find((it) => labelOf(system.points[it]) !== "") : undefined;
  return alikeAmong(system, bearer ?? id, placeLabels(system).get(asHeard(label)));
}

/** A point: its own label where that says all, else its structure and its place on it. */
function nameOfPoint(system: System, id: string): Name {
  const structure = structureOfPoint(system, id)!;
  const label = labelOf(savedPoint(system.points, id));
  if (isWholeName(label, structure))
    return counted(label, alikeAmong(system, id, placeLabels(system).get(asHeard(label))));
  const name = nameOfStructure(system, structure);
  const isOnly = label === "" && structure.points.length === 1;
  return isOnly ? name : say("name.on", { structure: name, place: placeOn(system, id, structure) });
}

/** An element on a structure of the file is told with it; any other by its label, or by what it is and where. */
function nameOfElement(system: System, id: string, saved: SavedElement): Name {
  const structure = structureOfElement(system, id);
  const own = ownName(system, id, saved, structure);
  const label = ownLabel(saved, structure);
  if (structure === undefined || isWholeName(label, structure)) return own;
  const alone = nameOfWhatNames(system, saved, structure);
  if (alone !== undefined) return alone;
  if (label === "")
    return say("name.at", {
      kind: ownKind(system, id, saved, structure),
      place: placeOf(system, saved, structure),
    });
  return say("name.on", { structure: nameOfStructure(system, structure), place: own });
}

/** What a structure without a number goes by is not told twice: *recloser past Pole 30*, not at the pole with it. */
function nameOfWhatNames(system: System, saved: SavedElement, { id, label }: Structure): Message | undefined {
  const told = label === "" ? toldWithoutNumber(system).get(id) : undefined;
  if (told?.by !== "thing" || !told.isAlone) return undefined;
  const isIt = told.label === undefined ? told.thing === saved.kind : told.label === labelOf(saved);
  if (!isIt) return undefined;
  if (told.past === undefined) return isOnlyOne(system, saved.kind) ? say(`kind.${saved.kind}`) : undefined;
  const past = nameOfStructure(system, structuresOf(system).get(told.past)!);
  return say("name.past", { what: told.label ?? say(`kind.${saved.kind}`), past });
}

/** Where nothing is labelled, what there is once goes by its kind. */
const isOnlyOne = (system: System, kind: string): boolean => kindsWithoutLabels(system).get(kind) === 1;

const kindsWithoutLabels = perObject((system: System): ReadonlyMap<string, number> => {
  const all = Object.values<SavedElement>(system.elements);
  const many = new Map<string, number>();
  if (all.some((it) => labelOf(it) !== "")) return many;
  for (const { kind } of all) many.set(kind, (many.get(kind) ?? 0) + 1);
  return many;
});

/** What an element is called where its structure is known: its label, or its kind. */
function ownName(system: System, id: string, saved: SavedElement, structure: Structure | undefined): Name {
  const label = ownLabel(saved, structure);
  const kind = say(`kind.${saved.kind}`);
  if (label === "" && structure === undefined) return nameOfLine(system, id, saved, kind);
  if (label === "") {
    const own = ownKind(system, id, saved, structure!);
    const at = toldByPoint(system, saved, structure!);
    return at === undefined ? own : say("name.at", { kind: own, place: placeOn(system, at, structure!) });
  }
  const heard = asHeard(label);
  if (structure !== undefined && !isWholeName(label, structure)) {
    return counted(label, alikeAmong(system, id, labelsOn(system)(structure, "elements").get(heard)));
  }
  const name = counted(label, alikeAmong(system, id, elementLabels(system).get(heard)));
  return placeLabels(system).has(heard) ? say("name.which", { name, kind }) : name;
}

/** The kind of an element, counted where that and its place do not tell it from others. */
function ownKind(system: System, id: string, saved: SavedElement, structure: Structure): Message {
  const at = toldByPoint(system, saved, structure);
  const alike = unlabelledOn(system, structure, saved.kind, at);
  return countedThing(say(`kind.${saved.kind}`), alikeAmong(system, id, alike));
}

/** The point that one of several of a kind on a structure is told apart by: that on which it hangs, as a ground set does. */
function toldByPoint(system: System, saved: SavedElement, structure: Structure): string | undefined {
  const [at] = endPointsOf(saved);
  const hangs = deviceOf(saved.kind).ends.length === 1 && structureOfPoint(system, at ?? "") === structure;
  return hangs && unlabelledOn(system, structure, saved.kind).length > 1 ? at : undefined;
}

/** Where an element is that goes by its kind. */
function placeOf(system: System, saved: SavedElement, structure: Structure): Name {
  const at = toldByPoint(system, saved, structure);
  return at === undefined ? nameOfStructure(system, structure) : nameOfPoint(system, at);
}

/** An element's label where it says more than on which structure it is. */
const ownLabel = (saved: SavedElement, structure: Structure | undefined): string => {
  const label = labelOf(saved);
  return structure !== undefined && asHeard(label) === asHeard(structure.label) ? "" : label;
};

/** What runs between structures, or beside a span. */
function nameOfLine(system: System, id: string, saved: SavedElement, kind: Message): Name {
  if (isBeside(saved) && typeof saved["span"] === "string") {
    const beside = besideOthers(system).filter((it) => isAlsoBeside(system, it, saved["span"]));
    const name = say("name.beside", { kind, span: nameIn({ system }, saved["span"]) });
    return counted(name, alikeAmong(system, id, beside));
  }
  const [from, to] = endPointsOf(saved).map((it) => structureOfPoint(system, it));
  if (from === undefined || to === undefined) return kind;
  const name = say("name.between", {
    kind,
    from: nameOfStructure(system, from),
    to: nameOfStructure(system, to),
  });
  return counted(name, alikeAmong(system, id, between(system, saved.kind, from, to)));
}

const isAlsoBeside = ({ elements }: System, id: string, span: unknown): boolean =>
  savedElement(elements, id)!["span"] === span && labelOf(savedElement(elements, id)) === "";

/** Unlabelled elements of a kind between two structures, and on neither. */
const between = (system: System, kind: string, from: Structure, to: Structure): string[] =>
  from.points
    .flatMap((point) => elementsAt(system).get(point) ?? [])
    .filter((it, index, all) => all.indexOf(it) === index)
    .filter((it) => {
      const other = savedElement(system.elements, it)!;
      const ends = endPointsOf(other).map((end) => structureOfPoint(system, end)?.id);
      return (
        other.kind === kind &&
        labelOf(other) === "" &&
        structureOfElement(system, it) === undefined &&
        ends[0] === from.id &&
        ends[1] === to.id
      );
    });

/** Elements of a kind on a structure that go by their kind: all of them, or those that begin at one point of it. */
const unlabelledOn = (system: System, structure: Structure, kind: string, at?: string): readonly string[] =>
  unlabelledByKind(system).get(`${structure.id} ${kind}${at === undefined ? "" : ` ${at}`}`) ?? [];

const unlabelledByKind = perObject((system: System): ReadonlyMap<string, readonly string[]> => {
  const heaps = new Map<string, string[]>();
  for (const structure of structuresOf(system).values())
    for (const id of structure.elements) {
      const saved = savedElement(system.elements, id)!;
      if (ownLabel(saved, structure) !== "") continue;
      const all = `${structure.id} ${saved.kind}`;
      for (const key of [all, `${all} ${endPointsOf(saved)[0]}`]) {
        const its = heaps.get(key);
        if (its === undefined) heaps.set(key, [id]);
        else its.push(id);
      }
    }
  return heaps;
});

/** A point's place on its structure: its label, or made of what it is an end of, counted where that is not enough. */
function placeOn(system: System, id: string, structure: Structure): Name {
  const label = labelOf(savedPoint(system.points, id));
  if (label !== "" && asHeard(label) !== asHeard(structure.label)) {
    const alike = labelsOn(system)(structure, "points").get(asHeard(label));
    return counted(label, alikeAmong(system, id, alike));
  }
  const made = placesMade(system, structure);
  const { place, alike } = made.get(id)!;
  return counted(place(), alikeAmong(system, id, alike));
}

interface MadePlace {
  /** told only of what is asked for: a name counts what is called alike */
  readonly place: () => Message;
  /** the points of the structure at whose places the same is made, itself too */
  readonly alike: readonly string[];
}

const madePlacesOf = perObject((_system: System) => new Map<string, ReadonlyMap<string, MadePlace>>());

function placesMade(system: System, structure: Structure): ReadonlyMap<string, MadePlace> {
  const known = madePlacesOf(system).get(structure.id);
  if (known !== undefined) return known;
  const heaps = new Map<string, string[]>();
  const made = new Map<string, MadePlace>();
  for (const id of structure.points) {
    const { place, text } = madePlace(system, id, structure);
    const alike = heaps.get(text) ?? [];
    alike.push(id);
    heaps.set(text, alike);
    made.set(id, { place, alike });
  }
  madePlacesOf(system).set(structure.id, made);
  return made;
}

/** `below the cutout`, `low side of T1`, `above the clamp`; a point where line ends, and that no device is before, is the line. */
function madePlace(
  system: System,
  id: string,
  structure: Structure,
): { readonly place: () => Message; readonly text: string } {
  const here = (elementsAt(system).get(id) ?? [])
    .filter((it) => structureOfElement(system, it)?.id === structure.id)
    .map((it) => ({ it, saved: savedElement(system.elements, it)! }))
    .filter(({ saved }) => deviceOf(saved.kind).ends.length > 1);
  const above = here.find(({ saved }) => saved["to"] === id || (isTransformer(saved) && saved["alt"] === id));
  const device = above ?? (isWhereLineEnds(system, id) ? undefined : here[0]);
  if (device === undefined) return { place: () => say("place.line"), text: "line" };
  const side =
    device.saved["alt"] === id && above !== undefined
      ? ("thirdSide" as const)
      : sideOf(device.saved, above !== undefined, structure.kind);
  const place = () => say(`place.${side}`, { name: ownName(system, device.it, device.saved, structure) });
  return { place, text: `${side} ${device.it}` };
}

const isWhereLineEnds = (system: System, point: string): boolean =>
  (elementsAt(system).get(point) ?? []).some((it) => isLine(savedElement(system.elements, it)!));

function sideOf(saved: SavedElement, isBeyond: boolean, stands: string) {
  if (isTransformer(saved)) return isBeyond ? "lowSide" : "highSide";
  if (stands === "pole" && !isAtCustomer(saved)) return isBeyond ? "below" : "above";
  return isBeyond ? "beyond" : "before";
}

/**
 * Whether a label is all that a thing is called. In a file without structures it was written to stand alone; beside a
 * structure it does where it says which one.
 */
function isWholeName(label: string, { label: structure, isDerived }: Structure): boolean {
  if (isDerived) return label !== "";
  const [heard, its] = [asHeard(label), asHeard(structure)];
  return its !== "" && heard !== its && heard.includes(its);
}

/** Which of several that are called alike one is, nearest the source first. */
const alikeAmong = (system: System, id: string, ids: readonly string[] = []): Count =>
  ids.length < 2 ? { n: 1, of: 1 } : { n: (turnsOf(system, ids).get(id) ?? 0) + 1, of: ids.length };

const turns = perObject((_system: System) => new WeakMap<readonly string[], ReadonlyMap<string, number>>());

/** In which turn each of several is counted; the same several are put in order once. */
function turnsOf(system: System, ids: readonly string[]): ReadonlyMap<string, number> {
  const known = turns(system).get(ids);
  if (known !== undefined) return known;
  const hops = hopsFromSource(system);
  const far = (it: string): number => {
    const points = savedElement(system.elements, it)
      ? endPointsOf(savedElement(system.elements, it))
      : (structuresOf(system).get(it as StructureId)?.points ?? [it]);
    return Math.min(
      Number.MAX_VALUE,
      ...points.slice(0, 3).map((point) => hops.get(point) ?? Number.MAX_VALUE),
    );
  };
  const order = ids
    .map((id) => ({ id, far: far(id) }))
    .sort((a, b) => a.far - b.far || naturalOrder(a.id, b.id));
  const found = new Map(order.map(({ id }, turn) => [id, turn]));
  turns(system).set(ids, found);
  return found;
}

/** Ids of what is on a structure, its points or its elements, by what their labels sound like. */
const labelsOn = perObject((system: System) => {
  const known = new Map<string, ReadonlyMap<string, readonly string[]>>();
  return ({ id, points, elements }: Structure, of: "points" | "elements") => {
    const key = `${of} ${id}`;
    let found = known.get(key);
    if (found === undefined) {
      const records: Readonly<Record<string, JsonObject>> = of === "points" ? system.points : system.elements;
      found = byLabel((of === "points" ? points : elements).map((it) => [it, labelOf(records[it])] as const));
      known.set(key, found);
    }
    return found;
  };
});

const counted = (name: Name, { n, of }: Count): Name =>
  of < 2 ? name : say("name.nth", { nth: nth(n), name });

/** A structure of a kind among others: the first agrees with its kind, the others agree with any. */
function countedKind(kind: Structure["kind"], { n, of }: Count): Message {
  if (of < 2) return say(`kind.${kind}`);
  return n === 1 ? say(`first.${kind}`) : say("name.nthKind", { nth: nth(n), kind: say(`kind.${kind}`) });
}

/** A device among others of its kind: numbered in a way that suits a kind of either gender. */
const countedThing = (kind: Message, { n, of }: Count): Message =>
  of < 2
    ? kind
    : say("name.nthThing", { nth: say(n < 4 ? `nthThing.${n as 1 | 2 | 3}` : "nthThing.more", { n }), kind });

const nth = (n: number): Message => say(n < 4 ? `nth.${n as 1 | 2 | 3}` : "nth.more", { n });

/** Ids by what their label sounds like. */
export function byLabel(
  entries: readonly (readonly [id: string, label: string])[],
): ReadonlyMap<string, readonly string[]> {
  const ids = new Map<string, string[]>();
  for (const [id, label] of entries) {
    if (label === "") continue;
    const heard = asHeard(label);
    const its = ids.get(heard);
    if (its === undefined) ids.set(heard, [id]);
    else its.push(id);
  }
  return ids;
}

/** Labels by which places go: those of structures, and of points that are all their name. */
const placeLabels = perObject((system: System) =>
  byLabel([
    ...Object.entries(system.structures ?? {}).map(([id, saved]) => [id, labelOf(saved)] as const),
    ...Object.entries(system.points).flatMap(([id, saved]) => {
      const label = labelOf(saved);
      return isWholeName(label, structureOfPoint(system, id)!) ? [[id, label] as const] : [];
    }),
  ]),
);

/** Labels of elements that are all their name. */
const elementLabels = perObject((system: System) =>
  byLabel(
    Object.entries<SavedElement>(system.elements).flatMap(([id, saved]) => {
      const structure = structureOfElement(system, id);
      const label = ownLabel(saved, structure);
      return structure === undefined || isWholeName(label, structure) ? [[id, label] as const] : [];
    }),
  ),
);

const labelOf = (saved: JsonObject | undefined): string =>
  typeof saved?.["label"] === "string" ? readable(saved["label"]) : "";

/** The label of a structure, point or element, empty where it has none. */
export function labelIn({ structures = {}, points, elements }: System, id: string): string {
  const maps: readonly Readonly<Record<string, JsonObject>>[] = [points, elements, structures];
  return labelOf(maps.find((it) => Object.hasOwn(it, id))?.[id]);
}
