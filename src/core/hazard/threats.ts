import type { Settings, System, WorkPoint } from "../document";
import { circuitOf, pathTo, reachOf, sourceOf, standingOf } from "../network";
import { conductorId, type ElementId } from "../terms";
import { LowRank } from "./lowRank";
import { type ConductorOutcome, type Outcome, outcomeAfter, withstandOf } from "./outcome";
import {
  type FoundSet,
  inOrder,
  isExposed,
  MinimalSets,
  MOST_STRENGTH,
  setsUpTo,
  type UpsetSet,
  type Way,
  WAYS,
} from "./search";
import type { Threat, Upset } from "./types";
import { type DrawnUpset, effectOf, standingAfter, upsetsOf } from "./upsets";

/** Up to so many sets are each asked; above it, sets of small supplies are ruled out by what they do one by one. */
const MOST_SETS_ASKED_ONE_BY_ONE = 600;

/** How a set of upsets is asked for its outcome. */
export type Ask = (set: UpsetSet) => Outcome;

/**
 * All threats to a work point, of strength up to 3: every set that is minimal among those that feed it, that induce it or
 * that reach the exposure limit; one entry for each such set and conductor.
 */
export function threatsTo(
  system: System,
  settings: Settings,
  workPoint: WorkPoint,
  mostSetsOneByOne = MOST_SETS_ASKED_ONE_BY_ONE,
): Threat[] {
  const upsets = upsetsOf(system, settings);
  const ask = askFast(system, settings, workPoint, upsets);
  const minimal =
    countSets(upsets) <= mostSetsOneByOne
      ? askEach(upsets, settings, ask.propose)
      : askByParts(upsets, settings, ask.propose, leastWithstand(system, settings));
  return entries(system, settings, workPoint, upsets, minimal, ask.decide);
}

/** The same by building and solving the whole drawing for every set: brute force, to hold the fast way against. */
export function threatsByBruteForce(system: System, settings: Settings, workPoint: WorkPoint): Threat[] {
  const upsets = upsetsOf(system, settings);
  const ask: Ask = (set) =>
    outcomeAfter(
      system,
      settings,
      workPoint,
      set.map((it) => upsets[it]!),
    );
  const outcomes = [...setsUpTo(upsets)].map((set): FoundSet => ({ set, outcome: ask(set) }));
  const minimal = new MinimalSets(upsets);
  for (const { set, outcome } of outcomes)
    minimal.add(set, outcome, minimal.uncovered(set), settings.exposureLimitVolts);
  return entries(system, settings, workPoint, upsets, minimal, ask);
}

/** How near to a limit a proposal on constant-impedance loads may come before the loads' own models are asked. */
const MODEL_BAND = 3;

/** The same where loads are impedances: what floats is known to a few digits only until it is asked plainly. */
const ROUGH_BAND = 1.01;

interface FastAsk {
  /** quick, and right wherever loads are impedances */
  readonly propose: Ask;
  /** right with every load's own model */
  readonly decide: Ask;
}

function askFast(
  system: System,
  settings: Settings,
  workPoint: WorkPoint,
  upsets: readonly DrawnUpset[],
): FastAsk {
  const plain: Ask = (set) =>
    outcomeAfter(
      system,
      settings,
      workPoint,
      set.map((it) => upsets[it]!),
    );
  const lowRank = new LowRank(system, settings, workPoint, upsets);
  const near = (outcome: Outcome, band: number) =>
    outcome.some(
      ({ volts, exposureVolts }) =>
        isNear(volts, settings.hazardVolts, band) || isNear(exposureVolts, settings.exposureLimitVolts, band),
    );
  return {
    propose: (set) => {
      const quick = lowRank.outcomeAfter(set);
      return quick === undefined || near(quick, lowRank.isExact ? ROUGH_BAND : MODEL_BAND)
        ? plain(set)
        : quick;
    },
    decide: (set) =>
      lowRank.isExact && !lowRank.isRough(set) ? (lowRank.outcomeAfter(set) ?? plain(set)) : plain(set),
  };
}

const isNear = (volts: number, limit: number, band: number): boolean =>
  volts > limit / band && volts < limit * band;

const countSets = (upsets: readonly DrawnUpset[]): number => {
  const of = (strength: number) => upsets.filter((it) => it.strength === strength).length;
  const [one, two, three] = [of(1), of(2), of(3)];
  return one + (one * (one - 1)) / 2 + (one * (one - 1) * (one - 2)) / 6 + two + two * one + three;
};

