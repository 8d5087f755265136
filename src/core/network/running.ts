import type { Emf } from "../devices";
import { perObject } from "../document";
import { type Circuit, EARTH } from "./circuit";
import { phaseIslands } from "./phaseIslands";
import { reachGraphOf, type Standing } from "./reach";

/** How a supply runs. */
export const RUNS = {
  not: 0,
  /** on volts of its own, behind its impedance */
  holding: 1,
  /** at its set output, on volts that others hold */
  following: 2,
} as const;

/** The phase conductors that a supply drives, by the islands that closed elements, unparted spans and transformers make of them. */
function islandsOf(circuit: Circuit, emf: number): number[] {
  const labels = phaseIslands(circuit);
  const { legs, star } = circuit.emfs[emf]!;
  return [...legs, star].flatMap((node) =>
    node === EARTH || circuit.letterOfNode[node] === "N" || circuit.letterOfNode[node] === ""
      ? []
      : [labels[node]!],
  );
}

/** Islands that hold volts: those of the sources that are on, and those of machines that are on and run on volts of their own. */
const held = perObject((circuit: Circuit) => {
  const bySources = new Set<number>();
  const byMachines = new Set<number>();
  circuit.emfs.forEach(({ part }, emf) => {
    if (!part.on || part.role === "contact") return;
    const islands = part.role === "utility" ? bySources : byMachines;
    if (part.withoutGrid === undefined) for (const island of islandsOf(circuit, emf)) islands.add(island);
  });
  const follows = (emf: number) =>
    islandsOf(circuit, emf).every((it) => bySources.has(it) || byMachines.has(it));
  const carriesOn = new Set(byMachines);
  circuit.emfs.forEach(({ part }, emf) => {
    if (part.on && part.withoutGrid === "carries-on" && !follows(emf))
      for (const island of islandsOf(circuit, emf)) carriesOn.add(island);
  });
  return { bySources, byMachines, carriesOn };
});

/**
 * How a supply would run with this part in its place, all else as drawn. One at a set output follows where something holds
 * the volts of every phase of it; one phase that is lost is the grid lost (IEEE 1547-2018, 6.2.2: open phase, from memory).
 */
export function runsAs(
  circuit: Circuit,
  emf: number,
  { on, withoutGrid }: Pick<Emf, "on" | "withoutGrid">,
): number {
  if (!on) return RUNS.not;
  if (withoutGrid === undefined) return RUNS.holding;
  const { bySources, byMachines, carriesOn } = held(circuit);
  const others = withoutGrid === "stops" ? carriesOn : byMachines;
  if (islandsOf(circuit, emf).every((it) => bySources.has(it) || others.has(it))) return RUNS.following;
  return withoutGrid === "stops" ? RUNS.not : RUNS.holding;
}

/** How each supply runs as drawn: one of `RUNS`. */
export const running: (circuit: Circuit) => Uint8Array = perObject((circuit: Circuit) =>
  Uint8Array.from(circuit.emfs, ({ part }, emf) => runsAs(circuit, emf, part)),
);

/** The circuit as drawn. */
export const standingOf: (circuit: Circuit) => Standing = perObject((circuit: Circuit) => ({
  edgeOn: reachGraphOf(circuit).on,
  emfOn: running(circuit).map((as) => (as === RUNS.not ? 0 : 1)),
}));
