import { citationOf } from "../../reference";
import { say } from "../../terms";
import { capacitorsOn, heldCharge } from "../effects/capacitors";
import { touchedConductors } from "../effects/consequence";
import { figure, nameOf } from "../job/names";
import { defineRule } from "./rule";
import { DISCHARGE_SECONDS } from "../effects/trappedCharge";

/** A capacitor is left five minutes without supply, then shorted; only then does the line that it hangs on count as dead. */
export const capacitorDischarge = defineRule({
  id: "capacitor-discharge",
  severity: "danger",
  citation: citationOf("w1-capacitors"),
  check(step, before, after) {
    return capacitorsOn(before, touchedConductors(step, before)).flatMap(([id, capacitor]) => {
      const held = heldCharge(before, id, capacitor);
      if (held === undefined) return [];
      const { seconds, volts } = held;
      const gaps = {
        name: nameOf(after.document, id),
        verb: say(`doing.${step.do}`),
        seconds: figure(seconds),
        volts: figure(volts),
        left: figure(Math.max(0, DISCHARGE_SECONDS - seconds)),
      };
      if (seconds < DISCHARGE_SECONDS)
        return [
          {
            where: id,
            message: say("rule.capacitor-discharge", gaps),
            help: say("rule.capacitor-discharge.help", gaps),
          },
        ];
      return step.do === "work"
        ? [
            {
              where: id,
              message: say("rule.capacitor-discharge.unshorted", gaps),
              help: say("rule.capacitor-discharge.unshorted.help", gaps),
            },
          ]
        : [];
    });
  },
});