function askEach(upsets: readonly DrawnUpset[], settings: Settings, ask: Ask): MinimalSets {
  const minimal = new MinimalSets(upsets);
  for (const set of setsUpTo(upsets)) askOnce(set, minimal, settings, ask);
  return minimal;
}

function askOnce(set: UpsetSet, minimal: MinimalSets, settings: Settings, ask: Ask): void {
  const open = minimal.open(set);
  if (open.length > 0) minimal.add(set, ask(set), open, settings.exposureLimitVolts);
}

/** A supply that starts adds to what is there; it joins nothing, so that many of them do no more than they do one by one. */
const onlyAdds = ({ kind }: Upset): boolean => kind === "start" || kind === "start-unknown";

/** Slack on the sum of what supplies do one by one: capacitance can make two do more than the sum, never this much. */
const SLACK = 3;

/** Amperes at which the weakest grounding cable of a drawing parts: from there on what supplies do is no sum [A]. */
const leastWithstand = (system: System, settings: Settings): number =>
  Math.min(
    ...Object.entries(system.elements).map(([id, { kind }]) =>
      kind === "ground" ? withstandOf(system, id, settings) : Infinity,
    ),
  );

/**
 * Many upsets are nearly always many customers. Sets of what joins or restores are asked one by one, each also with every
 * single supply; sets with two supplies and more only where the sum of what each does, with slack, could reach a limit or part a grounding cable.
 */
function askByParts(
  upsets: readonly DrawnUpset[],
  settings: Settings,
  ask: Ask,
  withstand: number,
): MinimalSets {
  const minimal = new MinimalSets(upsets);
  const all = upsets.map((_, index) => index);
  const adding = all.filter((index) => onlyAdds(upsets[index]!));
  const joining = all.filter((index) => !onlyAdds(upsets[index]!));
  const strengthOf = (set: UpsetSet): number => set.reduce((sum, it) => sum + upsets[it]!.strength, 0);
  const joiningSets = [...setsUpTo(joining.map((it) => upsets[it]!))].map((set) =>
    set.map((it) => joining[it]!),
  );
  const bySize = (size: number) => joiningSets.filter((set) => set.length === size);
  const ownAmps = new Map(
    withstand === Infinity ? [] : adding.map((index) => [index, groundAmpsOf(ask([index]))] as const),
  );
  const grounds = { withstand, ownAmps };

  for (let size = 0; size <= MOST_STRENGTH; size++) {
    for (const set of bySize(size)) askOnce(set, minimal, settings, ask);
    if (size === 0) for (const index of adding) askOnce([index], minimal, settings, ask);
    for (const base of bySize(size)) {
      if (size > 0)
        for (const index of adding) {
          const set = inOrder([...base, index]);
          if (strengthOf(set) <= MOST_STRENGTH) askOnce(set, minimal, settings, ask);
        }
      askSupplies(base, adding, upsets, minimal, settings, ask, grounds);
    }
  }
  return minimal;
}

const groundAmpsOf = (outcome: Outcome): number => Math.max(0, ...outcome.map((it) => it.groundAmps));

/** What grounding cables withstand, and what each supply alone drives through them [A]. */
interface Grounds {
  readonly withstand: number;
  readonly ownAmps: ReadonlyMap<number, number>;
}

/** Sets of two or three supplies beside a base set, where together they could reach a limit. */
function askSupplies(
  base: UpsetSet,
  adding: readonly number[],
  upsets: readonly DrawnUpset[],
  minimal: MinimalSets,
  settings: Settings,
  ask: Ask,
  { withstand, ownAmps }: Grounds,
): void {
  const room = MOST_STRENGTH - base.reduce((sum, it) => sum + upsets[it]!.strength, 0);
  if (room < 2) return;
  const worst = (outcome: Outcome) => ({
    volts: Math.max(...outcome.map((it) => it.volts)),
    exposure: Math.max(...outcome.map((it) => it.exposureVolts)),
    amps: groundAmpsOf(outcome),
  });
  if (minimal.open(base).length === 0) return;
  const alone = worst(ask(base));
  const left = adding.filter((index) => minimal.open(inOrder([...base, index])).length > 0);
  const gains = left.map((index) => {
    const { volts, exposure, amps } = worst(ask(inOrder([...base, index])));
    return {
      index,
      volts: Math.abs(volts - alone.volts),
      exposure: Math.abs(exposure - alone.exposure),
      amps: Math.max(Math.abs(amps - alone.amps), ownAmps.get(index) ?? 0),
    };
  });
  const open = minimal.open(base);
  const reaches = (chosen: readonly (typeof gains)[number][]): boolean => {
    const sum = (of: "volts" | "exposure" | "amps") =>
      SLACK * chosen.reduce((total, it) => total + it[of], 0);
    return (
      ((open.includes("fed") || open.includes("induced")) &&
        alone.volts + sum("volts") >= settings.hazardVolts) ||
      (open.includes("exposed") &&
        (alone.exposure + sum("exposure") >= settings.exposureLimitVolts ||
          alone.amps + sum("amps") > withstand))
    );
  };
  const top = (of: "volts" | "exposure" | "amps") =>
    [...gains].sort((a, b) => b[of] - a[of]).slice(0, Math.min(room, 3));
  if (!reaches(top("volts")) && !reaches(top("exposure")) && !reaches(top("amps"))) return;
  gains.forEach((one, i) =>
    gains.slice(i + 1).forEach((two, j) => {
      if (reaches([one, two])) askOnce(inOrder([...base, one.index, two.index]), minimal, settings, ask);
      if (room < 3) return;
      for (const three of gains.slice(i + j + 2))
        if (reaches([one, two, three]))
          askOnce(inOrder([...base, one.index, two.index, three.index]), minimal, settings, ask);
    }),
  );
}

