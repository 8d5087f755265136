import { EVIDENCE } from "../devices";
import { pointFields } from "../document";
import { isObject, type Json, type JsonObject } from "../terms";

/** Words that a point's line has after its id; `point` or nothing where the file states no kind. */
export const POINT_KINDS = ["pole", "pad", "station", "service"];

/** The word of a point's line where the file states no kind. */
export const POINT = "point";

/** Words for the kind of a structure, which heads the points on it. */
export const STRUCTURE_KINDS = [...POINT_KINDS, "vault"];

/** What a structure's line has after its id; alone it heads what is on no structure of the file. */
export const HEAD = ":";

/** The word that begins a work point's line. */
export const WORK = "work";

/** Text that needs no quotes: it cannot be taken for a number, a list, or the end of a word. */
const isBare = (text: string): boolean =>
  /^[\p{L}\p{N}_./%+-][\p{L}\p{N}_./%+°'-]*$/u.test(text) && !isJson(text) && !FUSE.test(text);

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

const FUSE = /^(\d+(?:\.\d+)?)([KT])$/;
const FLAG = /^[a-z][A-Za-z0-9]{2,}$/;
const KEY = /^[A-Za-z_][\w-]*$/;
const isEvidence = (word: string): boolean => (EVIDENCE as readonly string[]).includes(word);
const isPhases = (word: string): boolean => /^(?=.)A?B?C?1?2?N?$/.test(word);

/** A key that is true, as one word. */
export const isFlag = (word: string): boolean => FLAG.test(word) && !isEvidence(word);

/** Whether a key of a record can stand in a line. */
export const isSayableKey = (key: string): boolean => KEY.test(key);

function valueText(key: string, value: Json): string {
  if (typeof value === "string") return isBare(value) ? value : JSON.stringify(value);
  if (key === "fuse" && isObject(value) && Object.keys(value).length === 2) {
    const short = `${String(value["amps"])}${String(value["type"])}`;
    const match = FUSE.exec(short);
    if (match !== null && value["amps"] === Number(match[1]) && value["type"] === match[2]) return short;
  }
  return JSON.stringify(value);
}

/** The words of a record after its id and kind: phases, label, then its keys; those named in `without` stay out. */
export function wordsOf(record: JsonObject, without: readonly string[], letters: string): string[] {
  const words: string[] = [];
  const rest = Object.keys(record).filter((key) => !without.includes(key) && record[key] !== undefined);
  const say = (key: string, text: string) => {
    words.push(text);
    rest.splice(rest.indexOf(key), 1);
  };
  const phases = record[letters];
  if (rest.includes(letters) && typeof phases === "string" && isPhases(phases)) say(letters, phases);
  const { label, evidence } = record;
  if (rest.includes("label") && typeof label === "string") say("label", JSON.stringify(label));
  const known = rest.includes("evidence") && typeof evidence === "string" && isEvidence(evidence);
  if (known) rest.splice(rest.indexOf("evidence"), 1);
  for (const key of rest.filter(isSayableKey)) {
    const value = record[key]!;
    words.push(value === true && isFlag(key) ? key : `${key}=${valueText(key, value)}`);
  }
  if (known) words.push(evidence);
  return words;
}

/** Whether words after an id can be nothing but those of a point: then its line does without `point`. */
export const areOfPoint = (words: readonly string[]): boolean =>
  words.every((word) => {
    const [key, ...value] = word.startsWith('"') ? [word] : word.split("=");
    return value.length > 0 ? Object.hasOwn(pointFields, key!) : /^["@]/.test(word) || isEvidence(word);
  });

/** The words of a line: parted by spaces that stand in no text, list or object. Nothing where a text has no end. */
export function splitWords(line: string): string[] | undefined {
  const words: string[] = [];
  let word = "";
  let depth = 0;
  let inText = false;
  for (let at = 0; at < line.length; at++) {
    const letter = line[at]!;
    if (inText) {
      word += letter;
      if (letter === "\\") word += line[++at] ?? "";
      else if (letter === '"') inText = false;
      continue;
    }
    if (/\s/.test(letter) && depth === 0) {
      if (word !== "") words.push(word);
      word = "";
      continue;
    }
    if (letter === '"') inText = true;
    if (letter === "[" || letter === "{") depth++;
    if (letter === "]" || letter === "}") depth--;
    word += letter;
  }
  if (inText || depth !== 0) return undefined;
  return word === "" ? words : [...words, word];
}

/** Reads one word into a record; the reason as a word where it means nothing. */
export function readWord(word: string, record: Record<string, Json>, letters: string): boolean {
  const equals = word.startsWith('"') ? -1 : word.indexOf("=");
  if (equals > 0) {
    const key = word.slice(0, equals);
    if (!KEY.test(key) || key === "__proto__" || Object.hasOwn(record, key)) return false;
    const value = readValue(key, word.slice(equals + 1));
    if (value === undefined) return false;
    record[key] = value;
    return true;
  }
  const put = (key: string, value: Json): boolean => {
    if (Object.hasOwn(record, key)) return false;
    record[key] = value;
    return true;
  };
  if (word.startsWith('"')) {
    const label = parsed(word);
    return typeof label === "string" && put("label", label);
  }
  const place = /^@(-?[\d.]+(?:e[+-]?\d+)?),(-?[\d.]+(?:e[+-]?\d+)?)$/i.exec(word);
  if (place !== null) return put("x", Number(place[1])) && put("y", Number(place[2]));
  if (isPhases(word)) return put(letters, word);
  if (isEvidence(word)) return put("evidence", word);
  return FLAG.test(word) && put(word, true);
}

function readValue(key: string, text: string): Json | undefined {
  const fuse = key === "fuse" ? FUSE.exec(text) : null;
  if (fuse !== null) return { type: fuse[2]!, amps: Number(fuse[1]) };
  return /^["[{]/.test(text) ? parsed(text) : isBare(text) ? text : parsed(text);
}

function parsed(text: string): Json | undefined {
  try {
    return JSON.parse(text) as Json;
  } catch {
    return undefined;
  }
}
