import { defineStep } from "./define";
import { key, needed } from "./keys";

/** Makes sure that a thing cannot close by itself, from afar or by hand. */
export const block = defineStep({
  verb: "block",
  fields: { element: needed(key.element) },
  does: ["marks"],
  undoneBy: "unblock",
  plain: true,
  seconds: 20,
});

/** Lets a device close by itself or from afar again. */
export const unblock = defineStep({
  verb: "unblock",
  fields: { element: needed(key.element) },
  does: ["marks"],
  undoneBy: "block",
  plain: true,
  seconds: 20,
});
