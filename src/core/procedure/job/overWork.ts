import { elementOfKind, elementsOfKind, isSameStructure, jobOf, type StillhotDocument } from "../../document";
import type { ElementId, WorkPointId } from "../../terms";

/** Below it nothing recloses by itself [kV]. */
const LEAST_KV = 1;

/**
 * Circuits that cross what the hands at a work point are on, or hang on the same poles: a wire that swings or sags into one of
 * them is energized again each time that it recloses. One that only runs alongside is out of a wire's reach.
 */
export function circuitsOverWork(document: StillhotDocument, id: WorkPointId): ElementId[] {
  const { system } = document;
  const place = jobOf(document).workPoints[id];
  if (place === undefined) return [];
  const isAtWork = (point: string) => isSameStructure(system, point, place.at);
  return elementsOfKind(system, "nearby").flatMap(([nearby, { on, relation, kvLL, span: over }]) => {
    const span = elementOfKind(system, over, "span");
    return on &&
      relation !== "parallel" &&
      kvLL > LEAST_KV &&
      span !== undefined &&
      (isAtWork(span.from) || isAtWork(span.to) || (place.does ?? []).includes(over))
      ? [nearby]
      : [];
  });
}
