import { deviceNumbersOf, offBy, ROD_OFF_BY } from "../devices";
import {
  type Amendment,
  amended,
  complete,
  completePoint,
  elementCountOf,
  evidenceOf,
  hopsFrom,
  type StillhotDocument,
  type System,
} from "../document";
import { assess, standingOfWork, type Verdict, type WorkStanding } from "../hazard";
import type { ElementId, Finding, JsonObject, Letter, PointId, WorkPointId } from "../terms";
import { BADNESS, COST_OF_A_RECORD } from "./asker";
import { nearestThings, pointsOf } from "./doubts";
import { asDrawn } from "./lookFirst";
import { whileWorking } from "./whileWorking";

/** Between what and what a figure may lie [V]. */
export interface Range {
  readonly least: number;
  readonly most: number;
}

/** Of a conductor of the work point, over everything that could make it live. */
export interface ConductorRanges {
  readonly volts: Range;
  readonly exposureVolts: Range;
}

/** What the figures of a work point may be where numbers from the map are off. */
export interface Ranges {
  /** as drawn, or while hands are at the work where there is an order */
  readonly when: "drawn" | "working";
  readonly conductors: Readonly<Partial<Record<Letter, ConductorRanges>>>;
  /** the worst within the range */
  readonly verdict: Verdict;
  /** what of this work point is wrong somewhere within the range, and not by the numbers as drawn */
  readonly findings: readonly Finding[];
  /** how many numbers were asked, nearest first, before the work that one answer may take was spent, and how many there are */
  readonly asked: number;
  readonly of: number;
}

/** The work that one answer may be, in multiplications: a second or so. */
const MOST_WORK = 3e6;

/**
 * What volts and exposures of a work point may be where lengths, impedances, loads and machines are not quite as the map
 * says. What was seen is taken as drawn. Each number is moved by itself to both of its ends, and what that does to a figure
 * is added up; and for each figure all are moved together to the ends at which it is highest, and lowest, and then each
 * once more among the others.
 *
 * @param options.mostWork how much it may take, in multiplications
 */
export function rangesOf(
  document: StillhotDocument,
  id: WorkPointId,
  { mostWork = MOST_WORK }: { readonly mostWork?: number } = {},
): Ranges {
  const working = whileWorking(document, id);
  const { settings, workPoint, base } = { ...asDrawn(document, id), ...(working && { base: working }) };
  const { system } = base.document;
  const numbers = numbersAround(system, workPoint.at);
  let spent = 0;
  const trials = new Map<string, Trial>();
  const tryOut = (ends: Ends): Trial => {
    const key = ends.join("");
    const known = trials.get(key);
    if (known !== undefined) return known;
    const changed = amended(
      system,
      ends.flatMap((end, nth) => numbers[nth]![end] ?? []),
    );
    const standing = standingOfWork({ system: changed, settings, workPoint }, base.tested);
    spent += standing.work + COST_OF_A_RECORD * elementCountOf(changed);
    const trial = {
      ends,
      changed,
      verdict: standing.verdict,
      figures: figuresOf(standing),
      parting: partingIn(standing),
    };
    trials.set(key, trial);
    return trial;
  };

  const asDrawnEnds: Ends = numbers.map(() => "drawn");
  const drawn = tryOut(asDrawnEnds);
  const singles: (readonly Trial[])[] = [];
  for (const nth of numbers.keys()) {
    // Half of the work is for what they do together.
    if (spent >= mostWork / 2) break;
    singles.push(MOVED.map((end) => tryOut(asDrawnEnds.with(nth, end))));
  }
  for (const key of new Set([...trials.values()].flatMap((it) => [...it.figures.keys()])))
    for (const sign of [1, -1]) {
      const better = (a: Trial, b: Trial): boolean => sign * (at(a.figures, key) - at(b.figures, key)) > 0;
      const bestOf = (some: readonly Trial[]): Trial =>
        some.reduce((best, it) => (better(it, best) ? it : best));
      let best = tryOut(
        asDrawnEnds.map((end, nth) =>
          nth < singles.length ? bestOf([drawn, ...singles[nth]!]).ends[nth]! : end,
        ),
      );
      for (const nth of singles.keys()) {
        if (spent >= mostWork) break;
        best = bestOf([best, ...ENDS.map((end) => tryOut(best.ends.with(nth, end)))]);
      }
    }
  const all = [...trials.values()];
  const worst = all.reduce((a, b) => (highest(b) > highest(a) ? b : a));
  return {
    when: working === undefined ? "drawn" : "working",
    conductors: spread(all, singles),
    verdict: all.map((it) => it.verdict).reduce((a, b) => (BADNESS[b] > BADNESS[a] ? b : a)),
    findings: moreFindings(base.document, worst.changed, id),
    asked: singles.length,
    of: numbers.length,
  };
}

/** Where each number stands: as drawn, or at one of its ends. */
type Ends = readonly (keyof NumberInDoubt)[];

