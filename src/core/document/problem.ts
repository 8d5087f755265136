import { field } from "../devices";
import { type Json, type Message, say } from "../terms";

/** One thing that is wrong in a file: the path of the key, what was found there and what was expected. */
export interface FileProblem {
  /** `system.elements.c1.from`; empty for the file as a whole */
  readonly path: string;
  readonly message: Message;
}

/** A file, or a drawing after an edit, that cannot be used, and every reason that fits on a page. */
export interface Unreadable {
  readonly problems: readonly FileProblem[];
}

/** Whether a file could not be read as a drawing. */
export const isUnreadable = (value: object): value is Unreadable => "problems" in value;

/** A page's worth: whoever wrote the file mends these and reads it again. */
export const MOST_PROBLEMS = 20;

/** What a check finds, gathered as it goes. */
export class Report {
  readonly problems: FileProblem[] = [];
  /** paths of keys that this program does not know */
  readonly unknown: string[] = [];

  get isFull(): boolean {
    return this.problems.length >= MOST_PROBLEMS;
  }

  /** Adds one problem, unless the page is full. */
  add(path: string, message: Message): void {
    if (!this.isFull) this.problems.push({ path, message });
  }

  /** Adds that something stands where something else was expected. */
  addExpected(path: string, found: Json | undefined, expected: Message): void {
    this.add(
      path,
      found === undefined
        ? say("read.missing")
        : say("read.expected", { found: field.describe(found), expected }),
    );
  }
}

/** Letters of a key that a path shows: no id has as many, but a file may have keys of any length. */
const MOST_OF_KEY = 60;

/** The path of a key below a path: `system.points.p1`, `job.steps[3]`, `system["a b"]`. */
export function below(path: string, key: string | number): string {
  if (typeof key === "number") return `${path}[${key}]`;
  if (key.length > MOST_OF_KEY || !/^[\w-]+$/.test(key))
    return `${path}[${JSON.stringify(key.length > MOST_OF_KEY ? `${key.slice(0, MOST_OF_KEY - 1)}…` : key)}]`;
  return path === "" ? key : `${path}.${key}`;
}
