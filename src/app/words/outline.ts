import {
  type Assessment,
  type CircuitElement,
  complete,
  completePoint,
  conductorId,
  type ElementId,
  endPointsOf,
  jobOf,
  Looks,
  openKeyOf,
  openPhasesOf,
  type Owner,
  perDrawing,
  type PointId,
  type SavedElement,
  type StateColumn,
  savedElement,
  type StillhotDocument,
  type System,
} from "../../core";
import { elementName, firstOf, kindName, pointName, t, volts, workPointName } from "./words";

/** One row of the outline: a thing, and where it stands in the tree. */
export interface Row {
  readonly owner: Owner;
  readonly key: string;
  readonly level: number;
  /** an element that leads to a point which stands elsewhere already */
  readonly again: boolean;
  readonly parent: string | undefined;
}

interface Branch {
  readonly id: ElementId;
  /** points at its far ends that it is the first to reach */
  readonly leadsTo: readonly string[];
  readonly again: boolean;
}

interface Place {
  readonly hung: readonly ElementId[];
  readonly branches: readonly Branch[];
}

/**
 * The circuit as an indented list: sources are its roots, and below each point stands what branches off there. The
 * largest branch goes on at the same level, so that a main line reads straight down and its taps go in.
 */
export const outlineOf = ({ system }: StillhotDocument): readonly Row[] => rowsOf(system);

/** What is open, named or moved changes nothing here: only what hangs together how. */
const rowsOf = perDrawing<readonly Row[]>(writtenRows, (was, before, after, { points, elements }) => {
  const isThere = [...points].every((id) => id in before.points === id in after.points);
  const hangsAlike = [...elements].every(
    (id) => hung(savedElement(before.elements, id)) === hung(savedElement(after.elements, id)),
  );
  return isThere && hangsAlike ? was : undefined;
});

const hung = (saved: SavedElement | undefined): string =>
  saved === undefined ? "" : [saved.kind, ...endPointsOf(saved), saved["span"] ?? ""].join(" ");

function writtenRows(system: System): readonly Row[] {
  const elements = Object.keys(system.elements).map(
    (id) => [id as ElementId, complete(system.elements[id as ElementId]!)] as const,
  );
  const byPoint = new Map<string, (readonly [ElementId, CircuitElement])[]>();
  for (const entry of elements)
    for (const point of endsOf(entry[1])) {
      const list = byPoint.get(point);
      if (list === undefined) byPoint.set(point, [entry]);
      else list.push(entry);
    }
  const { places, order } = spread(system, elements, byPoint);
  const sizes = sizesOf(places, order);
  const rows: Row[] = [];
  const written = new Set<string>();
  for (const root of order) if (!written.has(root)) writeFrom(root, places, sizes, rows, written);
  for (const [id, element] of elements) {
    if (element.kind !== "nearby") continue;
    const index = rows.findIndex((it) => it.owner.of === "element" && it.owner.id === element.span);
    const host = rows[index];
    const row = { owner: { of: "element", id } as const, key: `element ${id}`, again: false };
    rows.splice(index + 1, 0, { ...row, level: host?.level ?? 1, parent: host?.parent });
  }
  return rows;
}

/** Goes outward from the sources, and notes at each point what it is the first to reach. */
function spread(
  system: System,
  elements: readonly (readonly [ElementId, CircuitElement])[],
  byPoint: ReadonlyMap<string, readonly (readonly [ElementId, CircuitElement])[]>,
): { places: ReadonlyMap<string, Place>; order: readonly string[] } {
  const places = new Map<string, Place>();
  const seen = new Set<string>();
  const used = new Set<string>();
  const order: string[] = [];
  const sources = elements.flatMap(([, it]) => (it.kind === "source" ? [it.at] : []));
  for (const start of [...sources, ...Object.keys(system.points)]) {
    if (seen.has(start)) continue;
    seen.add(start);
    const queue = [start];
    for (let next = 0; next < queue.length; next++) {
      const point = queue[next]!;
      order.push(point);
      const here = (byPoint.get(point) ?? []).filter(([id]) => !used.has(id));
      const branches: Branch[] = [];
      for (const [id, element] of here) {
        used.add(id);
        if ("at" in element) continue;
        const far = [...new Set(endsOf(element))].filter((it) => it !== point);
        const leadsTo = far.filter((it) => !seen.has(it));
        for (const it of leadsTo) {
          seen.add(it);
          queue.push(it);
        }
        branches.push({ id, leadsTo, again: leadsTo.length < far.length });
      }
      places.set(point, { hung: here.filter(([, it]) => "at" in it).map(([id]) => id), branches });
    }
  }
  return { places, order };
}

/** How many points lie beyond each point, itself included. */
function sizesOf(places: ReadonlyMap<string, Place>, order: readonly string[]): ReadonlyMap<string, number> {
  const sizes = new Map<string, number>();
  for (const point of order.toReversed())
    sizes.set(
      point,
      1 +
        places
          .get(point)!
          .branches.flatMap((it) => it.leadsTo)
          .reduce((sum, it) => sum + sizes.get(it)!, 0),
    );
  return sizes;
}

