import { comesAway, isConductor, isFault } from "../../devices";
import {
  pointsOnStructure,
  savedElement,
  type StillhotDocument,
  type System,
  phasesAtPoint,
} from "../../document";
import { circuitOf, REACH, reachOf, standingOf } from "../../network";
import { conductorId, type ElementId, type Letter, partsOfConductor } from "../../terms";
import { madeSound, terminalsOfWork } from "./ending";

/**
 * How many phase conductors stay live on the structures of what is changed, of the voltage that is worked on: hands come to
 * all that hangs beside it, so that isolation lies beyond it where that leaves nobody else out.
 */
export function liveWithinReach(document: StillhotDocument, ready: System): number {
  const circuit = circuitOf(ready);
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: true });
  const voltsOf = (point: string, letter: string) =>
    circuit.nominalVolts[circuit.nodeOf.get(conductorId(point, letter as Letter)) ?? -1];
  const live = new Set<string>();
  for (const id of changed(document))
    for (const terminal of terminalsOfWork(document.system, id)) {
      const { point: own, letter: phase } = partsOfConductor(terminal);
      for (const point of pointsOnStructure(document.system, own))
        for (const letter of phasesAtPoint(document.system, point)) {
          const node = circuit.nodeOf.get(conductorId(point, letter as Letter));
          if (node === undefined || (how[node]! & REACH.forward) === 0) continue;
          if (voltsOf(point, letter) === voltsOf(own, phase)) live.add(conductorId(point, letter as Letter));
        }
    }
  return live.size;
}

/** Devices that the work changes: what is strung between structures comes to hand at its ends alone, and a clamp with its stick. */
const changed = (document: StillhotDocument): ElementId[] =>
  [...madeSound(document)].filter((id) => {
    const element = savedElement(document.system.elements, id);
    return element !== undefined && !isConductor(element) && !isFault(element) && !comesAway(element);
  });
