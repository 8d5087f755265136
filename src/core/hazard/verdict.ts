import { type WorkPoint } from "../document";
import { circuitOf, feedNotDrawn } from "../network";
import { type ConductorId, conductorId, type Letter, partsOfConductor } from "../terms";
import { conductorsOf } from "./outcome";
import { type FoundSides } from "./threats";
import { leastMargin } from "./margin";
import { neutralDoubt } from "./neutralInHand";
import type { Verdict, WorkPointReport, Question } from "./types";
import { viewOf } from "./view";
import { isHot } from "./stateColumn";
import { isHotNeutral } from "./systemFindings";

/** How bad a verdict is: a larger number is worse. */
export const BADNESS: Readonly<Record<Verdict, number>> = {
  grounded: 0,
  isolated: 1,
  "could-go-live": 2,
  live: 3,
};

/** The worst of some verdicts. */
export const worstVerdict = (some: readonly Verdict[]): Verdict =>
  some.reduce((worst, it) => (BADNESS[it] > BADNESS[worst] ? it : worst));

/**
 * The worst verdict of a work point and its least margin over the drawings that may stand, from the threats found in each
 * and the conductors tested dead.
 */
export function worstJudged(
  asked: readonly Question[],
  found: readonly FoundSides[],
  tested: ReadonlySet<ConductorId>,
): Pick<WorkPointReport, "verdict" | "margin"> {
  const each = asked.map((question, nth) => judged(question, found[nth]!, tested));
  const least = Math.min(...each.map(({ margin }) => margin ?? Infinity));
  return {
    verdict: worstVerdict(each.map((it) => it.verdict)),
    margin: least === Infinity ? null : least,
  };
}

function judged(
  question: Question,
  found: FoundSides,
  tested: ReadonlySet<ConductorId>,
): Pick<WorkPointReport, "verdict" | "margin"> {
  const verdict = verdictOf(question, found, tested);
  const isAtOnce = verdict === "live" || conductorsNotFed(question).length > 0;
  return { verdict, margin: isAtOnce ? 0 : leastMargin(found) };
}

/** The verdict of the worst conductor. It never says safe: `grounded` is grounded and tested as drawn. */
function verdictOf(
  question: Question,
  { threats, completeTo }: FoundSides,
  tested: ReadonlySet<ConductorId>,
): Verdict {
  const { system, settings, workPoint } = question;
  const circuit = circuitOf(system);
  const view = viewOf(circuit, settings, { groundsLifted: false });
  const ids = conductorsOf(workPoint).map((letter) => conductorId(workPoint.at, letter));
  const states = ids.map((id) => view.stateIfFed(circuit.nodeOf.get(id)!));
  if (states.some(isHot)) return "live";
  const overAt = (most: number) =>
    threats.some((it) => it.strength <= most && it.exposureVolts >= settings.exposureLimitVolts);
  if (overAt(1) || conductorsNotFed(question).length > 0) return "could-go-live";
  const neutral = circuit.nodeOf.get(conductorId(workPoint.at, "N"));
  const neutralIsHot = neutral !== undefined && isHotNeutral(view, settings, neutral);
  const isGrounded =
    ids.every(
      (id, nth) => partsOfConductor(id).letter === "N" || (states[nth] === "grounded" && tested.has(id)),
    ) &&
    completeTo >= 2 &&
    !overAt(2) &&
    !neutralIsHot &&
    (!hasNeutral(workPoint) || neutralDoubt(question, tested) === undefined);
  return isGrounded ? "grounded" : "isolated";
}

/** Whether the work is on a neutral too. */
export const hasNeutral = ({ conductors }: WorkPoint): boolean => conductors.includes("N");

/** Letters of a work point's conductors that no source on the drawing could ever reach. */
export function conductorsNotFed({ system, workPoint }: Question): Letter[] {
  const circuit = circuitOf(system);
  const unfed = feedNotDrawn(circuit);
  return conductorsOf(workPoint).filter(
    (letter) => unfed[circuit.nodeOf.get(conductorId(workPoint.at, letter))!] === 1,
  );
}
