import { complete, perObject, type System } from "../document";
import { circuitOf } from "../network";
import { type Message, say } from "../terms";
import { MOST_OF_SUPPLIED } from "./tolerances";

/** The highest volts to tell of a drawing as a figure: so many times the highest, line to line, that anything on it is made for [V]. */
export const mostBelievableVolts = perObject((system: System): number => {
  const { nominalVolts, nodeCount } = circuitOf(system);
  let most = 0;
  for (let node = 0; node < nodeCount; node++) most = Math.max(most, nominalVolts[node] ?? 0);
  for (const saved of Object.values(system.elements)) {
    const { kvLL } = complete(saved) as { readonly kvLL?: number };
    most = Math.max(most, 1000 * (kvLL ?? 0));
  }
  return most === 0 ? Infinity : MOST_OF_SUPPLIED * most;
});

/** Under this one feels nothing, so that no figure is told [V]. */
export const LEAST_FELT_VOLTS = 1;

/**
 * Volts as they are told. Exciting branches here never saturate, so that one in resonance with the capacitance of a line stands
 * at volts that no core holds: of these only that they are more than is believable. They count as they were worked out.
 */
export const toldVolts = (
  system: System,
  volts: number,
  spelled: (volts: number) => string | number,
): string | number | Message => {
  const most = mostBelievableVolts(system);
  return volts > most && Number.isFinite(volts)
    ? say("hazard.moreThan", { volts: spelled(most) })
    : spelled(volts);
};
