import type { Json, JsonObject } from "../terms";
import { canonicalText } from "./canonical";
import { textOfStep } from "./logAgainstOrder";
import { perObject } from "./perObject";
import { jobOf } from "./settings";
import type { StillhotDocument } from "./types";

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
  return JSON.stringify([frequencyHz, records, works, steps.map(textOfStep), job, document.settings ?? {}]);
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
