import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { AnsweringWorker, workersAnswerByHand } from "../../../tests/support/answeringWorker";
import { readDocument, type StillhotDocument } from "../../core";
import { Receiver } from "./copies";
import { OwnWorker } from "./ownWorker";
import type { WorkerAnswer, WorkerQuestion } from "./questions";

const read = readDocument(readFileSync("shared/demos/quarry-lane.stillhot.json", "utf8"));
if (!("document" in read)) throw new Error("the demo does not read");
const { document } = read;
const titled = (title: string): StillhotDocument => ({ ...document, title });

workersAnswerByHand();
const askedOf = (worker: AnsweringWorker | undefined) => worker!.asked as WorkerQuestion[];

const answer = (n: number): WorkerAnswer => ({ margins: { [`p${n}`]: n } });

test("one thing is asked at a time, and of what waits only the newest about each thing", () => {
  const line = new OwnWorker();
  const heard: unknown[] = [];
  const ask = (title: string, of: "margins" | "plan") =>
    line.ask(titled(title), { of }, (_, isNewest) => heard.push([title, of, isNewest]));
  ask("a", "margins");
  ask("b", "margins");
  ask("c", "plan");
  ask("d", "margins");
  const [worker] = AnsweringWorker.all;
  expect(askedOf(worker).length).toBe(1);
  for (const n of [1, 2, 3]) worker!.answer(answer(n));
  expect(heard).toEqual([
    ["a", "margins", false],
    ["c", "plan", true],
    ["d", "margins", true],
  ]);
});

test("a side that has lost its drawing gets it whole, with the question again", () => {
  const line = new OwnWorker();
  const heard: WorkerAnswer[] = [];
  line.ask(titled("a"), { of: "plan" }, (it) => heard.push(it));
  const [worker] = AnsweringWorker.all;
  worker!.answer(answer(1));
  line.ask(titled("b"), { of: "plan" }, (it) => heard.push(it));
  worker!.answer({ isLost: true });
  expect(askedOf(worker).map(({ what }) => what.of)).toEqual(["plan", "plan", "plan"]);
  expect(new Receiver().receive(askedOf(worker)[2]!.sent)?.title).toBe("b");
  worker!.answer(answer(2));
  expect(heard).toEqual([answer(1), answer(2)]);
});

test("a worker that breaks is told as a failure, and the next question starts another", () => {
  const line = new OwnWorker();
  const heard: WorkerAnswer[] = [];
  line.ask(titled("a"), { of: "plan" }, (it) => heard.push(it));
  AnsweringWorker.all[0]!.fail("out of memory");
  expect(heard).toEqual([{ failed: "out of memory" }]);
  expect(AnsweringWorker.all[0]!.isEnded).toBe(true);
  line.ask(titled("b"), { of: "plan" }, (it) => heard.push(it));
  expect(AnsweringWorker.all.length).toBe(2);
  expect(askedOf(AnsweringWorker.all[1])[0]!.sent).toHaveProperty("whole");
});

test("after its end nothing is heard of what was asked", () => {
  const line = new OwnWorker();
  const heard: WorkerAnswer[] = [];
  line.ask(titled("a"), { of: "plan" }, (it) => heard.push(it));
  line.ask(titled("b"), { of: "margins" }, (it) => heard.push(it));
  line.end();
  AnsweringWorker.all[0]!.answer(answer(1));
  expect(heard).toEqual([]);
  expect(AnsweringWorker.all.length).toBe(1);
});
