import { defineStep } from "./define";
import { key, needed } from "./keys";

/** Moves a transfer switch. `to` says the position where `position` does not. */
export const setPosition = defineStep({
  verb: "set-position",
  fields: { element: needed(key.element), to: key.to, position: key.position },
  either: ["to", "position"],
  does: ["alters"],
  hold: "operate",
  undoneBy: "set-position",
});
