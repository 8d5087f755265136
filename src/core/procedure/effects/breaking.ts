import { type Breaks, breaksOf, type CircuitElement, openPhasesOf } from "../../devices";
import { settingsOf, type Step } from "../../document";
import type { ElementId, Letter } from "../../terms";
import { elementOf } from "../job/names";
import { excitesOnly } from "./exciting";
import { gapsOf, voltsAcross } from "./gap";
import { phasesOf } from "../job/positions";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";
import { isOpening } from "../../steps";

/** Current that a step breaks in one phase of a thing, and what that thing may break with the tool in hand. */
export interface Breaking {
  readonly element: ElementId;
  readonly letter: Letter;
  /** what it breaks [A]: none where its gap keeps no arc */
  readonly amps: number;
  /** through it just before it opens [A] */
  readonly through: number;
  /** across its gap once it is open [V] */
  readonly volts: number;
  readonly limit: Breaks;
}

/** Below this no arc stands between copper parts, whatever the current [V]: Holm, Electric Contacts, from memory. */
export const LEAST_ARC_VOLTS = 13;
/** Up to so many volts a current of so few amperes goes out by itself in an open gap (common practice, no source). */
const LOW_VOLTS = 300;
const LOW_AMPS = 1;
/**
 * What excites the units that hang on a pole, 167 kVA and less, is no more than this on a leg of 120 V, and goes out by itself
 * there (common practice, no source). A leg of a bank at 277 V, or both legs across one gap, is no leg of 120 V.
 */
const LOW_EXCITING_AMPS = 5;
const LOW_EXCITING_VOLTS = 150;

/** Whether a drawing may say what load a thing's own blades make and break. */
export const mayBeLoadRated = (element: CircuitElement): boolean => "loadBreakAmps" in element;

/** What keeps an arc is current and volts across the gap: a path beside it that holds the gap leaves nothing to break. */
export const keepsArc = (amps: number, volts: number): boolean =>
  volts >= LEAST_ARC_VOLTS && !(volts <= LOW_VOLTS && amps <= LOW_AMPS);

/** Whether what an opened gap broke is so little exciting current of transformers that it goes out by itself. */
const isLowExciting = (amps: number, volts: number): boolean =>
  volts <= LOW_EXCITING_VOLTS && amps <= LOW_EXCITING_AMPS;

/** What a step that opens a thing breaks, phase by phase. */
export function breakingsOf(step: Step, before: JobState, after: JobState): Breaking[] {
  const { document } = before;
  const element = elementOf(document.system, step.element);
  if (!isOpening(step) || element === undefined || after.notDone !== undefined) return [];
  const id = step.element;
  const amps = asItStands(before).elements[id]?.amps ?? {};
  const limit = limitOf(element, step, before);
  const letters = [...phasesOf(element, step)].filter(
    (it) => !openPhasesOf(element).includes(it),
  ) as Letter[];
  return letters.map((letter) => {
    const through = amps[letter] ?? 0;
    const [gap] = gapsOf(after, id, letter);
    const volts = gap === undefined ? 0 : voltsAcross(gap);
    const goesOut =
      gap !== undefined &&
      (!keepsArc(through, volts) || (isLowExciting(through, volts) && excitesOnly(after, gap.sides)));
    return {
      element: id,
      letter,
      amps: goesOut ? 0 : through,
      through,
      volts,
      limit,
    };
  });
}

/** What has no limit of its own, as a span that is cut, breaks charging and exciting current only. */
function limitOf(element: CircuitElement, step: Step, { document }: JobState): Breaks {
  const settings = settingsOf(document);
  return breaksOf(element, step.with ?? "", settings) ?? { amps: settings.clampBreakAmps, basis: "unrated" };
}

/** The phase of a step that breaks most of what it may, worst first. */
export const worstOf = (breakings: readonly Breaking[]): Breaking | undefined =>
  [...breakings].sort((a, b) => b.amps - a.amps)[0];
