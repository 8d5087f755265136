import { elementsOfKind, perObject, type Settings, type System } from "../document";
import { circuitOf, pathTo, reachOf, sourceOf, standingOf } from "../network";
import { conductorId, type ElementId } from "../terms";
import { LowRank } from "./lowRank";
import { type Relevant, relevantTo } from "./relevant";
import { type ConductorOutcome, bodyAmpsOf, type Outcome, outcomeIn, withstandOf } from "./outcome";
import {
  type FoundSet,
  inOrder,
  isBy,
  keyOf,
  MinimalSets,
  setsUpTo,
  type UpsetSet,
  type ThreatWay,
  WAYS,
} from "./search";
import type { Threat, Upset, Question } from "./types";
import {
  type DrawnUpset,
  afterUpsets,
  effectOf,
  rejoinsNeutral,
  standingAfter,
  upsetsOf,
  startsDrawn,
} from "./upsets";
import {
  COST_OF_A_NODE,
  FAR_BAND,
  MODEL_BAND,
  MOST_SETS_ASKED_ONE_BY_ONE,
  MOST_STRENGTH,
  MOST_WAYS_TOLD,
  MOST_WORK,
  ROUGH_BAND,
  SLACK,
} from "./tolerances";
import { startsUnknown } from "./upsetWords";

/** How a set of upsets is asked for its outcome. */
export type AskOutcome = (set: UpsetSet) => Outcome;

/** Threats to a work point, and up to which strength they are all of them: 3 but where a drawing has more sets than can be asked. */
export interface FoundThreats {
  readonly threats: Threat[];
  /** of each of them the ways in which no smaller set of upsets is a threat */
  readonly ways: ReadonlyMap<Threat, readonly ThreatWay[]>;
  /** what it took, in multiplications: the same on any machine */
  readonly work: number;
  readonly completeTo: number;
  /** false where the loads' models did not settle after some set, and constant impedance stands in */
  readonly settled: boolean;
}

/** How far a search goes, and how. */
interface SearchOptions {
  readonly mostSetsOneByOne?: number;
  readonly mostWork?: number;
  readonly mostStrength?: number;
}

/**
 * All threats to a work point, of strength up to 3: every set that is minimal among those that feed it, that induce it or
 * that reach the exposure limit; one entry for each such set and conductor. Whoever asks for less than `mostStrength` 3
 * gets those up to that strength alone; without `bodies` the current through a body is left infinite, not worked out.
 */
export function threatsTo(
  question: Question,
  { bodies = true, ...options }: SearchOptions & { readonly bodies?: boolean } = {},
): FoundThreats {
  const { upsets, ask, minimal, completeTo, spent } = searched(question, options);
  const { decide, bodyAmps } = ask;
  const ways = entries(question, upsets, minimal, {
    decide,
    bodyAmps: bodies ? bodyAmps : (set) => decide(set).map(() => Infinity),
  });
  return {
    threats: [...ways.keys()].sort(byStrength),
    ways,
    completeTo,
    settled: ask.settled(),
    work: ask.work() + spent,
  };
}

/** What of a threat a verdict and a margin rest on. */
export type ThreatSide = Pick<Threat, "conductor" | "strength" | "exposureVolts">;

/** Threats to a work point of which it is known on which side of the limits they are. */
export interface FoundSides extends Pick<FoundThreats, "work" | "completeTo"> {
  readonly threats: readonly ThreatSide[];
}

/**
 * The same threats, but their figures as they were proposed: on the right side of the limits, by the bands within which a
 * proposal is asked plainly, and good for nothing else. That spares a solution of the whole drawing for each of them.
 */
export function sidesOfThreats(question: Question, options: SearchOptions = {}): FoundSides {
  const { upsets, ask, minimal, completeTo, spent } = searched(question, options);
  const threats = threatened(minimal, question.settings, ({ outcome }) => outcome).flatMap(({ set, hit }) => {
    ask.spare(set);
    return hit.map(({ outcome: { letter, exposureVolts } }) => ({
      conductor: letter,
      strength: strengthOf(set.map((index) => upsets[index]!)),
      exposureVolts,
    }));
  });
  return { threats, completeTo, work: ask.work() + spent };
}

