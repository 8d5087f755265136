import type { StillhotDocument } from "../../core";

/** A drawing in which nothing is drawn yet. */
export const emptyDrawing: StillhotDocument = {
  format: "stillhot",
  formatVersion: 1,
  title: "",
  system: { frequencyHz: 60, points: {}, elements: {} },
};
