import {
  type Assessment,
  besideOthers,
  type CircuitElement,
  complete,
  completePoint,
  conductorId,
  type ElementId,
  elementsAt,
  endPointsOf,
  evidenceOfAll,
  isSupply,
  jobOf,
  type Letter,
  type Look,
  Looks,
  nameIn,
  nameOnStructure,
  openKeyOf,
  openPhasesOf,
  type Owner,
  ownerKey,
  perDrawing,
  type PointId,
  type SavedElement,
  savedElement,
  type SavedPoint,
  savedPoint,
  type StateColumn,
  type StillhotDocument,
  type Structure,
  type StructureId,
  structureOf,
  structuresOf,
  type System,
  worstOf,
} from "../../core";
import { say } from "./catalogue";
import { firstOf, kindName, pointName, structureName, t, told, volts, workPointName } from "./words";

/** One row of the outline: a structure, or a thing on it, and where it stands in the tree. */
export interface Row {
  readonly owner: Owner;
  readonly key: string;
  readonly level: 1 | 2;
  /** an element that leads to a structure which stands elsewhere already */
  readonly again: boolean;
  readonly parent: string | undefined;
  /** a structure that what comes before it in the list does not lead to: the one that does */
  readonly past?: StructureId;
}

/**
 * The circuit as a list of structures, each with what is on it and what leads on from it: those with a source come first,
 * and from each one its branches, the largest last, so that a main line reads straight down.
 */
export const outlineOf = ({ system }: StillhotDocument): readonly Row[] => rowsOf(system);

/** What is open, named or moved changes nothing here: only what hangs together how. */
const rowsOf = perDrawing<readonly Row[]>(
  writtenRows,
  (was, before, after, { structures, points, elements }) => {
    const isThere = [...structures].every(
      (id) => id in (before.structures ?? {}) === id in (after.structures ?? {}),
    );
    const standsAlike = [...points].every(
      (id) => standing(savedPoint(before.points, id)) === standing(savedPoint(after.points, id)),
    );
    const hangsAlike = [...elements].every(
      (id) => hung(savedElement(before.elements, id)) === hung(savedElement(after.elements, id)),
    );
    return isThere && standsAlike && hangsAlike ? was : undefined;
  },
);

const standing = (saved: SavedPoint | undefined): string =>
  saved === undefined ? "" : ["is", saved["on"], saved["kind"]].join(" ");

const hung = (saved: SavedElement | undefined): string =>
  saved === undefined ? "" : [saved.kind, ...endPointsOf(saved), saved["span"], saved["on"]].join(" ");

/** A structure in the tree. */
interface OutlineBranch {
  readonly structure: Structure;
  readonly parent: OutlineBranch | undefined;
  readonly rows: readonly Row[];
  /** what it is the first to lead to */
  readonly leadsTo: OutlineBranch[];
  /** how many structures lie beyond it, itself included */
  size: number;
}

function writtenRows(system: System): readonly Row[] {
  const order = branchesOf(system);
  for (const branch of order.toReversed()) if (branch.parent !== undefined) branch.parent.size += branch.size;
  const rows: Row[] = [];
  const stack = order.filter((it) => it.parent === undefined).reverse();
  let last: OutlineBranch | undefined;
  while (stack.length > 0) {
    const branch = stack.pop()!;
    const { structure, parent, leadsTo } = branch;
    const isNext = parent === undefined || parent === last;
    rows.push({
      ...rowOf({ of: "structure", id: structure.id }, 1, undefined),
      ...(isNext ? {} : { past: parent.structure.id }),
    });
    rows.push(...branch.rows);
    last = branch;
    const main = leadsTo.reduce<OutlineBranch | undefined>(
      (best, it) => (best === undefined || it.size >= best.size ? it : best),
      undefined,
    );
    if (main !== undefined) stack.push(main);
    for (const it of leadsTo.toReversed()) if (it !== main) stack.push(it);
  }
  return withNeighbours(system, rows);
}

const rowOf = (owner: Owner, level: 1 | 2, parent: string | undefined, again = false): Row => ({
  owner,
  key: ownerKey(owner),
  level,
  again,
  parent,
});

