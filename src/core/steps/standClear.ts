import { defineStep } from "./define";

/** Everyone stands clear and looks away before a fused device is closed. */
export const standClear = defineStep({
  verb: "stand-clear",
  fields: {},
  does: ["arranges"],
  anywhere: true,
  plain: true,
  seconds: 10,
});
