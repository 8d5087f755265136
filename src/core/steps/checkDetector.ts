import { defineStep } from "./define";

/** Proves the voltage detector on a live source or its tester. */
export const checkDetector = defineStep({
  verb: "check-detector",
  fields: {},
  does: ["looks"],
  anywhere: true,
  seconds: 15,
});
