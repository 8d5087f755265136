import { defineStep } from "./define";
import { key, needed } from "./keys";

/** Renews a blown link. The barrel still hangs open. */
export const refuse = defineStep({
  verb: "refuse",
  fields: { element: needed(key.element), phases: key.phases },
  does: ["alters"],
  hold: "operate",
});
