import { GROUNDING_CABLES } from "../../devices";
import { elementsOfKind, settingsOf } from "../../document";
import { citationOf, withstandAmps } from "../../reference";
import { type ElementId } from "../../terms";
import { say } from "./say";
import { dutiesOf } from "../effects/duty";
import { elementOf, figure, setName } from "../job/names";
import { groundIdOf } from "../job/positions";
import { defineRule, type Problem } from "./rule";
import type { JobState } from "../job/state";

/** A ground set carries the largest fault that the job could meet for the clearing time, and is no smaller than No. 2. */
export const groundRating = defineRule({
  id: "ground-rating",
  severity: "danger",
  citation: citationOf("n4-capability"),
  check(step, before, after) {
    if (step.do === "ground" && before.document !== after.document) {
      const set = groundIdOf(before.document.system, step);
      return [...sizeOf(after, set), ...dutyOf(after, set)];
    }
    if (step.do !== "work") return undefined;
    return elementsOfKind(after.document.system, "ground").flatMap(([id]) => [
      ...(id in after.asFound.system.elements ? sizeOf(after, id) : []),
      ...dutyOf(after, id),
    ]);
  },
});

/** What counts where nobody stated the cable: No. 2 copper, the least that 29 CFR 1910.269(n)(4)(ii) allows. */
const LEAST_CABLE = "2";

function sizeOf({ document }: JobState, id: ElementId): Problem[] {
  const { cable } = elementOf(document.system, id) as { cable?: string };
  if (cable !== undefined && (GROUNDING_CABLES as readonly string[]).includes(cable)) return [];
  return [
    {
      where: id,
      ...(cable === undefined ? { severity: "note" as const } : {}),
      citation: citationOf("n4-min-size"),
      message:
        cable === undefined
          ? say("rule.ground-rating.unknown", { set: setName(document, id) })
          : say("rule.ground-rating.small", { set: setName(document, id), cable }),
      help: say("rule.ground-rating.size.help"),
    },
  ];
}

function dutyOf(state: JobState, id: ElementId): Problem[] {
  const { cable = LEAST_CABLE } = elementOf(state.document.system, id) as { cable?: string };
  const duty = dutiesOf(state).get(id);
  if (duty === undefined) return [];
  const { clearingSeconds } = settingsOf(state.document);
  const withstand = withstandAmps(cable, clearingSeconds, duty.xOverR);
  if (withstand === undefined || duty.amps <= withstand) return [];
  return [
    {
      where: id,
      message: say("rule.ground-rating", {
        set: setName(state.document, id),
        cable,
        amps: figure(duty.amps),
        withstand: figure(withstand),
        seconds: clearingSeconds,
        xOverR: figure(duty.xOverR),
      }),
      help: say("rule.ground-rating.help"),
    },
  ];
}
