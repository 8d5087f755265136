import { openPhasesOf, shortedBy } from "../../devices";
import { elementsOfKind, settingsOf } from "../../document";
import { type FuseLink, linkName, meltSeconds } from "../../reference";
import { type ElementId, type Letter, lettersOf, type Message, say } from "../../terms";
import { elementsOf, figure, nameOf } from "../job/names";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";

/** The link that clears a fault first, and the earliest and latest that it melts. */
export interface Clearing {
  readonly element: ElementId;
  readonly letter: Letter;
  readonly link: FuseLink;
  readonly amps: number;
  readonly leastSeconds: number;
  readonly mostSeconds: number;
}

/** Which link melts first with the currents as they stand; nothing where none melts. */
export function clearingOf(state: JobState): Clearing | undefined {
  const { elements } = asItStands(state);
  let first: Clearing | undefined;
  for (const [id, element] of elementsOfKind(state.document.system, "cutout")) {
    if (element.fuse === undefined || element.fuse === "solid") continue;
    const open = openPhasesOf(element);
    for (const letter of lettersOf(element.phases)) {
      if (open.includes(letter)) continue;
      const amps = elements[id]?.amps[letter] ?? 0;
      const { least, most } = meltSeconds(element.fuse, amps);
      if (least === Infinity || (first !== undefined && first.leastSeconds <= least)) continue;
      first = { element: id, letter, link: element.fuse, amps, leastSeconds: least, mostSeconds: most };
    }
  }
  return first;
}

/** A link whose element is gone so soon has no time that anybody could tell: its arc ends at a zero of the current. */
export const isWithinHalfCycle = ({ document }: JobState, seconds: number): boolean =>
  seconds < 1 / (2 * document.system.frequencyHz);

/** How a fault ends, in words. */
export function clearingWords(state: JobState): Message {
  const clearing = clearingOf(state);
  if (clearing === undefined)
    return say("clearing.none", { seconds: settingsOf(state.document).clearingSeconds });
  const { element, link, amps, leastSeconds, mostSeconds } = clearing;
  const isFast = isWithinHalfCycle(state, mostSeconds);
  return say(mostSeconds === Infinity ? "clearing.maybe" : isFast ? "clearing.fast" : "clearing.link", {
    name: nameOf(state.document, element),
    link: linkName(link),
    amps: figure(amps),
    least: figure(leastSeconds),
    most: figure(mostSeconds),
  });
}

/** The largest current in anything that shorts conductors: ground sets, faults, failed arresters [A]. */
export function faultAmps(state: JobState, only?: readonly ElementId[]): number {
  const { elements } = asItStands(state);
  let most = 0;
  for (const [id, element] of elementsOf(state.document.system)) {
    if (only !== undefined && !only.includes(id)) continue;
    if (shortedBy(element) === "") continue;
    most = Math.max(most, ...Object.values(elements[id]?.amps ?? {}));
  }
  return most;
}
