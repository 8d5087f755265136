import { letterAt } from "../../devices";
import { complete, type System } from "../../document";
import { endsOf } from "../../network";
import { conductorId, lettersOf } from "../../terms";
import { isJoined } from "../job/joined";
import type { Opening } from "./openings";

/**
 * Whether metal joins both sides of a thing beside it: one source feeds both ends of a ring, and closing it puts no two
 * stations in parallel.
 */
export function isInRing(system: System, { element, phases }: Opening): boolean {
  const record = system.elements[element];
  if (record === undefined) return false;
  const it = complete(record);
  const [from, to] = endsOf(it).map(([, point]) => point);
  return (
    from !== undefined &&
    to !== undefined &&
    phases !== "" &&
    lettersOf(phases).every((letter) =>
      isJoined(system, conductorId(from, letter), conductorId(to, letterAt(it, "to", letter))),
    )
  );
}