/** The minimal sets of a question, how they were asked, and what that took beside what was asked plainly, in multiplications. */
function searched(
  question: Question,
  {
    mostSetsOneByOne = MOST_SETS_ASKED_ONE_BY_ONE,
    mostWork = MOST_WORK,
    mostStrength = MOST_STRENGTH,
  }: SearchOptions,
) {
  const { system, settings } = question;
  const upsets = upsetsOf(system, settings);
  const ask = askFast(question, upsets);
  if (mostStrength === MOST_STRENGTH) latestAbout(system).latest = undefined;
  if (mostStrength < MOST_STRENGTH || countSets(upsets) <= mostSetsOneByOne) {
    const minimal = askEach(upsets, settings, ask.propose, mostStrength);
    return { upsets, ask, minimal, completeTo: MOST_STRENGTH, spent: 0 };
  }
  const search = new Search(question, upsets, ask, mostWork);
  const completeTo = search.run();
  return { upsets, ask, minimal: search.minimal, completeTo, spent: search.work };
}

/** The same by building and solving the whole drawing for every set: brute force, to hold the fast way against. */
export function threatsByBruteForce(question: Question): Threat[] {
  const { system, settings } = question;
  const upsets = upsetsOf(system, settings);
  const { plain, bodyAmps } = askPlainly(question, upsets);
  const outcomes = [...setsUpTo(upsets)].map((set): FoundSet => ({ set, outcome: plain(set) }));
  const minimal = new MinimalSets(upsets);
  for (const { set, outcome } of outcomes)
    minimal.add(set, outcome, minimal.uncovered(set), settings.exposureLimitVolts);
  return [...entries(question, upsets, minimal, { decide: plain, bodyAmps }).keys()].sort(byStrength);
}

/** What sets of upsets do, by solving the whole drawing after each. */
function askPlainly(
  question: Question,
  upsets: readonly DrawnUpset[],
): { readonly plain: AskOutcome; readonly bodyAmps: (set: UpsetSet) => readonly number[] } {
  /** The drawing after the set asked for last: what a body carries is asked right after the volts, of the same solutions. */
  let last: { readonly key: number | string; readonly system: System } | undefined;
  const systemAfter = (set: UpsetSet): System => {
    const key = keyOf(set);
    if (last?.key !== key)
      last = {
        key,
        system: afterUpsets(
          question.system,
          set.map((it) => upsets[it]!),
        ),
      };
    return last.system;
  };
  return {
    plain: (set) => outcomeIn({ ...question, system: systemAfter(set) }),
    bodyAmps: (set) =>
      bodyAmpsOf(
        { ...question, system: systemAfter(set) },
        { ohms: question.settings.bodyOhms, loads: "either" },
      ),
  };
}

/** What was worked out about a question. */
interface WorkedOut {
  readonly key: string;
  readonly lowRank: LowRank;
  /** the same of the drawing with one neutral together again, by the upset that joins it */
  readonly rejoined: Map<number, LowRank>;
  readonly quick: Map<number | string, Outcome | undefined>;
  readonly plain: Map<number | string, Outcome>;
}

/**
 * The last question about a drawing that was asked up to less than all: who asks it again, up to more strength, goes on from
 * what is known. Once all is answered it is let go: the answer itself is remembered, and this takes far more memory.
 */
const latestAbout = perObject((_system: System): { latest?: WorkedOut | undefined } => ({}));

/** What of a question tells it from any other about the same system. */
export const keyOfQuestion = ({ settings, workPoint }: Question): string =>
  JSON.stringify([settings, workPoint.at, workPoint.conductors]);

function workedOutOf(question: Question, upsets: readonly DrawnUpset[]): WorkedOut {
  const about = latestAbout(question.system);
  const key = keyOfQuestion(question);
  if (about.latest?.key !== key)
    about.latest = {
      key,
      lowRank: new LowRank(question, upsets),
      rejoined: new Map(),
      quick: new Map(),
      plain: new Map(),
    };
  return about.latest;
}

interface FastAsk {
  readonly lowRank: LowRank;
  /** how many sets had to be asked plainly so far, and what one of them takes, in multiplications */
  readonly asked: () => number;
  readonly costOfAll: number;
  /** what asking plainly all that needs it takes, spared or not, in multiplications: the same on any machine */
  readonly work: () => number;
  /** counts a set of which nobody wants the figures as if they had been asked for: a faster way makes no other answer */
  readonly spare: (set: UpsetSet) => void;
  /** about what a set does that comes nowhere near a limit and feeds nothing; nothing of any other */
  readonly estimate: (set: UpsetSet) => Outcome | undefined;
  /** quick, and right wherever loads are impedances */
  readonly propose: AskOutcome;
  /** right with every load's own model */
  readonly decide: AskOutcome;
  /** current through a body at each conductor, in circuit [A] */
  readonly bodyAmps: (set: UpsetSet) => readonly number[];
  /** whether the loads' models settled after every set that was asked plainly */
  readonly settled: () => boolean;
}

