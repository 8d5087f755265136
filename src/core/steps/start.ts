import { defineStep } from "./define";
import { key, needed } from "./keys";

/** Starts a machine, or switches a source on. */
export const start = defineStep({
  verb: "start",
  fields: { element: needed(key.element) },
  does: ["alters"],
  hold: "energize",
  undoneBy: "stop",
});

/** Stops a machine, or switches a source off. */
export const stop = defineStep({
  verb: "stop",
  fields: { element: needed(key.element) },
  does: ["alters"],
  hold: "operate",
  undoneBy: "start",
});
