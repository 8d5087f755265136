import { deviceNumbersOf, offBy, ROD_OFF_BY } from "../devices";
import {
  type Amendment,
  amended,
  complete,
  completePoint,
  elementCountOf,
  perQuestion,
  type StillhotDocument,
  type System,
} from "../document";
import {
  assess,
  leastWithstand,
  type Question,
  type Threat,
  verdictOfWork,
  type Verdict,
  type WorkVerdict,
} from "../hazard";
import type { ConductorId, ElementId, Finding, JsonObject, Letter, PointId, WorkPointId } from "../terms";
import { BADNESS, COST_OF_A_RECORD, threatKey } from "./asker";
import { unseenAround } from "./doubts";
import { asDrawn } from "./lookFirst";
import { whileWorking } from "./whileWorking";

/** Between what and what a figure may lie, and what it is as drawn [V]. */
export interface Range {
  readonly least: number;
  readonly drawn: number;
  readonly most: number;
}

/** Of a conductor of the work point, over everything that could make it live. */
export interface ConductorRanges {
  readonly volts: Range;
  readonly exposureVolts: Range;
}

/** Of one way to go live on one conductor, over the numbers at which it is one. */
export interface WayRanges extends ConductorRanges, Pick<Threat, "conductor" | "upsets"> {
  readonly exposureToEarthVolts: Range;
}

/** What the figures of a work point may be where numbers from the map are off. */
export interface Ranges {
  /** as drawn, or while hands are at the work where there is an order */
  readonly when: "drawn" | "working";
  readonly conductors: Readonly<Partial<Record<Letter, ConductorRanges>>>;
  /** of every threat by the numbers as drawn */
  readonly ways: readonly WayRanges[];
  /** the worst within the range */
  readonly verdict: Verdict;
  /** by the numbers as drawn */
  readonly drawnVerdict: Verdict;
  /** what of this work point is wrong somewhere within the range, and not by the numbers as drawn */
  readonly findings: readonly Finding[];
  /** how many numbers were asked, nearest first, before the work that one answer may take was spent, and how many there are */
  readonly asked: number;
  readonly of: number;
}

/** The work that one answer may be, in multiplications: less than half a second. */
const MOST_WORK = 1e6;

/**
 * What volts and exposures of a work point may be where lengths, impedances, loads and machines are not quite as the map
 * says. What was seen is taken as drawn. Each number is moved by itself to both of its ends, and what that does to a figure
 * is added up; and for each figure all are moved together to the ends at which it is highest, and lowest, and then each
 * once more among the others.
 *
 * A single way to go live is not moved to ends of its own: what the numbers do to it one by one is multiplied.
 */
export const rangesOf: (document: StillhotDocument, id: WorkPointId, options?: RangesOptions) => Ranges =
  perQuestion(triedOut);

/** Of which moment it is asked, and how long it may take. */
export interface RangesOptions {
  /** as the drawing stands, or, where there is an order, while hands are at the work */
  readonly when?: Ranges["when"];
  /** how much it may take, in multiplications */
  readonly mostWork?: number;
}

function triedOut(
  document: StillhotDocument,
  id: WorkPointId,
  { when = "working", mostWork = MOST_WORK }: RangesOptions = {},
): Ranges {
  const working = when === "working" ? whileWorking(document, id) : undefined;
  if (when === "working" && working === undefined) return rangesOf(document, id, { when: "drawn", mostWork });
  const { settings, workPoint, base } = { ...asDrawn(document, id), ...(working && { base: working }) };
  const numbers = numbersAround(base.document.system, workPoint.at);
  const trials = new Trials({ system: base.document.system, settings, workPoint }, base.tested, numbers);
  // Half of the work is for what they do together.
  const singles = trials.oneByOne(mostWork / 2);
  for (const key of trials.keys) for (const sign of [1, -1]) trials.together(key, sign, singles, mostWork);
  const { all, drawn } = trials;
  const worst = all.reduce((a, b) => (highest(b) > highest(a) ? b : a));
  return {
    when: working === undefined ? "drawn" : "working",
    conductors: spread(all, singles),
    ways: trials.ways(singles),
    verdict: all.map((it) => it.verdict).reduce((a, b) => (BADNESS[b] > BADNESS[a] ? b : a)),
    drawnVerdict: drawn.verdict,
    findings: worst === drawn ? [] : moreFindings(base.document, worst.changed, id),
    asked: singles.length,
    of: numbers.length,
  };
}

