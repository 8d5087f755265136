import { defineStep } from "./define";
import { atPlace, needed } from "./keys";

/** Keeps everyone clear of the base of a pole, of the truck and of the rods. */
export const barricade = defineStep({
  verb: "barricade",
  fields: { at: needed(atPlace) },
  does: ["arranges"],
  plain: true,
});
