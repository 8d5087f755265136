import { type Settings, type System, type WorkPoint } from "../document";
import { type Circuit, circuitOf, EARTH } from "../network";
import { type Solution, solutionOf, voltsAt } from "../phasor";
import { withstandAmps } from "../reference";
import { complex, conductorId, type Letter, lettersOf } from "../terms";
import { afterUpsets, type DrawnUpset } from "./upsets";
import { liveBy, viewOf } from "./view";

/** What one conductor of a work point would be after some upsets. */
export interface ConductorOutcome {
  readonly letter: Letter;
  /** with every temporary ground lifted */
  readonly live: "fed" | "induced" | undefined;
  /** with every temporary ground lifted, the higher of the two solutions [V] */
  readonly volts: number;
  /** against the neutral at the work point, grounds in place [V] */
  readonly exposureVolts: number;
  readonly exposureToEarthVolts: number;
  /** largest current in a grounding jumper [A] */
  readonly groundAmps: number;
}

export type Outcome = readonly ConductorOutcome[];

/** Letters of the conductors of a work point. */
export const conductorsOf = ({ conductors }: WorkPoint): Letter[] => [...lettersOf(conductors)] as Letter[];

/**
 * What a set of upsets would do to a work point, by building and solving the whole drawing as it would then stand. The
 * plain way: slow, and what the fast one is held against.
 */
export function outcomeAfter(
  system: System,
  settings: Settings,
  workPoint: WorkPoint,
  upsets: readonly DrawnUpset[],
): Outcome {
  const after = afterUpsets(system, upsets);
  const circuit = circuitOf(after);
  const lifted = viewOf(circuit, settings, { groundsLifted: true });
  const inPlace = exposuresOf(after, settings, workPoint);
  return conductorsOf(workPoint).map((letter, index) => {
    const node = circuit.nodeOf.get(conductorId(workPoint.at, letter))!;
    return {
      letter,
      live: liveBy(lifted.stateIfFed(node)),
      volts: lifted.volts(node),
      ...inPlace[index]!,
    };
  });
}

interface Exposure {
  readonly exposureVolts: number;
  readonly exposureToEarthVolts: number;
  readonly groundAmps: number;
}

/** Exposures at a work point as the drawing stands, grounds in place; jumpers that cannot carry their current part first. */
export function exposuresOf(system: System, settings: Settings, workPoint: WorkPoint): Exposure[] {
  const circuit = circuitOf(system);
  const solutions = bothSolutions(circuit);
  const jumpers = jumperAmps(circuit, solutions);
  const groundAmps = Math.max(0, ...jumpers.values());
  const parted = partedSets(system, circuit, jumpers, settings);
  if (parted.length > 0) {
    const elements = Object.fromEntries(
      Object.entries(system.elements).filter(([id]) => !parted.includes(id)),
    );
    return exposuresOf({ ...system, elements } as System, settings, workPoint).map((it) => ({
      ...it,
      groundAmps: Math.max(groundAmps, it.groundAmps),
    }));
  }
  const reference = referenceNode(circuit, settings, workPoint.at);
  return conductorsOf(workPoint).map((letter) => {
    const node = circuit.nodeOf.get(conductorId(workPoint.at, letter))!;
    const against = (other: number) =>
      Math.max(
        ...solutions.map((solution) =>
          solution.singularAt === -1
            ? complex.magnitude(complex.subtract(voltsAt(solution, node), voltsAt(solution, other)))
            : Infinity,
        ),
      );
    return { exposureVolts: against(reference), exposureToEarthVolts: against(EARTH), groundAmps };
  });
}

const bothSolutions = (circuit: Circuit): readonly [Solution, Solution] => [
  solutionOf(circuit, { loads: true, grounds: true, faults: true }),
  solutionOf(circuit, { loads: false, grounds: true, faults: true }),
];

/** The neutral at a point where it has one that is tied to earth, else earth. */
export function referenceNode(circuit: Circuit, settings: Settings, point: string): number {
  const neutral = circuit.nodeOf.get(conductorId(point, "N"));
  if (neutral === undefined) return EARTH;
  return viewOf(circuit, settings, { groundsLifted: false }).reach.tied[neutral] === 1 ? neutral : EARTH;
}

/** Largest current in a jumper of each ground set, in the higher of the solutions [A]. */
function jumperAmps(circuit: Circuit, solutions: readonly Solution[]): Map<number, number> {
  const amps = new Map<number, number>();
  for (const { element, part, from, to } of circuit.branches) {
    if (part.role !== "ground" || to === EARTH) continue;
    for (const solution of solutions) {
      const across = complex.subtract(voltsAt(solution, from), voltsAt(solution, to));
      amps.set(
        element,
        Math.max(amps.get(element) ?? 0, complex.magnitude(complex.times(part.siemens, across))),
      );
    }
  }
  return amps;
}

/** Ground sets whose jumpers part under their current in the clearing time. */
function partedSets(
  system: System,
  circuit: Circuit,
  jumpers: ReadonlyMap<number, number>,
  settings: Settings,
): string[] {
  return [...jumpers].flatMap(([element, amps]) => {
    const id = circuit.elementIds[element]!;
    return amps > withstandOf(system, id, settings) ? [id] : [];
  });
}

/** What a set's cable withstands for the clearing time [A]; infinite where the drawing does not say which cable. */
export function withstandOf(system: System, id: string, settings: Settings): number {
  const cable = (system.elements as Record<string, { cable?: unknown }>)[id]?.cable;
  if (typeof cable !== "string") return Infinity;
  return withstandAmps(cable, settings.clearingSeconds) ?? Infinity;
}
