import {
  ampsLoadsOff,
  answerTo,
  asOf,
  assess,
  assessWithoutWork,
  buffersOf,
  canBeSolved,
  controlsFor,
  looksFor,
  marginMap,
  pieceAround,
  plan,
  planned,
  pointNumbers,
  type RowIds,
  type StillhotDocument,
  toColumns,
  trapsOf,
} from "../../core";
import { today } from "../words/today";
import { Receiver } from "./copies";
import type { WorkerAnswer, Checked, Lost, WorkerQuestion, What } from "./questions";
import { Player, stateAfter } from "./player";

const receiver = new Receiver();
const player = new Player();
/** rows of the columns that were sent last */
let ids: RowIds | undefined;

/** Works out off the main thread what takes its time, so that the drawing stays under the hands meanwhile. */
self.addEventListener("message", ({ data }: MessageEvent<WorkerQuestion>) => {
  let answer: WorkerAnswer | Lost;
  try {
    const document = receiver.receive(data.sent);
    answer = document === undefined ? { isLost: true } : answered(document, data.what);
  } catch (error) {
    ids = undefined;
    answer = { failed: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(answer, { transfer: "columns" in answer ? buffersOf(answer.columns) : [] });
});

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
  }
}

/** Plays the answer and every trap: a planner's order on a long line takes its time. */
function checked(document: StillhotDocument): Checked {
  const traps = trapsOf(document, planned).map(({ trap, canBeFallenInto }) => ({
    id: trap.id,
    label: trap.label,
    closes: canBeFallenInto,
  }));
  return { ...canBeSolved(document, planned), traps, answer: answerTo(document, planned) };
}
