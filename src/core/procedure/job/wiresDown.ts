import { elementsOfKind, structureOf, type System } from "../../document";
import type { ElementId, PointId } from "../../terms";

/** A line of which a phase has parted, in the air: it lies on the ground, or may come down. */
export interface WireDown {
  readonly id: ElementId;
  readonly ends: readonly [PointId, PointId];
}

/** Wires that are down. A cable lies in the ground, and a parted neutral alone hangs. */
export const wiresDown = (system: System): WireDown[] =>
  elementsOfKind(system, "span")
    .filter(([, it]) => it.construction !== "cable" && it.parted.replace("N", "") !== "")
    .map(([id, { from, to }]) => ({ id, ends: [from as PointId, to as PointId] }));

/** Whether a wire that is down ends at a place, or on its structure. */
export const isWireDownAt = (system: System, at: string): boolean => {
  const around = structureOf(system, at)?.id;
  return wiresDown(system).some(({ ends }) =>
    ends.some((end) => end === at || (around !== undefined && structureOf(system, end)?.id === around)),
  );
};
