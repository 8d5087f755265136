import { defineStep } from "./define";

/** Repeats the step before back. */
export const confirm = defineStep({
  verb: "confirm",
  fields: {},
  does: ["tells"],
  anywhere: true,
  byRadio: true,
  plain: true,
  seconds: 10,
});
