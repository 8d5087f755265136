import { amount } from "./fields";
import { BY_HANDLE, defineDevice, opener, twoEnds } from "./define";
import {
  breaksRated,
  bringsBothEnds,
  closingUpsets,
  joinsThrough,
  openPosition,
  plainOpening,
  positionsDoubted,
} from "./shared";
import { filled, line } from "./symbol";

const opening = plainOpening();

/** A separable load-break connector; open means parked on its stand-off. */
export const elbow = defineDevice({
  kind: "elbow",
  prefix: "e",
  ends: ["from", "to"],
  fields: { ...twoEnds, ...opener, loadBreakAmps: amount("A", 200) },
  brings: bringsBothEnds,
  parts: (it) => joinsThrough(it, it.open),
  opening,
  upsets: (it) => closingUpsets(it, opening),
  doubts: (it) => positionsDoubted(it, opening),
  // A dead-break elbow breaks nothing at all.
  breaks: (it, _tool, settings) =>
    it.loadBreakAmps > 0 ? breaksRated(it.loadBreakAmps, settings) : { amps: 0, basis: "unrated" },
  handling: { ...BY_HANDLE, tools: ["clamp-stick", "hot-stick"] },
  standsAbreast: true,
  position: (it) => openPosition(it, "drawing.parked"),
  symbol: ({ open }) =>
    open === ""
      ? [line(-20, 0, -8, 0), filled(-9, -9, 7, 0, -9, 9), line(9, -10, 9, 10), line(9, 0, 20, 0)]
      : [
          line(-20, 0, -14, 0, -14, 6),
          filled(-23, 6, -14, 21, -5, 6),
          line(9, -10, 9, 10),
          line(9, 0, 20, 0),
        ],
});
