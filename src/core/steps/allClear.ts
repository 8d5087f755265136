import { defineStep } from "./define";

/** Each person says by name that they are clear. */
export const allClear = defineStep({
  verb: "all-clear",
  fields: {},
  does: ["arranges"],
  anywhere: true,
  plain: true,
  seconds: 30,
});
