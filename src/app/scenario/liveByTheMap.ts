import { type Attempt, type ConductorId, conductorsToPredict, seen, worldOf } from "../../core";

const LIVE = ["energized", "backfed", "faulted", "induced"];

/** Conductors that carry a voltage by the map, as things are known to stand. */
export function liveByTheMap(attempt: Attempt): string[] {
  const { conductors } = seen(worldOf(attempt).known);
  return conductorsToPredict(attempt).filter((id) =>
    LIVE.includes(conductors[id as ConductorId]?.state ?? ""),
  );
}
