import type { System } from "../../document";
import type { Step } from "../../steps";
import { type ConductorId, conductorId, lettersOf } from "../../terms";
import { isJoined } from "./joined";
import { phasesAt } from "./positions";

/** Whether one of some steps looks for volts, and reads them on a conductor that metal joins to one of these. */
export const wereVoltsRead = (
  system: System,
  steps: readonly Step[],
  conductors: readonly ConductorId[],
): boolean =>
  steps.some(
    (it) =>
      it.do === "test" &&
      it.expect === "live" &&
      lettersOf(phasesAt(system, it)).some((letter) =>
        conductors.some((conductor) => isJoined(system, conductorId(it.at, letter), conductor)),
      ),
  );
