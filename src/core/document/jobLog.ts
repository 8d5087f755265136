import { field, type Fields } from "../devices";
import { type Step, stepFields } from "../steps";
import { isObject, type Json, type JsonObject, say } from "../terms";
import { checkFields, reportFacts } from "./checkFields";
import { perObject } from "./perObject";
import { below, type Report } from "./problem";
import type { StillhotDocument } from "./types";

/** A step that was done, or left out. It is struck where it was ticked wrongly, and never erased. */
export interface DoneStep {
  /** when [ISO 8601, UTC] */
  readonly at: string;
  readonly step: Step;
  /** which step of the order it was, from 1; absent in one that the order did not have */
  readonly n?: number;
  /** left out on purpose: nothing was done */
  readonly leftOut?: boolean;
  /** when it was struck */
  readonly struck?: string;
}

/**
 * Something else that happened: the job began, it began again from the beginning, the drawing was changed under it, or
 * what was seen was not what was expected.
 */
export const MARKS = ["begun", "again", "changed", "unexpected"] as const;

/**
 * What was seen in place of what a step expects: voltage where none was to be, or none where there was to be some; a device
 * that did not open; somebody else's tag; something loose, cracked or burned; something that is not what is drawn; a detector that
 * shows nothing where it is to be proven.
 */
export const SEEN_INSTEAD = [
  "voltage",
  "no-voltage",
  "stuck",
  "tag",
  "unsound",
  "differs",
  "silent",
] as const;

/** One of those. */
export type SeenInstead = (typeof SEEN_INSTEAD)[number];

/** A line of a job's log that is no step: begun, gone on with, changed, or something unexpected. */
export interface JobMark {
  readonly at: string;
  readonly mark: (typeof MARKS)[number];
  /** in the words of whoever wrote it */
  readonly text?: string;
  /** what was briefed no longer covers the job */
  readonly brief?: boolean;
  /** of what was unexpected: what it was */
  readonly seen?: SeenInstead;
}

/** A line of what was done of a job. Lines are only added, in the order in which things happened. */
export type JobLogLine = DoneStep | JobMark;

/** Keys of a line of the log. It has a `step` or a `mark`. */
export const jobLogFields = {
  at: { ...field.text(), required: true as const },
  n: field.optionalAmount("", { min: 1, max: 100_000, whole: true }),
  leftOut: field.flag(false),
  struck: field.text(),
  mark: field.optionalChoice(MARKS),
  text: field.text(),
  brief: field.flag(false),
  seen: field.optionalChoice(SEEN_INSTEAD),
} satisfies Fields;

const NONE: readonly JobLogLine[] = [];

/** What was done of a job and when, in its order; empty where nothing was. */
export const jobLogOf = ({ log }: StillhotDocument): readonly JobLogLine[] =>
  (log as readonly JobLogLine[] | undefined) ?? NONE;

/** Whether a line of the log is a step that was done. */
export const isDoneStep = (line: JobLogLine): line is DoneStep => "step" in line;

/** Whether a line tells of a step that counts: done, and not struck. */
export const isStanding = (line: JobLogLine): line is DoneStep =>
  isDoneStep(line) && line.leftOut !== true && line.struck === undefined;

const lineFacts = perObject((line: JsonObject) => checkFields(jobLogFields, line, ["step"]));
const stepFacts = perObject((step: JsonObject) => checkFields(stepFields, step));

/** Checks the log of a job. Its steps may name what is no longer on the drawing. */
export function checkJobLog(report: Report, log: Json | undefined): void {
  if (log === undefined) return;
  if (!Array.isArray(log)) return report.addExpected("log", log, say("file.expectedList"));
  (log as readonly Json[]).forEach((line, index) => {
    const path = below("log", index);
    if (!isObject(line)) return report.addExpected(path, line, say("file.expectedObject"));
    reportFacts(report, path, lineFacts(line));
    const { step } = line;
    if (isObject(step)) reportFacts(report, `${path}.step`, stepFacts(step));
    else if (step !== undefined || line["mark"] === undefined)
      report.addExpected(`${path}.step`, step, say("file.expectedObject"));
  });
}
