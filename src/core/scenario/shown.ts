import { isGroundSet } from "../devices";
import {
  conductorsOf,
  HINT_STRENGTHS,
  type HintStrength,
  scenarioOf,
  type StillhotDocument,
} from "../document";
import type { Measured } from "../drawing";
import { type Assessment, type ConductorReport, type ConductorState, isHot } from "../hazard";
import { type DetectorReading, type RehearsalFinding, seen } from "../procedure";
import { figure } from "../procedure/job/names";
import { type ConductorId, type Json, type Message, partsOfConductor } from "../terms";
import { worldAt, worldOf } from "./act";
import type { Attempt } from "./attempt";
import { whenTrue } from "./conditions";
import type { LogEntry } from "./log";
import { liveAmong } from "./prediction";
import { nameOfFact } from "./truth";
import type { StructureOrPointId } from "./world";

/** What the apprentice's drawing is at the end of an attempt: the map, amended by all that has come to light. */
export interface KnownView {
  readonly document: StillhotDocument;
  /** points and elements that nobody has looked at or been told of: to be marked as not known */
  readonly unknown: readonly string[];
  /** hidden facts that have come to light, in the order in which they did */
  readonly facts: readonly { readonly id: string; readonly label: string; readonly entry: number }[];
  readonly at: StructureOrPointId | undefined;
}

/** The map amended by what an attempt has brought to light, with what is not known marked. */
export function knownView(attempt: Attempt, entry = attempt.log.length): KnownView {
  const world = worldAt(attempt, entry);
  const { system } = world.known.document;
  const isKnown = (saved: { readonly evidence?: Json }) =>
    saved.evidence === "seen" || saved.evidence === "told";
  return {
    document: world.known.document,
    unknown: [
      ...Object.entries(system.points),
      ...Object.entries(system.elements).filter(([, it]) => !isGroundSet(it)),
    ]
      .filter(([, saved]) => !isKnown(saved))
      .map(([id]) => id),
    facts: [...world.facts].map(([id, at]) => ({ id, label: nameOfFact(attempt.document, id), entry: at })),
    at: world.at,
  };
}

/** What the apprentice's drawing says of the conductors. */
export interface KnownConductors {
  /** states and volts of what is told; what is left out is not known. Nothing where nothing is told */
  readonly assessment: Assessment | undefined;
  /** what was measured since the last switching */
  readonly measured: ReadonlyMap<ConductorId, Measured>;
}

/**
 * How the conductors stand for the apprentice: as measured where there was a test, and elsewhere by the map.
 *
 * @param byMap whether the map says anything, where somebody has looked; else only what was measured is told
 */
export function knownConductors(attempt: Attempt, byMap: boolean): KnownConductors {
  const { known } = worldOf(attempt);
  const measured = new Map<ConductorId, Measured>();
  if (!byMap && known.readings.size === 0) return { assessment: undefined, measured };
  const whole = seen(known);
  const unknown = new Set(byMap ? knownView(attempt).unknown : []);
  const conductors = Object.fromEntries(
    Object.entries(whole.conductors).filter(
      ([id]) => byMap && !unknown.has(partsOfConductor(id as ConductorId).point),
    ),
  ) as Record<ConductorId, ConductorReport>;
  for (const [id, reading] of known.readings) {
    const report = whole.conductors[id];
    if (report === undefined) continue;
    const state = stateMeasured(report.state, reading, known.tested.has(id));
    measured.set(id, { volts: reading.isDead ? 0 : figure(reading.volts), look: state });
    conductors[id] = { ...report, state, volts: reading.volts };
  }
  return { assessment: { ...whole, conductors }, measured };
}

/** A detector says that there is voltage, not from where; and that there is none only where it was proven before. */
function stateMeasured(
  byMap: ConductorState,
  { isDead, isWithoutNominalVolts }: DetectorReading,
  isTested: boolean,
): ConductorState {
  if (!isWithoutNominalVolts) return isHot(byMap) && byMap !== "induced" ? byMap : "energized";
  if (!isDead) return "induced";
  if (!isTested) return "unknown";
  return isHot(byMap) ? "isolated" : byMap;
}

/** Conductors of the apprentice's drawing, for the question what is live. */
export const conductorsToPredict = (attempt: Attempt): string[] =>
  [...conductorsOf(worldOf(attempt).known.document.system)].flatMap(([point, letters]) =>
    letters.filter((it) => it !== "N").map((it) => `${point}/${it}`),
  );

/** Those of them that hold volts by the map, as things are known to stand. */
export const liveByTheMap = (attempt: Attempt): string[] =>
  liveAmong(worldOf(attempt).known, conductorsToPredict(attempt));

/** What the apprentice is told of an entry: what was seen and heard, and in practice what is wrong with it on the map. */
export interface Feedback {
  readonly shown: readonly Message[];
  readonly coached: readonly RehearsalFinding[];
}

/** The feedback of an entry while an attempt runs: nothing in it rests on what is still hidden. In an exam nobody coaches. */
export const feedbackOf = ({ mode }: Attempt, { result }: LogEntry): Feedback => ({
  shown: result.shown,
  coached: mode === "practice" ? (result.coached ?? []) : [],
});

/** A hint that can still be asked for: its rungs, weakest first, and those that were asked for. */
export interface HintOffer {
  readonly id: string;
  readonly rungs: readonly HintStrength[];
  readonly asked: readonly HintStrength[];
}

/** Hints on offer as an attempt stands; none in an exam. */
export function hintsOffered({ document, log, mode }: Attempt): HintOffer[] {
  if (mode === "exam") return [];
  return (scenarioOf(document).hints ?? [])
    .filter(({ until }) => until === undefined || whenTrue(until, document, log) === undefined)
    .map((hint) => ({
      id: hint.id,
      rungs: HINT_STRENGTHS.filter((it) => hint[it] !== undefined),
      asked: log.flatMap(({ action }) =>
        action?.do === "hint" && action.hint === hint.id ? [action.strength] : [],
      ),
    }));
}
