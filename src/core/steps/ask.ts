import { defineStep } from "./define";
import { key } from "./keys";

/** Asks the system operator, of a thing, of a point or of the job. */
export const ask = defineStep({
  verb: "ask",
  fields: { element: key.element, at: key.at },
  does: ["looks"],
  anywhere: true,
  byRadio: true,
});
