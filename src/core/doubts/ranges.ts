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
  COST_OF_A_NODE,
  leastWithstand,
  mendedIn,
  type Outcome,
  outcomeAfter,
  type Question,
  keyOfUpsets,
  type Threat,
  threatKey,
  upsetsOf,
  verdictOfWork,
  type Verdict,
  whileMending,
  type WorkVerdict,
  worstVerdict,
} from "../hazard";
import { circuitOf } from "../network";
import type { ElementId, Finding, JsonObject, Letter, PointId, WorkPointId } from "../terms";
import { COST_OF_A_RECORD, type TestedDrawing } from "./asker";
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
 * is put together (`together`); and for each figure of a conductor all are moved together to the ends at which it is highest,
 * and lowest, and then each once more among the others. For a single way to go live all are moved once to
 * where each by itself has it highest, and lowest.
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
  const trials = new Trials({ system: base.document.system, settings, workPoint }, base, numbers);
  // Half of the work is for what they do together.
  const singles = trials.oneByOne(mostWork / 2);
  for (const key of trials.keys) for (const sign of [1, -1]) trials.together(key, sign, singles, mostWork);
  const { all, drawn } = trials;
  const worst = all.reduce((a, b) => (highest(b) > highest(a) ? b : a));
  return {
    when: working === undefined ? "drawn" : "working",
    conductors: spread(all, singles),
    ways: trials.ways(singles, mostWork),
    verdict: worstVerdict(all.map((it) => it.verdict)),
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
  private readonly doneBy = new Map<string, readonly Outcome[]>();
  private readonly withstandAmps: number;
  private spent = 0;

  constructor(
    private readonly question: Question,
    private readonly base: TestedDrawing,
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
  ways(singles: readonly (readonly Trial[])[], mostWork: number): WayRanges[] {
    for (const threat of this.drawn.threats) this.corners(threat, singles, mostWork);
    return this.drawn.threats.map((threat) => this.way(threat, singles, mostWork));
  }

  /** All numbers where each by itself has a figure of this way highest, and where each has it lowest. */
  private corners(threat: Threat, singles: readonly (readonly Trial[])[], mostWork: number): void {
    const key = threatKey(threat);
    for (const figure of WAY_FIGURES)
      for (const sign of [1, -1]) {
        if (this.spent >= mostWork) return;
        const value = ({ ways }: Trial) => sign * (ways.get(key)?.[figure] ?? threat[figure]);
        const best = singles.map(
          (it, nth) => it.reduce((a, b) => (value(b) > value(a) ? b : a), this.drawn).ends[nth]!,
        );
        this.at([...best, ...this.asDrawn.slice(best.length)]);
      }
  }

  private way(threat: Threat, singles: readonly (readonly Trial[])[], mostWork: number): WayRanges {
    const key = threatKey(threat);
    const ends = singles.map((trials) =>
      trials.map((it) => it.ways.get(key) ?? this.doneAllTheSame(it, threat, mostWork)),
    );
    const others = this.all.flatMap(({ ways }) => ways.get(key) ?? []);
    const rangeOf = (figure: WayFigure, supply = 0): Range => {
      const drawn = threat[figure];
      return together(
        drawn,
        ends.map((it) => it.map((end) => end?.[figure] ?? drawn)),
        others.map((it) => it[figure]),
        supply,
      );
    };
    const volts = rangeOf("volts");
    const mayPart =
      rangeOf("groundAmps").most > this.withstandAmps || ends.some((it) => it.includes(undefined));
    const felt = (figure: WayFigure): Range => {
      const range = rangeOf(figure, volts.most);
      return mayPart ? upToAllOf(volts, range) : range;
    };
    return {
      conductor: threat.conductor,
      upsets: threat.upsets,
      volts,
      exposureVolts: felt("exposureVolts"),
      exposureToEarthVolts: felt("exposureToEarthVolts"),
    };
  }

  /**
   * What a set of upsets does to a conductor with the numbers there, where it is no way by itself since something less does
   * it already; nothing once the work is spent. Without it a set that parts there would be taken to hold at all numbers.
   */
  private doneAllTheSame(
    { ends, changed }: Trial,
    { conductor, upsets }: Threat,
    mostWork: number,
  ): Figured | undefined {
    const key = `${ends.join()} ${keyOfUpsets(upsets)}`;
    let outcomes = this.doneBy.get(key);
    if (outcomes === undefined) {
      if (this.spent >= mostWork) return undefined;
      const wanted = new Set(upsets.map((it) => keyOfUpsets([it])));
      outcomes = this.questionsOf(changed).map((question) => {
        const all = upsetsOf(question.system, question.settings);
        return outcomeAfter(
          question,
          all.filter((it) => wanted.has(keyOfUpsets([it]))),
        );
      });
      this.spent += outcomes.length * COST_OF_A_NODE * circuitOf(changed).nodeCount;
      this.doneBy.set(key, outcomes);
    }
    const each = outcomes.map((outcome) => outcome.find(({ letter }) => letter === conductor)!);
    const most = (figure: WayFigure) => Math.max(...each.map((it) => it[figure]));
    return {
      volts: most("volts"),
      exposureVolts: most("exposureVolts"),
      exposureToEarthVolts: most("exposureToEarthVolts"),
      groundAmps: most("groundAmps"),
    };
  }

  /** What is asked of a drawing with the numbers moved: as it is, and with faults gone that works of the job mend. */
  private questionsOf(changed: System): readonly Question[] {
    return whileMending({ ...this.question, system: changed }, mendedIn(this.base.document));
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
    const found = verdictOfWork(this.questionsOf(changed), this.base.tested);
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
const WAY_FIGURES = [...FIGURES, "exposureToEarthVolts", "groundAmps"] as const;
type WayFigure = (typeof WAY_FIGURES)[number];
type Figured = Readonly<Record<WayFigure, number>>;

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
 * From all that was tried, the drawing first, and from what each number does by itself. Whether a set parts may
 * hang on numbers between the ends: where it did once, anything up to all of the volts may be felt.
 */
function spread(trials: readonly Trial[], singles: readonly (readonly Trial[])[]): Ranges["conductors"] {
  const rangeOf = (key: string, supply = 0): Range => {
    const valueIn = (it: Trial) => at(it.figures, key);
    const found = trials.map(valueIn);
    return together(
      found[0]!,
      singles.map((ends) => ends.map(valueIn)),
      found,
      supply,
    );
  };
  const rangesOfConductor = (letter: Letter): ConductorRanges => {
    const volts = rangeOf(`${letter} volts`);
    const exposureVolts = rangeOf(`${letter} exposureVolts`, volts.most);
    const mayPart = trials.some((it) => it.parting.has(letter));
    return {
      volts,
      exposureVolts: mayPart ? upToAllOf(volts, exposureVolts) : exposureVolts,
    };
  };
  const letters = new Set(trials.flatMap((it) => [...it.figures.keys()].map((key) => key[0] as Letter)));
  return Object.fromEntries([...letters].map((letter) => [letter, rangesOfConductor(letter)]));
}

/**
 * What numbers may make of a figure together, from what each makes of it by itself.
 *
 * Upward their rises multiply. Downward a figure is taken for what an impedance keeps of a supply's volts beside another: the
 * odds of that share against the rest go with each of the two, so what numbers do to the odds multiplies. Where a number has
 * the figure lower at both ends than in the middle, it may be highest in between: a parabola through the three says where.
 *
 * @param ends   what the figure is with each number at its low and at its high end
 * @param found  all that was tried, beside
 * @param supply volts of which the figure is a share, as far as they are known [V]
 */
function together(
  drawn: number,
  ends: readonly (readonly number[])[],
  found: readonly number[],
  supply: number,
): Range {
  if (drawn === 0)
    return { least: 0, drawn, most: Math.max(sumOf(ends.map((it) => Math.max(...it))), ...found) };
  const highs = ends.map((it) => Math.max(drawn, ...it, peakOf(drawn, it)));
  const lows = ends.map((it) => Math.min(drawn, ...it));
  const most = Math.max(...found, drawn * product(highs.map((it) => it / drawn)));
  const all = Math.max(most, supply);
  const oddsOf = (volts: number) => volts / (all - volts);
  const odds = oddsOf(drawn) * product(lows.map((it) => oddsOf(it) / oddsOf(drawn)));
  const added = drawn + sumOf(lows.map((it) => it - drawn));
  const least = Math.min(added, ...found, ...(all > drawn ? [(all * odds) / (1 + odds)] : []));
  const beyond = BETWEEN_ENDS * (most - least);
  return { least: Math.max(0, least - beyond), drawn, most: most + beyond };
}

/**
 * So much of its width a range goes on at either end, for figures that are highest or lowest where several numbers stand between
 * their ends [1]. Measured: in thousands of random draws they went on by less than a third of it.
 */
const BETWEEN_ENDS = 0.002;

/** The highest point of a parabola through what a figure is at the low end, as drawn and at the high end, where that lies between. */
function peakOf(drawn: number, [low, high]: readonly number[]): number {
  const bend = 2 * drawn - low! - high!;
  const slope = Math.abs(high! - low!);
  return bend > 0 && slope < 2 * bend ? drawn + slope ** 2 / (8 * bend) : drawn;
}

/** What is felt where a set may part: nothing up to all of the volts. */
const upToAllOf = (volts: Range, felt: Range): Range => ({
  ...felt,
  least: 0,
  most: Math.max(volts.most, felt.most),
});

const sumOf = (values: readonly number[]): number => values.reduce((sum, it) => sum + it, 0);

const product = (factors: readonly number[]): number => factors.reduce((all, it) => all * it, 1);

const highest = ({ figures }: Trial): number =>
  Math.max(0, ...[...figures].filter(([key]) => key.endsWith(" exposureVolts")).map(([, volts]) => volts));

/** What is wrong at a work point of a changed drawing, and not as drawn. */
function moreFindings(document: StillhotDocument, changed: System, id: WorkPointId): Finding[] {
  const ofWorkPoint = (it: StillhotDocument) => assess(it).findings.filter(({ where }) => where === id);
  const known = new Set(ofWorkPoint(document).map((it) => it.rule));
  return ofWorkPoint({ ...document, system: changed }).filter((it) => !known.has(it.rule));
}
