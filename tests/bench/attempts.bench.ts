import { expect, test } from "vitest";
import {
  type Attempt,
  compareMany,
  isRefusal,
  playThrough,
  readAttempt,
  scenarioOf,
  writeAttempt,
} from "../../src/core";
import { scenarioFile } from "../scenarios/library";
import { medianMilliseconds, report } from "../support/measure";

/** The files of a class: the answer and every trap of these scenarios, each played once and handed in again and again. */
function classOf(ids: readonly string[], count: number): string[] {
  const files = ids.flatMap((id) => {
    const document = scenarioFile(id);
    const { answer = [], traps = [] } = scenarioOf(document);
    const orders = [answer, ...traps.flatMap(({ fall }) => (fall === undefined ? [] : [fall]))];
    return orders.map((steps) => writeAttempt(playThrough(document, steps).attempt));
  });
  return Array.from({ length: count }, (_, n) => files[n % files.length]!);
}

const read = (files: readonly string[]): Attempt[] =>
  files.flatMap((file) => {
    const attempt = readAttempt(file);
    return isRefusal(attempt) ? [] : [attempt];
  });

test.each([
  ["one scenario", ["first-cutout"]],
  ["five scenarios", ["first-cutout", "larkfield-storm", "larkfield-lead", "fern-row", "sluice-pumps"]],
])("a class of two hundred attempts at %s", (what, ids) => {
  const files = classOf(ids, 200);
  expect(read(files).length).toBe(200);
  const open = medianMilliseconds(() => compareMany(read(files)), 9);
  report(`200 attempts at ${what}, read, checked and compared [ms]`, open, "under 2000, with the page");
});
