import { type Json, type Message, say } from "../terms";
import { below, type FileProblem } from "./problem";

/** Letters of a file. A drawing of a thousand poles is a hundredth of it. */
export const MOST_LETTERS = 20_000_000;
/** Levels of objects and lists within each other. The format itself needs about seven. */
export const MOST_LEVELS = 50;

/** Keys of a path that a message names; nothing in the format lies deeper. */
const LONGEST_PATH = 8;

/** Names that JavaScript objects carry: a key of that name could change how every object behaves. */
export const isTreacherousKey = (key: string): boolean =>
  key === "__proto__" || key === "constructor" || key === "prototype";

/** Half of a letter that needs two (a surrogate on its own): it cannot be written as UTF-8. */
export const hasHalfLetter = (text: string): boolean => /\p{Surrogate}/u.test(text);

/** Where the halves of letters that need two begin. */
const FIRST_HALF_LETTER = 0xd800;

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;

const WORDS: readonly (readonly [word: string, value: Json])[] = [
  ["true", true],
  ["false", false],
  ["null", null],
];

/**
 * Reads JSON text more strictly than the language's own parser, and says where it stopped: keys that stand twice,
 * treacherous keys, numbers too large, half letters and deep nesting are problems. A byte order mark is let through.
 *
 * @see RFC 8259 for the grammar, RFC 7493 (I-JSON) for what is refused beyond it
 */
export function parseJson(text: string): { readonly value: Json } | FileProblem {
  if (text.length > MOST_LETTERS)
    return { path: "", message: say("file.tooLarge", { letters: text.length, most: MOST_LETTERS }) };
  try {
    return { value: new Parser(text).whole() };
  } catch (stop) {
    if (stop instanceof Stop) return { path: stop.path, message: stop.problem };
    throw stop;
  }
}

/** Leaves the parser from any depth; never leaves this file. */
class Stop {
  constructor(
    readonly path: string,
    readonly problem: Message,
  ) {}
}

class Parser {
  private at: number;
  private level = 0;
  private readonly keys: (string | number)[] = [];

  constructor(private readonly text: string) {
    this.at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  }

  whole(): Json {
    this.skipSpace();
    if (this.at >= this.text.length) this.stop(say("file.empty"), "");
    const value = this.value();
    this.skipSpace();
    if (this.at < this.text.length) this.unexpected("the end of the file");
    return value;
  }

  private value(): Json {
    const letter = this.text[this.at];
    if (letter === "{" || letter === "[") return this.nested(letter);
    if (letter === '"') return this.string();
    if (letter === "-" || (letter !== undefined && letter >= "0" && letter <= "9")) return this.number();
    for (const [word, value] of WORDS) {
      if (!this.text.startsWith(word, this.at)) continue;
      this.at += word.length;
      return value;
    }
    return this.unexpected("a value");
  }

  private nested(opening: "{" | "["): Json {
    if (++this.level > MOST_LEVELS) this.stop(say("file.tooDeep", { most: MOST_LEVELS, ...this.place() }));
    const value = opening === "{" ? this.object() : this.list();
    this.level--;
    return value;
  }

  private object(): Json {
    const object: Record<string, Json> = {};
    this.at++; // {
    this.skipSpace();
    if (this.take("}")) return object;
    for (;;) {
      if (this.text[this.at] !== '"') this.unexpected("a key in double quotes");
      const key = this.string();
      this.keys.push(key);
      if (isTreacherousKey(key)) this.stop(say("file.treacherousKey", { key }));
      if (Object.hasOwn(object, key)) this.stop(say("file.keyTwice", this.place()));
      this.skipSpace();
      if (!this.take(":")) this.unexpected("a colon");
      this.skipSpace();
      object[key] = this.value();
      this.keys.pop();
      this.skipSpace();
      if (this.take("}")) return object;
      if (!this.take(",")) this.unexpected("a comma or }");
      this.skipSpace();
    }
  }

  private list(): Json {
    const list: Json[] = [];
    this.at++; // [
    this.skipSpace();
    if (this.take("]")) return list;
    for (;;) {
      this.keys.push(list.length);
      list.push(this.value());
      this.keys.pop();
      this.skipSpace();
      if (this.take("]")) return list;
      if (!this.take(",")) this.unexpected("a comma or ]");
      this.skipSpace();
    }
  }

  private string(): string {
    const start = ++this.at;
    let isPlain = true;
    let mayHaveHalves = false;
    for (; this.at < this.text.length; this.at++) {
      const code = this.text.charCodeAt(this.at);
      if (code === 0x22) break;
      if (code < 0x20) this.stop(say("file.controlLetter", this.place()));
      if (code >= FIRST_HALF_LETTER) mayHaveHalves = true;
      if (code !== 0x5c) continue;
      isPlain = false;
      this.at++;
    }
    if (this.at >= this.text.length) this.unexpected("the closing quote of a text");
    const raw = this.text.slice(start, this.at);
    this.at++; // "
    const read = isPlain ? raw : this.unescape(raw);
    if ((mayHaveHalves || !isPlain) && hasHalfLetter(read)) this.stop(say("file.halfLetter", this.place()));
    return read;
  }

  private unescape(raw: string): string {
    try {
      return JSON.parse(`"${raw}"`) as string;
    } catch {
      return this.stop(say("file.escape", this.place()));
    }
  }

  private number(): number {
    NUMBER.lastIndex = this.at;
    if (!NUMBER.test(this.text)) return this.unexpected("a number");
    const found = this.text.slice(this.at, NUMBER.lastIndex);
    const value = Number(found);
    if (!Number.isFinite(value))
      this.stop(say("file.hugeNumber", { found: found.slice(0, 20), ...this.place() }));
    this.at += found.length;
    return value + 0; // −0 would be written back as 0
  }

  private skipSpace(): void {
    for (; this.at < this.text.length; this.at++) {
      const code = this.text.charCodeAt(this.at);
      if (code !== 0x20 && code !== 0x0a && code !== 0x0d && code !== 0x09) return;
    }
  }

  private take(letter: string): boolean {
    if (this.text[this.at] !== letter) return false;
    this.at++;
    return true;
  }

  private unexpected(expected: string): never {
    if (this.at >= this.text.length)
      return this.stop(say("file.endsEarly", { expected, ...this.place() }), "");
    const found = /^[\w.+-]{1,20}|^[^]/u.exec(this.text.slice(this.at, this.at + 20))![0];
    return this.stop(say("file.notJson", { found, expected, ...this.place() }), "");
  }

  private stop(problem: Message, path = this.path()): never {
    throw new Stop(path, problem);
  }

  private path(): string {
    const path = this.keys.slice(0, LONGEST_PATH).reduce<string>((path, key) => below(path, key), "");
    return this.keys.length > LONGEST_PATH ? `${path}…` : path;
  }

  private place(): { readonly line: number; readonly column: number } {
    const before = this.text.slice(0, this.at);
    const lastBreak = before.lastIndexOf("\n");
    return { line: before.split("\n").length, column: this.at - lastBreak };
  }
}
