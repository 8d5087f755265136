import type { FieldProblem, Fields } from "../devices";
import { type JsonObject, say } from "../terms";
import { below, type Report } from "./problem";

/** What one record's own keys have wrong, wherever the record stands. */
export interface RecordFacts {
  readonly problems: readonly FieldProblem[];
  /** keys that its fields do not name */
  readonly unknown: readonly string[];
}

/** A key that a file may have: internal fields are set by the program only, so in a file they are unknown keys. */
export const isFileKey = (fields: Fields, key: string): boolean =>
  Object.hasOwn(fields, key) && fields[key]!.internal === undefined;

/**
 * Reads every key of a record through its field.
 *
 * @param others keys that the caller checks itself
 */
export function checkFields(fields: Fields, record: JsonObject, others: readonly string[] = []): RecordFacts {
  const problems: FieldProblem[] = [];
  const given = Object.keys(record).filter((key) => record[key] !== undefined);
  const ownPhases = record["phases"];
  const phasesField = fields["phases"];
  const phases = typeof ownPhases === "string" ? ownPhases : "";
  const phasesAreWrong =
    phasesField !== undefined && !("value" in phasesField.read(ownPhases ?? null, { phases }));
  for (const key in fields) {
    const field = fields[key]!;
    const value = record[key];
    if (field.internal) continue;
    if (value === undefined) {
      if (field.required) problems.push({ at: `.${key}`, problem: say("read.missing") });
      continue;
    }
    // Without phases of its own, what an element says of its phases cannot be judged.
    if (phasesAreWrong && (field.input.as === "phases" || field.input.as === "taps")) continue;
    const reading = field.read(value, { phases });
    if (!("value" in reading)) problems.push({ at: `.${key}${reading.at}`, problem: reading.problem });
  }
  return { problems, unknown: given.filter((key) => !isFileKey(fields, key) && !others.includes(key)) };
}

/** Adds a record's facts to a report, below the record's path. */
export function reportFacts(report: Report, path: string, { problems, unknown }: RecordFacts): void {
  for (const { at, problem } of problems) report.add(path + at, problem);
  for (const key of unknown) report.unknown.push(below(path, key));
}
