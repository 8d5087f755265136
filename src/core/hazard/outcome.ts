import { elementOfKind, perObject, type Settings, type System, type WorkPoint } from "../document";
import { type Circuit, circuitOf, EARTH, standingOf, tiedNeutrals } from "../network";
import { ampsThrough, type Solution, solutionOf, worstBetween } from "../phasor";
import { DEFAULT_CABLE, withstandAmps } from "../reference";
import { complex, conductorId, type Letter, lettersOf, type PointId } from "../terms";
import { bondedTo } from "./bondedTo";
import { MOST_SETS_PARTING_IN_TURN } from "./tolerances";
import { afterUpsets, type DrawnUpset } from "./upsets";
import { type LiveBy, viewOf } from "./view";
import type { Question } from "./types";

/** What one conductor of a work point would be after some upsets. */
export interface ConductorOutcome {
  readonly letter: Letter;
  /** with every temporary ground lifted */
  readonly live: LiveBy | undefined;
  /** with every temporary ground lifted, the higher of the two solutions [V] */
  readonly volts: number;
  /** against what the worker is bonded to, grounds in place [V] */
  readonly exposureVolts: number;
  readonly exposureToEarthVolts: number;
  /** largest current in a grounding jumper [A] */
  readonly groundAmps: number;
  /** false where the loads' models did not settle and constant impedance stands in */
  readonly settled: boolean;
}

/** What a set of upsets does to each conductor of a work point, in their order. */
export type Outcome = readonly ConductorOutcome[];

/** Letters of the conductors of a work point. */
export const conductorsOf = ({ conductors }: WorkPoint): Letter[] => [...lettersOf(conductors)] as Letter[];

/** Nodes of the conductors of a work point. */
export const workNodesOf = (circuit: Circuit, workPoint: WorkPoint): number[] =>
  conductorsOf(workPoint).map((letter) => circuit.nodeOf.get(conductorId(workPoint.at, letter))!);

/**
 * What a set of upsets would do to a work point, by building and solving the whole drawing as it would then stand. The
 * plain way: slow, and what the fast one is held against.
 */
export const outcomeAfter = (question: Question, upsets: readonly DrawnUpset[]): Outcome =>
  outcomeIn({ ...question, system: afterUpsets(question.system, upsets) });

/** How a work point stands in a drawing, by solving the whole of it. */
export function outcomeIn(question: Question): Outcome {
  const { system, settings, workPoint } = question;
  const circuit = circuitOf(system);
  const lifted = viewOf(circuit, settings, { groundsLifted: true });
  const inPlace = exposuresOf(question);
  const nodes = workNodesOf(circuit, workPoint);
  const settled = [...lifted.solutions, ...bothSolutions(circuit)].every((it) => it.settled);
  return conductorsOf(workPoint).map((letter, index) => ({
    letter,
    live: lifted.liveBy(nodes[index]!),
    volts: lifted.volts(nodes[index]!),
    ...inPlace[index]!,
    settled,
  }));
}

interface Exposure {
  readonly exposureVolts: number;
  readonly exposureToEarthVolts: number;
  readonly groundAmps: number;
}

/**
 * Exposures at a work point as the drawing stands, grounds in place. Jumpers that cannot carry their current part, and what
 * the worker felt until then counts as much as what they feel after: a set that parts never makes anything look better.
 */
export function exposuresOf({ system, settings, workPoint }: Question): Exposure[] {
  const stages = asSetsPart(system, settings).map((left) => exposuresIn(circuitOf(left), workPoint));
  return stages[0]!.map((_first, index) => {
    const worst = (key: keyof Exposure) => Math.max(...stages.map((it) => it[index]![key]));
    return {
      exposureVolts: worst("exposureVolts"),
      exposureToEarthVolts: worst("exposureToEarthVolts"),
      groundAmps: worst("groundAmps"),
    };
  });
}

/** The same where nothing parts. */
function exposuresIn(circuit: Circuit, workPoint: WorkPoint): Exposure[] {
  const solutions = bothSolutions(circuit);
  const bonds = bondsAt(circuit, workPoint.at);
  const groundAmps = Math.max(0, ...jumperAmps(circuit, solutions).values());
  const worst = (node: number, others: readonly number[]) =>
    Math.max(...solutions.flatMap((it) => others.map((other) => worstBetween(it, node, other))));
  return workNodesOf(circuit, workPoint).map((node) => ({
    exposureVolts: worst(node, bonds),
    exposureToEarthVolts: worst(node, [EARTH]),
    groundAmps,
  }));
}

