/** A worker that takes every question and answers none. */
export class UnansweredWorker {
  postMessage() {}
  addEventListener() {}
  terminate() {}
}
