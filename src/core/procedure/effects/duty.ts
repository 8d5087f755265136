import { LEAST_DUTY_AMPS } from "../tolerances";
import { settingsOf } from "../../document";
import { afterUpsets, type Threat, type Upset, upsetsOf } from "../../hazard";
import { circuitOf, EARTH } from "../../network";
import { solutionOf, voltsAt } from "../../phasor";
import { complex, type ElementId } from "../../terms";
import { seen } from "../job/seen";
import type { JobState } from "../job/state";

/** What a ground set would have to carry if the worst happened. */
export interface Duty {
  /** largest in one of its jumpers [A] */
  readonly amps: number;
  /** reactance over resistance of the way that feeds it */
  readonly xOverR: number;
}

const known = new WeakMap<object, ReadonlyMap<ElementId, Duty>>();

/**
 * The duty of each ground set, by itself, in the threat that drives most current through it. The current and the ratio
 * come from solving the drawing as it would then stand: volts at the clamp with the sets lifted, over the current with
 * them on.
 */
export function dutiesOf(state: JobState): ReadonlyMap<ElementId, Duty> {
  const assessment = seen(state);
  const found = known.get(assessment);
  if (found !== undefined) return found;
  const sets = new Map<string, Threat>();
  for (const { threats } of Object.values(assessment.workPoints))
    for (const threat of threats) {
      const key = JSON.stringify(threat.upsets.map(({ kind, element, phase }) => [kind, element, phase]));
      if (threat.groundAmps > (sets.get(key)?.groundAmps ?? 0)) sets.set(key, threat);
    }
  const driving = [...sets.values()].sort((a, b) => b.groundAmps - a.groundAmps);
  const duties = new Map<ElementId, Duty>();
  for (const [rank, { groundAmps, upsets }] of driving.entries()) {
    if (rank > 0 && groundAmps < LEAST_DUTY_AMPS) break;
    for (const [id, duty] of dutiesAfter(state, upsets))
      if (duty.amps > (duties.get(id)?.amps ?? 0)) duties.set(id, duty);
  }
  known.set(assessment, duties);
  return duties;
}

function dutiesAfter({ document }: JobState, upsets: readonly Upset[]): ReadonlyMap<ElementId, Duty> {
  const drawn = upsetsOf(document.system, settingsOf(document)).filter((it) =>
    upsets.some(
      (other) => other.kind === it.kind && other.element === it.element && other.phase === it.phase,
    ),
  );
  const circuit = circuitOf(afterUpsets(document.system, drawn));
  const open = solutionOf(circuit, { loads: false, grounds: false, faults: true });
  const duties = new Map<ElementId, Duty>();
  for (const loads of [true, false]) {
    const shorted = solutionOf(circuit, { loads, grounds: true, faults: true });
    for (const { element, part, from, to } of circuit.branches) {
      if (part.role !== "ground" || to === EARTH) continue;
      const id = circuit.elementIds[element]!;
      const across = complex.subtract(voltsAt(shorted, from), voltsAt(shorted, to));
      const current = complex.times(part.siemens, across);
      const amps = complex.magnitude(current);
      if (amps <= (duties.get(id)?.amps ?? 0)) continue;
      const driving = complex.subtract(voltsAt(open, from), voltsAt(open, to));
      const [ohms, reactance] = complex.times(driving, complex.inverse(current));
      duties.set(id, { amps, xOverR: Math.abs(reactance / ohms) });
    }
  }
  return duties;
}
