import type { Step } from "../../steps";
import { jobOf } from "../../document";
import { citationOf } from "../../reference";
import { say } from "./say";
import { nameOf, setName } from "../job/names";
import { anotherOwnerOf } from "../job/owners";
import type { JobState } from "../job/state";
import { isSwitching } from "../../steps";
import { defineRule, type Problem } from "./rule";

/**
 * Nobody takes off, and nobody operates under, what is another crew's: a tag, a block beside it, a ground set, a permit.
 * What was handed over is one's own.
 */
export const othersTag = defineRule({
  id: "others-tag",
  severity: "danger",
  citation: citationOf("m3-xii-tags-after-release"),
  check(step, before) {
    if (step.do === "release-permit") return anothersPermit(step, before);
    if (!touchesTag(step, before)) return undefined;
    const owner = anotherOwnerOf(before, step.element);
    if (owner === undefined) return undefined;
    const isSet = step.do === "unground";
    return {
      where: step.element!,
      message: say(isSet ? "rule.others-tag.set" : "rule.others-tag", {
        name: isSet ? setName(before.document, step.element) : nameOf(before.document, step.element!),
        owner,
      }),
      help: say("rule.others-tag.help", { owner }),
    };
  },
});

/** A tag of one's own beside the other's comes off without touching that one. */
const touchesTag = (step: Step, before: JobState): boolean =>
  (step.do === "untag" && !before.otherTags.has(step.element)) ||
  step.do === "unblock" ||
  step.do === "unground" ||
  isSwitching(step);

/** A permit is given back by the one who holds it. One that was found held by somebody else is not the crew's to give. */
function anothersPermit(step: Step, before: JobState): Problem | undefined {
  const { crew, permit, permitHolder: foundWith } = jobOf(before.document);
  const isAsFound = permit === "held" && before.permitHolder === foundWith;
  const by = step.with ?? (isAsFound ? crew : before.permitHolder);
  if (before.permitHolder === "" || by === before.permitHolder) return undefined;
  return {
    where: "job",
    citation: citationOf("m3-xi-same-person"),
    message: say("rule.others-tag.permit", { by, owner: before.permitHolder }),
    help: say("rule.others-tag.permit.help", { owner: before.permitHolder }),
  };
}
