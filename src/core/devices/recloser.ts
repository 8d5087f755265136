import { flag, optionalAmount } from "./fields";
import { defineDevice, opener, twoEnds } from "./define";
import { gangIsWhole } from "./disconnect";
import { breaksItsLoad, openPosition, opensBy, plainOpening } from "./shared";
import { blade, inscribed, line, outline, type Mark } from "./symbol";

interface Interrupter {
  readonly phases: string;
  readonly open: string;
  readonly gang: boolean;
  readonly reclosing: boolean;
  readonly remote: boolean;
  readonly visibleGap: boolean;
  readonly tagged: boolean;
  readonly blocked: boolean;
}

const opening = plainOpening<Interrupter>({
  gang: ({ gang }) => gang,
  automatic: ({ reclosing, remote }) => reclosing || remote,
  visibleGap: ({ visibleGap }) => visibleGap,
});

/** Breaks load and fault current, recloses by itself unless that is blocked, and its gap cannot be seen. */
const interrupter = <const Kind extends string>(kind: Kind, prefix: string, letter: string) =>
  defineDevice({
    kind,
    prefix,
    ends: ["from", "to"],
    fields: {
      ...twoEnds,
      ...opener,
      gang: flag(true),
      reclosing: flag(true),
      remote: flag(false),
      visibleGap: flag(false),
      interruptingAmps: optionalAmount("A"),
    },
    check: gangIsWhole,
    ...opensBy(opening),
    breaks: ({ interruptingAmps }) =>
      interruptingAmps === undefined ? breaksItsLoad() : { amps: interruptingAmps, basis: "rated" },
    drops: "load",
    standsInLine: true,
    position: openPosition,
    symbolReach: 17,
    symbol: ({ open }): Mark[] => [
      outline(-17, -18, 17, -18, 17, 18, -17, 18),
      inscribed(0, -8, letter),
      line(-17, 11, -10, 11),
      blade(10, -20, open === "" ? 0 : -26, 11),
      line(10, 11, 17, 11),
    ],
  });

/** Breaks load and fault current, and closes again by itself unless that is blocked. */
export const recloser = interrupter("recloser", "r", "R");

/** The same under another name and letter. */
export const breaker = interrupter("breaker", "b", "CB");
