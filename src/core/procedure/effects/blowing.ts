import { NO_AMPS } from "../tolerances";
import { spikeIdIn, type Step, type System } from "../../document";
import { clearingOf, faultAmps } from "./clearing";
import { liveUnder, shortsEnergized } from "./consequence";
import { isSpiking } from "./spiking";
import { groundIdOf, withLinkBlown } from "../job/positions";
import type { JobState } from "../job/state";
import type { ElementId } from "../../terms";

/**
 * The drawing once the links have blown that the fault of a step melts for sure, the quickest first, until nothing feeds
 * the fault through a link that melts. A link that may hold is left whole: what it feeds then counts as live.
 *
 * @param standing the state of the job with a drawing that stands otherwise
 */
export function systemAfterBlowing(
  step: Step,
  before: JobState,
  after: JobState,
  standing: (system: System) => JobState,
): System {
  const shorts = shortsOf(step, before, after);
  let state = after;
  while (faultAmps(state, shorts) > NO_AMPS) {
    const clearing = clearingOf(state);
    if (clearing === undefined || clearing.mostSeconds === Infinity) break;
    state = standing(withLinkBlown(state.document.system, clearing.element, clearing.letter));
  }
  return state.document.system;
}

/** What a step shorts: a spike or a ground set put onto something live, or whatever short it brings to life. */
function shortsOf(step: Step, before: JobState, after: JobState): ElementId[] {
  if (before.document === after.document) return [];
  if (isSpiking(step)) return [spikeIdIn(before.document.system)];
  if (step.do !== "ground") return shortsEnergized(before, after);
  const set = groundIdOf(before.document.system, step);
  return liveUnder(after, set).length === 0 ? [] : [set];
}
