import {
  jobOf,
  perObject,
  type Settings,
  settingsOf,
  type StillhotDocument,
  type System,
  type WorkPoint,
} from "../document";
import { circuitOf } from "../network";
import { type ConductorId, type Finding, type PointId, type StructureId, type WorkPointId } from "../terms";
import { wrongAsFound } from "./asFound";
import { faultsStanding } from "./faultsStanding";
import { MOST_STRENGTH } from "./tolerances";
import {
  type FoundSides,
  type FoundThreats,
  keyOfQuestion,
  sidesOfThreats,
  threatsTo,
  type ThreatSide,
} from "./threats";
import { neutralInHand } from "./neutralInHand";
import { questionsAbout } from "./mendedFaults";
import { barricadedPlaces, isBarricaded, testedConductors } from "./tested";
import type { Assessment, Threat, Verdict, WorkPointReport, Question } from "./types";
import { viewOf } from "./view";
import { feedMissing, workPointFindings, stepTouch, loadsUnsettled, threatsNotAll } from "./workFindings";
import { unsolved, neutralVolts } from "./systemFindings";
import { hasNeutral, worstJudged, conductorsNotFed } from "./verdict";
import { elementReports, conductorReports } from "./reports";
import { countAssumptions } from "./assumptions";
import { worstSides, worstThreats } from "./worstOf";

/** What a rehearsal knows better than the file: what was tested dead and still counts, and which places are barricaded. */
export interface KnownFromPlay {
  readonly tested?: ReadonlySet<ConductorId>;
  readonly barricaded?: ReadonlySet<PointId | StructureId>;
}

/**
 * Everything about a drawing as it stands: states and volts of every conductor, currents of every element, threats,
 * margin and verdict of every work point, and what is wrong. Remembered for each document.
 */
export function assess(document: StillhotDocument, known: KnownFromPlay = {}): Assessment {
  const { system } = document;
  const parts = partsOf(document);
  const job = jobOf(document);
  const settings = settingsOf(document);
  const tested = (at: PointId) => known.tested ?? testedConductors(job.steps, at);
  const barricaded = known.barricaded ?? barricadedPlaces(job.steps);
  const findings: Finding[] = [...parts.findings];
  const workPoints: Record<WorkPointId, WorkPointReport> = {};
  for (const [id, workPoint] of Object.entries(job.workPoints) as [WorkPointId, WorkPoint][]) {
    const asked = questionsAbout(document, id);
    const foundOfEach = asked.map((it) => threatsOf(it));
    const found = worstThreats(foundOfEach);
    const { verdict, margin } = worstJudged(asked, foundOfEach, tested(workPoint.at));
    workPoints[id] = {
      verdict,
      margin,
      threats: found.threats,
      ...(found.completeTo < MOST_STRENGTH ? { threatsCompleteTo: found.completeTo } : {}),
      assumptions: countAssumptions({ system, settings, workPoint }),
    };
    findings.push(
      ...feedMissing(asked, id),
      ...threatsNotAll(id, found),
      ...loadsUnsettled(id, found),
      ...workPointFindings(asked, id),
      ...(hasNeutral(workPoint) ? neutralInHand(asked, id, tested(workPoint.at)) : []),
      ...(verdict === "grounded" ? stepTouch(asked, id, isBarricaded(system, barricaded, workPoint.at)) : []),
    );
  }
  return { ...parts, workPoints, findings: findings.filter(isOnIn(settings)) };
}

/** The same of all that needs no work point: the threats to one take far longer than the rest. */
export function assessWithoutWork(document: StillhotDocument): Assessment {
  const { conductors, elements, findings } = partsOf(document);
  return { conductors, elements, workPoints: {}, findings: findings.filter(isOnIn(settingsOf(document))) };
}

/** How one work point stands: its verdict, its margin and the threats to it, without all else that an assessment tells. */
export interface WorkVerdict extends SidedVerdict {
  readonly threats: readonly Threat[];
}

/** The same where of the figures of a threat only the side of the limits is known. */
export interface SidedVerdict {
  readonly verdict: Verdict;
  readonly margin: number | null;
  readonly threats: readonly ThreatSide[];
  /** nothing on the drawing could ever feed one of its conductors */
  readonly isUnfed: boolean;
  /** what it took to say so, in multiplications */
  readonly work: number;
}

/**
 * How a work point stands in the worst of some drawings that may stand, the currents through a body left out. With
 * `mostStrength` under 3 only threats up to there are sought: the verdict and the margin are then right where they are the
 * worst, and never worse than they are.
 */
export function verdictOfWork(
  asked: readonly Question[],
  tested: ReadonlySet<ConductorId>,
  mostStrength = MOST_STRENGTH,
): WorkVerdict {
  const found = asked.map((it) =>
    mostStrength === MOST_STRENGTH
      ? threatsOf(it, { bodies: false })
      : threatsTo(it, { mostStrength, bodies: false }),
  );
  const { threats, work } = worstThreats(found);
  return { ...sidedVerdict(asked, found, tested), threats, work };
}

/**
 * The same verdict, margin and sides of the limits, without a figure that anybody may be told: what to ask of many
 * drawings of which few are told of.
 */
export const sidesOfWork = (
  asked: readonly Question[],
  tested: ReadonlySet<ConductorId>,
  mostStrength = MOST_STRENGTH,
): SidedVerdict =>
  sidedVerdict(
    asked,
    asked.map((it) => sidesOfThreats(it, { mostStrength })),
    tested,
  );

function sidedVerdict(
  asked: readonly Question[],
  found: readonly FoundSides[],
  tested: ReadonlySet<ConductorId>,
): SidedVerdict {
  const { verdict, margin } = worstJudged(asked, found, tested);
  const isUnfed = asked.some((it) => conductorsNotFed(it).length > 0);
  const { threats, work } = worstSides(found);
  return { verdict, margin, threats, isUnfed, work };
}

const isOnIn =
  ({ rules }: Settings) =>
  ({ rule }: Finding): boolean =>
    rules[rule]?.off !== true;

/** All that needs no work point: states, volts and currents. */
const partsOf = perObject((document: StillhotDocument) => {
  const { system } = document;
  const settings = settingsOf(document);
  const circuit = circuitOf(system);
  const view = viewOf(circuit, settings, { groundsLifted: false });
  const elements = elementReports(system, circuit);
  return {
    conductors: conductorReports(circuit, view),
    elements,
    findings: [
      ...unsolved(view),
      ...neutralVolts(system, circuit, view, settings),
      ...wrongAsFound(system, circuit, view),
      ...faultsStanding(system, circuit, view, elements),
    ],
  };
});

const threatsBySystem = perObject((_system: System) => new Map<string, FoundThreats>());

/**
 * Threats to a work point; the same question about the same system is answered once, so that another test or barricade costs
 * nothing. Whoever does without the currents through a body takes an answer that has them too.
 */
function threatsOf(question: Question, { bodies = true } = {}): FoundThreats {
  const known = threatsBySystem(question.system);
  const asked = keyOfQuestion(question);
  const key = bodies ? asked : `${asked} without bodies`;
  const found = known.get(asked) ?? known.get(key);
  if (found !== undefined) return found;
  const fresh = threatsTo(question, { bodies });
  known.set(key, fresh);
  return fresh;
}
