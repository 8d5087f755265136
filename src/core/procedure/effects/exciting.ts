import { REACH } from "../../network";
import type { ConductorId } from "../../terms";
import { coupledNodes } from "../job/joined";
import { reachAsDrawn } from "../job/paths";
import type { JobState } from "../job/state";

/**
 * Whether the side of an opened gap that is left without supply holds transformers and nothing that draws load, shorts, holds
 * a charge or makes volts: what the gap broke was their exciting current, and what charges their leads.
 */
export function excitesOnly({ document: { system } }: JobState, sides: readonly ConductorId[]): boolean {
  const { circuit, reach } = reachAsDrawn(system);
  const nodes = sides.flatMap((id) => circuit.nodeOf.get(id) ?? []);
  const dead = nodes.filter((node) => reach.how[node] === REACH.none);
  if (dead.length === 0) return false;
  const piece = new Set(coupledNodes(system, dead));
  return (
    circuit.units.some(({ windings }) => windings.flat().some((it) => piece.has(it))) &&
    !circuit.branches.some(({ from, to }) => piece.has(from) || piece.has(to)) &&
    !circuit.emfs.some(({ legs }) => legs.some((it) => piece.has(it)))
  );
}
