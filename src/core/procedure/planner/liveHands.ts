import { MOST_VOLTS_BY_HAND } from "../tolerances";
import { complete, type System } from "../../document";
import { circuitOf } from "../../network";
import { gloveClassFor } from "../../reference";
import type { ElementId } from "../../terms";
import { phaseConductors } from "../job/hands";
import type { PlannedStep } from "./types";

/** A step with hands on a thing that is live, by the method for its volts. */
export function byMethod(system: System, live: ReadonlySet<ElementId>, step: PlannedStep): PlannedStep {
  if (!["cut", "join", "pull", "replace"].includes(step.do) || !live.has(step.element!)) return step;
  const volts = nominalVolts(system, step.element!);
  const keys =
    volts > MOST_VOLTS_BY_HAND
      ? { method: "sticks" }
      : { method: "gloves", gloveClass: gloveClassFor(volts)!.name };
  return { ...step, ...keys } as PlannedStep;
}

function nominalVolts(system: System, id: ElementId): number {
  const circuit = circuitOf(system);
  const conductors = phaseConductors(complete(system.elements[id]!));
  return Math.max(0, ...conductors.map((it) => circuit.nominalVolts[circuit.nodeOf.get(it) ?? -1] ?? 0));
}
