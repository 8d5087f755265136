import { elementsOfKind } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { conductorId, lettersOf, say } from "../../terms";
import { nameOf } from "../job/names";
import { asItStands } from "../job/seen";
import { defineRule } from "./rule";

/** No bank is left with some of its phases energized and one missing: what hangs on it burns. */
export const phaseMissing = defineRule({
  id: "phase-missing",
  severity: "danger",
  citation: COMMON_PRACTICE,
  atEnd(state) {
    if (state.played.length === 0) return undefined;
    const { conductors } = asItStands(state);
    return elementsOfKind(state.document.system, "transformer").flatMap(([id, it]) => {
      if (it.phases.length < 2) return [];
      const missing = lettersOf(it.phases).filter(
        (letter) => conductors[conductorId(it.from, letter)]?.state !== "energized",
      );
      if (missing.length === 0 || missing.length === it.phases.length) return [];
      return [
        {
          where: id,
          message: say("rule.phase-missing", {
            name: nameOf(state.document, id),
            phases: missing.join(" "),
          }),
          help: say("rule.phase-missing.help"),
        },
      ];
    });
  },
});