/** Every structure, going outward from the sources, with the rows of what is on it; nearer ones first. */
function branchesOf(system: System): OutlineBranch[] {
  const structures = structuresOf(system);
  const order: OutlineBranch[] = [];
  const met = new Set<StructureId>();
  const written = new Set<string>();
  const hasSource = ({ elements }: Structure) =>
    elements.some((it) => isSupply(savedElement(system.elements, it)));
  const all = [...structures.values()];
  for (const start of [...all.filter(hasSource), ...all]) {
    if (met.has(start.id)) continue;
    met.add(start.id);
    const queue: { structure: Structure; parent: OutlineBranch | undefined }[] = [
      { structure: start, parent: undefined },
    ];
    for (let next = 0; next < queue.length; next++) {
      const { structure, parent } = queue[next]!;
      const rows: Row[] = [];
      const branch: OutlineBranch = { structure, parent, rows, leadsTo: [], size: 1 };
      order.push(branch);
      parent?.leadsTo.push(branch);
      const key = ownerKey({ of: "structure", id: structure.id });
      for (const { owner, to } of thingsOn(system, structure)) {
        if (owner.of === "element") {
          if (written.has(owner.id)) continue;
          written.add(owner.id);
        }
        const fresh = to.filter((it) => !met.has(it));
        rows.push(rowOf(owner, 2, key, fresh.length < to.length));
        for (const id of fresh) {
          met.add(id);
          queue.push({ structure: structures.get(id)!, parent: branch });
        }
      }
    }
  }
  return order;
}

/** A thing at a structure, and the other structures that it leads to. */
export interface ThingOn {
  readonly owner: Owner;
  readonly to: readonly StructureId[];
}

/**
 * What is on a structure and what leads on from it, from the source outward: at each point what hangs there, the devices
 * that begin there and the lines that leave. A point that is the only one is told with its structure.
 */
export function thingsOn(system: System, structure: Structure): ThingOn[] {
  const things: ThingOn[] = [];
  const told = new Set<string>();
  const tell = (id: string) => {
    if (told.has(id)) return;
    told.add(id);
    const to = endPointsOf(savedElement(system.elements, id)).flatMap(
      (it) => structureOf(system, it)?.id ?? [],
    );
    const others = [...new Set(to)].filter((it) => it !== structure.id);
    things.push({ owner: { of: "element", id: id as ElementId }, to: others });
  };
  const on = new Set<string>(structure.elements);
  for (const point of structure.points) {
    if (structure.points.length > 1) things.push({ owner: { of: "point", id: point }, to: [] });
    const here = elementsAt(system).get(point) ?? [];
    const isHung = (id: string) => endPointsOf(savedElement(system.elements, id)).length === 1;
    const begins = (id: string) => savedElement(system.elements, id)!["to"] !== point;
    for (const id of here) if (isHung(id)) tell(id);
    for (const id of here) if (!isHung(id) && on.has(id) && begins(id)) tell(id);
    for (const id of here) if (!on.has(id)) tell(id);
  }
  for (const id of structure.elements) tell(id);
  return things;
}

/** Circuits beside a span follow it. */
function withNeighbours(system: System, rows: readonly Row[]): readonly Row[] {
  const beside = besideOthers(system);
  if (beside.length === 0) return rows;
  const all = [...rows];
  for (const id of beside) {
    const span = savedElement(system.elements, id)!["span"];
    const index = all.findIndex(({ owner }) => owner.of === "element" && owner.id === span);
    all.splice(index + 1, 0, rowOf({ of: "element", id: id as ElementId }, 2, all[index]?.parent));
  }
  return all;
}

/** What is known of a drawing's conductors: states may be known before there are volts. */
export interface Known {
  readonly conductors?: Assessment["conductors"] | undefined;
  readonly states?: StateColumn | undefined;
}

/**
 * A row in words: what it is, how it stands, and what it is as worked out.
 *
 * @param isShort names a thing as whoever stands at its structure does: its row stands below that of the structure
 */
export function rowWords(
  document: StillhotDocument,
  known: Known,
  { owner, again, past }: Pick<Row, "owner" | "again" | "past">,
  isShort = false,
): string {
  const nameOf = (id: string) => (isShort ? told(nameOnStructure(document, id)) : fullName(document, id));
  if (owner.of === "structure") return structureWords(document, known, owner.id, past);
  if (owner.of === "workPoint") return workPointName(document, owner.id);
  if (owner.of === "point")
    return inARow(
      nameOf(owner.id),
      statesOf(document, known, [owner.id]),
      isPinned(document, owner.id) ? t("outline.pinned") : "",
      ...worksAt(document, [owner.id]),
    );
  const saved = savedElement(document.system.elements, owner.id);
  if (saved === undefined) return "";
  const element = complete(saved);
  const name = nameOf(owner.id);
  const kind = kindName(element.kind);
  return inARow(
    isNamedByKind(name, kind) ? name : `${kind} ${name}`,
    "phases" in element ? t("outline.phases", { phases: [...element.phases].join(" ") }) : "",
    ...standingOf(element),
    element.evidence === "map" ? "" : t(`evidence.${element.evidence}`),
    "to" in element && "from" in element && again
      ? t("outline.again", { point: pointName(document, element.to) })
      : "",
  );
}

