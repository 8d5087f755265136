import { amount, flag } from "./fields";
import { defineDevice, opener, twoEnds } from "./define";
import { gangIsWhole } from "./disconnect";
import { breaksRated, openPosition, plainOpening, opensBy } from "./shared";
import { blade, inscribed, line, outline } from "./symbol";

interface Counter {
  readonly phases: string;
  readonly open: string;
  readonly gang: boolean;
  readonly remote: boolean;
  readonly visibleGap: boolean;
  readonly tagged: boolean;
  readonly blocked: boolean;
}

const opening = plainOpening<Counter>({
  gang: ({ gang }) => gang,
  // By itself it only opens: what can close it from afar is its remote control.
  automatic: ({ remote }) => remote,
  visibleGap: ({ visibleGap }) => visibleGap,
});

/**
 * Counts the trips of the recloser upstream, opens in the dead time after the last of them, and stays open. It interrupts no
 * fault current (IEEE C37.63, scope, from memory).
 */
export const sectionalizer = defineDevice({
  kind: "sectionalizer",
  prefix: "sz",
  ends: ["from", "to"],
  fields: {
    ...twoEnds,
    ...opener,
    gang: flag(true),
    counts: amount("", 3, { min: 1, max: 10, whole: true }),
    loadBreakAmps: amount("A", 0),
    remote: flag(false),
    visibleGap: flag(false),
  },
  check: gangIsWhole,
  ...opensBy(opening),
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
