import { defineStep } from "./define";
import { atPlace, key } from "./keys";

/** Looks at a point or a structure, or at a thing. */
export const inspect = defineStep({
  verb: "inspect",
  fields: { at: atPlace, element: key.element },
  either: ["at", "element"],
  does: ["looks"],
  seconds: 30,
});
