import { isBeside } from "../../devices";
import {
  complete,
  isSameStructure,
  type StillhotDocument,
  type System,
  workPointName,
  workPointsOf,
} from "../../document";
import { isBarricaded } from "../../hazard";
import { type ElementId, type PointId, say } from "../../terms";
import { nameOf } from "../job/names";
import { anotherPermitHolder, isStillThere } from "../job/owners";
import { beginJob } from "../job/state";
import { comesWithWork, type Intent } from "./intent";
import { provingWhatCame } from "./provingDead";
import { isOnPole, placeOf, RANK, step } from "./said";
import type { PlannedGroup } from "./schedule";
import type { PlannedStep } from "./types";

/**
 * The guards around the work, the work itself, and the all-clear after it. What stays live is covered once all is open, on
 * the visit on which it is grounded there. What the work at one place brings to another is tested and grounded there
 * before hands come to it.
 */
export function working(
  document: StillhotDocument,
  intent: Intent,
  brief: PlannedGroup,
  open: readonly PlannedGroup[],
  dead: readonly PlannedGroup[],
): PlannedGroup[] {
  const { system } = document;
  const atOf = (id: string): PointId =>
    Object.hasOwn(system.points, id) ? (id as PointId) : placeOfCover(system, id as ElementId);
  const coverKey = (id: string): { readonly at: PointId } | { readonly element: ElementId } =>
    Object.hasOwn(system.points, id) ? { at: id as PointId } : { element: id as ElementId };
  const barricades = [...intent.barricades]
    .filter((at) => !isBarricaded(system, intent.wiresDown, at))
    .map((at): PlannedGroup => ({
      rank: RANK.barricade,
      after: [brief],
      at,
      steps: [
        step(
          { do: "barricade", at },
          say(isOnPole(system, at) ? "why.barricade" : "why.barricade.enclosure", {
            at: nameOf(document, at),
          }),
        ),
      ],
    }));
  const covers = [...intent.covers].map((id): PlannedGroup => ({
    rank: RANK.cover,
    after: open,
    at: atOf(id),
    steps: [step({ do: "cover", ...coverKey(id) }, say("why.cover", { name: nameOf(document, id) }))],
  }));
  const worksOf = (isToCome: boolean, after: readonly PlannedGroup[]) =>
    workPointsOf(document)
      .filter(
        ([, { at, conductors }]) =>
          comesWithWork(document, { at, phases: conductors.replace("N", "") }) === isToCome,
      )
      .map(([id, workPoint]): PlannedGroup => ({
        rank: RANK.work,
        after,
        at: workPoint.at,
        steps: [step({ do: "work", at: id }, say("why.work", { name: workPointName(document, id) }))],
      }));
  const first = worksOf(false, [...dead, ...barricades, ...covers]);
  const proofs = provingWhatCame(document, intent, first);
  const works = [...first, ...proofs, ...worksOf(true, [...first, ...proofs])];
  const allClear: PlannedGroup = {
    rank: RANK.allClear,
    after: works,
    steps: [step({ do: "all-clear" }, say("why.all-clear.work"))],
  };
  const uncovers = [...intent.covers].map((id): PlannedGroup => ({
    rank: RANK.uncover,
    after: [allClear],
    at: atOf(id),
    steps: [step({ do: "uncover", ...coverKey(id) }, say("why.uncover", { name: nameOf(document, id) }))],
  }));
  return [...barricades, ...covers, ...works, allClear, ...uncovers];
}

/** Where a neighbouring circuit is covered: at the near end of the span that it runs beside. */
function placeOfCover(system: System, id: ElementId): PointId {
  const element = complete(system.elements[id]!);
  return isBeside(element) ? placeOf(system, element.span as ElementId) : placeOf(system, id);
}

/** The permit goes back to the operator; to the crew that it was taken over from, where that one's tags hang there still. */
export function permitBack(
  document: StillhotDocument,
  why: "why.release-permit" | "why.release-permit.switching" = "why.release-permit",
): PlannedStep {
  const owner = anotherPermitHolder(document);
  return owner !== undefined && isStillThere(beginJob(document), owner)
    ? step({ do: "hand-over", permit: true, to: owner }, say("why.hand-over.back", { owner }))
    : step({ do: "release-permit" }, say(why));
}

/** The grounds off, each once the covers at its own place are, everybody clear once more, and the permit given back. */
export function ungrounding(
  document: StillhotDocument,
  { grounds, permit, found }: Intent,
  worked: readonly PlannedGroup[],
): PlannedGroup[] {
  const { system } = document;
  const isCoverElsewhere = (it: PlannedGroup, at: PointId): boolean =>
    it.rank === RANK.uncover && !isSameStructure(system, it.at as PointId, at);
  const offs = [...grounds].reverse().map((it): PlannedGroup => ({
    rank: RANK.unground,
    after: worked.filter((group) => !isCoverElsewhere(group, it.at)),
    at: it.at,
    steps: [step({ do: "unground", element: it.id, first: "phase" }, say("why.unground"))],
  }));
  const again: PlannedGroup[] =
    offs.length === 0
      ? []
      : [
          {
            rank: RANK.allClearAgain,
            after: [...worked, ...offs],
            steps: [
              step({ do: "all-clear" }, say("why.all-clear.grounds")),
              step({ do: "confirm" }, say("why.confirm.all-clear")),
            ],
          },
        ];
  if (permit === undefined && found !== "held" && found !== "requested") return [...offs, ...again];
  const release: PlannedGroup = {
    rank: RANK.release,
    after: [...worked, ...again],
    steps: [permitBack(document)],
  };
  return [...offs, ...again, release];
}
