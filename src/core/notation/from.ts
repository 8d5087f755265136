import { type DeviceKind, deviceOf, isDeviceKind } from "../devices";
import { isUnreadable, readDocument, type StillhotDocument } from "../document";
import {
  type Finding,
  isObject,
  isWellFormedId,
  type Json,
  type JsonObject,
  type Message,
  say,
} from "../terms";
import {
  areOfPoint,
  HEAD,
  isFlag,
  isSayableKey,
  POINT,
  POINT_KINDS,
  readWord,
  splitWords,
  STRUCTURE_KINDS,
  WORK,
} from "./spelling";

/** What is wrong in one line. */
export interface NotationProblem {
  /** counted from 1; 0 where it is about no line */
  readonly line: number;
  readonly message: Message;
}

/** What a text says: a drawing, or what is wrong in which line. */
export type FromNotation =
  | { readonly document: StillhotDocument; readonly warnings: readonly Finding[] }
  | { readonly problems: readonly NotationProblem[] };

/** Letters of a text: a thousand poles take a hundredth of it. */
const MOST_LETTERS = 2_000_000;
const MOST_PROBLEMS = 20;

type Record_ = Record<string, Json>;

/** A line that was read as something with an id. */
interface ReadRecord {
  readonly n: number;
  readonly indent: number;
  readonly id: string;
  readonly kind: string;
  readonly record: Record_;
}

/**
 * Reads the notation. It is read whole or not at all, and what it makes is checked as any file is.
 *
 * @param base the drawing that it stands for: what the notation has no words for is taken over from there
 */
export function fromNotation(text: string, base?: StillhotDocument): FromNotation {
  if (text.length > MOST_LETTERS)
    return { problems: [{ line: 0, message: say("notation.tooLong", { most: MOST_LETTERS }) }] };
  const reader = new Reader();
  text.split(/\r\n|\r|\n/).forEach((line, index) => reader.read(line, index + 1));
  reader.close();
  if (reader.problems.length > 0) return { problems: reader.problems.slice(0, MOST_PROBLEMS) };
  const file = assembled(reader, base);
  const read = readDocument(JSON.stringify(file));
  if (!isUnreadable(read)) return read;
  return {
    problems: read.problems.map(({ path, message }) => ({
      line: reader.lineOf(path),
      message: say("notation.inFile", { path, problem: message }),
    })),
  };
}

class Reader {
  readonly problems: NotationProblem[] = [];
  readonly structures: Record<string, Record_> = {};
  readonly points: Record<string, Record_> = {};
  readonly elements: Record<string, Record_> = {};
  readonly works: Record<string, Record_> = {};
  readonly lines = new Map<string, number>();
  title: string | undefined;
  task: string | undefined;
  hertz: Json | undefined;
  /** the structure that the points below are on */
  #structure: string | undefined;
  /** points above, the last one last */
  readonly #points: ReadRecord[] = [];
  /** the element whose far end the next point is */
  #awaiting: ReadRecord | undefined;
  /** the last element, which a circuit beside it names as its span */
  #last: ReadRecord | undefined;

