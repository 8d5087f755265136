import { jobOf } from "../document";
import { isHot } from "../hazard";
import { type JobState, seen } from "../procedure";
import { type ConductorId, conductorId, type Letter, lettersOf, partsOfConductor } from "../terms";
import type { Prediction } from "./actions";
import type { PredictionResult } from "./log";

/** Of some conductors those that hold volts as things stand. */
export function liveAmong<Id extends string>(state: JobState, ids: readonly Id[]): Id[] {
  const { conductors } = seen(state);
  return ids.filter((id) => {
    const report = conductors[id as string as ConductorId];
    return report !== undefined && isHot(report.state);
  });
}

/** Compares what somebody thinks is live with what is, on the conductors that the map has. */
export function predictionResult(truth: JobState, known: JobState, prediction: Prediction): PredictionResult {
  const onTheMap = (Object.keys(seen(known).conductors) as ConductorId[]).filter(
    (id) => partsOfConductor(id).letter !== "N",
  );
  const live = liveAmong(truth, onTheMap);
  const said = prediction.live.filter((id) => partsOfConductor(id).letter !== "N");
  const feeders = feedersOf(truth);
  const saidFeeders: readonly string[] = prediction.feeders ?? [];
  return {
    right: live.filter((id) => said.includes(id)),
    missed: live.filter((id) => !said.includes(id)),
    wrong: said.filter((id) => !live.includes(id)),
    feedersRight: feeders.filter((id) => saidFeeders.includes(id)),
    feedersMissed: feeders.filter((id) => !saidFeeders.includes(id)),
    feedersWrong: saidFeeders.filter((id) => !feeders.includes(id)),
  };
}

/** Whether all that was said to be live is, and nothing else. */
export const isRight = ({ missed, wrong }: PredictionResult): boolean => missed.length + wrong.length === 0;

/** Everything that feeds a work point now, or would after the threats that are found. */
function feedersOf({ document, ...rest }: JobState): string[] {
  const { conductors, workPoints } = seen({ document, ...rest });
  const now = Object.values(jobOf(document).workPoints).flatMap(({ at, conductors: letters }) =>
    lettersOf(letters).flatMap((it) => conductors[conductorId(at, it as Letter)]?.sources ?? []),
  );
  const later = Object.values(workPoints).flatMap(({ threats }) =>
    threats.flatMap(({ source, upsets }) => [
      ...(source === null ? [] : [source]),
      ...upsets.map((it) => it.element),
    ]),
  );
  return [...new Set<string>([...now, ...later])].sort();
}
