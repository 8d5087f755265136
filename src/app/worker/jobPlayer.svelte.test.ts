// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { AnsweringWorker, workersAnswerByHand } from "../../../tests/support/answeringWorker";
import { draw } from "../../../tests/support/jobNotation";
import { beginJob, type ElementId, play, sentStep, type Step, stepBy } from "../../core";
import { JobPlayer } from "./jobPlayer.svelte";
import type { Between } from "./player";
import type { WorkerQuestion } from "./questions";

workersAnswerByHand();

/** A tap of so many spans. */
const tap = (spans: number) =>
  draw(`
    s1 source p0 ABC kvLL=12.47
    d1 disconnect p0-p1 ABC
    ${Array.from({ length: spans }, (_, n) => `sp${n + 1} span p${n + 1}-p${n + 2} ABC`).join("\n    ")}
    w1 work p3 ABC
  `);
const steps: readonly Step[] = [
  stepBy("open", { element: "d1" as ElementId }),
  stepBy("tag", { element: "d1" as ElementId }),
];
const between: ReadonlyMap<number, Between> = new Map();
const asked = () => (AnsweringWorker.all.at(-1)!.asked as WorkerQuestion[]).map(({ what }) => what.of);

test("a large drawing's order is played beside the page, step by step, and nothing of it is told before", () => {
  const document = tap(200);
  const player = new JobPlayer();
  const order = { document, steps, between };
  const standing = () => ({ order, count: 0, state: player.play(order).begin });
  player.keepUp(order);
  expect(player.play(order).steps).toEqual([]);
  expect(player.lookOf(standing())).toBeUndefined();
  expect(player.actsAt(standing(), undefined, "")).toBeUndefined();
  expect(player.aheadOf(standing(), steps[0]!)).toBeUndefined();
  expect(player.leftOf(order, player.play(order))).toBeUndefined();
  expect(asked()).toEqual(["step"]);

  const before = beginJob(document);
  const first = play(before, steps[0]!);
  AnsweringWorker.all.at(-1)!.answer({ step: sentStep(before, first), breaks: [] });
  const [known, ...others] = player.play(order).steps;
  expect(others).toEqual([]);
  expect(known!.findings).toEqual(first.findings);
  expect(known!.state.document.system).toEqual(first.state.document.system);
});

test("what comes for a step that was changed meanwhile is not taken", () => {
  const document = tap(200);
  const player = new JobPlayer();
  player.keepUp({ document, steps, between });
  const other = { document, steps: [{ do: "brief" } as const], between };
  player.keepUp(other);
  const before = beginJob(document);
  AnsweringWorker.all.at(-1)!.answer({ step: sentStep(before, play(before, steps[0]!)), breaks: [] });
  expect(player.play(other).steps).toEqual([]);
});

test("stopped, it asks nothing more until somebody goes on", () => {
  const order = { document: tap(200), steps, between };
  const player = new JobPlayer();
  player.keepUp(order);
  player.stop();
  const count = AnsweringWorker.all.length;
  player.keepUp(order);
  expect(AnsweringWorker.all.length).toBe(count);
  player.goOn();
  player.keepUp(order);
  expect(AnsweringWorker.all.length).toBe(count + 1);
});

test("a small drawing's order is played at once", () => {
  const player = new JobPlayer();
  const order = { document: tap(5), steps, between };
  const played = player.play(order);
  expect(played.steps.length).toBe(2);
  expect(player.lookOf({ order, count: 0, state: played.begin })).toHaveProperty("assessment");
});

test("what failed is said until somebody goes on, whatever else is answered meanwhile", () => {
  const order = { document: tap(200), steps, between };
  const player = new JobPlayer();
  const standing = { order, count: 0, state: player.play(order).begin };
  player.keepUp(order);
  player.askActs(standing, undefined, "");
  const worker = AnsweringWorker.all.at(-1)!;
  worker.answer({ failed: "out of memory" });
  worker.answer({ acts: [] });
  expect(player.failed).toBe("out of memory");
  const count = asked().length;
  player.keepUp(order);
  expect(asked().length).toBe(count);
  player.goOn();
  expect(player.failed).toBeUndefined();
  player.keepUp(order);
  expect(asked().slice(count)).toEqual(["step"]);
});

test("what failed of an order that was changed meanwhile says nothing of the one at hand", () => {
  const document = tap(200);
  const player = new JobPlayer();
  player.keepUp({ document, steps, between });
  player.keepUp({ document, steps: steps.slice(0, 1), between });
  AnsweringWorker.all.at(-1)!.answer({ failed: "out of memory" });
  expect(player.failed).toBeUndefined();
});