/** Writes a point and all beyond it. The stack is our own: a long line must not exhaust the call stack. */
function writeFrom(
  root: string,
  places: ReadonlyMap<string, Place>,
  sizes: ReadonlyMap<string, number>,
  rows: Row[],
  written: Set<string>,
) {
  type Task = { readonly level: number; readonly parent: string | undefined } & (
    { readonly point: string } | { readonly branch: Branch }
  );
  const stack: Task[] = [{ point: root, level: 1, parent: undefined }];
  while (stack.length > 0) {
    const task = stack.pop()!;
    const { level, parent } = task;
    if ("branch" in task) {
      const { id, leadsTo, again } = task.branch;
      rows.push({ owner: { of: "element", id }, key: `element ${id}`, level, again, parent });
      for (const point of leadsTo.toReversed()) stack.push({ point, level, parent });
      continue;
    }
    const { point } = task;
    written.add(point);
    const key = `point ${point}`;
    rows.push({ owner: { of: "point", id: point as PointId }, key, level, again: false, parent });
    const { hung, branches } = places.get(point)!;
    for (const id of hung)
      rows.push({
        owner: { of: "element", id },
        key: `element ${id}`,
        level: level + 1,
        again: false,
        parent: key,
      });
    const weight = ({ leadsTo }: Branch) => leadsTo.reduce((sum, it) => sum + sizes.get(it)!, 0);
    const main = branches.reduce<Branch | undefined>(
      (best, it) => (best === undefined || weight(it) > weight(best) ? it : best),
      undefined,
    );
    if (main !== undefined) stack.push({ branch: main, level, parent });
    for (const branch of branches.toReversed())
      if (branch !== main) stack.push({ branch, level: level + 1, parent: key });
  }
}

const endsOf = (element: CircuitElement): string[] => {
  if ("from" in element) return [element.from, element.to, ...("alt" in element ? [element.alt] : [])];
  return "at" in element ? [element.at] : [];
};

/** What is known of a drawing's conductors: states may be known before there are volts. */
export interface Known {
  readonly conductors?: Assessment["conductors"] | undefined;
  readonly states?: StateColumn | undefined;
}

/** A row in words: what it is, how it stands, and what it is as worked out. */
export function rowWords(
  document: StillhotDocument,
  known: Known,
  { owner, again }: Pick<Row, "owner" | "again">,
): string {
  if (owner.of === "point") {
    const works = Object.entries(jobOf(document).workPoints).filter(([, it]) => it.at === owner.id);
    return [
      pointName(document, owner.id),
      statesOf(document, known, owner.id),
      isPinned(document, owner.id) ? t("outline.pinned") : "",
      ...works.map(([id]) => t("outline.workPoint", { label: workPointName(document, id) })),
    ]
      .filter((it) => it !== "")
      .join(", ");
  }
  const saved = document.system.elements[owner.id as ElementId];
  if (saved === undefined) return owner.id;
  const element = complete(saved);
  const name = elementName(document, owner.id);
  const kind = kindName(element.kind);
  const phases = "phases" in element ? t("outline.phases", { phases: [...element.phases].join(" ") }) : "";
  const leads =
    "to" in element && "from" in element && again
      ? t("outline.again", { point: pointName(document, element.to) })
      : "";
  return [
    isNamedByKind(name, kind) ? name : `${kind} ${name}`,
    phases,
    ...standing(element),
    element.evidence === "map" ? "" : t(`evidence.${element.evidence}`),
    leads,
  ]
    .filter((it) => it !== "")
    .join(", ");
}

const isPinned = ({ system }: StillhotDocument, id: string): boolean => {
  const saved = system.points[id as PointId];
  return saved !== undefined && completePoint(saved).pinned;
};

/** Whether a name already says what kind of thing it is: a "sideline clamp" needs no "tap clamp" before it. */
const isNamedByKind = (name: string, kind: string): boolean =>
  kind.split(" ").some((word) => name.toLowerCase().includes(word.toLowerCase()));

/** How a device stands: open where, tagged, blocked, running. */
export function standing(element: CircuitElement): string[] {
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
    "tagged" in element && element.tagged ? t("outline.tagged") : "",
    "blocked" in element && element.blocked ? t("outline.blocked") : "",
    "on" in element && typeof element.on === "boolean" ? t(element.on ? "outline.on" : "outline.off") : "",
    element.kind === "transfer" ? t(`position.${element.position}`) : "",
  ].filter((it) => it !== "");
}

/** States of a point's conductors: `A energized 7 200 V, B C isolated`. */
function statesOf({ system }: StillhotDocument, { conductors, states }: Known, point: string): string {
  const looks = new Looks(system, states);
  const groups = new Map<string, string[]>();
  for (const letter of looks.lettersAt(point)) {
    const report = conductors?.[conductorId(point, letter)];
    const state = report?.state ?? looks.at(point, letter);
    if (state === "neutral") continue;
    const words = firstOf(`state.${report === undefined && state === "unknown" ? "untold" : state}`)!;
    const isHot = state !== "isolated" && state !== "grounded";
    const text = isHot && report !== undefined ? `${words} ${volts(report.volts)}` : words;
    groups.set(text, [...(groups.get(text) ?? []), letter]);
  }
  return [...groups].map(([text, names]) => `${names.join(" ")} ${text}`).join("; ");
}
