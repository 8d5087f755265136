import {
  type Edit,
  completePoint,
  conductorsOf,
  edits,
  type PointId,
  type StillhotDocument,
} from "../../core";

/** What is known of the point that the tap grows from. */
export interface GrowingPoint {
  /** phases that meet there, without the neutral */
  readonly phases: string;
  readonly hasNeutral: boolean;
  readonly kind: "pole" | "pad" | "station" | "service";
}

/** What is known of a point that something is to grow from. */
export function growingPointOf(document: StillhotDocument, point: string): GrowingPoint {
  const letters = conductorsOf(document.system).get(point) ?? [];
  return {
    phases: letters.filter((it) => it !== "N").join(""),
    hasNeutral: letters.includes("N"),
    kind: completePoint(document.system.points[point as PointId]!).kind,
  };
}

/** A ground set to the neutral where the point has one, else to a rod of its own. */
export function groundOn(document: StillhotDocument, at: string, phases: string): Edit {
  return edits.addGround(at, {
    phases,
    to: growingPointOf(document, at).hasNeutral ? "neutral" : "earth",
    cable: "2/0",
  });
}
