import { defineStep } from "./define";
import { key, needed } from "./keys";

/** Takes the barrel out of a cutout: its phase is open, and nobody can close it. */
export const removeBarrel = defineStep({
  verb: "remove-barrel",
  fields: { element: needed(key.element), phases: key.phases, with: key.with },
  does: ["opens"],
  hold: "operate",
  undoneBy: "replace-barrel",
});

/** Hangs the barrel back into its cutout. It hangs open, so that no path is made. */
export const replaceBarrel = defineStep({
  verb: "replace-barrel",
  fields: { element: needed(key.element), phases: key.phases, with: key.with },
  does: ["alters"],
  hold: "operate",
  undoneBy: "remove-barrel",
});