interface NumberInDoubt {
  readonly low: Amendment;
  readonly drawn?: undefined;
  readonly high: Amendment;
}

const MOVED = ["low", "high"] as const;
const ENDS = [...MOVED, "drawn"] as const;

/** How the work point stands with the numbers there. */
interface Trial {
  readonly ends: Ends;
  readonly changed: System;
  readonly verdict: Verdict;
  readonly figures: Figures;
  /** conductors whose ground sets part */
  readonly parting: ReadonlySet<Letter>;
}

/** The highest of each conductor by what is told of it: `"C exposureVolts"`. */
type Figures = ReadonlyMap<string, number>;

const FIGURES = ["volts", "exposureVolts"] as const;

function figuresOf({ threats }: WorkStanding): Figures {
  const figures = new Map<string, number>();
  for (const threat of threats)
    for (const it of FIGURES) {
      const key = `${threat.conductor} ${it}`;
      figures.set(key, Math.max(threat[it], figures.get(key) ?? 0));
    }
  return figures;
}

/** A set that carries current and leaves so much of the volts to the worker has parted; what holds leaves far less [1]. */
const PARTED_SHARE = 0.5;

const partingIn = ({ threats }: WorkStanding): Set<Letter> =>
  new Set(
    threats
      .filter((it) => it.groundAmps > 0 && it.exposureVolts >= PARTED_SHARE * it.volts)
      .map((it) => it.conductor),
  );

/** Every number around a work point that nobody has seen to, the nearest first. */
function numbersAround(system: System, at: PointId): NumberInDoubt[] {
  const hops = hopsFrom(system, [at]);
  const things = nearestThings(system, hops);
  const points = new Set([at, ...things.flatMap((it) => pointsOf(system, it))]);
  const unseen = (id: string) => evidenceOf(system, id) !== "seen";
  const amending = (id: string, { low, high }: { low: JsonObject; high: JsonObject }): NumberInDoubt => ({
    low: { set: { [id]: low } },
    high: { set: { [id]: high } },
  });
  const ofElement = (id: ElementId) => deviceNumbersOf(complete(system.elements[id]!));
  const ofPoint = (id: PointId) => {
    const { earthOhms } = completePoint(system.points[id]!);
    return earthOhms === undefined ? [] : offBy({ earthOhms }, ...ROD_OFF_BY);
  };
  return [
    ...things.filter(unseen).flatMap((id) => ofElement(id).map((it) => amending(id, it))),
    ...[...points]
      .filter((id): id is PointId => Object.hasOwn(system.points, id) && unseen(id))
      .flatMap((id) => ofPoint(id).map((it) => amending(id, it))),
  ];
}

const at = (figures: Figures, key: string): number => figures.get(key) ?? 0;

/**
 * From all that was tried, the drawing first, and from what each number does by itself, added up. Whether a set parts may
 * hang on numbers between the ends: where it did once, anything up to all of the volts may be felt.
 */
function spread(trials: readonly Trial[], singles: readonly (readonly Trial[])[]): Ranges["conductors"] {
  const rangeOf = (key: string): Range => {
    const found = trials.map((it) => at(it.figures, key));
    const drawn = found[0]!;
    const steps = singles.map((ends) => ends.map((it) => at(it.figures, key) - drawn));
    return {
      least: Math.max(0, Math.min(drawn + sumOf(steps.map((it) => Math.min(0, ...it))), ...found)),
      most: Math.max(drawn + sumOf(steps.map((it) => Math.max(0, ...it))), ...found),
    };
  };
  const rangesOfConductor = (letter: Letter): ConductorRanges => {
    const [volts, exposureVolts] = [rangeOf(`${letter} volts`), rangeOf(`${letter} exposureVolts`)];
    const mayPart = trials.some((it) => it.parting.has(letter));
    return {
      volts,
      exposureVolts: mayPart ? { least: 0, most: Math.max(volts.most, exposureVolts.most) } : exposureVolts,
    };
  };
  const letters = new Set(trials.flatMap((it) => [...it.figures.keys()].map((key) => key[0] as Letter)));
  return Object.fromEntries([...letters].map((letter) => [letter, rangesOfConductor(letter)]));
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, it) => sum + it, 0);

const highest = ({ figures }: Trial): number =>
  Math.max(0, ...[...figures].filter(([key]) => key.endsWith(" exposureVolts")).map(([, volts]) => volts));

/** What is wrong at a work point of a changed drawing, and not as drawn. */
function moreFindings(document: StillhotDocument, changed: System, id: WorkPointId): Finding[] {
  const ofWorkPoint = (it: StillhotDocument) => assess(it).findings.filter(({ where }) => where === id);
  const known = new Set(ofWorkPoint(document).map((it) => it.rule));
  return ofWorkPoint({ ...document, system: changed }).filter((it) => !known.has(it.rule));
}
