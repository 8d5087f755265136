import { amount } from "./fields";
import { BY_HANDLE, defineDevice, switchEnds } from "./define";
import { breaksItsLoad, breaksRated, openPosition, plainOpening, opensBy } from "./shared";
import { blade, circle, dot, inscribed, line, outline } from "./symbol";

const opening = plainOpening({ gang: () => true });

/** A customer's meter, or `count` of them drawn as one; open means pulled. */
export const meter = defineDevice({
  kind: "meter",
  prefix: "m",
  ends: ["from", "to"],
  fields: { ...switchEnds, count: amount("", 1, { min: 1, max: 1000, whole: true }) },
  ...opensBy(opening),
  // A meter's jaws are contacts, not a switch: the load goes first, at the customer's main.
  breaks: (_it, _tool, settings) => breaksRated(0, settings),
  handling: { off: "pull", on: "replace", moves: "phases", tools: [], trouble: 1, comesAway: true },
  atCustomer: true,
  position: (it) => openPosition(it, "drawing.pulled"),
  symbolReach: 13,
  symbol: ({ open }) =>
    open === ""
      ? [circle(0, 0, 12), inscribed(0, 0, "M")]
      : [line(-13, -5, -13, 5), circle(0, -19, 12), inscribed(0, -19, "M"), line(13, -5, 13, 5)],
});

/** A customer's main breaker. */
export const main = defineDevice({
  kind: "main",
  prefix: "mb",
  ends: ["from", "to"],
  fields: { ...switchEnds },
  ...opensBy(opening),
  breaks: breaksItsLoad,
  handling: { ...BY_HANDLE, trouble: 1 },
  atCustomer: true,
  ownersKey: true,
  position: openPosition,
  symbolReach: 15,
  symbol: ({ open }) => [
    outline(-15, -13, 15, -13, 15, 13, -15, 13),
    line(-15, 0, -9, 0),
    blade(9, -18, open === "" ? 0 : -35),
    dot(9, 0, 2.5),
    line(9, 0, 15, 0),
  ],
});
