import { amount } from "./fields";
import { defineDevice, opener, twoEnds } from "./define";
import { breaksRated, bringsBothEnds, closingUpsets, joinsThrough, plainOpening } from "./shared";
import { filled, line } from "./symbol";

const opening = plainOpening();

/** A separable load-break connector; open means parked on its stand-off. */
export const elbow = defineDevice({
  kind: "elbow",
  ends: ["from", "to"],
  fields: { ...twoEnds, ...opener, loadBreakAmps: amount("A", 200) },
  brings: bringsBothEnds,
  parts: (it) => joinsThrough(it, it.open),
  opening,
  upsets: (it) => closingUpsets(it, opening),
  breaks: (it, _tool, settings) => breaksRated(it.loadBreakAmps, settings),
  symbol: ({ open }) =>
    open === ""
      ? [line(-20, 0, -6, 0), filled(-6, -7, 6, 0, -6, 7), line(6, -7, 6, 7), line(6, 0, 20, 0)]
      : [line(-20, 0, -12, 0, -12, 8), filled(-19, 8, -12, 18, -5, 8), line(6, -7, 6, 7), line(6, 0, 20, 0)],
});
