import { defineStep } from "./define";
import { key } from "./keys";

/** Covers a thing, or what is at a point. */
export const cover = defineStep({
  verb: "cover",
  fields: { at: key.at, element: key.element },
  either: ["at", "element"],
  does: ["guards"],
  undoneBy: "uncover",
  plain: true,
});

/** Takes cover off a point or a thing. */
export const uncover = defineStep({
  verb: "uncover",
  fields: { at: key.at, element: key.element },
  either: ["at", "element"],
  does: ["guards"],
  undoneBy: "cover",
  plain: true,
});
