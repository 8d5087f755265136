import { defineStep } from "./define";
import { key, needed } from "./keys";

/** Lets time pass: a capacitor discharges. */
export const wait = defineStep({
  verb: "wait",
  fields: { seconds: needed(key.seconds) },
  does: ["looks"],
  anywhere: true,
});
