import { MOST_VOLTS_BY_HAND } from "../tolerances";
import { complete, type System } from "../../document";
import { circuitOf, endsOf } from "../../network";
import { gloveClassFor } from "../../reference";
import { conductorId, type ElementId, lettersOf } from "../../terms";
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
  const element = complete(system.elements[id]!);
  const { phases = "" } = element as { phases?: string };
  return Math.max(
    0,
    ...endsOf(element).flatMap(([, point]) =>
      lettersOf(phases).map(
        (letter) => circuit.nominalVolts[circuit.nodeOf.get(conductorId(point, letter)) ?? -1] ?? 0,
      ),
    ),
  );
}