/** Loads as drawn and off, or as drawn alone. */
export type LoadsAsked = "either" | "as-drawn";

/** Current through a body of some ohms between each conductor of a work point and what the worker is bonded to, in circuit [A]. */
export function bodyAmpsOf(
  { system, settings, workPoint }: Question,
  { ohms, loads }: { readonly ohms: number; readonly loads: LoadsAsked },
): number[] {
  const amps = asSetsPart(system, settings).map((left) => {
    const circuit = circuitOf(left);
    const both = bothSolutions(circuit);
    const solutions = loads === "either" ? both : both.slice(0, 1);
    const bonds = bondsAt(circuit, workPoint.at);
    return workNodesOf(circuit, workPoint).map((node) =>
      Math.max(...solutions.flatMap((it) => bonds.map((other) => ampsThrough(it, node, other, ohms)))),
    );
  });
  return amps[0]!.map((_first, index) => Math.max(...amps.map((it) => it[index]!)));
}

/** Nodes that a worker at a point may be bonded to as the circuit stands. */
export const bondsAt = (circuit: Circuit, at: PointId): readonly number[] =>
  bondedTo(circuit, tiedNeutrals(circuit, standingOf(circuit)), at);

const bothSolutions = (circuit: Circuit): readonly [Solution, Solution] => [
  solutionOf(circuit, { loads: true, grounds: true, faults: true }),
  solutionOf(circuit, { loads: false, grounds: true, faults: true }),
];

const stagesOfParting = perObject((_system: System) => new Map<number, readonly System[]>());

/**
 * A drawing as it stands, and as it stands after each ground set that cannot carry its current for the clearing time has
 * parted, one by one or together, in whatever order: a thinner cable only adds to these. Many that are over at once go together.
 */
function asSetsPart(system: System, settings: Settings): readonly System[] {
  const known = stagesOfParting(system);
  const found = known.get(settings.clearingSeconds);
  if (found !== undefined) return found;
  const stages = new Map<string, System>([["", system]]);
  for (const [gone, stage] of stages) {
    const circuit = circuitOf(stage);
    const over = [...jumperAmps(circuit, bothSolutions(circuit))].flatMap(([element, amps]) => {
      const id = circuit.elementIds[element]!;
      return amps > withstandOf(system, id, settings) ? [id] : [];
    });
    const next = over.length > MOST_SETS_PARTING_IN_TURN ? [over] : someOf(over);
    for (const ids of next) {
      const now = [...gone.split(" "), ...ids].filter((id) => id !== "").sort();
      if (!stages.has(now.join(" "))) stages.set(now.join(" "), withoutSets(system, now));
    }
  }
  known.set(settings.clearingSeconds, [...stages.values()]);
  return [...stages.values()];
}

/** Every choice of one or more of them. */
const someOf = (ids: readonly string[]): string[][] =>
  ids.reduce<string[][]>((some, id) => [...some, ...some.map((it) => [...it, id]), [id]], []);

function withoutSets(system: System, ids: readonly string[]): System {
  const left = Object.entries(system.elements).filter(([id]) => !ids.includes(id));
  return { ...system, elements: Object.fromEntries(left) };
}

/** Largest current in a jumper of each ground set, in the higher of the solutions, the worst over angles [A]. */
function jumperAmps(circuit: Circuit, solutions: readonly Solution[]): Map<number, number> {
  const amps = new Map<number, number>();
  for (const { element, part, from, to } of circuit.branches) {
    if (part.role !== "ground" || to === EARTH) continue;
    for (const solution of solutions) {
      const across = solution.singularAt === -1 ? worstBetween(solution, from, to) : 0;
      amps.set(element, Math.max(amps.get(element) ?? 0, complex.magnitude(part.siemens) * across));
    }
  }
  return amps;
}

/** What a set's cable withstands for the clearing time [A]; where the drawing does not say which cable, it is taken for the usual one. */
export function withstandOf(system: System, id: string, settings: Settings): number {
  const cable = elementOfKind(system, id, "ground")?.cable;
  return withstandAmps(cable ?? DEFAULT_CABLE, settings.clearingSeconds)!;
}
