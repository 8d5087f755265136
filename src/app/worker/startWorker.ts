/** Starts a worker. All run one script; each errand that can be stopped has one to itself, since ending it is what stops it. */
export const startWorker = (): Worker =>
  new Worker(new URL("./core.worker.ts", import.meta.url), { type: "module" });
