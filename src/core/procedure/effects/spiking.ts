import { conductorsOf, spikeIdIn, type System } from "../../document";
import { SPIKE, TRACER, type Step, type StepBy } from "../../steps";
import { type ConductorId, conductorId, type Letter, partsOfConductor } from "../../terms";
import { isLiveState } from "../job/live";
import { phasesAt } from "../job/positions";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";

type TestWith<Tool> = StepBy<"test"> & { readonly with: Tool };

/** Whether a step drives a spike through a cable. */
export const isSpiking = (step: Step): step is TestWith<typeof SPIKE> =>
  step.do === "test" && step.with === SPIKE;

/** Whether a step looks for a cable among others by the signal that goes round through its ground sets. */
export const isTracing = (step: Step): step is TestWith<typeof TRACER> =>
  step.do === "test" && step.with === TRACER;

/** A test that no detector takes part in: of a cable, where nothing is bare. */
export const isOnCable = (step: Step): boolean => isSpiking(step) || isTracing(step);

/**
 * What a trace proves: that this is the cable which is grounded. It reads no volts, and where no ground set closes the way
 * round there is no signal.
 */
export const tracedBy = (step: StepBy<"test">, before: JobState): ConductorId[] =>
  conductorsTested(step, before).filter((id) => asItStands(before).conductors[id]?.state === "grounded");

/** Phase conductors that a test is of. */
const conductorsTested = (step: StepBy<"test">, { document }: JobState): ConductorId[] =>
  [...phasesAt(document.system, step)]
    .filter((letter) => letter !== "N")
    .map((letter) => conductorId(step.at, letter as Letter));

/** Conductors that something supplies and that a step drives a spike into. */
export const spikedLive = (step: Step, before: JobState): ConductorId[] =>
  isSpiking(step)
    ? conductorsTested(step, before).filter((id) => isLiveState(asItStands(before).conductors[id]?.state))
    : [];

/** What a spike leaves in a live cable: a bolted short from its conductor to its neutral, until work there cuts that piece out. */
export function systemAfterSpike(step: Step, before: JobState): System {
  const { system } = before.document;
  const [first] = spikedLive(step, before);
  if (first === undefined) return system;
  const { point: at } = partsOfConductor(first);
  const hit = new Set<Letter>(spikedLive(step, before).map((id) => partsOfConductor(id).letter));
  const hasNeutral = (conductorsOf(system).get(at) ?? []).includes("N");
  const short = {
    kind: "fault" as const,
    at,
    phases: [...hit].join(""),
    to: hasNeutral ? ("neutral" as const) : ("earth" as const),
  };
  return { ...system, elements: { ...system.elements, [spikeIdIn(system)]: short } };
}
