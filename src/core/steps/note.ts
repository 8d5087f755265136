import { defineStep } from "./define";

/** Something to be remembered. */
export const note = defineStep({
  verb: "note",
  fields: {},
  does: ["tells"],
  anywhere: true,
  plain: true,
  seconds: 0,
});
