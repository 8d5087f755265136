import { type DeviceKind, deviceOf, isSupply } from "../devices";
import { DOCUMENT_KEYS, naturalOrder, type SavedElement, type StillhotDocument } from "../document";
import { isObject, type Json, type JsonObject, type Message, say } from "../terms";
import {
  areOfPoint,
  HEAD,
  isFlag,
  isSayableKey,
  POINT,
  POINT_KINDS,
  STRUCTURE_KINDS,
  WORK,
  wordsOf,
} from "./spelling";

/** A drawing as an indented list, and what of the drawing the list does not say. */
export interface Notation {
  readonly text: string;
  /** stays in the drawing when the list is read back into it; lost where the list alone is kept */
  readonly unsaid: readonly Message[];
}

/** Where an element stands in the list: the point above it, and the points that it is the first to come to. */
interface WrittenBranch {
  readonly id: string;
  readonly at: string;
  readonly leadsTo: readonly string[];
}

/**
 * A drawing in the notation: sources first, away from them line by line. The largest branch of a point goes on at the
 * same indent, so that a main line reads straight down; the others are indented below their point, and what lies beyond
 * them once more, so that whatever hangs on a point is indented as far as it or further. A structure heads the points on it.
 */
export function toNotation(document: StillhotDocument): Notation {
  const structures: Readonly<Record<string, JsonObject>> = document.system.structures ?? {};
  const points = document.system.points as Readonly<Record<string, JsonObject>>;
  const elements = document.system.elements as Readonly<Record<string, JsonObject>>;
  const job = isObject(document.job) ? document.job : {};
  const works = isObject(job["workPoints"])
    ? (job["workPoints"] as Readonly<Record<string, JsonObject>>)
    : {};
  const { branches, order } = spread(points, elements);
  const sizes = sizesOf(branches, order);
  const worksAt = grouped(Object.keys(works), (id) => works[id]!["at"] as string);
  const nearby = grouped(
    Object.keys(elements).filter((id) => endsOf(elements[id]!).length === 0),
    (id) => elements[id]!["span"] as string,
  );

  const lines = [
    document.title === "" ? "" : `title ${titleText(document.title)}`,
    `hertz ${document.system.frequencyHz}`,
    typeof job["task"] === "string" && job["task"] !== "" ? `task ${titleText(job["task"])}` : "",
    "",
  ].filter((it, at) => it !== "" || at === 3);
  const put = (level: number, ...words: readonly string[]) =>
    lines.push(`${"  ".repeat(level)}${words.join(" ")}`);

  const putElement = (level: number, { id, at, leadsTo }: WrittenBranch) => {
    const record = elements[id]!;
    const ends = endsOf(record);
    const [first, last] = [ends[0], ends.at(-1)];
    // The point above is its first end, and the point below its last: only what differs is said.
    const unsaid = ends.filter(
      (end) =>
        (end === first && record[end] === at) ||
        (ends.length > 1 && end === last && record[end] === leadsTo[0] && record[first!] === at),
    );
    put(level, id, record["kind"] as string, ...wordsOf(record, ["kind", ...unsaid], "phases"));
    for (const it of nearby.get(id) ?? [])
      put(level + 1, it, "nearby", ...wordsOf(elements[it]!, ["kind", "span"], "phases"));
  };

  let headed: string | undefined;
  const told = new Set<string>();
  const putHead = (level: number, id: string | undefined) => {
    const words = id === undefined || told.has(id) ? [] : headWords(structures[id]!);
    put(level, `${id ?? ""}${HEAD}`, ...words);
    if (id !== undefined) told.add(id);
    headed = id;
  };

  const written = new Set<string>();
  for (const root of order) {
    if (written.has(root)) continue;
    // Our own stack: a long line must not exhaust the language's.
    type Task = { readonly level: number } & (
      | { readonly point: string }
      | { readonly branch: WrittenBranch; readonly farLevel: number }
    );
    const stack: Task[] = [{ level: 0, point: root }];
    while (stack.length > 0) {
      const task = stack.pop()!;
      const { level } = task;
      if ("branch" in task) {
        putElement(level, task.branch);
        for (const point of [...task.branch.leadsTo].reverse()) stack.push({ level: task.farLevel, point });
        continue;
      }
      const { point } = task;
      written.add(point);
      const on = points[point]!["on"] as string | undefined;
      if (on !== headed) putHead(level, on);
      putPoint(put, level, point, points[point]!);
      for (const id of worksAt.get(point) ?? [])
        put(level + 1, id, WORK, ...wordsOf(works[id]!, ["at"], "conductors"));
      const here = branches.get(point)!;
      const size = ({ leadsTo }: WrittenBranch) => leadsTo.reduce((sum, it) => sum + sizes.get(it)!, 0);
      const largest = here.reduce<WrittenBranch | undefined>(
        (best, it) => (size(it) > (best === undefined ? 0 : size(best)) ? it : best),
        undefined,
      );
      if (largest !== undefined) stack.push({ level, branch: largest, farLevel: level });
      for (const branch of here.toReversed())
        if (branch !== largest) stack.push({ level: level + 1, branch, farLevel: level + 2 });
    }
  }
  for (const id of Object.keys(structures).sort(naturalOrder)) if (!told.has(id)) putHead(0, id);
  return {
    text: `${lines.join("\n")}\n`,
    unsaid: unsaidOf(document, structures, points, elements, works),
  };
}

