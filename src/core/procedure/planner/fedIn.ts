import type { System } from "../../document";
import { circuitOf, REACH, reachOf, standingOf } from "../../network";
import type { ConductorId } from "../../terms";

/** What has the supply's own volts in a drawing. */
export function fedIn(system: System): (id: ConductorId) => boolean {
  const circuit = circuitOf(system);
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: false });
  return (id) => (how[circuit.nodeOf.get(id) ?? -1]! & REACH.forward) !== 0;
}
