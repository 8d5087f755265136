import { defineStep } from "./define";
import { key } from "./keys";

/** Secures what is loose and could fall. */
export const secure = defineStep({
  verb: "secure",
  fields: { element: key.element, at: key.at },
  either: ["element", "at"],
  does: ["guards"],
  plain: true,
});
