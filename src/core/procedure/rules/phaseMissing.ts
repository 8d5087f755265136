import { type CircuitElement, isAtCustomer, isLoad, openPhasesOf } from "../../devices";
import { type System, transformersOf } from "../../document";
import { circuitOf, EARTH, REACH, reachOf, standingOf } from "../../network";
import { solutionOf, voltsAt } from "../../phasor";
import { COMMON_PRACTICE } from "../../reference";
import { isClosing, isOpening, type Step } from "../../steps";
import { complex, type ConductorId, conductorId, type ElementId, type Letter, lettersOf } from "../../terms";
import { say } from "./say";
import { phaseConductors, secondaryIds } from "../job/hands";
import { isJoined } from "../job/joined";
import { energizedBy } from "../job/live";
import { elementOf, elementsOf, nameOf } from "../job/names";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";
import { defineRule, type Problem } from "./rule";

/**
 * No bank is left with some of its phases energized and one missing, not at the end, and not by a switch that has gone all
 * the way, open or closed; and no customer is put onto one meanwhile: what hangs on it burns.
 */
export const phaseMissing = defineRule({
  id: "phase-missing",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    const element = elementOf(after.document.system, step.element);
    if (element === undefined) return undefined;
    if (isOpening(step)) return isAllOpen(element) ? leftOnFewer(before, after) : undefined;
    if (!isClosing(step)) return undefined;
    if (!isAtCustomer(element)) return isAllClosed(element) ? putOnFewer(step, before, after) : undefined;
    const { system } = after.document;
    const energized = new Set(energizedBy(before, after));
    const served = elementsOf(system)
      .filter(([, it]) => isLoad(it))
      .flatMap(([, it]) => phaseConductors(it))
      .filter((it) => energized.has(it));
    return banksWithPhaseMissing(after)
      .filter(({ secondary }) => secondary.some((it) => served.some((own) => isJoined(system, it, own))))
      .map((it) => putOn(step, after, it));
  },
  atEnd(state) {
    if (state.played.length === 0) return undefined;
    return banksWithPhaseMissing(state).map((it) => left(state, it));
  },
});

/** A device of several phases with nothing left to open. */
const isAllOpen = (element: CircuitElement): boolean => {
  const { phases = "" } = element as { phases?: string };
  return phases.length > 1 && openPhasesOf(element).replace("N", "").length === phases.length;
};

/** A device of several phases with nothing left to close. */
const isAllClosed = (element: CircuitElement): boolean => {
  const { phases = "" } = element as { phases?: string };
  return phases.length > 1 && openPhasesOf(element).replace("N", "") === "";
};

/** What is to be said of a bank that customers were put onto, with a phase missing. */
const putOnFewer = (step: Step, before: JobState, after: JobState): Problem[] =>
  servedOnFewer(before, after).map((it) => putOn(step, after, it));

/** What is to be said of one of them: a motor is at stake where its low side has three phases. */
const putOn = (step: Step, { document }: JobState, { id, missing, secondary }: Crippled): Problem => ({
  where: id,
  message: say(secondary.length < 3 ? "rule.phase-missing.closed.single" : "rule.phase-missing.closed", {
    name: nameOf(document, step.element!),
    bank: nameOf(document, id),
    phases: missing.join(" "),
  }),
  help: say("rule.phase-missing.help"),
});

/** What is to be said of a bank with customers on it that had all of its phases, and has fewer by what was opened all the way. */
const leftOnFewer = (before: JobState, after: JobState): Problem[] =>
  servedOnFewer(before, after).map((it) => left(after, it));

/** Banks that a step leaves with customers on them and a phase missing, and that were not so before it. */
function servedOnFewer(before: JobState, after: JobState): Crippled[] {
  const were = new Set(servedWithPhaseMissing(before).map(({ id }) => id));
  return servedWithPhaseMissing(after).filter(({ id }) => !were.has(id));
}

function servedWithPhaseMissing(state: JobState): Crippled[] {
  const { system } = state.document;
  const served = elementsOf(system)
    .filter(([, it]) => isLoad(it))
    .flatMap(([, it]) => phaseConductors(it));
  return banksWithPhaseMissing(state).filter(({ secondary }) =>
    secondary.some((it) => served.some((own) => isJoined(system, it, own))),
  );
}

const left = ({ document }: JobState, { id, missing }: Crippled): Problem => ({
  where: id,
  message: say("rule.phase-missing", { name: nameOf(document, id), phases: missing.join(" ") }),
  help: say("rule.phase-missing.help"),
});

interface Crippled {
  readonly id: ElementId;
  readonly missing: readonly Letter[];
  readonly secondary: readonly ConductorId[];
}

/** Banks of which some phases are energized and others are not. */
function banksWithPhaseMissing(state: JobState): Crippled[] {
  const { system } = state.document;
  const { conductors } = asItStands(state);
  return transformersOf(system).flatMap(([id, it]) => {
    if (it.phases.length < 2) return [];
    const missing = lettersOf(it.phases).filter((letter) => {
      const conductor = conductorId(it.from, letter);
      const its = conductors[conductor]?.state;
      return its !== "energized" && !(its === "faulted" && isWholeThere(system, id, conductor));
    });
    return missing.length === 0 || missing.length === it.phases.length
      ? []
      : [{ id, missing, secondary: secondaryIds(it) }];
  });
}

/** A winding under this part of its rated volts has lost a phase. Source: ANSI C84.1, range B, from memory. */
const LEAST_OF_RATED = 0.9;

/**
 * Whether a line conductor at earth feeds a bank all the same: the supply reaches it, and every winding that ends on it has
 * its volts, as on a line that nothing else ties to earth.
 */
function isWholeThere(system: System, bank: ElementId, conductor: ConductorId): boolean {
  const circuit = circuitOf(system);
  const node = circuit.nodeOf.get(conductor)!;
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: false });
  if ((how[node]! & REACH.forward) === 0) return false;
  const solution = solutionOf(circuit);
  const at = (end: number) => (end === EARTH ? complex.zero : voltsAt(solution, end));
  return circuit.units
    .filter(({ element }) => circuit.elementIds[element] === bank)
    .every(({ part, windings }) =>
      part.primary.every(({ volts }, nth) => {
        const [plus, minus] = windings[nth]!;
        if (plus !== node && minus !== node) return true;
        return complex.magnitude(complex.subtract(at(plus), at(minus))) >= LEAST_OF_RATED * volts;
      }),
    );
}
