import { LINE_VOLTS } from "./tolerances";
import { conductorsOf, type Structure, type System } from "../document";
import { circuitOf } from "../network";
import { approachDistanceFor } from "../reference";
import { conductorId, type Letter, type Message, type PointId, say } from "../terms";

/** Points of a structure at one class of voltage: what is at one of them is within arm's reach of the others. */
export interface WithinReach {
  readonly points: readonly PointId[];
  /** the highest nominal volts among them, line to line */
  readonly volts: number;
  /** what whoever works at another class of voltage keeps from them */
  readonly distance: Message;
}

/**
 * What is within arm's reach of what on a structure: the line's class of voltage first, then the service's. The drawing
 * has no distances, so that all of one class counts as within reach.
 */
export function withinReachOn(system: System, { points }: Structure): readonly WithinReach[] {
  const { nominalVolts, nodeOf } = circuitOf(system);
  const lettersAt = (point: string): Letter[] =>
    (conductorsOf(system).get(point) ?? []).filter((it) => it !== "N");
  const voltsAt = (point: string): number =>
    Math.max(0, ...lettersAt(point).map((it) => nominalVolts[nodeOf.get(conductorId(point, it))!] ?? 0));
  const all = points.map((point) => ({ point, volts: voltsAt(point) })).filter(({ volts }) => volts > 0);
  const classes = [
    all.filter(({ volts }) => volts > LINE_VOLTS),
    all.filter(({ volts }) => volts <= LINE_VOLTS),
  ];
  return classes
    .filter((its) => its.length > 0)
    .map((its) => {
      const volts = Math.max(...its.map((it) => it.volts));
      // Where only one phase is there nobody comes between two: the volts to ground count.
      const isSeveral = new Set(its.flatMap(({ point }) => lettersAt(point))).size > 1;
      return {
        points: its.map(({ point }) => point),
        volts,
        distance: distanceWords(isSeveral ? volts : volts / Math.sqrt(3), isSeveral),
      };
    });
}

/** The distance to keep at some nominal volts, in words: from two phases, or from one to ground. */
export function distanceWords(volts: number, betweenPhases: boolean): Message {
  const distance = approachDistanceFor(volts);
  if (distance?.rule === "distance")
    return say("approach.distance", {
      metres: betweenPhases ? distance.phaseToPhaseM : distance.phaseToGroundM,
    });
  return say(distance === undefined ? "approach.beyondTable" : "approach.avoidContact");
}