function askFast(question: Question, upsets: readonly DrawnUpset[]): FastAsk {
  const { system, settings } = question;
  const plainly = askPlainly(question, upsets);
  const workedOut = workedOutOf(question, upsets);
  const { lowRank } = workedOut;
  // What an answer takes is the same whatever was known before.
  const asked = new Map<number | string, Outcome>();
  const spared = new Set<number | string>();
  const estimates = new Map<number | string, Outcome | undefined>();
  const plain: AskOutcome = (set) => {
    const key = keyOf(set);
    const outcome = asked.get(key) ?? workedOut.plain.get(key) ?? plainly.plain(set);
    asked.set(key, outcome);
    workedOut.plain.set(key, outcome);
    return outcome;
  };
  // Larger sets are asked once and are many.
  const quickly = (set: UpsetSet): Outcome | undefined => {
    if (set.length > 1) return lowRank.outcomeAfter(set);
    const key = keyOf(set);
    if (!workedOut.quick.has(key)) workedOut.quick.set(key, lowRank.outcomeAfter(set));
    return workedOut.quick.get(key);
  };
  const near = (outcome: Outcome, band: number) =>
    outcome.some(
      ({ volts, exposureVolts }) =>
        isNear(volts, settings.hazardVolts, band) || isNear(exposureVolts, settings.exposureLimitVolts, band),
    );
  // Once a neutral is together again the rest of a set is asked as of any drawing, which has all upsets but that one.
  const rejoinedQuickly = (set: UpsetSet): Outcome | undefined => {
    const [neutral, ...more] = set.filter((index) => rejoinsNeutral(upsets[index]!));
    if (neutral === undefined || more.length > 0 || set.length < 2) return undefined;
    let after = workedOut.rejoined.get(neutral);
    if (after === undefined) {
      const joined = afterUpsets(system, [upsets[neutral]!]);
      after = new LowRank({ ...question, system: joined }, upsetsOf(joined, settings));
      workedOut.rejoined.set(neutral, after);
    }
    const left = set.filter((index) => index !== neutral);
    spared.add(keyOf(set));
    return after.outcomeAfter(left.map((index) => (index > neutral ? index - 1 : index)));
  };
  const costOfAll = COST_OF_A_NODE * circuitOf(system).nodeCount;
  const isQuicklyDecided = (set: UpsetSet) => lowRank.isExact && !lowRank.isRough(set);
  return {
    lowRank,
    asked: () => asked.size,
    costOfAll,
    work: () => (1 + new Set([...asked.keys(), ...spared]).size) * costOfAll,
    spare: (set) => {
      if (!isQuicklyDecided(set)) spared.add(keyOf(set));
    },
    estimate: (set) => {
      // Two are asked for by themselves, and again beside what a third adds.
      const key = keyOf(set);
      if (set.length < 3 && estimates.has(key)) return estimates.get(key);
      const about = lowRank.estimateAfter(set);
      const band = FAR_BAND * (lowRank.isExact ? 1 : MODEL_BAND);
      const isFar =
        about?.every(
          ({ live, volts, exposureVolts }) =>
            live === undefined &&
            band * volts < settings.hazardVolts &&
            band * exposureVolts < settings.exposureLimitVolts,
        ) ?? false;
      const estimate = isFar ? about : undefined;
      if (set.length < 3) estimates.set(key, estimate);
      return estimate;
    },
    propose: (set) => {
      const quick = quickly(set) ?? rejoinedQuickly(set);
      return quick === undefined || near(quick, lowRank.isExact ? ROUGH_BAND : MODEL_BAND)
        ? plain(set)
        : quick;
    },
    decide: (set) => (isQuicklyDecided(set) ? (quickly(set) ?? plain(set)) : plain(set)),
    bodyAmps: (set) =>
      (isQuicklyDecided(set) ? lowRank.bodyAmpsAfter(set) : undefined) ?? plainly.bodyAmps(set),
    settled: () => [...asked.values()].every((outcome) => outcome.every((it) => it.settled)),
  };
}

