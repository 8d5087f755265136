import {
  ampsLoadsOff,
  assess,
  assessWithoutWork,
  buffersOf,
  looksFor,
  marginMap,
  pointNumbers,
  type RowIds,
  type StillhotDocument,
  toColumns,
} from "../../core";
import type { Answer, Question } from "./assessor";
import { Receiver } from "./copies";

const receiver = new Receiver();
/** rows of the columns that were sent last */
let ids: RowIds | undefined;

/** Works drawings out off the main thread. */
self.addEventListener("message", ({ data }: MessageEvent<Question>) => {
  let answer: Answer;
  try {
    const document = "document" in data ? data.document : receiver.receive(data.sent);
    answer = { n: data.n, ...(document === undefined ? { isLost: true } : answerTo(document, data.what)) };
  } catch (error) {
    ids = undefined;
    answer = { n: data.n, failed: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(answer, { transfer: "columns" in answer ? buffersOf(answer.columns) : [] });
});

function answerTo(document: StillhotDocument, what: Question["what"]) {
  switch (what.of) {
    case "states": {
      const sent = toColumns(assessWithoutWork(document), ids);
      ids = sent.ids;
      return { columns: sent.columns };
    }
    case "threats": {
      const { workPoints, findings } = assess(document);
      return { workPoints, findings };
    }
    case "margins":
      return { margins: marginMap(document) };
    case "point":
      return { numbers: pointNumbers(document, what.id) };
    case "looks":
      return { looks: looksFor(document, what.id) };
    case "element":
      return { ampsLoadsOff: ampsLoadsOff(document, what.id) };
  }
}