/** The name of a thing, with its place where the name alone is that of its structure too. */
function fullName(document: StillhotDocument, id: string): string {
  const name = told(nameIn(document, id));
  const structure = structureOf(document.system, id);
  if (structure === undefined || structureName(document, structure.id) !== name) return name;
  return told(say("name.on", { structure: name, place: nameOnStructure(document, id) }));
}

/** A structure: its number, what its conductors are at the worst, where the work is, and how it was found. */
function structureWords(
  document: StillhotDocument,
  known: Known,
  id: StructureId,
  past: StructureId | undefined,
): string {
  const structure = structuresOf(document.system).get(id);
  if (structure === undefined) return "";
  const { points, condition } = structure;
  const evidence = evidenceOfAll(document.system, structure) ?? "map";
  return inARow(
    structureName(document, id),
    past === undefined ? "" : t("outline.past", { name: structureName(document, past) }),
    statesOf(document, known, points),
    points.length === 1 && isPinned(document, points[0]!) ? t("outline.pinned") : "",
    ...worksAt(document, points),
    evidence === "map" ? "" : t(`evidence.${evidence}`),
    condition === undefined || condition === "sound" ? "" : t("outline.notSound"),
  );
}

const inARow = (...words: readonly string[]): string => words.filter((it) => it !== "").join(", ");

const worksAt = (document: StillhotDocument, points: readonly string[]): string[] =>
  Object.entries(jobOf(document).workPoints)
    .filter(([, { at }]) => points.includes(at))
    .map(([id]) => t("outline.workPoint", { label: workPointName(document, id) }));

const isPinned = ({ system }: StillhotDocument, id: string): boolean => {
  const saved = system.points[id as PointId];
  return saved !== undefined && completePoint(saved).pinned;
};

/** Whether a name already says what kind of thing it is: a "sideline clamp" needs no "tap clamp" before it. */
const isNamedByKind = (name: string, kind: string): boolean =>
  kind.split(" ").some((word) => name.toLowerCase().includes(word.toLowerCase()));

/** How a device stands: open where, tagged, blocked, running. */
export function standingOf(element: CircuitElement): string[] {
  const open = openPhasesOf(element);
  const opens = openKeyOf(element.kind) !== undefined;
  const isWhole = "phases" in element && open === element.phases;
  return [
    opens && open !== ""
      ? isWhole
        ? t("outline.open")
        : t("outline.openOn", { phases: [...open].join(" ") })
      : "",
    "open" in element && open === "" ? t("outline.closed") : "",
    "toPhases" in element && element.toPhases !== ""
      ? t("outline.swaps", { phases: [...element.toPhases].join(" ") })
      : "",
    "tagged" in element && element.tagged ? t("outline.tagged") : "",
    "blocked" in element && element.blocked ? t("outline.blocked") : "",
    "on" in element && typeof element.on === "boolean" ? t(element.on ? "outline.on" : "outline.off") : "",
    "position" in element ? t(`position.${element.position}`) : "",
  ].filter((it) => it !== "");
}

/** States of the conductors of points, at each letter the worst: `A energized 7 200 V, B C isolated`. */
export function statesOf(
  { system }: StillhotDocument,
  { conductors, states }: Known,
  points: readonly string[],
): string {
  const looks = new Looks(system, states);
  const worst = new Map<Letter, { look: Look; volts: number | undefined }>();
  for (const point of points)
    for (const letter of looks.lettersAt(point)) {
      const report = conductors?.[conductorId(point, letter)];
      const here = { look: report?.state ?? looks.at(point, letter), volts: report?.volts };
      const was = worst.get(letter);
      if (was === undefined || (was.look !== here.look && worstOf([was.look, here.look]) === here.look))
        worst.set(letter, here);
      else if (was.look === here.look && (here.volts ?? 0) > (was.volts ?? 0)) worst.set(letter, here);
    }
  const groups = new Map<string, Letter[]>();
  for (const [letter, { look, volts: its }] of worst) {
    if (look === "neutral") continue;
    const words = firstOf(`state.${its === undefined && look === "unknown" ? "untold" : look}`)!;
    const isHot = look !== "isolated" && look !== "grounded";
    const text = isHot && its !== undefined ? `${words} ${volts(its)}` : words;
    groups.set(text, [...(groups.get(text) ?? []), letter]);
  }
  return [...groups].map(([text, letters]) => `${letters.join(" ")} ${text}`).join("; ");
}
