import {
  isDoneStep,
  isStanding,
  type JobLogLine,
  jobLogOf,
  jobOf,
  placesInOrder,
  type StillhotDocument,
} from "../document";
import { stepSentence } from "../procedure";
import { type Message, say } from "../terms";

/** How a moment of the log [ISO 8601, UTC] is written. */
export type TimeOf = (at: string) => string;

/** As the file has it, where nobody says where the reader's clock stands. */
export const asWritten: TimeOf = (at) => at.replace("T", " ").slice(0, 16);

/** What was done of the job, line by line; nothing is left out. */
export const recordOf = (document: StillhotDocument, timeOf: TimeOf): readonly Message[] =>
  jobLogOf(document).map((line) => lineWords(document, line, timeOf));

function lineWords(document: StillhotDocument, line: JobLogLine, timeOf: TimeOf): Message {
  const time = timeOf(line.at);
  if (!isDoneStep(line))
    return say("sheet.record.mark", { time, what: say(`sheet.mark.${line.mark}`), text: line.text ?? "" });
  const act = stepSentence(document, line.step);
  if (line.struck !== undefined)
    return say("sheet.record.struck", { time, act, struck: timeOf(line.struck) });
  return say(line.leftOut === true ? "sheet.record.leftOut" : "sheet.record.done", { time, act });
}

/** When each step of the order was done, by its number from 1. */
export function timesOfSteps(document: StillhotDocument, timeOf: TimeOf): ReadonlyMap<number, string> {
  const log = jobLogOf(document);
  const places = placesInOrder(log, jobOf(document).steps);
  const times = new Map<number, string>();
  log.forEach((line, index) => {
    const place = places[index];
    if (place !== undefined && isStanding(line)) times.set(place + 1, timeOf(line.at));
  });
  return times;
}

/** The number and the words of the permit, as they were written down when it was received. */
export const permitWords = (document: StillhotDocument): string | undefined =>
  jobLogOf(document)
    .filter(isStanding)
    .findLast(({ step }) => step.do === "receive-permit" && (step.text ?? "") !== "")?.step.text;