/** 116 mA for the clearing time's square root through the body: the 50 kg limit of IEEE 80 and IEEE 1048 (from memory). */
export const clearingLimitVolts = ({ clearingSeconds, bodyOhms }: Settings): number =>
  (0.116 / Math.sqrt(clearingSeconds)) * bodyOhms;

/** One entry for each minimal set and conductor, sorted by strength and then by the upsets' ids. */
function entries(
  system: System,
  settings: Settings,
  workPoint: WorkPoint,
  upsets: readonly DrawnUpset[],
  minimal: MinimalSets,
  ask: Ask,
): Threat[] {
  const ways = new Map<string, { set: UpsetSet; ways: Set<Way> }>();
  for (const way of WAYS)
    for (const { set } of minimal.found[way]) {
      const known = ways.get(set.join()) ?? { set, ways: new Set<Way>() };
      known.ways.add(way);
      ways.set(set.join(), known);
    }
  const threats = [...ways.values()].flatMap(({ set, ways: found }) => {
    const outcome = ask(set);
    return outcome
      .filter((it) => [...found].some((way) => isBy(way, it, settings)))
      .map((it) =>
        entry(
          system,
          settings,
          workPoint,
          set.map((index) => upsets[index]!),
          it,
        ),
      );
  });
  return threats.sort((a, b) => a.strength - b.strength || compareIds(a, b));
}

const isBy = (way: Way, outcome: ConductorOutcome, settings: Settings): boolean =>
  way === "exposed" ? isExposed(outcome, settings.exposureLimitVolts) : outcome.live === way;

function entry(
  system: System,
  settings: Settings,
  workPoint: WorkPoint,
  upsets: readonly DrawnUpset[],
  outcome: ConductorOutcome,
): Threat {
  const { source, path } = feedOf(system, workPoint, upsets, outcome);
  return {
    conductor: outcome.letter,
    source,
    strength: upsets.reduce((sum, it) => sum + it.strength, 0),
    volts: outcome.volts,
    exposureVolts: outcome.exposureVolts,
    exposureToEarthVolts: outcome.exposureToEarthVolts,
    bodyMilliamps: (1000 * outcome.exposureVolts) / settings.bodyOhms,
    groundAmps: outcome.groundAmps,
    clearingLimitVolts: clearingLimitVolts(settings),
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
  system: System,
  workPoint: WorkPoint,
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

/** The least set of upsets of strength 0 to 2, threat or not, that lifts the work conductors to the limit above earth. */
export function leastStepTouch(
  system: System,
  settings: Settings,
  workPoint: WorkPoint,
): { readonly upsets: readonly Upset[]; readonly volts: number } | undefined {
  const upsets = upsetsOf(system, settings);
  const { decide } = askFast(system, settings, workPoint, upsets);
  const sets = [...setsUpTo(upsets, 2)].map((set) => ({
    set,
    strength: set.reduce((sum, it) => sum + upsets[it]!.strength, 0),
  }));
  for (const { set } of sets.sort((a, b) => a.strength - b.strength)) {
    const volts = Math.max(...decide(set).map((it) => it.exposureToEarthVolts));
    if (volts >= settings.exposureLimitVolts) return { upsets: set.map((it) => upsets[it]!), volts };
  }
  return undefined;
}
