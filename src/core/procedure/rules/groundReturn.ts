import { citationOf } from "../../reference";
import { conductorId, type ElementId, say } from "../../terms";
import { islandOf } from "../job/joined";
import { elementOf, elementsOf, nameOf, setName } from "../job/names";
import { groundIdOf } from "../job/positions";
import { defineRule, type Problem } from "./rule";
import type { JobState } from "../job/state";

/** The current of a ground goes home by a whole neutral; through a rod alone no link sees it in time. */
export const groundReturn = defineRule({
  id: "ground-return",
  severity: "warning",
  citation: citationOf("n4-impedance"),
  check(step, before, after) {
    if (step.do === "ground" && before.document !== after.document)
      return returnOf(after, groundIdOf(before.document.system, step));
    if (step.do !== "work") return undefined;
    // A set that went on with a whole neutral may have lost it since, and one was on before the crew came.
    return elementsOf(after.document.system).flatMap(([id, it]) =>
      it.kind === "ground" &&
      (id in after.asFound.system.elements || before.lastGround < before.lastSwitching)
        ? returnOf(after, id)
        : [],
    );
  },
});

function returnOf({ document }: JobState, id: ElementId): Problem[] {
  const element = elementOf(document.system, id);
  if (element?.kind !== "ground") return [];
  const { at, to } = element;
  const neutral = conductorId(at, "N");
  const home = elementsOf(document.system).some(
    ([, it]) =>
      it.kind === "source" &&
      islandOf(document.system, neutral) !== -1 &&
      islandOf(document.system, conductorId(it.at, "N")) === islandOf(document.system, neutral),
  );
  if (to !== "earth" && home) return [];
  const gaps = { set: setName(document, id), at: nameOf(document, at) };
  return [
    {
      where: id,
      message: say(to === "earth" ? "rule.ground-return.rod" : "rule.ground-return.open", gaps),
      help: say(home ? "rule.ground-return.rod.help" : "rule.ground-return.open.help", gaps),
    },
  ];
}
