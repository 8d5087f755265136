import { complex } from "../../terms";
import type { CimModel } from "./model";
import type { RdfObject } from "./rdf";
import type { Reading } from "./reading";
import type { Topology } from "./topology";

/** Whether a grounding impedance stands between the neutral of a node and earth: one terminal, on N alone. */
export function isRod(model: CimModel, topology: Topology, object: RdfObject): boolean {
  const terminals = topology.terminalsOf(object);
  return (
    object.className === "GroundingImpedance" &&
    terminals.length === 1 &&
    model.choice(terminals[0]!, "phases") === "N"
  );
}

/** Grounds of the neutrals: what the file says of them takes the place of what would be assumed. */
export function readGrounds(reading: Reading): void {
  const { model, topology, draft } = reading;
  for (const object of model.all("GroundingImpedance")) {
    if (!isRod(model, topology, object) || reading.isOut(object)) continue;
    const [end] = topology.endsOf(object, 1) ?? [];
    const point = end === undefined ? undefined : draft.points.get(end);
    if (point === undefined) continue;
    const ohms = complex.magnitude([model.number(object, "r") ?? 0, model.number(object, "x") ?? 0]);
    const siemens =
      1 / Math.max(ohms, LEAST_OHMS) + (point.earthOhms === undefined ? 0 : 1 / point.earthOhms);
    point.earthOhms = 1 / siemens;
  }
}

/** What stands for a ground without ohms [Ω]. */
const LEAST_OHMS = 1e-6;
