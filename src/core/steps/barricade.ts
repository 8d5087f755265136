import { defineStep } from "./define";
import { key, needed } from "./keys";

/** Keeps everyone clear of the base of a pole, of the truck and of the rods. */
export const barricade = defineStep({
  verb: "barricade",
  fields: { at: needed(key.at) },
  does: ["arranges"],
  plain: true,
});
