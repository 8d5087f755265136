import { defineStep } from "./define";
import { key, needed } from "./keys";

/** Tests for voltage. Without phases it is of all that are there. Within a cable it is done `with` a `spike` or a `tracer`. */
export const test = defineStep({
  verb: "test",
  fields: { at: needed(key.at), phases: key.phases, expect: key.expect, with: key.with },
  does: ["looks", "relies"],
  hold: "test",
  seconds: 30,
});
