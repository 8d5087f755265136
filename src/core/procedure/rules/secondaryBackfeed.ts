import {
  type CircuitElement,
  customerCouldFeed,
  isConductor,
  isDeadFront,
  isLine,
  isOwners,
  isTransformer,
  openPhasesOf,
  letterAt,
  type LowSide,
  lowSidesOf,
} from "../../devices";
import { doneBy, elementsOfKind, jobOf, type System, transformersOf } from "../../document";
import { endsOf } from "../../network";
import { citationOf } from "../../reference";
import { type ConductorId, conductorId, type ElementId, type Letter, lettersOf } from "../../terms";
import { say } from "./say";
import { legsOf } from "../job/hands";
import { islandOf } from "../job/joined";
import { elementsOf, nameOf, namesOf } from "../job/names";
import { defineRule, type Problem } from "./rule";
import type { JobState } from "../job/state";
import { isLiveWork } from "../../steps";

/**
 * Anything that customers own can feed a transformer backwards. Work on it, on what its leads join to its bushings, or that
 * changes it, needs a ground on its secondary, unless every meter is pulled, or every main is open, tagged and blocked.
 */
export const secondaryBackfeed = defineRule({
  id: "secondary-backfeed",
  severity: "danger",
  citation: citationOf("backfeed-known-sources"),
  check(step, _before, after) {
    if (step.do !== "work" || isLiveWork(step)) return undefined;
    const workPoint = jobOf(after.document).workPoints[step.at];
    if (workPoint === undefined) return undefined;
    const inHand = pointsByLeads(after.document.system, workPoint.at);
    const changed = doneBy(after.document, step.at);
    return transformersOf(after.document.system).flatMap(([id, it]) => {
      const bushings = endsOf(it).map(([, point]) => point as string);
      if (!bushings.some((bushing) => inHand.has(bushing)) && !changed.includes(id)) return [];
      return lowSidesOf(it).flatMap((side): Problem[] => {
        const feeders = possibleFeeders(after, id, side);
        if (feeders.length === 0 || isGrounded(after, side)) return [];
        return [
          {
            where: id,
            message: say("rule.secondary-backfeed", {
              name: nameOf(after.document, id),
              feeders: namesOf(feeders.map((feeder) => nameOf(after.document, feeder))),
            }),
            help: say("rule.secondary-backfeed.help", { at: nameOf(after.document, side.at) }),
          },
        ];
      });
    });
  },
});

/** Points that short leads join to one, or dead-front connectors in one cabinet: what is open on all of its phases joins none. */
function pointsByLeads(system: System, at: string): ReadonlySet<string> {
  const points = new Set([at]);
  const joining = elementsOf(system).filter(([, it]) => isShort(it) && !isOpenOnAll(it));
  for (const point of points)
    for (const [, it] of joining) {
      const ends = endsOf(it).map(([, end]) => end as string);
      if (ends.includes(point)) for (const end of ends) points.add(end);
    }
  return points;
}

const isShort = (it: CircuitElement): boolean => (isConductor(it) && !isLine(it)) || isDeadFront(it);

const isOpenOnAll = (it: CircuitElement): boolean =>
  [...(it as { phases: string }).phases].every((letter) => openPhasesOf(it).includes(letter));

function isGrounded({ document: { system } }: JobState, side: LowSide): boolean {
  const held = new Set(
    elementsOfKind(system, "ground").flatMap(([, it]) =>
      lettersOf(it.phases).map((letter) => islandOf(system, conductorId(it.at, letter))),
    ),
  );
  return legsOf(side).every((id) => held.has(islandOf(system, id)));
}

/** Loads with customers, generators and other transformers that a side still hangs together with. */
function possibleFeeders({ document: { system } }: JobState, own: ElementId, side: LowSide): ElementId[] {
  const reached = new Set<ConductorId>(legsOf(side));
  const elements = elementsOf(system);
  for (let grew = true; grew;) {
    grew = false;
    for (const [, it] of elements) {
      if (isTransformer(it)) continue;
      const points = endsOf(it);
      if (points.length < 2) continue;
      for (const letter of lettersOf((it as { phases: string }).phases)) {
        if (isHeldOpen(it, letter)) continue;
        const ids = points.map(([end, point]) => conductorId(point, letterAt(it, end, letter)));
        if (!ids.some((id) => reached.has(id))) continue;
        for (const id of ids)
          if (!reached.has(id)) {
            reached.add(id);
            grew = true;
          }
      }
    }
  }
  const hangsOn = (point: string, letters: readonly string[]) =>
    letters.some((letter) => reached.has(conductorId(point, letter as Letter)));
  return elements
    .filter(([id, it]) => {
      // A source is no customer's: it is drawn, and its own openings ask for it.
      if ("at" in it) return customerCouldFeed(it) && hangsOn(it.at, [...it.phases]);
      return (
        isTransformer(it) && id !== own && lowSidesOf(it).some(({ at, letters }) => hangsOn(at, letters))
      );
    })
    .map(([id]) => id);
}

/** A pulled meter holds; a main only open, tagged and blocked, since its owner has the key; a transfer switch never. */
function isHeldOpen(element: CircuitElement, letter: Letter): boolean {
  if (!openPhasesOf(element).includes(letter)) return false;
  return !isOwners(element) || ("blocked" in element && element.tagged && element.blocked);
}
