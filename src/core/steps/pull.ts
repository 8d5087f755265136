import { defineStep } from "./define";
import { hands, key, needed } from "./keys";

/** Pulls a meter out of its base. */
export const pull = defineStep({
  verb: "pull",
  fields: { element: needed(key.element), phases: key.phases, with: key.with, ...hands },
  does: ["opens"],
  hold: "operate",
  undoneBy: "replace",
});

/** Puts a meter back into its base. */
export const replace = defineStep({
  verb: "replace",
  fields: { element: needed(key.element), phases: key.phases, with: key.with, ...hands },
  does: ["closes"],
  hold: "energize",
  undoneBy: "pull",
});
