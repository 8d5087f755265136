import { defineStep } from "./define";
import { hands, key, needed } from "./keys";

/** Cuts a lead or a span through. */
export const cut = defineStep({
  verb: "cut",
  fields: { element: needed(key.element), phases: key.phases, with: key.with, first: key.first, ...hands },
  does: ["opens"],
  hold: "operate",
  undoneBy: "join",
});

/** Remakes what was cut or has parted. */
export const join = defineStep({
  verb: "join",
  fields: { element: needed(key.element), phases: key.phases, with: key.with, first: key.first, ...hands },
  does: ["closes"],
  hold: "energize",
  undoneBy: "cut",
});
