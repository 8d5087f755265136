import "fake-indexeddb/auto";
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { act, type Attempt, isRefusal, readDocument, type Step, startAttempt } from "../../core";
import { keepAttempt, keptAttempts } from "./shelf";

const read = readDocument(readFileSync("shared/scenarios/first-cutout.stillhot.json", "utf8"));
if (!("document" in read)) throw new Error("the scenario does not read");
const attempt = startAttempt(read.document, { who: "Kim" });

const keptAs = async (id: string) => (await keptAttempts()).find((it) => it.id === id);

test("an attempt that was kept comes back as it is, with its seconds", async () => {
  await keepAttempt("whole", attempt, 12);
  expect(await keptAs("whole")).toMatchObject({ attempt, seconds: 12, isOver: false });
});

function after(before: Attempt, step: Step): Attempt {
  const acted = act(before, step);
  if (isRefusal(acted)) throw new Error("refused");
  return acted.attempt;
}

test("an attempt is only ever added to: a window that has not seen its end takes none of it away", async () => {
  const longer = after(after(attempt, { do: "brief" }), { do: "check-detector" });
  const other = after(attempt, { do: "check-detector" });
  expect(await keepAttempt("two", longer, 9)).toBeUndefined();
  expect((await keepAttempt("two", attempt, 20))?.attempt).toEqual(longer);
  expect((await keepAttempt("two", other, 20))?.attempt).toEqual(longer);
  expect(await keptAs("two")).toMatchObject({ attempt: longer, seconds: 9 });
  expect(await keepAttempt("two", after(longer, { do: "brief" }), 21)).toBeUndefined();
});

/** [what is spoiled, the attempt as it lies on the shelf, its seconds] */
test.each<readonly [string, object, number]>([
  ["a document without a system", { ...attempt, document: { title: "torn" } }, 0],
  ["a log with a hole", { ...attempt, log: [null] }, 0],
  ["a kind of attempt that does not exist", { ...attempt, mode: "constructor" }, 0],
  ["a name that is no text", { ...attempt, who: {} }, 0],
  ["seconds that are no number", attempt, NaN],
  ["a moment that is on no calendar", attempt, 0],
])("%s is not offered, and keeps nothing else from being offered", async (id, spoiled, seconds) => {
  await keepAttempt("beside", attempt, 1);
  await spoil(id, spoiled as Attempt, seconds);
  expect(await keptAs(id)).toBeUndefined();
  expect(await keptAs("beside")).toBeDefined();
});

/** Writes past the shelf, as another program would have. */
function spoil(id: string, spoiled: Attempt, seconds: number): Promise<void> {
  return new Promise((done, fail) => {
    const opening = indexedDB.open("stillhot-attempts");
    opening.onerror = () => fail(opening.error ?? new Error("not opened"));
    opening.onsuccess = () => {
      const transaction = opening.result.transaction("attempts", "readwrite");
      transaction
        .objectStore("attempts")
        .put({ id, savedAt: id.includes("moment") ? 9e15 : 1, isOver: false, attempt: spoiled, seconds });
      transaction.oncomplete = () => done();
    };
  });
}
