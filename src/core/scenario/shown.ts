import {
  conductorsOf,
  HINT_STRENGTHS,
  type HintStrength,
  scenarioOf,
  type StillhotDocument,
} from "../document";
import type { RehearsalFinding } from "../procedure";
import type { Json, Message, PointId } from "../terms";
import { worldAt, worldOf } from "./act";
import type { Attempt } from "./attempt";
import { whenTrue } from "./conditions";
import type { LogEntry } from "./log";
import { nameOfFact } from "./truth";

/** What the apprentice's drawing is at the end of an attempt: the map, amended by all that has come to light. */
export interface KnownView {
  readonly document: StillhotDocument;
  /** points and elements that nobody has looked at or been told of: to be marked as not known */
  readonly unknown: readonly string[];
  /** hidden facts that have come to light, in the order in which they did */
  readonly facts: readonly { readonly id: string; readonly label: string; readonly entry: number }[];
  readonly at: PointId | undefined;
}

/** The map amended by what an attempt has brought to light, with what is not known marked. */
export function knownView(attempt: Attempt, entry = attempt.log.length): KnownView {
  const world = worldAt(attempt, entry);
  const { system } = world.known.document;
  const isKnown = (saved: { readonly evidence?: Json }) =>
    saved.evidence === "seen" || saved.evidence === "told";
  return {
    document: world.known.document,
    unknown: [...Object.entries(system.points), ...Object.entries(system.elements)]
      .filter(([, saved]) => !isKnown(saved) && saved["kind"] !== "ground")
      .map(([id]) => id),
    facts: [...world.facts].map(([id, at]) => ({ id, label: nameOfFact(attempt.document, id), entry: at })),
    at: world.at,
  };
}

/** Conductors of the apprentice's drawing, for the question what is live. */
export const conductorsToPredict = (attempt: Attempt): string[] =>
  [...conductorsOf(worldOf(attempt).known.document.system)].flatMap(([point, letters]) =>
    letters.filter((it) => it !== "N").map((it) => `${point}/${it}`),
  );

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
