import {
  actsFor,
  ampsLoadsOff,
  answerTo,
  asOf,
  assess,
  assessWithoutWork,
  buffersOf,
  canBeSolved,
  controlsFor,
  type JobState,
  looksFor,
  marginMap,
  pieceAround,
  plan,
  planned,
  pointNumbers,
  rangesOf,
  type RowIds,
  seen,
  sentStep,
  type StillhotDocument,
  toColumns,
  trapsOf,
} from "../../core";
import { today } from "../words/today";
import { Receiver } from "./copies";
import type { Errand } from "./errands";
import { breaksOf, leftAtEnd, type PlayedOrder, Player, stateAfter, stateBefore } from "./player";
import type { Checked, Failed, Lost, OrderMoment, What, WorkerAnswer, WorkerQuestion } from "./questions";
import type { ReadingAnswer, ReadingQuestion } from "./reading";
import type { WritingMessage } from "./writing";

const receiver = new Receiver();
const player = new Player();
/** rows of the columns that were sent last */
let ids: RowIds | undefined;

/**
 * Works out off the main thread what takes its time, so that the drawing stays under the hands meanwhile. What reads and
 * writes files is fetched by the one that has to.
 */
self.addEventListener("message", ({ data }: MessageEvent<Errand>) => {
  if (data.to === "answer") answer(data);
  else
    void (data.to === "read" ? read(data) : write(data))
      .catch(failed)
      .then((found) => self.postMessage(found));
});

function answer({ sent, what }: WorkerQuestion) {
  let found: WorkerAnswer | Lost;
  try {
    const document = receiver.receive(sent);
    found = document === undefined ? { isLost: true } : answered(document, what);
  } catch (error) {
    ids = undefined;
    found = failed(error);
  }
  self.postMessage(found, { transfer: "columns" in found ? buffersOf(found.columns) : [] });
}

const failed = (error: unknown): Failed => ({
  failed: error instanceof Error ? error.message : String(error),
});

/** Reads one file, and tells meanwhile how far it is. */
async function read(question: ReadingQuestion): Promise<ReadingAnswer> {
  const { answerReading } = await import("./reading");
  return answerReading(question, (progress) => self.postMessage(progress));
}

/** Writes one drawing, and paints it where it is to be painted. */
async function write(message: WritingMessage) {
  const { answerWriting, canPaintBeside, painted } = await import("./writeAndPaint");
  const written = answerWriting(message);
  return "picture" in written && canPaintBeside() ? { file: await painted(written) } : written;
}

function answered(document: StillhotDocument, what: What): WorkerAnswer {
  switch (what.of) {
    case "states": {
      const sent = toColumns(assessWithoutWork(document), ids);
      ids = sent.ids;
      return { columns: sent.columns };
    }
    case "threats": {
      const { workPoints, findings } = assess(asOf(document, today()));
      return { workPoints, findings };
    }
    case "margins":
      return { margins: marginMap(document) };
    case "point":
      return { numbers: pointNumbers(document, what.id) };
    case "looks":
      return { looks: looksFor(asOf(document, today()), what.id) };
    case "ranges":
      return { ranges: rangesOf(asOf(document, today()), what.id, { when: "drawn" }) };
    case "element":
      return { ampsLoadsOff: ampsLoadsOff(document, what.id) };
    case "piece":
      return { piece: pieceAround(document, what.points, what.openings) };
    case "plan":
      return { plan: plan(document) };
    case "controls": {
      const state = stateAfter(player.play(document), what.count);
      return { sheet: controlsFor(state, what.workPoint, what.ticked) };
    }
    case "scenario":
      return checked(document);
    case "step":
    case "would": {
      const before = stateBefore(playedTo(document, what, what.count - 1), what.between);
      const played = playedTo(document, what).steps.at(-1)!;
      return {
        step: sentStep(before, played),
        breaks: what.of === "would" ? breaksOf(before, played.step) : [],
      };
    }
    case "seen":
      return { columns: toColumns(seen(momentOf(document, what))).columns };
    case "left":
      return { left: leftAtEnd(playedTo(document, what)) };
    case "acts":
      return { acts: actsFor(momentOf(document, what), what.owner, what.noteText) };
  }
}

const playedTo = (
  document: StillhotDocument,
  { steps, between, count, known = [] }: OrderMoment,
  to = count,
): PlayedOrder => {
  const order = steps.slice(0, to);
  player.takeIn(document, order, between, known);
  return player.play(document, order, between);
};

const momentOf = (document: StillhotDocument, moment: OrderMoment): JobState =>
  stateBefore(playedTo(document, moment), moment.between);

/** Plays the answer and every trap: a planner's order on a long line takes its time. */
function checked(document: StillhotDocument): Checked {
  const traps = trapsOf(document, planned).map(({ trap, canBeFallenInto }) => ({
    id: trap.id,
    label: trap.label,
    closes: canBeFallenInto,
  }));
  return { ...canBeSolved(document, planned), traps, answer: answerTo(document, planned) };
}
