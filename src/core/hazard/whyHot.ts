import type { StillhotDocument } from "../document";
import { circuitOf, EDGE, REACH, reachGraphOf, reachOf, standingOf } from "../network";
import type { ConductorId, ElementId } from "../terms";

/** How one step of a path goes on: through closed metal, forward or backwards through a transformer, or across something. */
export type HotStepKind = "source" | "metallic" | "forward" | "back" | "coupling" | "ground" | "fault";

/** One step of the path by which a conductor is reached. */
export interface HotStep {
  readonly by: HotStepKind;
  readonly element: ElementId;
  /** the conductor that it comes to; nothing inside an element */
  readonly to: ConductorId | undefined;
}

/** The shortest path from one thing that supplies to a conductor. */
export interface HotWay {
  readonly source: ElementId;
  /** some of the way is against the usual direction, or across what was not meant to feed */
  readonly isBackfeed: boolean;
  readonly steps: readonly HotStep[];
}

/**
 * Why a conductor is hot as drawn: for each thing that is on and reaches it, the path, step by step. Empty where nothing
 * reaches it: then it is induced, or not hot at all.
 */
export function whyHot(document: StillhotDocument, conductor: ConductorId): HotWay[] {
  const circuit = circuitOf(document.system);
  const node = circuit.nodeOf.get(conductor);
  if (node === undefined) return [];
  const graph = reachGraphOf(circuit);
  const standing = standingOf(circuit);
  const supplying = new Set(
    circuit.emfs.flatMap(({ element }, emf) => (standing.emfOn[emf] === 1 ? [element] : [])),
  );
  return [...supplying].flatMap((from): HotWay[] => {
    const reach = reachOf(circuit, standing, { groundsLifted: false, onlyFrom: from });
    if (reach.how[node] === 0) return [];
    const isBackfeed = (reach.how[node]! & REACH.forward) === 0;
    const steps: HotStep[] = [];
    let arrival = 2 * node + (isBackfeed ? 1 : 0);
    while (reach.before[arrival]! >= 0) {
      const edge = reach.by[arrival]!;
      const at = arrival >> 1;
      const by = kindOf(graph.kind[edge]!, graph.to[edge] === at);
      const element = circuit.elementIds[graph.element[edge]!]!;
      const to = circuit.conductorIds[at];
      const last = steps.at(-1);
      // What passes through several inner places of one element is one step for a person.
      if (last?.element !== element || last.by !== by) steps.push({ by, element, to });
      arrival = reach.before[arrival]!;
    }
    const source = circuit.elementIds[from]!;
    steps.push({ by: "source", element: source, to: circuit.conductorIds[arrival >> 1] });
    return [{ source, isBackfeed, steps: steps.reverse() }];
  });
}

function kindOf(kind: number, isAlong: boolean): HotStepKind {
  switch (kind) {
    case EDGE.metallic:
      return "metallic";
    case EDGE.forward:
      return isAlong ? "forward" : "back";
    case EDGE.coupling:
      return "coupling";
    case EDGE.ground:
      return "ground";
    default:
      return "fault";
  }
}
