import type { CircuitElement } from "../../devices";
import { isSameStructure, type System } from "../../document";
import { endsOf } from "../../network";
import { COMMON_PRACTICE } from "../../reference";
import { lettersOf, say } from "../../terms";
import { elementOf, elementsOf, nameOf } from "../job/names";
import { defineRule } from "./rule";
import type { JobState } from "../job/state";
import { isSwitching } from "../../steps";

/** Things whose operation shakes the pole. */
const SHAKING: readonly CircuitElement["kind"][] = ["clamp", "cutout", "disconnect"];

/** Nothing on a pole is worked with a stick while something on it hangs loose or is failing. */
export const looseHardware = defineRule({
  id: "loose-hardware",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before) {
    const { document } = before;
    const element = elementOf(document.system, step.element);
    if (!isSwitching(step) || element === undefined || !SHAKING.includes(element.kind)) return undefined;
    const points = endsOf(element).map(([, point]) => point);
    return elementsOf(document.system)
      .filter(
        ([id, it]) =>
          it.kind === "arrester" &&
          (it.loose || it.failed !== "") &&
          points.some((point) => isSameStructure(document.system, point, it.at)) &&
          !isSecured(before, id, it.at) &&
          !isCutClear(document.system, it),
      )
      .map(([id]) => ({
        where: id,
        message: say("rule.loose-hardware", {
          name: nameOf(document, step.element!),
          loose: nameOf(document, id),
        }),
        help: say("rule.loose-hardware.help", { loose: nameOf(document, id) }),
      }));
  },
});

const isSecured = ({ secured, document: { system } }: JobState, id: string, at: string): boolean =>
  secured.has(id) ||
  [...secured].some((it) => Object.hasOwn(system.points, it) && isSameStructure(system, it, at));

/** Every lead that it hangs on is cut. */
function isCutClear(system: System, { at, phases }: { at: string; phases: string }): boolean {
  const leads = elementsOf(system).flatMap(([, it]) =>
    it.kind === "lead" && (it.from === at || it.to === at) ? [it] : [],
  );
  return (
    leads.length > 0 && leads.every((it) => lettersOf(phases).every((letter) => it.cut.includes(letter)))
  );
}
