import { flag, optionalAmount } from "./fields";
import { defineDevice, opener, twoEnds } from "./define";
import { gangIsWhole } from "./disconnect";
import { breaksItsLoad, bringsBothEnds, closingUpsets, joinsThrough, plainOpening } from "./shared";
import { inscribed, line, outline, type Mark } from "./symbol";

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
const interrupter = <const Kind extends string>(kind: Kind, letter: string) =>
  defineDevice({
    kind,
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
    brings: bringsBothEnds,
    parts: (it) => joinsThrough(it, it.open),
    opening,
    upsets: (it) => closingUpsets(it, opening),
    breaks: ({ interruptingAmps }) =>
      interruptingAmps === undefined ? breaksItsLoad() : { amps: interruptingAmps, basis: "rated" },
    symbol: ({ open }): Mark[] => [
      line(-20, 0, -11, 0),
      outline(-11, -11, 11, -11, 11, 11, -11, 11),
      inscribed(0, 0, open === "" ? letter : "O"),
      line(11, 0, 20, 0),
    ],
  });

export const recloser = interrupter("recloser", "R");
export const breaker = interrupter("breaker", "CB");
