import { settingsOf, type StepBy } from "../../document";
import { type ConductorId, conductorId, type Letter } from "../../terms";
import { isLiveState } from "./live";
import { phasesAt } from "./positions";
import { asItStands } from "./seen";
import type { JobState, DetectorReading } from "./state";

/**
 * What a voltage detector shows at the conductors that a step tests. Induced volts below half of the line's own are no
 * nominal voltage in the sense of 29 CFR 1910.269(n)(5), though the conductor is not dead.
 */
export function readingsOf(state: JobState, step: StepBy<"test">): Map<ConductorId, DetectorReading> {
  const { hazardVolts } = settingsOf(state.document);
  const { conductors } = asItStands(state);
  const readings = new Map<ConductorId, DetectorReading>();
  // A test that names no phases is of all that is there, the neutral too.
  const letters = step.phases === undefined ? `${phasesAt(state.document.system, step)}N` : step.phases;
  for (const letter of letters) {
    const id = conductorId(step.at, letter as Letter);
    const report = conductors[id];
    if (report === undefined) continue;
    const isDead = report.volts < hazardVolts;
    readings.set(id, {
      volts: report.volts,
      isDead,
      isWithoutNominalVolts: isDead || !isLiveState(report.state),
    });
  }
  return readings;
}
