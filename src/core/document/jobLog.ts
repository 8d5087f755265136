import { field, type Fields } from "../devices";
import { type Step, stepFields, undoesTests } from "../steps";
import { isObject, type Json, type JsonObject, say } from "../terms";
import { canonicalText } from "./canonical";
import { checkFields, reportFacts } from "./checkFields";
import { jobOf } from "./settings";
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

/**
 * Which step of the order each line of the log ticks, from 0; nothing for a line that ticks none. The order may have been
 * changed since: what was done keeps its place among what was done, and where a step was only put otherwise it still counts.
 */
export function placesInOrder(
  log: readonly JobLogLine[],
  order: readonly Step[],
): readonly (number | undefined)[] {
  const ticked = log
    .flatMap((line, index) =>
      isDoneStep(line) && line.struck === undefined && line.n !== undefined
        ? [{ index, step: line.step, n: line.n }]
        : [],
    )
    .sort((a, b) => a.n - b.n);
  const places = new Array<number | undefined>(log.length).fill(undefined);
  const taken = new Set<number>();
  const take = (line: number, place: number) => {
    places[line] = place;
    taken.add(place);
  };
  for (const [row, column] of inTheSameOrder(
    ticked.map(({ step }) => step),
    order,
  ))
    take(ticked[row]!.index, column);
  // What is left was moved within the order.
  for (const { index, step } of ticked) {
    if (places[index] !== undefined) continue;
    const place = order.findIndex((it, at) => !taken.has(at) && likeness(step, it) > 0);
    if (place >= 0) take(index, place);
  }
  return places;
}

/** The longest pairing of two orders in which nothing changes places, word for word where that may be. */
function inTheSameOrder(done: readonly Step[], order: readonly Step[]): (readonly [number, number])[] {
  const best = Array.from({ length: done.length + 1 }, () => new Array<number>(order.length + 1).fill(0));
  for (let row = done.length - 1; row >= 0; row--)
    for (let column = order.length - 1; column >= 0; column--) {
      const alike = likeness(done[row]!, order[column]!);
      best[row]![column] = Math.max(
        best[row + 1]![column]!,
        best[row]![column + 1]!,
        alike === 0 ? 0 : alike + best[row + 1]![column + 1]!,
      );
    }
  const pairs: (readonly [number, number])[] = [];
  for (let row = 0, column = 0; row < done.length && column < order.length;) {
    const alike = likeness(done[row]!, order[column]!);
    if (alike > 0 && best[row]![column] === alike + best[row + 1]![column + 1]!)
      pairs.push([row++, column++]);
    else if (best[row]![column] === best[row]![column + 1]) column++;
    else row++;
  }
  return pairs;
}

/** Two for the same step, one for the same act put otherwise (with another tool, say), nothing for another act. */
function likeness(one: Step, other: Step): 0 | 1 | 2 {
  if (one.do !== other.do || one.element !== other.element) return 0;
  if (one.at !== other.at || one.phases !== other.phases) return 0;
  return isSameStep(one, other) ? 2 : 1;
}

/** Whether two steps say the same; a mark that one is done is no difference. */
export const isSameStep = (one: Step, other: Step): boolean => one === other || textOf(one) === textOf(other);

const textOf = ({ done: _done, ...step }: Step): string => canonicalText(step);

/**
 * Which steps of the order are done by the log. A test that was done is marked only while nothing undid it that the order
 * does not show after it: whoever reads the order alone must not take it for a proof that has gone.
 */
export function doneByLog(log: readonly JobLogLine[], order: readonly Step[]): ReadonlySet<number> {
  const places = placesInOrder(log, order);
  const done = new Set<number>();
  log.forEach((line, index) => {
    const place = places[index];
    if (place === undefined || !isStanding(line)) return;
    const isUndone = (it: JobLogLine, at: number) =>
      at > index && isStanding(it) && undoesTests(it.step) && (places[at] ?? -1) < place;
    if (line.step.do === "test" && log.some(isUndone)) return;
    done.add(place);
  });
  return done;
}

/** How two drawings of one job differ: in nothing that the job asks for, in words alone, or in what it is. */
export type JobDifference = "none" | "words" | "matters";

/** How a drawing differs from the one that a job was begun with. Where things are drawn makes no difference to a job. */
export function differenceForJob(before: StillhotDocument, after: StillhotDocument): JobDifference {
  if (textForJob(before, "bare") !== textForJob(after, "bare")) return "matters";
  return textForJob(before, "said") === textForJob(after, "said") ? "none" : "words";
}

/** A drawing without where its things are drawn; `bare`, also without how they are called and what is noted of them. */
function textForJob(document: StillhotDocument, what: "bare" | "said"): string {
  const { structures = {}, points, elements, frequencyHz } = document.system;
  const records = [structures, points, elements].map((them) =>
    Object.entries(them as Readonly<Record<string, JsonObject>>).map(([id, it]) => [id, textsOf(it)[what]]),
  );
  const { steps: _steps, workPoints: _workPoints, ...job } = document.job ?? {};
  const { steps, workPoints } = jobOf(document);
  const works = Object.entries(workPoints).map(([id, it]) => [id, textsOf(it as object as JsonObject)[what]]);
  return JSON.stringify([frequencyHz, records, works, steps.map(textOf), job, document.settings ?? {}]);
}

/** Things of a drawing whose label an edit changed, by id. */
export function renamedBetween(before: StillhotDocument, after: StillhotDocument): readonly string[] {
  const labels = ({ system: { structures = {}, points, elements } }: StillhotDocument) =>
    new Map(
      Object.entries<Json & { readonly label?: Json }>({ ...structures, ...points, ...elements }).map(
        ([id, { label }]) => [id, label],
      ),
    );
  const had = labels(before);
  return [...labels(after)].flatMap(([id, label]) => (had.has(id) && had.get(id) !== label ? [id] : []));
}

/** Remembered per record: an edit leaves most of them as they are. */
const textsOf = perObject(({ x: _x, y: _y, pinned: _pinned, ...said }: JsonObject) => {
  const { label: _label, note: _note, ...bare } = said;
  return { said: canonicalText(said), bare: canonicalText(bare) };
});

/** The drawing and its order, whatever was done of it: what a fingerprint is of, so that it stands while a job is under way. */
export const asDrawn = (document: StillhotDocument): StillhotDocument => {
  if (document["log"] === undefined) return document;
  const { log: _, ...rest } = document;
  const steps = jobOf(document).steps.map(({ done: _done, ...step }) => step);
  return { ...rest, ...(document.job === undefined ? {} : { job: { ...document.job, steps } }) };
};
