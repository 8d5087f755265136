import { conductorNames } from "../../document";
import { citationOf } from "../../reference";
import { say } from "./say";
import { touchedConductors } from "../effects/consequence";
import { figure, nameOf } from "../job/names";
import { bankOnPath } from "../job/paths";
import { defineRule } from "./rule";
import { asItStands } from "../job/seen";

/** An opened phase of a bank that ties its phases stands at up to full voltage: it is not dead until the others are open. */
export const openPhaseBackfeed = defineRule({
  id: "open-phase-backfeed",
  severity: "danger",
  citation: citationOf("treat-as-energized"),
  check(step, before) {
    return touchedConductors(step, before).flatMap((id) => {
      const report = asItStands(before).conductors[id];
      if (report?.state !== "backfed") return [];
      const bank = bankOnPath(before, id);
      if (bank === undefined) return [];
      const name = nameOf(before.document, bank);
      return [
        {
          where: id,
          message: say("rule.open-phase-backfeed", {
            where: conductorNames(before.document, [id]),
            name,
            volts: figure(report.volts),
          }),
          help: say("rule.open-phase-backfeed.help", { name }),
        },
      ];
    });
  },
});
