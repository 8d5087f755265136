import { type CircuitElement, deviceOf } from "../devices";
import { complete, type StillhotDocument, type System } from "../document";
import { type Circuit, circuitOf, reachOf, standingOf } from "../network";
import {
  ampsAtPoint,
  AS_DRAWN,
  type ElementAmps,
  elementAmps,
  solutionOf,
  voltsAt,
  worstAt,
} from "../phasor";
import { complex, type ConductorId, type ElementId, type Letter, type PointId } from "../terms";
import type { ConductorReport, ElementReport } from "./types";
import { type View } from "./view";
import { WORTH_TELLING } from "./tolerances";

/** How every conductor stands, as drawn. */
export function conductorReports(circuit: Circuit, view: View): Record<ConductorId, ConductorReport> {
  const [drawn, off] = view.solutions;
  const sources = sourcesOf(circuit);
  const reports: Record<ConductorId, ConductorReport> = {};
  circuit.conductorIds.forEach((id, node) => {
    const volts = voltsAt(drawn, node);
    const magnitude = complex.magnitude(volts);
    const worst = worstAt(drawn, node);
    reports[id] = {
      state: view.state(node),
      volts: magnitude,
      ...(worst > WORTH_TELLING * magnitude ? { voltsWorst: worst } : {}),
      voltsLoadsOff: complex.magnitude(voltsAt(off, node)),
      angleDeg: complex.angleDegrees(volts),
      sources: sources(node),
    };
  });
  return reports;
}

/** Elements that are on and reach a node, in order of id. */
function sourcesOf(circuit: Circuit): (node: number) => ElementId[] {
  const standing = standingOf(circuit);
  const on = new Set(
    circuit.emfs.flatMap(({ element }, emf) => (standing.emfOn[emf] === 1 ? [element] : [])),
  );
  const reached = [...on]
    .map((element) => ({
      id: circuit.elementIds[element]!,
      how: reachOf(circuit, standing, { groundsLifted: false, onlyFrom: element }).how,
    }))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
  return (node) => reached.filter(({ how }) => how[node] !== 0).map(({ id }) => id);
}

/** Current of every element at its first end, as drawn [A]. */
export function elementReports(system: System, circuit: Circuit): Record<ElementId, ElementReport> {
  const amps = elementAmps(solutionOf(circuit));
  const pointIndex = new Map(circuit.pointIds.map((id, index) => [id, index]));
  const reports: Record<ElementId, ElementReport> = {};
  circuit.elementIds.forEach((id, element) => {
    reports[id] = elementReport(system, circuit, amps, pointIndex, element);
  });
  return reports;
}

function elementReport(
  system: System,
  circuit: Circuit,
  amps: ElementAmps,
  pointIndex: ReadonlyMap<PointId, number>,
  element: number,
): ElementReport {
  const record = complete(system.elements[circuit.elementIds[element]!]!) as CircuitElement & {
    from?: PointId;
    at?: PointId;
    phases?: string;
  };
  const own = ampsAtPoint(circuit, amps, element, pointIndex.get((record.from ?? record.at)!) ?? -1);
  const isTwoEnded = deviceOf(record.kind).ends.length > 1;
  const magnitudes: Partial<Record<Letter, number>> = {};
  const angles: Partial<Record<Letter, number>> = {};
  for (const letter of `${record.phases ?? ""}N` as Iterable<Letter>) {
    const current = own[letter];
    if (current === undefined) continue;
    const magnitude = complex.magnitude(current);
    if (letter === "N" && !isTwoEnded && !(magnitude > 0)) continue;
    magnitudes[letter] = magnitude;
    angles[letter] = complex.angleDegrees(current);
  }
  return { amps: magnitudes, angleDeg: angles };
}

/** Amperes of one element with every load off: what still flows, such as charging, exciting and fault current. */
export function ampsLoadsOff({ system }: StillhotDocument, id: ElementId): ElementReport | undefined {
  const circuit = circuitOf(system);
  const element = circuit.elementIds.indexOf(id);
  if (element === -1) return undefined;
  const amps = elementAmps(solutionOf(circuit, { ...AS_DRAWN, loads: false }));
  const pointIndex = new Map(circuit.pointIds.map((it, index) => [it, index]));
  return elementReport(system, circuit, amps, pointIndex, element);
}