const isNear = (volts: number, limit: number, band: number): boolean =>
  volts > limit / band && volts < limit * band;

const countSets = (upsets: readonly DrawnUpset[]): number => {
  const of = (strength: number) => upsets.filter((it) => it.strength === strength).length;
  const [one, two, three] = [of(1), of(2), of(3)];
  return one + (one * (one - 1)) / 2 + (one * (one - 1) * (one - 2)) / 6 + two + two * one + three;
};

function askEach(
  upsets: readonly DrawnUpset[],
  settings: Settings,
  ask: AskOutcome,
  mostStrength: number,
): MinimalSets {
  const minimal = new MinimalSets(upsets);
  for (const set of setsUpTo(upsets, mostStrength)) askOnce(set, minimal, settings, ask);
  return minimal;
}

function askOnce(set: UpsetSet, minimal: MinimalSets, settings: Settings, ask: AskOutcome): void {
  const open = minimal.open(set);
  if (open.length > 0) minimal.add(set, ask(set), open, settings.exposureLimitVolts);
}

/** A supply that starts adds to what is there; it joins nothing, so that many of them do no more than they do one by one. */
const onlyAdds = (upset: Upset): boolean => startsDrawn(upset) || startsUnknown(upset);

/** Amperes at which the weakest grounding cable of a drawing parts: from there on what supplies do is no sum [A]. */
export const leastWithstand = (system: System, settings: Settings): number =>
  Math.min(...elementsOfKind(system, "ground").map(([id]) => withstandOf(system, id, settings)));

/**
 * Many upsets, nearly always many customers or many open switches. Smaller sets come first, and what holds a set that does
 * it already is not asked. Sets of what joins or restores are asked one by one where they hang together with the work
 * point, each also with every single supply; sets with two supplies and more, and sets of what hardly touches each other,
 * only where the sum of what each does, with slack, could reach a limit or part a grounding cable.
 */
class Search {
  readonly minimal: MinimalSets;
  private readonly settings: Settings;
  private readonly relevant: Relevant;
  private readonly candidates: readonly number[];
  private readonly withstand: number;
  private readonly ownAmps = new Map<number, number>();
  private readonly asDrawn: ReturnType<typeof worstOf>;
  work = 0;

  constructor(
    question: Question,
    private readonly upsets: readonly DrawnUpset[],
    private readonly ask: FastAsk,
    private readonly mostWork: number,
  ) {
    const { system, settings } = question;
    this.settings = settings;
    this.minimal = new MinimalSets(upsets);
    this.relevant = relevantTo(question, upsets);
    this.candidates = this.relevant.upsets.filter((it) => !ask.lowRank.changesNothing(it));
    this.withstand = leastWithstand(system, settings);
    this.asDrawn = worstOf(ask.propose([]));
  }

  /** Asks; says up to which strength every threat is found. */
  run(): number {
    this.askOnce([]);
    for (const index of this.candidates) this.askOnce([index]);
    if (this.withstand < Infinity)
      for (const index of this.candidates.filter(this.adds))
        this.ownAmps.set(index, groundAmpsOf(this.about([index])));
    this.work = 0;
    for (let size = 2; size <= MOST_STRENGTH; size++)
      if (!this.askSize(size)) {
        this.askWays();
        return size - 1;
      }
    return MOST_STRENGTH;
  }

  /** What a set does, to many digits where that is far from every limit. */
  private readonly about: AskOutcome = (set) =>
    (set.length === 0 ? undefined : this.ask.estimate(set)) ?? this.ask.propose(set);

  private readonly adds = (index: number): boolean => onlyAdds(this.upsets[index]!);

  private get isSpent(): boolean {
    return this.work > this.mostWork;
  }

  private askOnce(set: UpsetSet): void {
    this.work += 1;
    const open = this.minimal.open(set);
    if (open.length === 0 || !this.relevant.connects(set)) return;
    if ((open.join() === "energized" && !this.mayEnergize(set)) || this.isSmall(set, open)) return;
    this.work += this.ask.lowRank.costOf(set);
    if (set.length > 0 && this.ask.estimate(set) !== undefined) return;
    const before = this.ask.asked();
    const outcome = this.ask.propose(set);
    const isThreat = this.minimal.add(set, outcome, open, this.settings.exposureLimitVolts);
    this.work += (this.ask.asked() - before + (isThreat ? 1 : 0)) * this.ask.costOfAll;
  }

