import type { Step } from "../document";
import { type FuseLink, meltAmps } from "../reference";
import { conductorId, type ElementId, lettersOf } from "../terms";
import { openPhasesOf } from "./breaking";
import { ampsThrough, phasesMoved } from "./gap";
import { coldLoadSurge, fullLoadAmps, inrushSurges, melts, type Surge } from "./inrush";
import { joinedTo } from "./joined";
import { energizedBy, isLiveState } from "./live";
import { elementOf, elementsOf } from "./names";
import { pathToConductor } from "./paths";
import { seen } from "./seen";
import type { JobState } from "./state";
import { isSwitching } from "./verbs";

/** A surge through a link when a step picks something up. */
export interface LinkSurge extends Surge {
  readonly why: "inrush" | "cold-load";
  readonly melts: boolean;
  /** what the quickest link of this rating melts at in that time [A] */
  readonly meltAmps: number;
}

export interface PickUp {
  readonly element: ElementId;
  readonly link: FuseLink;
  readonly surges: readonly LinkSurge[];
}

/**
 * What each link on the way to a thing that closes has to carry: the inrush of every transformer that is energized with
 * it, and the load that comes back cold.
 */
export function surgesOnClosing(step: Step, before: JobState, after: JobState): PickUp[] {
  const { system } = after.document;
  const { closed } = phasesMoved(step, before, after);
  const element = elementOf(system, step.element) as { to?: string } | undefined;
  if (!isSwitching(step) || closed === "" || element?.to === undefined) return [];
  const energized = energizedBy(before, after);
  if (energized.length === 0) return [];
  const beyond = joinedTo(
    system,
    lettersOf(closed).map((letter) => conductorId(element.to!, letter)),
  );
  const isWoken = (point: string, letter: string) => {
    const id = conductorId(point, letter as never);
    return beyond.has(id) && energized.includes(id);
  };
  const fullLoad = elementsOf(system).reduce(
    (sum, [, it]) =>
      it.kind === "transformer" && [...it.phases].some((letter) => isWoken(it.from, letter))
        ? sum + fullLoadAmps(it)
        : sum,
    0,
  );
  const loadAmps = ampsThrough(after, step.element, closed);
  return linksOnTheWay(after, step.element as ElementId, element.to, closed).map(({ id, link }) => ({
    element: id,
    link,
    surges: [
      ...inrushSurges(fullLoad).map((surge) => judged("inrush", link, surge)),
      judged("cold-load", link, coldLoadSurge(loadAmps)),
    ],
  }));
}

const judged = (why: LinkSurge["why"], link: FuseLink, surge: Surge): LinkSurge => ({
  ...surge,
  why,
  melts: melts(link, surge),
  meltAmps: meltAmps(link, surge.seconds).least,
});

/** Closed links between the supply and the far end of a thing, itself too. */
function linksOnTheWay(
  state: JobState,
  own: ElementId,
  to: string,
  letters: string,
): { id: ElementId; link: FuseLink }[] {
  const { system } = state.document;
  const live = lettersOf(letters)
    .map((letter) => conductorId(to, letter))
    .find((id) => isLiveState(seen(state).conductors[id]?.state));
  const ids = new Set([own, ...(live === undefined ? [] : pathToConductor(state, live))]);
  return [...ids].flatMap((id) => {
    const it = elementOf(system, id);
    const isLink = it?.kind === "cutout" && it.fuse !== undefined && it.fuse !== "solid";
    return isLink && openPhasesOf(it).length < it.phases.length ? [{ id, link: it.fuse as FuseLink }] : [];
  });
}
