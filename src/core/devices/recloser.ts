import { flag, optionalAmount } from "./fields";
import { defineDevice, type OpeningMechanism, switchEnds } from "./define";
import { gangIsWhole, type Switch, switchOpening } from "./disconnect";
import { breaksItsLoad, openPosition, opensBy } from "./shared";
import { blade, inscribed, line, outline, type Mark } from "./symbol";

const opening: OpeningMechanism<Switch & { readonly reclosing: boolean }> = {
  ...switchOpening,
  automatic: ({ reclosing, remote }) => reclosing || remote,
};

/** Breaks load and fault current, recloses by itself unless that is blocked, and its gap cannot be seen. */
const interrupter = <const Kind extends string>(kind: Kind, prefix: string, letter: string) =>
  defineDevice({
    kind,
    prefix,
    ends: ["from", "to"],
    fields: {
      ...switchEnds,
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
