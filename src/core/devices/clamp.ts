import { defineDevice, opener, twoEnds } from "./define";
import { bringsBothEnds, closingUpsets, joinsThrough, plainOpening } from "./shared";
import { arc, dot, line } from "./symbol";

const opening = plainOpening();

/** A hot-line tap clamp on its stirrup. It carries load and breaks none. */
export const clamp = defineDevice({
  kind: "clamp",
  ends: ["from", "to"],
  fields: { ...twoEnds, ...opener },
  brings: bringsBothEnds,
  parts: (it) => joinsThrough(it, it.open),
  opening,
  upsets: (it) => closingUpsets(it, opening),
  // A clamp has no rating (29 CFR 1910.269(l)(12)): charging and exciting current only.
  breaks: (_it, _tool, settings) => ({ amps: settings.clampBreakAmps, basis: "clamp" }),
  symbol: ({ open }) =>
    open === ""
      ? [line(-20, 0, -6, 0), arc(0, 0, 7, 60, 300), dot(-3, 0, 2.5), line(-3, 0, 20, 0)]
      : [line(-20, 0, -10, 0), dot(-10, 0, 2.5), arc(2, -11, 7, 60, 300), line(0, -11, 9, -11, 16, 0, 20, 0)],
});
