import { conductorsOf, jobOf, type StillhotDocument, type WorkPoint } from "../document";
import { type Assessment, assess, type Threat } from "../hazard";
import type { ConductorId, PointId, WorkPointId } from "../terms";
import { cutAround, type Cutting } from "./cutAround";
import { laidOutWhereCrowded } from "./laidOutWhereCrowded";

/** Where a piece says something else than the whole: a number by more than this share of it [1]. */
const AS_GOOD_AS_EQUAL = 1e-3;

/** Volts and amperes below this are no difference: rounding of the solution [V, A]. */
const NOTHING = 1e-3;

/** What a piece has otherwise than the whole. */
export interface PieceDifference {
  readonly where: string;
  readonly what: "verdict" | "margin" | "threats" | "volts" | "state";
}

/** A piece that says the same of its work points as the whole drawing does. */
export interface VerifiedCutting extends Cutting {
  /** openings within which all was kept, at least as many as were asked for, or fewer where the way to each source has no more */
  readonly openings: number;
  /** how many work points were compared with the whole */
  readonly compared: number;
}

/** More than so many points of a place are not each asked for their threats. */
const MOST_ASKED = 4;

/**
 * The piece around a place, held against the whole: the job's work points at the place, or else each of its points as if
 * work were done there. Where the two differ, more is kept, at last all.
 */
export function pieceAround(
  document: StillhotDocument,
  place: readonly PointId[],
  openings: number,
): VerifiedCutting {
  const asked = askedAt(document, place);
  const whole = assess(withWork(document, asked));
  for (const least of ways(openings)) {
    const piece = cutAround(document, place, least);
    if (piece.parts.length === 0) continue;
    if (likeTheWhole(whole, assess(withWork(piece.document, asked))) === undefined)
      return {
        ...piece,
        document: laidOutWhereCrowded(piece.document),
        openings: least,
        compared: Object.keys(asked).length,
      };
  }
  return {
    document,
    parts: [],
    workPointsLeft: 0,
    stepsLeft: 0,
    scenarioLeft: false,
    openings,
    compared: 0,
  };
}

/** First as asked and further out, up to where nothing is left to cut; then nearer, where the drawing has no more openings. */
function* ways(openings: number): Generator<number> {
  for (let least = openings; least <= openings + 3; least++) yield least;
  for (let least = openings - 1; least >= 0; least--) yield least;
}

type WorkPoints = Readonly<Record<string, WorkPoint>>;

function askedAt(document: StillhotDocument, place: readonly PointId[]): WorkPoints {
  const here = Object.entries(jobOf(document).workPoints).filter(([, { at }]) => place.includes(at));
  if (here.length > 0) return Object.fromEntries(here);
  const letters = conductorsOf(document.system);
  return Object.fromEntries(
    place.slice(0, MOST_ASKED).flatMap((at, nth) => {
      const conductors = [...letters.get(at)!].filter((it) => it !== "N").join("");
      return conductors === "" ? [] : [[`asked${nth}`, { at, conductors }]];
    }),
  );
}

const withWork = (document: StillhotDocument, workPoints: WorkPoints): StillhotDocument => ({
  ...document,
  job: { ...document.job, workPoints },
});

/** The first thing that a piece has otherwise than the whole; nothing where they say the same. */
export function likeTheWhole(whole: Assessment, piece: Assessment): PieceDifference | undefined {
  for (const [id, own] of Object.entries(piece.workPoints)) {
    const there = whole.workPoints[id as WorkPointId]!;
    if (own.verdict !== there.verdict) return { where: id, what: "verdict" };
    if (own.margin !== there.margin) return { where: id, what: "margin" };
    if (!sameThreats(own.threats, there.threats)) return { where: id, what: "threats" };
  }
  for (const [id, own] of Object.entries(piece.conductors)) {
    const there = whole.conductors[id as ConductorId];
    if (there === undefined) continue;
    if (own.state !== there.state) return { where: id, what: "state" };
    const near = (["volts", "voltsLoadsOff"] as const).every((key) => isNear(own[key], there[key]));
    if (!near) return { where: id, what: "volts" };
  }
  return undefined;
}

const sameThreats = (own: readonly Threat[], there: readonly Threat[]): boolean =>
  own.length === there.length &&
  own.every((it, nth) => {
    const other = there[nth]!;
    return setOf(it) === setOf(other) && NUMBERS.every((key) => isNear(it[key], other[key]));
  });

const NUMBERS = ["volts", "exposureVolts", "exposureToEarthVolts", "bodyMilliamps", "groundAmps"] as const;

const setOf = ({ conductor, upsets }: Threat): string =>
  `${conductor} ${upsets.map(({ kind, element, phase }) => `${kind} ${element} ${phase ?? ""}`).join(", ")}`;

const isNear = (a: number, b: number): boolean =>
  a === b || Math.abs(a - b) <= NOTHING + AS_GOOD_AS_EQUAL * Math.max(Math.abs(a), Math.abs(b));
