import { openingOf, openPhasesOf } from "../../devices";
import { isSameStructure, settingsOf } from "../../document";
import { jobOf } from "../../document";
import { endsOf } from "../../network";
import { isOpening } from "../../steps";
import type { ElementId } from "../../terms";
import { elementOf } from "./names";
import { seen } from "./seen";
import type { JobState } from "./state";
import { closes, startsDrawn, type Threat } from "../../hazard";

/**
 * Open things whose closing takes part in making a work point live: what the isolation of the job rests on. A transfer
 * switch is one where it alone parts a machine that runs from the work.
 */
export function isolationPoints(state: JobState): ElementId[] {
  const ids = new Set<ElementId>();
  for (const { threats } of Object.values(seen(state).workPoints))
    for (const threat of threats.filter((it) => isOfConductor(state, it)))
      for (const upset of threat.upsets)
        if (closes(upset) || (threat.upsets.length === 1 && isThrown(state, upset.element)))
          ids.add(upset.element);
  return [...ids].sort();
}

/**
 * Whether a threat is one to the conductor itself. A fault elsewhere that only lifts the neutral beside a dead conductor is
 * judged as exposure: what would make it keeps nothing isolated.
 */
const isOfConductor = ({ document }: JobState, { source, volts }: Threat): boolean =>
  source !== null || volts >= settingsOf(document).hazardVolts;

/** Whether a thing throws between two supplies. */
export const isThrown = ({ document }: JobState, id: ElementId): boolean =>
  "alt" in elementOf(document.system, id)!;

/**
 * Drawn machines that stand still, of which each would feed a work point by itself if its owner started it. A tag on the
 * machine stands for an open point only where nothing between it and the work opens.
 */
export function machinesLeftOn(state: JobState): ElementId[] {
  const { system } = state.document;
  const opens = (id: ElementId) => openingOf(elementOf(system, id)!) !== undefined;
  const ids = new Set<ElementId>();
  for (const { threats } of Object.values(seen(state).workPoints))
    for (const { upsets, path } of threats) {
      const [only, ...more] = upsets;
      if (only === undefined || !startsDrawn(only) || more.length > 0) continue;
      if (!isTagged(state, only.element) || path.some(opens)) ids.add(only.element);
    }
  return [...ids].sort();
}

/** Whether anybody's tag hangs on a thing: the crew's, or one found there. */
export const isTagged = (state: JobState, id: ElementId): boolean =>
  state.otherTags.has(id) ||
  (elementOf(state.document.system, id) as { tagged?: boolean } | undefined)?.tagged === true;

/** Tagged before the crew came: that tag is not its own to take. */
export const wasFoundTagged = (state: JobState, id: ElementId): boolean =>
  isTagged({ ...state, document: state.asFound, otherTags: new Set() }, id);

/** Whether one can see the gap of an open thing. */
export function hasVisibleGap(state: JobState, id: ElementId): boolean {
  const element = elementOf(state.document.system, id);
  return element === undefined || (openingOf(element)?.visibleGap ?? true);
}

/**
 * The exception for a single crew: with every opening visible, on the structure of each work point and under its own control it
 * may leave out the request, the tags and the disabling of automatic switches. It holds only where the settings say
 * `singleCrew`, or the job that there is no operator and in its text why, and falls away as soon as one opening is out of
 * sight. Where nothing is open there is nothing in anybody's control.
 *
 * @param own what the step itself opens or closes
 * @see 29 CFR 1910.269(m)(2)(iii), `procedure-rules.json` single-crew-exception
 */
export function isSoleCrew(state: JobState, own?: ElementId): boolean {
  const { document } = state;
  const { operator, text, workPoints: places } = jobOf(document);
  const isSaid = operator === "none" && text.trim() !== "";
  if (!settingsOf(document).singleCrew && !isSaid) return false;
  const workPoints = Object.values(places);
  if (workPoints.length === 0) return false;
  const openings = new Set([
    ...isolationPoints(state),
    ...openedByCrew(state),
    ...(own === undefined ? [] : [own]),
  ]);
  const isInControl = (id: ElementId): boolean => {
    const ends = endsOf(elementOf(document.system, id)!);
    // Whoever works somewhere else does not see it.
    const inSight = workPoints.every(({ at }) =>
      ends.some(([, point]) => isSameStructure(document.system, point, at)),
    );
    return inSight && hasVisibleGap(state, id);
  };
  return openings.size > 0 && [...openings].every(isInControl);
}

/** What the crew has opened and not closed again: of two openings in a row no threat of three mistakes tells. */
const openedByCrew = ({ document, played }: JobState): ElementId[] =>
  played
    .filter(isOpening)
    .map(({ element }) => element)
    .filter((id) => {
      const element = elementOf(document.system, id);
      return element !== undefined && openPhasesOf(element) !== "";
    });
