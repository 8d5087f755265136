import { defineStep } from "./define";
import { key, needed } from "./keys";

/** Hands a tag, a ground set or the permit over to another crew or person: 29 CFR 1910.269(m)(3)(ix). */
export const handOver = defineStep({
  verb: "hand-over",
  fields: { element: key.element, permit: key.permit, to: needed(key.to) },
  either: ["element", "permit"],
  does: ["arranges"],
  anywhere: true,
  byRadio: true,
});
