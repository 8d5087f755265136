import "fake-indexeddb/auto";
import { expect, test } from "vitest";
import type { Step } from "../../core";
import { keepRun, runOf, type StoredRun } from "./store";

const entry = { step: { do: "brief" } as Step, at: 1, planned: 0 };
const run = (key: string, change: object = {}) =>
  ({ key, savedAt: 1, entries: [entry], answered: [], ...change }) as StoredRun;

test("a rehearsal comes back as it was kept", async () => {
  await keepRun(run("whole"));
  expect(await runOf("whole")).toEqual(run("whole"));
});

test.each([
  ["entries that are no list", { entries: "abc" }],
  ["no entries", { entries: null }],
  ["an entry that is nothing", { entries: [null] }],
  ["an entry without a step", { entries: [{ at: 1 }] }],
  ["a step that nobody knows", { entries: [{ ...entry, step: { do: "constructor" } }] }],
  ["answers that are no list", { answered: null }],
])("%s: the rehearsal begins anew", async (key, change) => {
  await keepRun(run(key, change));
  expect(await runOf(key)).toBeUndefined();
});
