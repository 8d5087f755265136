import { defineStep } from "./define";
import { hands, key, needed } from "./keys";

/** Takes a hot-line tap clamp off its stirrup with a stick. */
export const lift = defineStep({
  verb: "lift",
  fields: { element: needed(key.element), phases: key.phases, with: key.with, first: key.first, ...hands },
  does: ["opens"],
  hold: "operate",
  undoneBy: "attach",
});

/** Puts a hot-line tap clamp on its stirrup with a stick. */
export const attach = defineStep({
  verb: "attach",
  fields: { element: needed(key.element), phases: key.phases, with: key.with, first: key.first, ...hands },
  does: ["closes"],
  hold: "energize",
  undoneBy: "lift",
});
