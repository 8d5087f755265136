import { amount } from "./fields";
import { defineDevice, opener, twoEnds } from "./define";
import {
  breaksBare,
  breaksItsLoad,
  bringsBothEnds,
  closingUpsets,
  joinsThrough,
  plainOpening,
} from "./shared";
import { blade, circle, dot, inscribed, line, outline } from "./symbol";

const opening = plainOpening({ gang: () => true });

/** A customer's meter, or `count` of them drawn as one; open means pulled. */
export const meter = defineDevice({
  kind: "meter",
  ends: ["from", "to"],
  fields: { ...twoEnds, ...opener, count: amount("", 1, { min: 1, max: 1000, whole: true }) },
  brings: bringsBothEnds,
  parts: (it) => joinsThrough(it, it.open),
  opening,
  upsets: (it) => closingUpsets(it, opening),
  // A meter's jaws are contacts, not a switch: the load goes first, at the customer's main.
  breaks: breaksBare,
  symbol: ({ open }) =>
    open === ""
      ? [line(-20, 0, -10, 0), circle(0, 0, 10), inscribed(0, 0, "M"), line(10, 0, 20, 0)]
      : [
          line(-20, 0, -10, 0),
          dot(-10, 0, 2),
          circle(0, -16, 9),
          inscribed(0, -16, "M"),
          dot(10, 0, 2),
          line(10, 0, 20, 0),
        ],
});

/** A customer's main breaker. */
export const main = defineDevice({
  kind: "main",
  ends: ["from", "to"],
  fields: { ...twoEnds, ...opener },
  brings: bringsBothEnds,
  parts: (it) => joinsThrough(it, it.open),
  opening,
  upsets: (it) => closingUpsets(it, opening),
  breaks: breaksItsLoad,
  symbol: ({ open }) => [
    line(-20, 0, -8, 0),
    outline(-12, -9, 12, -9, 12, 9, -12, 9),
    blade(-8, 16, open === "" ? 0 : 32),
    line(8, 0, 20, 0),
  ],
});