  /** Whether a path from a source comes to a work conductor forward; where a neutral is tied reach alone does not say. */
  private mayEnergize(set: UpsetSet): boolean {
    return (
      set.some((index) => rejoinsNeutral(this.upsets[index]!)) ||
      this.ask.lowRank.reach.some((it) => it.isReachedForward(set))
    );
  }

  /** Whether upsets that hardly touch each other come nowhere near a limit together, by what each does, with slack. */
  private isSmall(set: UpsetSet, open: readonly ThreatWay[]): boolean {
    if (set.length < 2) return false;
    const { lowRank } = this.ask;
    const moved = SLACK * lowRank.mostMoved(set);
    const { hazardVolts, exposureLimitVolts } = this.settings;
    const { volts, exposure, amps } = this.asDrawn;
    return (
      (!open.includes("induced") || volts + moved < hazardVolts) &&
      (!open.includes("exposed") ||
        (exposure + 2 * moved < exposureLimitVolts &&
          amps + 2 * moved * lowRank.mostJumperSiemens < this.withstand)) &&
      moved < Infinity &&
      !lowRank.reach.some((it) => it.isReached(set) || it.isReachedForward(set))
    );
  }

  /** Asks all sets of a size; false where the work is spent before it is done. */
  private askSize(size: number): boolean {
    const grow = (set: UpsetSet, from: number, strength: number, hasSupply: boolean): void => {
      if (set.length === size) return this.askOnce(set);
      if (set.length > 0 && this.minimal.closes(set)) return;
      for (let at = from; at < this.candidates.length && !this.isSpent; at++) {
        const index = this.candidates[at]!;
        const more = strength + this.upsets[index]!.strength;
        const isSupply = this.adds(index);
        if ((isSupply && hasSupply) || more + (size - set.length - 1) > MOST_STRENGTH) continue;
        grow([...set, index], at + 1, more, hasSupply || isSupply);
      }
    };
    grow([], 0, 0, false);
    for (const base of size === 2
      ? [[]]
      : [[], ...this.candidates.filter((it) => !this.adds(it)).map((it) => [it])])
      if (!this.isSpent) this.askSupplies(base, size - base.length);
    return !this.isSpent;
  }

  /** Sets of so many supplies beside a base set, where together they could reach a limit. */
  private askSupplies(base: UpsetSet, count: number): void {
    const { minimal, settings, withstand } = this;
    if (strengthOf(base.map((it) => this.upsets[it]!)) + count > MOST_STRENGTH || minimal.closes(base))
      return;
    const worst = (of: UpsetSet) => worstOf(this.about(of));
    const alone = worst(base);
    const supplies = this.candidates.filter(this.adds).map((index) => {
      const set = inOrder([...base, index]);
      const open = minimal.open(set);
      const { volts, exposure, amps } = open.length === 0 ? alone : worst(set);
      return {
        index,
        open,
        volts: Math.abs(volts - alone.volts),
        exposure: Math.abs(exposure - alone.exposure),
        amps: Math.max(Math.abs(amps - alone.amps), this.ownAmps.get(index) ?? 0),
      };
    });
    const together = (ways: readonly ThreatWay[], of: "volts" | "exposure" | "amps", least: number): void => {
      const some = supplies
        .filter(({ open }) => ways.some((way) => open.includes(way)))
        .sort((a, b) => b[of] - a[of]);
      const grow = (chosen: UpsetSet, from: number, sum: number): void => {
        const left = count - chosen.length;
        if (left === 0) return this.askOnce(inOrder([...base, ...chosen]));
        for (let at = from; at + left <= some.length && !this.isSpent; at++) {
          // The largest come first: where the next ones do not reach it together, none after them do.
          const most = some.slice(at, at + left).reduce((total, it) => total + it[of], sum);
          if (!(SLACK * most >= least)) return;
          grow([...chosen, some[at]!.index], at + 1, sum + some[at]![of]);
        }
      };
      grow([], 0, 0);
    };
    // What energizes is a path, which no supply has only because another one runs: each was asked by itself.
    together(["fed", "induced"], "volts", settings.hazardVolts - alone.volts);
    together(["exposed"], "exposure", settings.exposureLimitVolts - alone.exposure);
    if (withstand < Infinity) together(["exposed"], "amps", withstand - alone.amps);
  }

