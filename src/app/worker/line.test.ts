import { readFileSync } from "node:fs";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { readDocument, type StillhotDocument } from "../../core";
import { Receiver } from "./copies";
import { type WorkerAnswer, Line, type Lost, type WorkerQuestion } from "./line";

const read = readDocument(readFileSync("shared/demos/quarry-lane.stillhot.json", "utf8"));
if (!("document" in read)) throw new Error("the demo does not read");
const { document } = read;
const titled = (title: string): StillhotDocument => ({ ...document, title });

/** The other side, which answers when the test says so. */
class Answering {
  static all: Answering[] = [];
  readonly asked: WorkerQuestion[] = [];
  isEnded = false;
  readonly #listeners = new Map<string, (event: unknown) => void>();

  constructor() {
    Answering.all.push(this);
  }
  addEventListener(type: string, listener: (event: unknown) => void) {
    this.#listeners.set(type, listener);
  }
  postMessage(question: WorkerQuestion) {
    this.asked.push(structuredClone(question));
  }
  terminate() {
    this.isEnded = true;
  }
  answer(data: WorkerAnswer | Lost) {
    this.#listeners.get("message")!({ data });
  }
  fail(message: string) {
    this.#listeners.get("error")!({ message });
  }
}

beforeEach(() => {
  Answering.all = [];
  vi.stubGlobal("Worker", Answering);
});
afterEach(() => void vi.unstubAllGlobals());

const answer = (n: number): WorkerAnswer => ({ margins: { [`p${n}`]: n } }) as never;

test("one thing is asked at a time, and of what waits only the newest about each thing", () => {
  const line = new Line();
  const heard: unknown[] = [];
  const ask = (title: string, of: "margins" | "plan") =>
    line.ask(titled(title), { of }, (_, isNewest) => heard.push([title, of, isNewest]));
  ask("a", "margins");
  ask("b", "margins");
  ask("c", "plan");
  ask("d", "margins");
  const [worker] = Answering.all;
  expect(worker!.asked.length).toBe(1);
  for (const n of [1, 2, 3]) worker!.answer(answer(n));
  expect(heard).toEqual([
    ["a", "margins", false],
    ["c", "plan", true],
    ["d", "margins", true],
  ]);
});

test("a side that has lost its drawing gets it whole, with the question again", () => {
  const line = new Line();
  const heard: WorkerAnswer[] = [];
  line.ask(titled("a"), { of: "plan" }, (it) => heard.push(it));
  const [worker] = Answering.all;
  worker!.answer(answer(1));
  line.ask(titled("b"), { of: "plan" }, (it) => heard.push(it));
  worker!.answer({ isLost: true });
  expect(worker!.asked.map(({ what }) => what.of)).toEqual(["plan", "plan", "plan"]);
  expect(new Receiver().receive(worker!.asked[2]!.sent)?.title).toBe("b");
  worker!.answer(answer(2));
  expect(heard).toEqual([answer(1), answer(2)]);
});

test("a worker that breaks is told as a failure, and the next question starts another", () => {
  const line = new Line();
  const heard: WorkerAnswer[] = [];
  line.ask(titled("a"), { of: "plan" }, (it) => heard.push(it));
  Answering.all[0]!.fail("out of memory");
  expect(heard).toEqual([{ failed: "out of memory" }]);
  expect(Answering.all[0]!.isEnded).toBe(true);
  line.ask(titled("b"), { of: "plan" }, (it) => heard.push(it));
  expect(Answering.all.length).toBe(2);
  expect(Answering.all[1]!.asked[0]!.sent).toHaveProperty("whole");
});

test("after its end nothing is heard of what was asked", () => {
  const line = new Line();
  const heard: WorkerAnswer[] = [];
  line.ask(titled("a"), { of: "plan" }, (it) => heard.push(it));
  line.ask(titled("b"), { of: "margins" }, (it) => heard.push(it));
  line.end();
  Answering.all[0]!.answer(answer(1));
  expect(heard).toEqual([]);
  expect(Answering.all.length).toBe(1);
});
