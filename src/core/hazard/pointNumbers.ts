import { type StillhotDocument } from "../document";
import { circuitOf } from "../network";
import { type FaultAmps, faultAmpsAt } from "../phasor";
import { conductorId, type PointId } from "../terms";

/** What the details of a point show beyond the assessment. */
export interface PointNumbers {
  readonly faults: FaultAmps;
  /** nominal volts to earth of its phases; undefined where nothing says [V] */
  readonly nominalVolts: number | undefined;
}

/** Fault currents and nominal volts of a point. */
export function pointNumbers({ system }: StillhotDocument, point: PointId): PointNumbers {
  const circuit = circuitOf(system);
  const volts = (["A", "B", "C", "1", "2"] as const).flatMap((letter) => {
    const node = circuit.nodeOf.get(conductorId(point, letter));
    const across = node === undefined ? 0 : circuit.nominalVolts[node]!;
    return across === 0 ? [] : [across / (letter === "1" || letter === "2" ? 2 : Math.sqrt(3))];
  });
  return {
    faults: faultAmpsAt(circuit, point),
    nominalVolts: volts.length === 0 ? undefined : Math.max(...volts),
  };
}
