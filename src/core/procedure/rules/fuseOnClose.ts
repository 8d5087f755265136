import { COMMON_PRACTICE, linkName } from "../../reference";
import { say } from "./say";
import { clearingOf, isWithinHalfCycle } from "../effects/clearing";
import { shortsEnergized } from "../effects/consequence";
import { figure, nameOf } from "../job/names";
import { surgesOnClosing } from "../effects/pickUp";
import { defineRule } from "./rule";

/** The link holds when its cutout closes: transformer inrush, load that comes back cold, and no fault beyond. */
export const fuseOnClose = defineRule({
  id: "fuse-on-close",
  severity: "warning",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    const blown = surgesOnClosing(step, before, after).flatMap(({ element, link, surges }) => {
      const surge = surges.find((it) => it.melts);
      return surge === undefined
        ? []
        : [
            {
              where: element,
              message: say(`rule.fuse-on-close.${surge.why}`, {
                name: nameOf(after.document, element),
                link: linkName(link),
                amps: figure(surge.amps),
                seconds: surge.seconds,
                melts: figure(surge.meltAmps),
              }),
              help: say(`rule.fuse-on-close.${surge.why}.help`),
            },
          ];
    });
    if (shortsEnergized(before, after).length === 0) return blown;
    const clearing = clearingOf(after);
    if (clearing === undefined) return blown;
    const isFast = isWithinHalfCycle(after, clearing.mostSeconds);
    return [
      {
        where: clearing.element,
        message: say(isFast ? "rule.fuse-on-close.fault.fast" : "rule.fuse-on-close.fault", {
          name: nameOf(after.document, clearing.element),
          link: linkName(clearing.link),
          amps: figure(clearing.amps),
          seconds: figure(clearing.leastSeconds),
        }),
        help: say("rule.fuse-on-close.fault.help"),
      },
    ];
  },
});
