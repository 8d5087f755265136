import { type CircuitElement, type CONDITIONS, isLine, shakesThePole } from "../../devices";
import { elementsOfKind, isSameStructure, type System } from "../../document";
import { endsOf } from "../../network";
import { COMMON_PRACTICE } from "../../reference";
import { lettersOf, type Message } from "../../terms";
import { say } from "./say";
import { elementOf, elementsOf, nameOf, setName } from "../job/names";
import { groundIdOf } from "../job/positions";
import { defineRule } from "./rule";
import type { JobState } from "../job/state";
import { isSwitching, type Step } from "../../steps";

type Condition = (typeof CONDITIONS)[number];

/** Nothing on a pole is worked with a stick while something on it hangs loose or is failing. */
export const looseHardware = defineRule({
  id: "loose-hardware",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before) {
    const { document } = before;
    const points = shakenAt(step, document.system);
    return elementsOf(document.system)
      .filter(
        ([id, it]) =>
          isFailing(it) &&
          endsOf(it).some(
            ([, at]) =>
              points.some((point) => isSameStructure(document.system, point, at)) &&
              !isSecured(before, id, at),
          ) &&
          !isCutClear(document.system, it),
      )
      .map(([id]) => ({
        where: id,
        message: say(step.do === "ground" ? "rule.loose-hardware.ground" : "rule.loose-hardware", {
          name:
            step.do === "ground"
              ? setName(document, groundIdOf(document.system, step))
              : nameOf(document, step.element!),
          loose: nameOf(document, id),
          is: howItFails(elementOf(document.system, id)!),
        }),
        help: say("rule.loose-hardware.help", { loose: nameOf(document, id) }),
      }));
  },
});

/** Where a step shakes the pole: at the ends of what is operated with a stick, and where the clamps of a ground set go on. */
function shakenAt(step: Step, system: System): readonly string[] {
  if (step.do === "ground") return [step.at];
  const element = elementOf(system, step.element);
  if (!isSwitching(step) || element === undefined || !shakesThePole(element)) return [];
  return endsOf(element).map(([, point]) => point);
}

/** What is wrong with it, in the word that was drawn. */
function howItFails(it: CircuitElement): Message {
  const { condition = "sound", loose = false } = it as { condition?: Condition; loose?: boolean };
  if (loose || condition === "loose") return say("rule.loose-hardware.loose");
  return condition === "sound" || condition === "seized"
    ? say("rule.loose-hardware.failed")
    : say(`rule.loose-hardware.${condition}`);
}

/** Whether it may come down or come apart when the pole is shaken. A line that is down is guarded, not held. */
function isFailing(it: CircuitElement): boolean {
  if ("loose" in it && (it.loose || it.failed !== "")) return true;
  const { condition = "sound" } = it as { condition?: string };
  return !isLine(it) && condition !== "sound" && condition !== "seized";
}

const isSecured = ({ secured, document: { system } }: JobState, id: string, at: string): boolean =>
  secured.has(id) ||
  [...secured].some((it) => Object.hasOwn(system.points, it) && isSameStructure(system, it, at));

/** Every lead that it hangs on is cut. */
function isCutClear(system: System, element: CircuitElement): boolean {
  const { at, phases = "" } = element as { at?: string; phases?: string };
  if (at === undefined) return false;
  const leads = elementsOfKind(system, "lead").flatMap(([, it]) =>
    it.from === at || it.to === at ? [it] : [],
  );
  return (
    leads.length > 0 && leads.every((it) => lettersOf(phases).every((letter) => it.cut.includes(letter)))
  );
}