const titleText = (title: string): string =>
  title === title.trim() && !/["\n\r\u2028\u2029]/.test(title) ? title : JSON.stringify(title);

function putPoint(
  put: (level: number, ...words: readonly string[]) => void,
  level: number,
  id: string,
  record: JsonObject,
) {
  const { kind, words } = placedWords(record, POINT_KINDS, ["on"]);
  const isPlain = kind === undefined && areOfPoint(words);
  put(level, id, ...(isPlain ? [] : [kind ?? POINT]), ...words);
}

function headWords(record: JsonObject): readonly string[] {
  const { kind, words } = placedWords(record, STRUCTURE_KINDS, []);
  return kind === undefined ? words.map((it) => (isFlag(it) ? `${it}=true` : it)) : [kind, ...words];
}

/** The words of a record that has a kind of its own and a place on the drawing. */
function placedWords(record: JsonObject, kinds: readonly string[], without: readonly string[]) {
  const { x, y, kind } = record;
  const hasKind = typeof kind === "string" && kinds.includes(kind);
  const hasPlace = typeof x === "number" && typeof y === "number";
  const unsaid = [...without, ...(hasKind ? ["kind"] : []), ...(hasPlace ? ["x", "y"] : [])];
  return {
    kind: hasKind ? kind : undefined,
    words: [...wordsOf(record, unsaid, "phases"), ...(hasPlace ? [`@${x},${y}`] : [])],
  };
}

/** Ends of an element in their order; none for a circuit that lies beside a span. */
const endsOf = (record: JsonObject): readonly string[] => deviceOf(record["kind"] as DeviceKind).ends;

function grouped(ids: readonly string[], by: (id: string) => string): ReadonlyMap<string, readonly string[]> {
  const groups = new Map<string, string[]>();
  for (const id of [...ids].sort(naturalOrder)) {
    const list = groups.get(by(id));
    if (list === undefined) groups.set(by(id), [id]);
    else list.push(id);
  }
  return groups;
}

/** Goes outward from the sources, and notes at each point what it is the first to reach. */
function spread(
  points: Readonly<Record<string, JsonObject>>,
  elements: Readonly<Record<string, JsonObject>>,
): { branches: ReadonlyMap<string, readonly WrittenBranch[]>; order: readonly string[] } {
  const ids = Object.keys(elements).sort(naturalOrder);
  const around = new Map<string, string[]>(Object.keys(points).map((id) => [id, []]));
  for (const id of ids)
    for (const point of new Set(endsOf(elements[id]!).map((end) => elements[id]![end] as string)))
      around.get(point)?.push(id);
  const sources = ids.filter((id) => isSupply(elements[id] as SavedElement));
  const branches = new Map<string, readonly WrittenBranch[]>();
  const seen = new Set<string>();
  const used = new Set<string>();
  const order: string[] = [];
  const starts = [
    ...sources.map((id) => elements[id]!["at"] as string),
    ...Object.keys(points).sort(naturalOrder),
  ];
  for (const start of starts) {
    if (seen.has(start)) continue;
    seen.add(start);
    const queue = [start];
    for (const point of queue) {
      order.push(point);
      const here: WrittenBranch[] = [];
      for (const id of around.get(point)!) {
        if (used.has(id)) continue;
        used.add(id);
        const ends = endsOf(elements[id]!).map((end) => elements[id]![end] as string);
        // The far end comes first below its element, which is how it is known for that.
        const leadsTo = [...new Set(ends.toReversed())].filter((it) => !seen.has(it));
        leadsTo.forEach((it) => seen.add(it));
        queue.push(...leadsTo);
        here.push({ id, at: point, leadsTo });
      }
      branches.set(point, here);
    }
  }
  return { branches, order };
}

/** How many points lie beyond each point, itself included. */
function sizesOf(
  branches: ReadonlyMap<string, readonly WrittenBranch[]>,
  order: readonly string[],
): ReadonlyMap<string, number> {
  const sizes = new Map<string, number>();
  for (const point of order.toReversed()) {
    const beyond = branches.get(point)!.flatMap((it) => it.leadsTo);
    sizes.set(
      point,
      beyond.reduce((sum, it) => sum + sizes.get(it)!, 1),
    );
  }
  return sizes;
}

/** What the notation has no words for. */
function unsaidOf(
  document: StillhotDocument,
  ...records: readonly Readonly<Record<string, JsonObject>>[]
): Message[] {
  const { job, system } = document;
  const isFilled = (value: Json | undefined) =>
    value !== undefined && (!Array.isArray(value) || value.length > 0) && value !== "";
  const parts = [
    ...(["notes", "scenario", "settings"] as const).filter((key) => document[key] !== undefined),
    ...(isObject(job)
      ? Object.keys(job)
          .filter((key) => key !== "workPoints" && key !== "task" && isFilled(job[key]))
          .map((key) => `job.${key}`)
      : []),
    ...Object.keys(document).filter((key) => !DOCUMENT_KEYS.includes(key)),
    ...Object.keys(system)
      .filter((key) => !["frequencyHz", "points", "elements"].includes(key))
      .filter((key) => key !== "structures" || Object.keys(system.structures!).length === 0)
      .map((key) => `system.${key}`),
    ...records.flatMap((map) =>
      Object.entries(map).flatMap(([id, record]) =>
        Object.keys(record)
          .filter((key) => !isSayableKey(key))
          .map((key) => `${id}: ${key}`),
      ),
    ),
  ];
  return parts.map((part) => say("notation.unsaid", { part }));
}
