import { type Json, type JsonObject, say } from "../terms";
import { checkJob } from "./checkJob";
import { checkScenario } from "./scenario";
import { checkSettings } from "./checkSettings";
import { checkSystem } from "./checkSystem";
import { hasHalfLetter, isTreacherousKey, MOST_LEVELS } from "./parse";
import { perObject } from "./perObject";
import { below, Report } from "./problem";
import { DOCUMENT_KEYS, type System } from "./types";

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
  for (const key of Object.keys(file)) if (!DOCUMENT_KEYS.includes(key)) report.unknown.push(below("", key));
  return report;
}

function checkText(report: Report, path: string, text: Json | undefined, most: number): void {
  if (text !== undefined && (typeof text !== "string" || text.length > most))
    report.addExpected(path, text, say("file.expectedText", { most }));
}

/** Levels below an object or list, and whether everything in it can be written as JSON and read again. */
interface Tree {
  readonly levels: number;
  readonly isPlain: boolean;
}

const treeOf: (value: object) => Tree = perObject((value: object): Tree => {
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
export const readsBack = (value: object): boolean => {
  const { levels, isPlain } = treeOf(value);
  return isPlain && levels <= MOST_LEVELS;
};
