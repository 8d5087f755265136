// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { AnsweringWorker, workersAnswerByHand } from "../../../tests/support/answeringWorker";
import { draw } from "../../../tests/support/jobNotation";
import { actsFor, beginJob, type ElementId, play, seen, sentStep, type Step, stepBy } from "../../core";
import { JobPlayer } from "./jobPlayer.svelte";
import { type Between, Player } from "./player";
import type { OrderMoment, WorkerQuestion } from "./questions";

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
const opened = {};
const askedOf = (worker: AnsweringWorker | undefined) => worker!.asked as WorkerQuestion[];
const asked = () => askedOf(AnsweringWorker.all.at(-1)).map(({ what }) => what.of);

test("a large drawing's order is played beside the page, step by step, and nothing of it is told before", () => {
  const document = tap(200);
  const player = new JobPlayer();
  const order = { document, steps, between, opened };
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
  player.keepUp({ document, steps, between, opened });
  const other = { document, steps: [{ do: "brief" } as const], between, opened };
  player.keepUp(other);
  const before = beginJob(document);
  AnsweringWorker.all.at(-1)!.answer({ step: sentStep(before, play(before, steps[0]!)), breaks: [] });
  expect(player.play(other).steps).toEqual([]);
});

test("stopped, it asks nothing more until somebody goes on", () => {
  const order = { document: tap(200), steps, between, opened };
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
  const order = { document: tap(5), steps, between, opened };
  const played = player.play(order);
  expect(played.steps.length).toBe(2);
  expect(player.lookOf({ order, count: 0, state: played.begin })).toHaveProperty("assessment");
});

test("what failed is said until somebody goes on, whatever else is answered meanwhile", () => {
  const order = { document: tap(200), steps, between, opened };
  const player = new JobPlayer();
  const standing = { order, count: 0, state: player.play(order).begin };
  player.keepUp(order);
  player.askActs(standing, undefined, "");
  const [playing, asking] = AnsweringWorker.all;
  playing!.answer({ failed: "out of memory" });
  asking!.answer({ acts: [] });
  expect(player.failed).toBe("out of memory");
  player.keepUp(order);
  expect(askedOf(playing)).toHaveLength(1);
  player.goOn();
  expect(player.failed).toBeUndefined();
  player.keepUp(order);
  expect(askedOf(playing).map(({ what }) => what.of)).toEqual(["step", "step"]);
});

test("what failed of an order that was changed meanwhile says nothing of the one at hand", () => {
  const document = tap(200);
  const player = new JobPlayer();
  player.keepUp({ document, steps, between, opened });
  player.keepUp({ document, steps: steps.slice(0, 1), between, opened });
  AnsweringWorker.all.at(-1)!.answer({ failed: "out of memory" });
  expect(player.failed).toBeUndefined();
});

test("what a person asks does not wait until a long step has been played, and does not play anew what was", () => {
  const document = tap(200);
  const player = new JobPlayer();
  const order = { document, steps, between, opened };
  player.keepUp(order);
  const [playing] = AnsweringWorker.all;
  const before = beginJob(document);
  const sent = sentStep(before, play(before, steps[0]!));
  playing!.answer({ step: sent, breaks: [] });
  player.keepUp(order);
  expect(askedOf(playing)).toHaveLength(2);

  const { state } = player.play(order).steps[0]!;
  const acts = actsFor(state, undefined, "");
  player.askActs({ order, count: 1, state }, undefined, "");
  const asking = AnsweringWorker.all[1];
  expect(askedOf(asking)[0]!.what).toMatchObject({ of: "acts", count: 1 });
  expect((askedOf(asking)[0]!.what as OrderMoment).known).toEqual([structuredClone(sent)]);
  asking!.answer({ acts });
  expect(player.actsAt({ order, count: 1, state }, undefined, "")).toEqual(acts);
});

test("another player takes in what was sent of the first steps, and goes on as from its own", () => {
  const document = tap(20);
  const own = new Player().play(document, steps, between);
  const other = new Player();
  const sent = structuredClone(sentStep(own.begin, own.steps[0]!));
  other.takeIn(document, steps.slice(0, 1), between, [sent]);
  const known = other.known(document, steps, between).steps;
  expect(known).toHaveLength(1);
  expect(actsFor(known[0]!.state, undefined, "")).toEqual(actsFor(own.steps[0]!.state, undefined, ""));
  expect(seen(known[0]!.state)).toEqual(seen(own.steps[0]!.state));
  expect(other.play(document, steps, between).steps[1]!.findings).toEqual(own.steps[1]!.findings);
});

test("what the next step would do is what it did: it is not played twice", () => {
  const document = tap(200);
  const player = new JobPlayer();
  const none = { document, steps: [], between, opened };
  player.keepUp(none);
  const { begin } = player.play(none);
  player.askAhead({ order: none, count: 0, state: begin }, steps[0]!);
  const before = beginJob(document);
  AnsweringWorker.all.at(-1)!.answer({ step: sentStep(before, play(before, steps[0]!)), breaks: [] });
  const ticked = { ...none, steps: steps.slice(0, 1) };
  player.keepUp(ticked);
  expect(player.play(ticked).steps).toHaveLength(1);
  const all = AnsweringWorker.all.flatMap((it) => askedOf(it).map(({ what }) => what.of));
  expect(all).not.toContain("step");
});

test("who did not wait for one drawing is told of the next, and nothing of the first is worked on any more", () => {
  const player = new JobPlayer();
  player.keepUp({ document: tap(200), steps, between, opened });
  player.stop();
  const edited = { document: tap(201), steps, between, opened };
  player.keepUp(edited);
  expect(player.isStopped).toBe(true);
  player.keepUp({ document: tap(202), steps, between, opened: {} });
  expect(player.isStopped).toBe(false);
  expect(asked()).toEqual(["step"]);
  player.keepUp({ document: tap(203), steps, between, opened: {} });
  expect(AnsweringWorker.all.map((it) => it.isEnded)).toEqual([true, true, false]);
});
