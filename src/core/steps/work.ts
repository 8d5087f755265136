import { defineStep } from "./define";
import { atWorkPoint, hands, key, needed } from "./keys";

/** The work at a work point, with hands or with a stick. */
export const work = defineStep({
  verb: "work",
  fields: { at: needed(atWorkPoint), with: key.with, ...hands },
  does: ["works", "relies"],
  hold: "work",
  plain: true,
  seconds: 600,
});
