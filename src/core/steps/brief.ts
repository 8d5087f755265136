import { defineStep } from "./define";

/** The tailboard: every person has spoken. */
export const brief = defineStep({
  verb: "brief",
  fields: {},
  does: ["looks"],
  anywhere: true,
  plain: true,
  seconds: 120,
});
