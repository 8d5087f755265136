import type { System } from "../document";
import { buildCircuit } from "./buildCircuit";
import { carriedOver } from "./carryOver";
import type { Circuit } from "./circuit";

const circuits = new WeakMap<System, Circuit>();

/** The circuit asked for last: an edit nearly always leaves all but one element alone, and its circuit is made from this one. */
let last: Circuit | undefined;

/** The circuit of a system; remembered, and carried over from the last one where only settings of a few elements differ. */
export const circuitOf = (system: System): Circuit =>
  circuitAtHand(system) ?? remembered(buildCircuit(system));

/** The circuit of a system where none has to be built anew for it, which takes longer than a frame. */
export const circuitAtHand = (system: System): Circuit | undefined => {
  const known = circuits.get(system);
  if (known !== undefined) return known;
  const carried = last === undefined ? undefined : carriedOver(last, system);
  return carried === undefined ? undefined : remembered(carried);
};

function remembered(circuit: Circuit): Circuit {
  circuits.set(circuit.system, circuit);
  last = circuit;
  return circuit;
}
