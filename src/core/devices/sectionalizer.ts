import { amount, flag } from "./fields";
import { defineDevice, switchEnds } from "./define";
import { gangIsWhole, switchOpening } from "./disconnect";
import { breaksRated, openPosition, opensBy } from "./shared";
import { blade, inscribed, line, outline } from "./symbol";

/**
 * Counts the trips of the recloser upstream, opens in the dead time after the last of them, and stays open. It interrupts no
 * fault current (IEEE C37.63, scope, from memory).
 */
export const sectionalizer = defineDevice({
  kind: "sectionalizer",
  prefix: "sz",
  ends: ["from", "to"],
  fields: {
    ...switchEnds,
    gang: flag(true),
    counts: amount("", 3, { min: 1, max: 10, whole: true }),
    loadBreakAmps: amount("A", 0),
    remote: flag(false),
    visibleGap: flag(false),
  },
  check: gangIsWhole,
  // By itself it only opens: what can close it from afar is its remote control.
  ...opensBy(switchOpening),
  breaks: (it, _tool, settings) => breaksRated(it.loadBreakAmps, settings),
  standsInLine: true,
  position: openPosition,
  symbol: ({ open }) => [
    line(-20, 0, -17, 0),
    outline(-17, -18, 17, -18, 17, 18, -17, 18),
    inscribed(0, -8, "S"),
    line(-17, 8, -10, 8),
    blade(10, -20, open === "" ? 0 : -32, 8),
    line(10, 8, 17, 8),
    line(17, 0, 20, 0),
  ],
});
