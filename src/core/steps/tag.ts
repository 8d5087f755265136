import { defineStep } from "./define";
import { key, needed } from "./keys";

/** Hangs a tag. It can hang on anything. */
export const tag = defineStep({
  verb: "tag",
  fields: { element: needed(key.element) },
  does: ["marks"],
  undoneBy: "untag",
  plain: true,
  seconds: 20,
});

/** Takes a tag off. */
export const untag = defineStep({
  verb: "untag",
  fields: { element: needed(key.element) },
  does: ["marks"],
  undoneBy: "tag",
  plain: true,
  seconds: 20,
});
