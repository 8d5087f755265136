/** The IEEE 8500-node feeder at full size: how long from the file to volts and to the threats of one work point, and where it goes. */
import { expect, test } from "vitest";
import {
  assess,
  assessWithoutWork,
  beginJob,
  pieceAround,
  play,
  readDocument,
  type StillhotDocument,
  writeDocument,
} from "../../src/core";
import { circuitOf } from "../../src/core/network";
import { solutionOf } from "../../src/core/phasor";
import { drawing8500 } from "../support/ieee8500";
import { report } from "../support/measure";

const SECONDS = 1000;

/** Below the last transformer of a lateral, behind two switches. */
const PLACE = "L2804253";

function seconds<Result>(run: () => Result): { took: number; result: Result } {
  const start = performance.now();
  const result = run();
  return { took: (performance.now() - start) / SECONDS, result };
}

/** As if it had just been read. */
function fresh(text: string): StillhotDocument {
  const read = readDocument(text);
  if (!("document" in read)) throw new Error("it cannot be read");
  return read.document;
}

const withWork = (document: StillhotDocument, at: string): StillhotDocument => ({
  ...document,
  job: { workPoints: { w1: { at, conductors: "A" } } },
});

test("solved, checked and cut", () => {
  const text = writeDocument(drawing8500("balanced"));
  fresh(text);
  const reading = seconds(() => fresh(text));
  const building = seconds(() => circuitOf(reading.result.system));
  const solving = seconds(() => solutionOf(building.result));
  const rest = seconds(() => assessWithoutWork(reading.result));
  const at = PLACE;
  const threats = seconds(() => assess(withWork(reading.result, at)));
  const cutting = seconds(() => pieceAround(reading.result, [at as never], 2));
  report("8500 nodes: the file read, in seconds", reading.took, "under 1");
  report("8500 nodes: the circuit built, in seconds", building.took, "under 1 with the solution");
  report("8500 nodes: solved, in seconds", solving.took, "under 1");
  report("8500 nodes: states and currents beside, in seconds", rest.took, "under 2");
  report("8500 nodes: threats to one work point, in seconds", threats.took, "under 3");
  report("8500 nodes: a piece cut out and held against the whole, in seconds", cutting.took, "under 10");
  report("8500 nodes: points of the piece", Object.keys(cutting.result.document.system.points).length, "few");
  expect(threats.result.workPoints["w1" as never]).toBeDefined();
  expect(building.took + solving.took).toBeLessThan(5);
});

/** A switch of the main line, with hundreds of customers beyond it and the place above among them. */
const SWITCH = "e-X8223_48332_sw";

test("the first steps of a job", () => {
  const document = withWork(fresh(writeDocument(drawing8500("balanced"))), PLACE);
  const begin = beginJob(document);
  const opening = seconds(() => play(begin, { do: "open", element: SWITCH as never, phases: "A" }));
  const testing = seconds(() =>
    play(opening.result.state, { do: "test", at: PLACE as never, phases: "A" as never }),
  );
  report("8500 nodes: a switch of the main line opened, in seconds", opening.took, "under 3");
  report("8500 nodes: a test beyond it, with all threats, in seconds", testing.took, "under 10");
  expect(Object.keys(testing.result.state.document.system.elements)).toContain(SWITCH);
});