/** What was tried, each setting of the numbers once. */
class Trials {
  readonly drawn: Trial;
  private readonly asDrawn: RangeEnds;
  private readonly known = new Map<string, Trial>();
  private readonly withstandAmps: number;
  private spent = 0;

  constructor(
    private readonly question: Question,
    private readonly tested: ReadonlySet<ConductorId>,
    private readonly numbers: readonly NumberInDoubt[],
  ) {
    this.withstandAmps = leastWithstand(question.system, question.settings);
    this.asDrawn = numbers.map(() => "drawn");
    this.drawn = this.at(this.asDrawn);
  }

  /** The drawing itself first. */
  get all(): readonly Trial[] {
    return [...this.known.values()];
  }

  /** Every figure that came up so far. */
  get keys(): ReadonlySet<string> {
    return new Set(this.all.flatMap((it) => [...it.figures.keys()]));
  }

  /** Each number by itself at both of its ends, until so much work is spent. */
  oneByOne(mostWork: number): (readonly Trial[])[] {
    const singles: (readonly Trial[])[] = [];
    for (const nth of this.numbers.keys()) {
      if (this.spent >= mostWork) break;
      singles.push(MOVED.map((end) => this.at(this.asDrawn.with(nth, end))));
    }
    return singles;
  }

  /** All numbers at the ends at which a figure is highest (sign 1) or lowest (−1), and then each once more among the others. */
  together(key: string, sign: number, singles: readonly (readonly Trial[])[], mostWork: number): void {
    const value = ({ figures }: Trial): number => sign * at(figures, key);
    const bestOf = (some: readonly Trial[]): Trial =>
      some.reduce((best, it) => (value(it) > value(best) ? it : best));
    const ends = singles.map((it, nth) => bestOf([this.drawn, ...it]).ends[nth]!);
    let best = this.at([...ends, ...this.asDrawn.slice(ends.length)]);
    for (const nth of singles.keys()) {
      if (this.spent >= mostWork) return;
      best = bestOf([best, ...ENDS.map((end) => this.at(best.ends.with(nth, end)))]);
    }
  }

  /** Each threat as drawn, with what the numbers may make of it. */
  ways(singles: readonly (readonly Trial[])[]): WayRanges[] {
    return this.drawn.threats.map((threat) => this.way(threat, singles));
  }

  private way(threat: Threat, singles: readonly (readonly Trial[])[]): WayRanges {
    const key = threatKey(threat);
    const rangeOf = (figure: WayFigure): Range => {
      const drawn = threat[figure];
      // At some numbers it may be no way at all: those say nothing of what it does where it is one.
      const valueIn = ({ ways }: Trial): number => ways.get(key)?.[figure] ?? drawn;
      const steps = singles.map((ends) => ends.map((it) => valueIn(it) - drawn));
      const falls = steps.map((it) => Math.min(0, ...it));
      const rises = steps.map((it) => Math.max(0, ...it));
      const found = this.all.map(valueIn);
      const multiplied = drawn * rises.reduce((product, it) => product * (1 + it / drawn), 1);
      return {
        least: Math.max(0, Math.min(drawn + sumOf(falls), ...found)),
        drawn,
        most: Math.max(drawn > 0 ? multiplied : sumOf(rises), ...found),
      };
    };
    const volts = rangeOf("volts");
    const mayPart = rangeOf("groundAmps").most > this.withstandAmps;
    const felt = (figure: WayFigure): Range =>
      mayPart ? upToAllOf(volts, rangeOf(figure)) : rangeOf(figure);
    return {
      conductor: threat.conductor,
      upsets: threat.upsets,
      volts,
      exposureVolts: felt("exposureVolts"),
      exposureToEarthVolts: felt("exposureToEarthVolts"),
    };
  }

  private at(ends: RangeEnds): Trial {
    const key = ends.join();
    const known = this.known.get(key) ?? this.tryOut(ends);
    this.known.set(key, known);
    return known;
  }

  private tryOut(ends: RangeEnds): Trial {
    const changes = ends.flatMap((end, nth) => this.numbers[nth]![end] ?? []);
    const changed = changes.length === 0 ? this.question.system : amended(this.question.system, changes);
    const found = verdictOfWork({ ...this.question, system: changed }, this.tested);
    this.spent += found.work + COST_OF_A_RECORD * elementCountOf(changed);
    const parting = partingIn(found, this.withstandAmps);
    const { verdict, threats } = found;
    const ways = new Map(threats.map((it) => [threatKey(it), it]));
    return { ends, changed, verdict, threats, ways, figures: figuresOf(found), parting };
  }
}

