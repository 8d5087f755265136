// @vitest-environment happy-dom
import "fake-indexeddb/auto";
import { readFileSync } from "node:fs";
import { flushSync } from "svelte";
import { expect, test, vi } from "vitest";
import { isOver, readDocument } from "../../core";
import { keptAttempts } from "./shelf";
import { study } from "./study.svelte";

const read = readDocument(readFileSync("shared/scenarios/first-cutout.stillhot.json", "utf8"));
if (!("document" in read)) throw new Error("the scenario does not read");
const { document } = read;

const kept = async (who: string) => (await keptAttempts()).find((it) => it.attempt.who === who);

/** As the page plays it: while the attempt is open an effect keeps its time, and once more when it ends. */
const whileOpen = () =>
  $effect.root(() => {
    $effect(() => {
      if (study.attempt === undefined || isOver(study.attempt)) return undefined;
      return () => study.keepTime();
    });
  });

test("a scenario that was handed over stands there after a reload, until it is begun or left", async () => {
  study.offer(document);
  vi.resetModules();
  const { study: reloaded } = await import("./study.svelte");
  await reloaded.resume();
  expect(reloaded.offered).toEqual(document);
  reloaded.leave();
  vi.resetModules();
  const { study: again } = await import("./study.svelte");
  await again.resume();
  expect(again.offered).toBeUndefined();
});

test("T1, T4 the end of an exam is what is kept, also by what is tidied up after it", async () => {
  study.offer(document);
  study.begin("Kim", "exam");
  const end = whileOpen();
  flushSync();
  study.do({ do: "lift", element: "k1", with: "clamp-stick" } as never);
  flushSync();
  expect(isOver(study.attempt!)).toBe(true);
  end();
  await vi.waitFor(async () => expect(await kept("Kim")).toMatchObject({ isOver: true }));
  await new Promise((done) => setTimeout(done, 50));
  expect((await kept("Kim"))?.attempt.log).toEqual(study.attempt!.log);
});
