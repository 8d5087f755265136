import { conductorsOf, elementOfKind, elementsOfKind, transformersOf } from "../../document";
import { citationOf } from "../../reference";
import { type ElementOfKind, isCustomers, type LowSide, lowSidesOf } from "../../devices";
import type { System } from "../../document";
import { conductorId, type ElementId, lettersOf } from "../../terms";
import { say } from "./say";
import { isJoined } from "../job/joined";
import { legsOf } from "../job/hands";
import { elementsOf, nameOf, setAndPlace } from "../job/names";
import { groundIdOf } from "../job/positions";
import { defineRule, type Problem } from "./rule";
import type { JobState } from "../job/state";

/**
 * The current of a ground goes home by a whole neutral; through a rod alone no link sees it in time. What hangs on a
 * secondary has its home there: the star of the bank that feeds it; a service that has come off its bank has it at the
 * customer's, who alone could feed it; and what has three wires and is held on all of them needs none, a secondary as
 * well as a line whose source is not earthed.
 */
export const groundReturn = defineRule({
  id: "ground-return",
  severity: "warning",
  citation: citationOf("n4-impedance"),
  check(step, before, after) {
    if (step.do === "ground" && before.document !== after.document)
      return returnOf(after, groundIdOf(before.document.system, step));
    if (step.do !== "work") return undefined;
    // A set that went on with a whole neutral may have lost it since, and one was on before the crew came.
    return elementsOfKind(after.document.system, "ground").flatMap(([id]) =>
      id in after.asFound.system.elements || before.lastGround < before.lastSwitching
        ? returnOf(after, id)
        : [],
    );
  },
});

function returnOf({ document }: JobState, id: ElementId): Problem[] {
  const element = elementOfKind(document.system, id, "ground");
  if (element === undefined) return [];
  const { at, to } = element;
  const { system } = document;
  const bank = sideFeeding(system, element);
  const home = (bank !== undefined && isOneNeutral(system, at, bank.at)) || leadsToSource(system, at);
  if (to !== "earth" && (home || isHomeByOthers(system, id, element))) return [];
  if (bank === undefined ? isOnThreeWires(system, element) : isHeldWhole(system, element, bank)) return [];
  if (bank === undefined && to !== "earth" && isCutOffService(system, element)) return [];
  const gaps = { set: setAndPlace(document, id), at: nameOf(document, at) };
  return [
    {
      where: id,
      message: say(to === "earth" ? "rule.ground-return.rod" : "rule.ground-return.open", gaps),
      help: say(home ? "rule.ground-return.rod.help" : "rule.ground-return.open.help", gaps),
    },
  ];
}

/** Whether each phase of a set is held by another one too, whose neutral is whole: beyond a neutral that is open it bonds alone. */
function isHomeByOthers(system: System, own: ElementId, { at, phases }: Set): boolean {
  const whole = elementsOfKind(system, "ground").filter(
    ([id, other]) => id !== own && other.to !== "earth" && leadsToSource(system, other.at),
  );
  return lettersOf(phases).every((letter) =>
    whole.some(([, other]) =>
      lettersOf(other.phases).some((it) =>
        isJoined(system, conductorId(other.at, it), conductorId(at, letter)),
      ),
    ),
  );
}

const isOneNeutral = (system: System, one: string, other: string): boolean =>
  isJoined(system, conductorId(one, "N"), conductorId(other, "N"));

/** Whether the neutral of a point is whole all the way to a source. */
export const leadsToSource = (system: System, point: string): boolean =>
  elementsOfKind(system, "source").some(([, it]) => isOneNeutral(system, point, it.at));

type Set = ElementOfKind<"ground">;

/** The side of a bank on which a set stands. */
const sideFeeding = (system: System, { at, phases }: Set): LowSide | undefined =>
  transformersOf(system)
    .flatMap(([, it]) => lowSidesOf(it))
    .find((it) =>
      legsOf(it).some((id) =>
        lettersOf(phases).some((letter) => isJoined(system, id, conductorId(at, letter))),
      ),
    );

/** Whether a set ties together every phase of a secondary that has no neutral of its own. */
const isHeldWhole = (system: System, { at, phases }: Set, side: LowSide): boolean =>
  !side.hasNeutral &&
  legsOf(side).every((id) =>
    lettersOf(phases).some((letter) => isJoined(system, id, conductorId(at, letter))),
  );

/** Whether a set holds every phase of a line whose sources are not earthed: what feeds one of them drives no current through earth. */
const isOnThreeWires = (system: System, { at, phases }: Set): boolean =>
  elementsOfKind(system, "source").every(([, it]) => !it.earthed) &&
  (conductorsOf(system).get(at) ?? []).every((letter) => letter === "N" || phases.includes(letter));

/** Whether a set stands on legs that no bank is joined to, where a customer's neutral comes: only that customer could feed them. */
const isCutOffService = (system: System, { at, phases }: Set): boolean =>
  /^[12]+$/.test(phases) &&
  elementsOf(system).some(([, it]) => isCustomers(it) && "at" in it && isOneNeutral(system, at, it.at));