/** Where each number stands: as drawn, or at one of its ends. */
type RangeEnds = readonly (keyof NumberInDoubt)[];

interface NumberInDoubt {
  readonly low: Amendment;
  readonly drawn?: undefined;
  readonly high: Amendment;
}

const MOVED = ["low", "high"] as const;
const ENDS = [...MOVED, "drawn"] as const;

/** How the work point stands with the numbers there. */
interface Trial {
  readonly ends: RangeEnds;
  readonly changed: System;
  readonly verdict: Verdict;
  readonly threats: readonly Threat[];
  /** the same by their keys */
  readonly ways: ReadonlyMap<string, Threat>;
  readonly figures: Figures;
  /** conductors whose ground sets part */
  readonly parting: ReadonlySet<Letter>;
}

/** The highest of each conductor by what is told of it: `"C exposureVolts"`. */
type Figures = ReadonlyMap<string, number>;

const FIGURES = ["volts", "exposureVolts"] as const;
type WayFigure = (typeof FIGURES)[number] | "exposureToEarthVolts" | "groundAmps";

function figuresOf({ threats }: WorkVerdict): Figures {
  const figures = new Map<string, number>();
  for (const threat of threats)
    for (const it of FIGURES) {
      const key = `${threat.conductor} ${it}`;
      figures.set(key, Math.max(threat[it], figures.get(key) ?? 0));
    }
  return figures;
}

/** Conductors whose threats put more through a ground set than the weakest carries: then sets part. */
const partingIn = ({ threats }: WorkVerdict, withstandAmps: number): Set<Letter> =>
  new Set(threats.filter((it) => it.groundAmps > withstandAmps).map((it) => it.conductor));

/** Every number around a work point that nobody has seen to, the nearest first. */
function numbersAround(system: System, at: PointId): NumberInDoubt[] {
  const { things, points } = unseenAround(system, at);
  const ofElement = (id: ElementId) => deviceNumbersOf(complete(system.elements[id]!));
  const ofPoint = (id: PointId) => {
    const { earthOhms } = completePoint(system.points[id]!);
    return earthOhms === undefined ? [] : offBy({ earthOhms }, ...ROD_OFF_BY);
  };
  return [
    ...things.flatMap((id) => ofElement(id).map((it) => amending(id, it))),
    ...points.flatMap((id) => ofPoint(id).map((it) => amending(id, it))),
  ];
}

const amending = (
  id: string,
  { low, high }: { readonly low: JsonObject; readonly high: JsonObject },
): NumberInDoubt => ({ low: { set: { [id]: low } }, high: { set: { [id]: high } } });

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
      drawn,
      most: Math.max(drawn + sumOf(steps.map((it) => Math.max(0, ...it))), ...found),
    };
  };
  const rangesOfConductor = (letter: Letter): ConductorRanges => {
    const [volts, exposureVolts] = [rangeOf(`${letter} volts`), rangeOf(`${letter} exposureVolts`)];
    const mayPart = trials.some((it) => it.parting.has(letter));
    return {
      volts,
      exposureVolts: mayPart ? upToAllOf(volts, exposureVolts) : exposureVolts,
    };
  };
  const letters = new Set(trials.flatMap((it) => [...it.figures.keys()].map((key) => key[0] as Letter)));
  return Object.fromEntries([...letters].map((letter) => [letter, rangesOfConductor(letter)]));
}

/** What is felt where a set may part: nothing up to all of the volts. */
const upToAllOf = (volts: Range, felt: Range): Range => ({
  ...felt,
  least: 0,
  most: Math.max(volts.most, felt.most),
});

const sumOf = (values: readonly number[]): number => values.reduce((sum, it) => sum + it, 0);

const highest = ({ figures }: Trial): number =>
  Math.max(0, ...[...figures].filter(([key]) => key.endsWith(" exposureVolts")).map(([, volts]) => volts));

/** What is wrong at a work point of a changed drawing, and not as drawn. */
function moreFindings(document: StillhotDocument, changed: System, id: WorkPointId): Finding[] {
  const ofWorkPoint = (it: StillhotDocument) => assess(it).findings.filter(({ where }) => where === id);
  const known = new Set(ofWorkPoint(document).map((it) => it.rule));
  return ofWorkPoint({ ...document, system: changed }).filter((it) => !known.has(it.rule));
}
