import { afterEach, beforeEach, vi } from "vitest";

/** The other side of a worker, which answers when the test says so. */
export class AnsweringWorker {
  static all: AnsweringWorker[] = [];
  readonly asked: unknown[] = [];
  isEnded = false;
  readonly #listeners = new Map<string, (event: unknown) => void>();

  constructor() {
    AnsweringWorker.all.push(this);
  }
  addEventListener(type: string, listener: (event: unknown) => void) {
    this.#listeners.set(type, listener);
  }
  postMessage(question: unknown) {
    this.asked.push(structuredClone(question));
  }
  terminate() {
    this.isEnded = true;
  }
  answer(data: unknown) {
    this.#listeners.get("message")!({ data });
  }
  fail(message: string) {
    this.#listeners.get("error")!({ message });
  }
}

/** Lets every worker that a test starts be one of these. */
export function workersAnswerByHand() {
  beforeEach(() => {
    AnsweringWorker.all = [];
    vi.stubGlobal("Worker", AnsweringWorker);
  });
  afterEach(() => void vi.unstubAllGlobals());
}