  /** Where not all sets can be asked: at least those by which a source newly reaches. */
  private askWays(): void {
    for (const reach of this.ask.lowRank.reach)
      for (const set of reach.sets(MOST_WAYS_TOLD).sets) this.askOnce(set);
  }
}

const worstOf = (outcome: Outcome) => ({
  volts: Math.max(...outcome.map((it) => it.volts)),
  exposure: Math.max(...outcome.map((it) => it.exposureVolts)),
  amps: groundAmpsOf(outcome),
});

const groundAmpsOf = (outcome: Outcome): number => Math.max(0, ...outcome.map((it) => it.groundAmps));

/** 116 mA for the clearing time's square root through the body: the 50 kg limit of IEEE 80 and IEEE 1048 (from memory). */
export const clearingLimitVolts = ({ clearingSeconds, bodyOhms }: Settings): number =>
  (0.116 / Math.sqrt(clearingSeconds)) * bodyOhms;

const strengthOf = (upsets: readonly Upset[]): number => upsets.reduce((sum, it) => sum + it.strength, 0);

/** One entry for each minimal set and conductor, and the ways in which that set is minimal and does it to that conductor. */
function entries(
  question: Question,
  upsets: readonly DrawnUpset[],
  minimal: MinimalSets,
  { decide, bodyAmps }: Pick<FastAsk, "decide" | "bodyAmps">,
): Map<Threat, readonly ThreatWay[]> {
  const ampsOf = new Map<UpsetSet, readonly number[]>();
  const outcomeOf = ({ set }: FoundSet): Outcome => {
    const outcome = decide(set);
    ampsOf.set(set, bodyAmps(set));
    return outcome;
  };
  const threats = threatened(minimal, question.settings, outcomeOf).flatMap(({ set, hit }) => {
    const some = set.map((index) => upsets[index]!);
    return hit.map(
      ({ outcome, nth, ways }) => [entry(question, some, outcome, ampsOf.get(set)![nth]!), ways] as const,
    );
  });
  return new Map(threats);
}

/** The order in which threats are told: by strength, then by the ids of their upsets. */
export const byStrength = (a: Threat, b: Threat): number => a.strength - b.strength || compareIds(a, b);

/** A minimal set, and the conductors that it is a threat to, by their place among those of the work point. */
interface ThreatenedBy {
  readonly set: UpsetSet;
  readonly hit: readonly {
    readonly outcome: ConductorOutcome;
    readonly nth: number;
    readonly ways: readonly ThreatWay[];
  }[];
}

/** What each minimal set is a threat to, by the outcomes that are asked for here. */
function threatened(
  minimal: MinimalSets,
  { exposureLimitVolts }: Settings,
  outcomeOf: (found: FoundSet) => Outcome,
): ThreatenedBy[] {
  const some = new Map<string, { found: FoundSet; ways: ThreatWay[] }>();
  for (const way of WAYS)
    for (const found of minimal.found[way]) {
      const key = found.set.join();
      const known = some.get(key);
      if (known === undefined) some.set(key, { found, ways: [way] });
      else known.ways.push(way);
    }
  return [...some.values()].map(({ found, ways }) => ({
    set: found.set,
    hit: outcomeOf(found)
      .map((outcome, nth) => ({
        outcome,
        nth,
        ways: ways.filter((way) => isBy(way, outcome, exposureLimitVolts)),
      }))
      .filter((it) => it.ways.length > 0),
  }));
}

function entry(
  question: Question,
  upsets: readonly DrawnUpset[],
  outcome: ConductorOutcome,
  bodyAmps: number,
): Threat {
  const { source, path } = feedOf(question, upsets, outcome);
  return {
    conductor: outcome.letter,
    source,
    strength: strengthOf(upsets),
    volts: outcome.volts,
    exposureVolts: outcome.exposureVolts,
    exposureToEarthVolts: outcome.exposureToEarthVolts,
    bodyMilliamps: 1000 * bodyAmps,
    groundAmps: outcome.groundAmps,
    clearingLimitVolts: clearingLimitVolts(question.settings),
    upsets: upsets.map(({ kind, element, phase, strength }) => ({
      kind,
      element,
      ...(phase === undefined ? {} : { phase }),
      strength,
    })),
    path,
  };
}