  #wrong(line: number, message: Message) {
    this.problems.push({ line, message });
  }

  read(whole: string, n: number) {
    const text = whole.trim();
    if (text === "" || text.startsWith("--")) return;
    const head = /^(title|hertz|task)(?:\s+(.*))?$/s.exec(text);
    if (head !== null) return this.#said(head[1]!, head[2] ?? "", n);
    const words = splitWords(text);
    if (words === undefined) return this.#wrong(n, say("notation.open"));
    if (words[0]!.endsWith(HEAD)) return this.#head(words[0]!.slice(0, -HEAD.length), words.slice(1), n);
    const [id = "", ...after] = words;
    if (!isWellFormedId(id)) return this.#wrong(n, say("notation.badId", { id: short(id) }));
    const [kind = POINT, ...rest] = areOfPoint(after) ? [POINT, ...after] : after;
    const isPoint = POINT_KINDS.includes(kind) || kind === POINT;
    if (!isPoint && kind !== WORK && !isDeviceKind(kind))
      return this.#wrong(n, say("notation.badKind", { kind: short(kind) }));
    const record: Record_ = {};
    if (!this.#readWords(rest, record, kind === WORK ? "conductors" : "phases", n)) return;
    const line: ReadRecord = { n, indent: indentOf(whole), id, kind, record };
    if (isPoint) this.#point(line);
    else if (kind === WORK) this.#work(line);
    else this.#element(line);
  }

  #readWords(words: readonly string[], record: Record_, letters: string, n: number): boolean {
    const wrong = words.find((word) => !readWord(word, record, letters));
    if (wrong !== undefined) this.#wrong(n, say("notation.badWord", { word: short(wrong) }));
    return wrong === undefined;
  }

  /** A structure, told where it is first come to, and by its id alone where more on it follows after something else. */
  #head(id: string, words: readonly string[], n: number) {
    this.#structure = id === "" ? undefined : id;
    if (id === "" && words.length === 0) return;
    if (!isWellFormedId(id)) return this.#wrong(n, say("notation.badId", { id: short(id) }));
    if (Object.hasOwn(this.structures, id) && words.length === 0) return;
    const hasKind = STRUCTURE_KINDS.includes(words[0] ?? "");
    if (!hasKind && isFlag(words[0] ?? ""))
      return this.#wrong(n, say("notation.badKind", { kind: short(words[0]!) }));
    const record: Record_ = hasKind ? { kind: words[0]! } : {};
    if (!this.#readWords(words.slice(hasKind ? 1 : 0), record, "phases", n)) return;
    this.#claim(this.structures, { id, n, record }, "system.structures");
  }

  #said(key: string, words: string, n: number) {
    if (key === "hertz") return void (this.hertz = Number(words));
    let text = words;
    if (words.startsWith('"')) {
      try {
        text = String(JSON.parse(words));
      } catch {
        return this.#wrong(n, say("notation.open"));
      }
    }
    if (key === "title") this.title = text;
    else this.task = text;
  }

  #claim(
    map: Record<string, Record_>,
    { id, n, record }: Pick<ReadRecord, "id" | "n" | "record">,
    path: string,
  ): boolean {
    if (Object.hasOwn(map, id)) {
      this.#wrong(n, say("notation.twice", { id }));
      return false;
    }
    map[id] = record;
    this.lines.set(`${path}.${id}`, n);
    return true;
  }

  #point(line: ReadRecord) {
    const { id, indent, kind } = line;
    const far = this.#awaiting;
    this.#awaiting = undefined;
    if (far !== undefined) {
      if (indent < far.indent) this.#wrong(far.n, say("notation.noFarEnd", { id: far.id }));
      else far.record[lastEnd(far)] = id;
    }
    if (kind !== POINT) line.record["kind"] = kind;
    if (this.#structure !== undefined) line.record["on"] ??= this.#structure;
    if (!this.#claim(this.points, line, "system.points")) return;
    while ((this.#points.at(-1)?.indent ?? -1) >= indent) this.#points.pop();
    this.#points.push(line);
  }

  /** The point that a line hangs on: the last one above that is not indented further. */
  #pointFor(line: ReadRecord): string | undefined {
    while ((this.#points.at(-1)?.indent ?? -1) > line.indent) this.#points.pop();
    return this.#points.at(-1)?.id;
  }

  #work(line: ReadRecord) {
    const at = line.record["at"] ?? this.#pointFor(line);
    if (at === undefined) return this.#wrong(line.n, say("notation.noPoint", { id: line.id }));
    line.record["at"] = at;
    this.#claim(this.works, line, "job.workPoints");
  }

  #element(line: ReadRecord) {
    const { n, id, kind, record } = line;
    const ends = deviceOf(kind as DeviceKind).ends;
    if (ends.length === 0) {
      // A circuit beside a span hangs on the element above it, and leaves that one's far end still to come.
      record["span"] ??= this.#last?.id ?? "";
    } else {
      if (this.#awaiting !== undefined)
        this.#wrong(this.#awaiting.n, say("notation.noFarEnd", { id: this.#awaiting.id }));
      this.#awaiting = undefined;
      const first = ends[0]!;
      if (record[first] === undefined) {
        const at = this.#pointFor(line);
        if (at === undefined) return this.#wrong(n, say("notation.noPoint", { id }));
        record[first] = at;
      }
      if (ends.length > 1 && record[lastEnd(line)] === undefined) this.#awaiting = line;
      this.#last = line;
    }
    line.record["kind"] = kind;
    this.#claim(this.elements, line, "system.elements");
  }

  close() {
    if (this.#awaiting !== undefined)
      this.#wrong(this.#awaiting.n, say("notation.noFarEnd", { id: this.#awaiting.id }));
    this.problems.sort((a, b) => a.line - b.line);
  }

  /** The line that made what a path of the file names. */
  lineOf(path: string): number {
    const [, start = ""] = /^((?:system|job)\.\w+\.[\w-]+)/.exec(path) ?? [];
    return this.lines.get(start) ?? 0;
  }
}

const lastEnd = ({ kind }: ReadRecord): string => deviceOf(kind as DeviceKind).ends.at(-1)!;

const indentOf = (line: string): number => line.length - line.trimStart().length;

const short = (word: string): string => (word.length > 40 ? `${word.slice(0, 39)}…` : word);

/** The whole file: what the notation says, and from the base what it has no words for. */
function assembled(reader: Reader, base: StillhotDocument | undefined): JsonObject {
  const { structures, points, elements, works, title, task, hertz } = reader;
  const before = base as unknown as JsonObject | undefined;
  const { job: jobBefore, system: systemBefore, ...rest } = before ?? {};
  const oldJob = isObject(jobBefore) ? jobBefore : {};
  const { structures: structuresBefore, ...system } = isObject(systemBefore) ? systemBefore : {};
  const areThere = Object.keys(structures).length > 0 || isEmpty(structuresBefore);
  const job = {
    ...oldJob,
    ...(task === undefined && !("task" in oldJob) ? {} : { task: task ?? "" }),
    ...(Object.keys(works).length === 0 && !("workPoints" in oldJob)
      ? {}
      : { workPoints: withUnsaid(works, oldJob["workPoints"]) }),
  };
  return {
    ...rest,
    format: "stillhot",
    formatVersion: 1,
    title: title ?? "",
    system: {
      ...system,
      frequencyHz: hertz ?? 60,
      ...(areThere ? { structures: withUnsaid(structures, structuresBefore) } : {}),
      points: withUnsaid(points, system["points"]),
      elements: withUnsaid(elements, system["elements"]),
    },
    ...(Object.keys(job).length === 0 && jobBefore === undefined ? {} : { job }),
  };
}

const isEmpty = (records: Json | undefined): boolean =>
  isObject(records) && Object.keys(records).length === 0;

/** Keys that no line can say come back to the records that have the same id. */
function withUnsaid(records: Readonly<Record<string, Record_>>, before: Json | undefined): JsonObject {
  const old = isObject(before) ? before : {};
  return Object.fromEntries(
    Object.entries(records).map(([id, record]) => {
      const was = Object.hasOwn(old, id) ? old[id] : undefined;
      const unsaid = isObject(was) ? Object.entries(was).filter(([key]) => !isSayableKey(key)) : [];
      return [id, { ...record, ...Object.fromEntries(unsaid) }];
    }),
  );
}
