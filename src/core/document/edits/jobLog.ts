import { type JsonObject, say } from "../../terms";
import { differenceForJob } from "../jobDifference";
import { isDoneStep, type JobLogLine, jobLogOf } from "../jobLog";
import { doneByLog } from "../logAgainstOrder";
import { jobOf } from "../settings";
import type { StillhotDocument } from "../types";
import { change, type Edit, type Draft, plain } from "./change";

/** Writes what was done of the job, and marks the steps of the order that are done by it. */
export const setJobLog =
  (log: readonly JobLogLine[]): Edit =>
  (before) =>
    change(say("edit.jobLog"), before, (draft) => {
      draft.log = plain(log) as unknown as readonly JsonObject[];
      markDone(draft, before, log);
    });

/**
 * Writes down that a drawing was changed while its job was under way, and what of the changed order is done. Refused where
 * no job is under way, or where the change is nothing to it.
 *
 * @param was the drawing before the change
 * @param at when [ISO 8601, UTC]
 * @param text what was changed, in the words of whoever did it
 */
export const noteChange =
  (was: StillhotDocument, at: string, text: string): Edit =>
  (after) =>
    change(say("edit.jobLog"), after, (draft) => {
      const log = jobLogOf(after);
      if (!log.some(isDoneStep)) return;
      const difference = differenceForJob(was, after);
      if (difference === "none") return;
      const last = log.at(-1)!;
      // One name is typed in one go, and told once.
      const isSame = !isDoneStep(last) && last.mark === "changed" && last.text === text;
      const line = { at, mark: "changed", text, brief: difference === "matters" || (isSame && last.brief) };
      const lines = [...(isSame ? log.slice(0, -1) : log), line] as readonly JobLogLine[];
      draft.log = plain(lines) as unknown as readonly JsonObject[];
      markDone(draft, after, lines);
    });

function markDone(draft: Draft, document: StillhotDocument, log: readonly JobLogLine[]) {
  const { steps } = jobOf(document);
  const done = doneByLog(log, steps);
  if (steps.every((step, index) => (step.done === true) === done.has(index))) return;
  draft.job = {
    ...document.job,
    steps: steps.map(({ done: _done, ...step }, index) => (done.has(index) ? { ...step, done: true } : step)),
  };
}
