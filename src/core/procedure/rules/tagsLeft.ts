import { lettersAtEnd, openPhasesOf } from "../../devices";
import { citationOf } from "../../reference";
import { conductorId } from "../../terms";
import { say } from "./say";
import { endsOf } from "../../network";
import { isTagged, wasFoundTagged } from "../job/isolation";
import { energizedBy, energizedOnTheJob } from "../job/live";
import { elementsOf, nameOf } from "../job/names";
import { defineRule } from "./rule";
import { isSwitching } from "../../steps";

/**
 * Every tag of the job is off what is closed and energized again. On a thing that stays open a tag is where it belongs, and
 * one that was there before the crew came is not its own to take.
 */
export const tagsLeft = defineRule({
  id: "tags-left",
  severity: "warning",
  citation: citationOf("m3-xiii-reenergize"),
  check(step, before, after) {
    if (!isSwitching(step) || energizedOnTheJob(before, after).length === 0) return undefined;
    const energized = new Set(energizedBy(before, after));
    return elementsOf(after.document.system)
      .filter(([id]) => id !== step.element && isTagged(after, id) && !wasFoundTagged(before, id))
      .filter(([, it]) => openPhasesOf(it) === "")
      .filter(([, it]) =>
        endsOf(it).some(([end, point]) =>
          lettersAtEnd(it, end).some((letter) => energized.has(conductorId(point, letter))),
        ),
      )
      .map(([id]) => ({
        where: id,
        message: say("rule.tags-left", {
          name: nameOf(after.document, step.element),
          tagged: nameOf(after.document, id),
        }),
        help: say("rule.tags-left.help", { tagged: nameOf(after.document, id) }),
      }));
  },
});
