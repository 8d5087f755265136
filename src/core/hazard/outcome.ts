import { elementOfKind, perObject, type Settings, type System, type WorkPoint } from "../document";
import { type Circuit, circuitOf, EARTH, standingOf, tiedNeutrals } from "../network";
import { ampsThrough, type Solution, solutionOf, worstBetween } from "../phasor";
import { DEFAULT_CABLE, withstandAmps } from "../reference";
import { complex, conductorId, type Letter, lettersOf, type PointId } from "../terms";
import { bondedTo } from "./bondedTo";
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
export function outcomeAfter(
  { system, settings, workPoint }: Question,
  upsets: readonly DrawnUpset[],
): Outcome {
  const after = afterUpsets(system, upsets);
  const circuit = circuitOf(after);
  const lifted = viewOf(circuit, settings, { groundsLifted: true });
  const inPlace = exposuresOf({ system: after, settings, workPoint });
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

/** Exposures at a work point as the drawing stands, grounds in place; jumpers that cannot carry their current part first. */
export function exposuresOf({ system, settings, workPoint }: Question): Exposure[] {
  const { system: left, groundAmps } = afterParting(system, settings);
  const circuit = circuitOf(left);
  const solutions = bothSolutions(circuit);
  const bonds = bondsAt(circuit, workPoint.at);
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
  const circuit = circuitOf(afterParting(system, settings).system);
  const both = bothSolutions(circuit);
  const solutions = loads === "either" ? both : both.slice(0, 1);
  const bonds = bondsAt(circuit, workPoint.at);
  return workNodesOf(circuit, workPoint).map((node) =>
    Math.max(...solutions.flatMap((it) => bonds.map((other) => ampsThrough(it, node, other, ohms)))),
  );
}

/** Nodes that a worker at a point may be bonded to as the circuit stands. */
export const bondsAt = (circuit: Circuit, at: PointId): readonly number[] =>
  bondedTo(circuit, tiedNeutrals(circuit, standingOf(circuit)), at);

const bothSolutions = (circuit: Circuit): readonly [Solution, Solution] => [
  solutionOf(circuit, { loads: true, grounds: true, faults: true }),
  solutionOf(circuit, { loads: false, grounds: true, faults: true }),
];

interface Parted {
  readonly system: System;
  /** largest current in a jumper, parted or not [A] */
  readonly groundAmps: number;
}

const partedSystems = perObject((_system: System) => new Map<number, Parted>());

/** A drawing without the ground sets whose jumpers part under their current in the clearing time. */
function afterParting(system: System, settings: Settings): Parted {
  const known = partedSystems(system);
  const found = known.get(settings.clearingSeconds);
  if (found !== undefined) return found;
  const circuit = circuitOf(system);
  const jumpers = jumperAmps(circuit, bothSolutions(circuit));
  const groundAmps = Math.max(0, ...jumpers.values());
  const parted = [...jumpers].flatMap(([element, amps]) => {
    const id = circuit.elementIds[element]!;
    return amps > withstandOf(system, id, settings) ? [id as string] : [];
  });
  const fresh =
    parted.length === 0 ? { system, groundAmps } : withoutSets(system, parted, groundAmps, settings);
  known.set(settings.clearingSeconds, fresh);
  return fresh;
}

function withoutSets(system: System, ids: readonly string[], groundAmps: number, settings: Settings): Parted {
  const left = Object.fromEntries(Object.entries(system.elements).filter(([id]) => !ids.includes(id)));
  const after = afterParting({ ...system, elements: left } as System, settings);
  return { system: after.system, groundAmps: Math.max(groundAmps, after.groundAmps) };
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
