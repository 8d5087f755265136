import { defineStep } from "./define";
import { key, needed } from "./keys";

/** Opens a switch, a cutout, an elbow: whatever has a blade or a contact of its own. */
export const open = defineStep({
  verb: "open",
  fields: { element: needed(key.element), phases: key.phases, with: key.with },
  does: ["opens"],
  hold: "operate",
  undoneBy: "close",
});

/** Closes a device, or some of its phases. */
export const close = defineStep({
  verb: "close",
  fields: { element: needed(key.element), phases: key.phases, with: key.with },
  does: ["closes"],
  hold: "energize",
  undoneBy: "open",
});
