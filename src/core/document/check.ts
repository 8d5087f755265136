import type { Patch } from "immer";
import { type Json, type JsonObject, type Message, say } from "../terms";
import { checkJob } from "./checkJob";
import { checkJobLog } from "./jobLog";
import { checkScenario } from "./scenario";
import { checkSettings } from "./checkSettings";
import { checkTouched, checkSystem } from "./checkSystem";
import { touchedBy } from "./touched";
import { hasHalfLetter, isTreacherousKey, MOST_LEVELS } from "./parse";
import { perObject } from "./perObject";
import { below, Report } from "./problem";
import { DOCUMENT_KEYS, type StillhotDocument, type System } from "./types";

const MOST_TITLE = 2000;
const MOST_NOTES = 100_000;

/** Checks a file of the newest version, its text already parsed. Says everything that is wrong with it, page by page. */
export function checkDocument(file: JsonObject): Report {
  const report = new Report();
  checkText(report, "title", file["title"], MOST_TITLE);
  checkText(report, "notes", file["notes"], MOST_NOTES);
  checkSystem(report, file["system"]);
  const system = report.problems.some(({ path }) => path.startsWith("system")) ? undefined : file["system"];
  checkJob(report, file["job"], system as System | undefined);
  checkScenario(report, file["scenario"], system as System | undefined, file["job"]);
  checkSettings(report, file["settings"]);
  checkJobLog(report, file["log"]);
  for (const key of Object.keys(file)) if (!DOCUMENT_KEYS.includes(key)) report.unknown.push(below("", key));
  return report;
}

/** Documents that were found to be as the reader would have them. */
const sound = new WeakSet<StillhotDocument>();

/** Says of a document that it was just read, with nothing wrong. */
export const vouchFor = (document: StillhotDocument): void => void sound.add(document);

/** Why a document would not read back as it is, or nothing. */
export function objectionTo(document: StillhotDocument): Message | undefined {
  if (sound.has(document)) return undefined;
  if (!readsBack(document)) return say("edit.notJson");
  const [first] = checkDocument(document as unknown as JsonObject).problems;
  if (first !== undefined) return say("edit.unfit", { path: first.path, problem: first.message });
  sound.add(document);
  return undefined;
}

/**
 * The same of a document that was made by patches: where the one before was sound, only what they touch is looked at,
 * and what refers to it.
 */
export function objectionAfter(
  before: StillhotDocument,
  after: StillhotDocument,
  patches: readonly Patch[],
): Message | undefined {
  followSoundness(before, after, patches);
  return objectionTo(after);
}

/** Remembers that a document is sound where that follows from the one before. */
export function followSoundness(
  before: StillhotDocument,
  after: StillhotDocument,
  patches: readonly Patch[],
): void {
  if (sound.has(before) && isSoundAfter(before, after, patches)) sound.add(after);
}

function isSoundAfter(before: StillhotDocument, after: StillhotDocument, patches: readonly Patch[]): boolean {
  const touched = touchedBy(patches);
  if (touched === undefined || !patches.every(putsPlain)) return false;
  const report = new Report();
  checkText(report, "title", after.title, MOST_TITLE);
  checkText(report, "notes", after.notes, MOST_NOTES);
  checkTouched(report, before.system, after.system, touched);
  if (report.problems.length > 0) return false;
  checkJob(report, after.job, after.system);
  checkScenario(report, after.scenario, after.system, after.job);
  checkSettings(report, after.settings);
  checkJobLog(report, after.log);
  return report.problems.length === 0;
}

/** Whether a patch puts only what can be written as JSON and read again. */
function putsPlain({ op, path, value }: Patch): boolean {
  if (op === "remove") return true;
  const { levels, isPlain } = treeOf([value]);
  const keys = path.map(String);
  return (
    isPlain &&
    path.length - 1 + levels <= MOST_LEVELS &&
    !keys.some((key) => isTreacherousKey(key) || hasHalfLetter(key))
  );
}

function checkText(report: Report, path: string, text: Json | undefined, most: number): void {
  if (text !== undefined && (typeof text !== "string" || text.length > most))
    report.addExpected(path, text, say("file.expectedText", { most }));
}

/** Levels below an object or list, and whether everything in it can be written as JSON and read again. */
interface JsonTree {
  readonly levels: number;
  readonly isPlain: boolean;
}

const treeOf: (value: object) => JsonTree = perObject((value: object): JsonTree => {
  const entries = Array.isArray(value)
    ? value.map((it): [string, unknown] => ["", it])
    : Object.entries(value);
  let levels = 0;
  let isPlain = true;
  for (const [key, it] of entries) {
    isPlain &&= !isTreacherousKey(key) && !hasHalfLetter(key);
    if (typeof it === "string") isPlain &&= !hasHalfLetter(it);
    else if (typeof it === "number") isPlain &&= Number.isFinite(it) && !Object.is(it, -0);
    else if (typeof it === "object" && it !== null) {
      const tree = treeOf(it);
      levels = Math.max(levels, tree.levels);
      isPlain &&= tree.isPlain;
    } else isPlain &&= it === null || typeof it === "boolean";
  }
  return { levels: levels + 1, isPlain };
});

/** Whether a value made in the program, not read from text, is JSON that reads back as itself. */
const readsBack = (value: object): boolean => {
  const { levels, isPlain } = treeOf(value);
  return isPlain && levels <= MOST_LEVELS;
};
