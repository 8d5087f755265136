import { defineStep } from "./define";
import { key } from "./keys";

/** Looks at a point, or at a thing. */
export const inspect = defineStep({
  verb: "inspect",
  fields: { at: key.at, element: key.element },
  either: ["at", "element"],
  does: ["looks"],
  seconds: 30,
});
