import { droppedBy, hangs } from "../../devices";
import type { StillhotDocument, System } from "../../document";
import { circuitOf } from "../../network";
import {
  canGoOffAgain,
  closingMoves,
  customersDark,
  fedOutward,
  isNormallyOpen,
  type Move,
  systemMoved,
  wholes,
} from "./closing";
import { notToBeEnergized } from "../job/inService";
import { allClosed, offPart } from "./ending";
import { type Opening, openingsIn } from "./openings";
import { withWholeBanks } from "./wholeBanks";

/** What is fed again before the work begins. */
export interface Restored {
  readonly moves: readonly Move[];
  readonly after: System;
  /** things that would feed the work too if they were closed as it stands: more could be fed if it were cut off there */
  readonly refused: readonly Opening[];
}

/**
 * What can be fed before the work begins, with the openings for it made: never in parallel, never onto the work, onto
 * anything broken or onto a ground set that was found on, nothing that feeds nobody, and no tie that could not be opened again under what it then feeds. What is
 * normally closed comes before a tie.
 *
 * @param held nodes that nothing may feed
 */
export function restored(document: StillhotDocument, opened: System, held: readonly number[]): Restored {
  const circuit = circuitOf(opened);
  const dark = customersDark(circuit, []);
  if (dark === 0) return { moves: [], after: opened, refused: [] };
  const open = wholes(
    openingsIn(document, allClosed(document))
      .all.filter((it) => droppedBy(it) === "load" && !hangs(it))
      .flatMap((it) => offPart(opened, it) ?? []),
  ).sort((a, b) => Number(isTie(a)) - Number(isTie(b)) || (a.key < b.key ? -1 : 1));
  const notToBe = notToBeEnergized(document.system, opened).flatMap((id) => circuit.nodeOf.get(id) ?? []);
  return closedAgain(open);

  /** Without the ties that could not be opened again under what they feed, one after the other. */
  function closedAgain(open: readonly Opening[]): Restored {
    const { taken, refused } = fedOutward(circuit, open, [...held, ...notToBe], "no rings");
    const moves = withWholeBanks(document, opened, closingMoves(document, opened, useful(taken)));
    const after = moves.length === 0 ? opened : systemMoved(document, moves.at(-1)!);
    const stuck = moves
      .map(({ opening }) => opening)
      .find((it) => isTie(it) && !canGoOffAgain(document, after, it));
    if (stuck === undefined) return { moves, after, refused };
    return closedAgain(open.filter(({ element }) => element !== stuck.element));
  }

  /** The fewest of what can be closed with which no more customers are dark than with all of it. */
  function useful(taken: readonly Opening[]): readonly Opening[] {
    const least = customersDark(circuit, taken);
    if (least === dark) return [];
    return taken.reduceRight<readonly Opening[]>((kept, it) => {
      const fewer = kept.filter((other) => other !== it);
      return customersDark(circuit, fewer) === least ? fewer : kept;
    }, taken);
  }
  function isTie({ element }: Opening): boolean {
    return isNormallyOpen(opened, element);
  }
}
