import {
  complete,
  elementCountOf,
  openPhasesOf,
  perObject,
  type StillhotDocument,
  type System,
} from "../../core";

/** Drawings up to this many elements are worked out at once, so that a tapped switch shows in the next frame. */
const ELEMENTS_AT_ONCE = 150;
/** What stands open may close, and any of it with any other: beyond so many phases that takes longer than a frame. */
const OPEN_AT_ONCE = 12;

/** Whether a drawing is worked out on the page's own thread. */
export const isAtOnce = ({ system }: StillhotDocument): boolean =>
  elementCountOf(system) <= ELEMENTS_AT_ONCE && hasFewOpen(system);

const hasFewOpen = perObject(({ elements }: System): boolean => {
  const open = Object.values(elements).map((saved) => openPhasesOf(complete(saved)).length);
  return open.reduce((sum, count) => sum + count, 0) <= OPEN_AT_ONCE;
});
