import { elementsOfKind, transformersOf } from "../../document";
import { letterAt, lettersAtEnd, openPhasesOf } from "../../devices";
import type { Step } from "../../document";
import { type FuseLink, meltAmps } from "../../reference";
import { type ConductorId, conductorId, type ElementId, lettersOf } from "../../terms";
import { ampsThrough, phasesMoved } from "./gap";
import { coldLoadSurge, fullLoadAmps, inrushSurges, melts, type Surge } from "./inrush";
import { endsOf } from "../../network";
import { joinedWithout } from "../job/joined";
import { energizedBy } from "../job/live";
import { elementOf } from "../job/names";
import { pathToConductor } from "../job/paths";
import type { JobState } from "../job/state";
import { isSwitching } from "../../steps";

/** A surge through a link when a step picks something up. */
export interface LinkSurge extends Surge {
  readonly why: "inrush" | "cold-load";
  readonly melts: boolean;
  /** what the quickest link of this rating melts at in that time [A] */
  readonly meltAmps: number;
}

/** What a link has to carry when a thing is closed. */
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
  const { closed } = phasesMoved(step, before, after);
  if (!isSwitching(step) || closed === "") return [];
  const woken = new Set(energizedBy(before, after));
  if (woken.size === 0) return [];
  const transformers = transformersOf(after.document.system).map(([, it]) => ({
    amps: fullLoadAmps(it),
    primary: lettersOf(it.phases).map((letter) => conductorId(it.from, letter)),
  }));
  const energized = transformers.filter(({ primary }) => primary.some((id) => woken.has(id)));
  return linksOf(after, step.element, closed, woken).map(({ id, link, beyond }) => {
    const fullLoad = energized
      .filter(({ primary }) => primary.some((it) => beyond.has(it)))
      .reduce((sum, { amps }) => sum + amps, 0);
    const loadAmps = ampsThrough(after, id, closed) - ampsThrough(before, id, closed);
    return {
      element: id,
      link,
      surges: [
        ...inrushSurges(fullLoad).map((surge) => judged("inrush", link, surge)),
        judged("cold-load", link, coldLoadSurge(Math.max(0, loadAmps))),
      ],
    };
  });
}

const judged = (why: LinkSurge["why"], link: FuseLink, surge: Surge): LinkSurge => ({
  ...surge,
  why,
  melts: melts(link, surge),
  meltAmps: meltAmps(link, surge.seconds).least,
});

interface LinkAt {
  readonly id: ElementId;
  readonly link: FuseLink;
  /** conductors on its far side, as it is fed now */
  readonly beyond: ReadonlySet<ConductorId>;
}

/** Closed links that carry what a step picks up: between the supply and the thing that closes, itself, and those beyond. */
function linksOf(
  after: JobState,
  own: ElementId,
  letters: string,
  woken: ReadonlySet<ConductorId>,
): LinkAt[] {
  const { system } = after.document;
  const closing = elementOf(system, own)!;
  const onTheWay = new Set(
    endsOf(closing)
      .flatMap(([end, point]) =>
        lettersOf(letters).map((letter) => conductorId(point, letterAt(closing, end, letter))),
      )
      .flatMap((id) => pathToConductor(after, id)),
  );
  return elementsOfKind(system, "cutout").flatMap(([id, it]) => {
    if (it.fuse === undefined || it.fuse === "solid") return [];
    if (openPhasesOf(it).length === it.phases.length) return [];
    const ends = endsOf(it).map(([end, point]) =>
      lettersAtEnd(it, end).map((letter) => conductorId(point, letter)),
    );
    if (!onTheWay.has(id) && !ends.flat().some((end) => woken.has(end))) return [];
    return [{ id, link: it.fuse, beyond: joinedWithout(system, endsBeyond(after, id, ends), id) }];
  });
}

/** The end of a thing that is fed through it, which is its first where a line is fed from its far end; both in a ring. */
function endsBeyond(
  after: JobState,
  id: ElementId,
  ends: readonly (readonly ConductorId[])[],
): readonly ConductorId[] {
  const fed = ends.filter((end) => end.some((it) => pathToConductor(after, it).includes(id)));
  return (fed.length === 0 ? ends : fed).flat();
}