/** What reaches the conductor after these upsets, grounds lifted or else in place, and by which elements. */
function feedOf(
  { system, workPoint }: Question,
  upsets: readonly DrawnUpset[],
  { letter }: ConductorOutcome,
): { source: ElementId | null; path: ElementId[] } {
  const circuit = circuitOf(system);
  const node = circuit.nodeOf.get(conductorId(workPoint.at, letter))!;
  const standing = standingAfter(
    circuit,
    standingOf(circuit),
    upsets.map((it) => effectOf(circuit, it)),
  );
  for (const groundsLifted of [true, false]) {
    const reach = reachOf(circuit, standing, { groundsLifted });
    if (reach.how[node] !== 0)
      return {
        source: circuit.elementIds[sourceOf(circuit, reach, node)]!,
        path: pathTo(circuit, reach, node),
      };
  }
  return { source: null, path: [] };
}

function compareIds(a: Threat, b: Threat): number {
  const key = (threat: Threat) =>
    threat.upsets.map(({ element, phase, kind }) => `${element} ${phase ?? ""} ${kind}`);
  const [one, other] = [key(a), key(b)];
  for (let index = 0; index < Math.max(one.length, other.length); index++) {
    const [left, right] = [one[index] ?? "", other[index] ?? ""];
    if (left !== right) return left < right ? -1 : 1;
  }
  return a.conductor < b.conductor ? -1 : a.conductor > b.conductor ? 1 : 0;
}

/** What lifts the work conductors above earth: the least set of upsets; or whether all sets could be asked. */
export type StepTouch = { readonly upsets: readonly Upset[]; readonly volts: number } | "none" | "not-known";

/** The least of what was found of each drawing that may stand, of the same strength the one that lifts most. */
export function worstStepTouch(found: readonly StepTouch[]): StepTouch {
  const lifts = found.filter((it) => typeof it !== "string");
  const [worst] = lifts.sort((a, b) => strengthOf(a.upsets) - strengthOf(b.upsets) || b.volts - a.volts);
  return worst ?? (found.includes("not-known") ? "not-known" : "none");
}

/** The least set of upsets of strength 0 to 2, threat or not, that lifts the work conductors to the limit above earth. */
export function leastStepTouch(question: Question, mostWork = MOST_WORK): StepTouch {
  const { system, settings } = question;
  const upsets = upsetsOf(system, settings);
  const { decide, lowRank, asked, costOfAll } = askFast(question, upsets);
  const relevant = relevantTo(question, upsets);
  const band = lowRank.isExact ? ROUGH_BAND : MODEL_BAND;
  const limit = settings.exposureLimitVolts;
  const mayReach = (outcome: Outcome) => outcome.some((it) => !(it.exposureToEarthVolts * band < limit));
  const some = relevant.upsets.map((it) => upsets[it]!);
  const toEarth = (outcome: Outcome) => Math.max(...outcome.map((it) => it.exposureToEarthVolts));
  const withstand = leastWithstand(system, settings);
  const known = new Map<string, { readonly volts: number; readonly amps: number }>();
  /** Whether two supplies come nowhere near it by what each does alone, with slack, as in the search for threats. */
  const areSmall = (set: UpsetSet) => {
    const [drawn, ...each] = [[], ...set.map((it) => [it])].map((it) => known.get(it.join()));
    if (set.length < 2 || !set.every((it) => onlyAdds(upsets[it]!))) return false;
    if (drawn === undefined || each.includes(undefined)) return false;
    const reached = (of: "volts" | "amps") =>
      each.reduce((sum, it) => sum + SLACK * Math.abs(it![of] - drawn[of]), drawn[of]);
    return reached("volts") < limit && reached("amps") <= withstand;
  };
  let work = 0;
  for (let strength = 0; strength <= 2; strength++)
    for (const chosen of setsUpTo(some, strength)) {
      if (chosen.reduce((sum, it) => sum + some[it]!.strength, 0) !== strength) continue;
      const set = chosen.map((it) => relevant.upsets[it]!);
      if ((work += 1 + lowRank.costOf(set)) + asked() * costOfAll > mostWork) return "not-known";
      if (!relevant.connects(set) || areSmall(set)) continue;
      const quick = lowRank.outcomeAfter(set);
      if (quick !== undefined && set.length < 2)
        known.set(set.join(), { volts: toEarth(quick), amps: groundAmpsOf(quick) });
      if (quick !== undefined && !mayReach(quick)) continue;
      const volts = toEarth(decide(set));
      if (volts >= limit) return { upsets: set.map((it) => upsets[it]!), volts };
    }
  return "none";
}
