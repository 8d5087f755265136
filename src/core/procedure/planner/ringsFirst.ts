import type { StillhotDocument } from "../../document";
import { backToService } from "./backToService";
import { inThisOrder } from "./closing";
import { withStopsFirst } from "./decide";
import { isOff } from "./ending";
import type { Intent } from "./intent";
import { isInRing } from "./rings";

/**
 * An intent with each open point of a ring closed before anything is opened, and opened again only once the usual way
 * carries everybody: nobody goes without supply for a moment. Nothing where no ring feeds the rest meanwhile.
 */
export function ringsFirst(
  document: StillhotDocument,
  intent: Intent,
  inParts: ReadonlySet<string>,
): Intent | undefined {
  const { system } = document;
  const { choice } = intent;
  const rings = choice.restored.moves.filter(
    ({ way, opening }) => way === "on" && isOff(system, opening) && isInRing(system, opening),
  );
  if (rings.length === 0) return undefined;
  return {
    ...intent,
    rings: inThisOrder(document, system, rings),
    ...withStopsFirst(document, backToService(document, choice.ready, inParts, "closed before it opens")),
  };
}

/**
 * An intent that closes the usual way of a ring before it opens the point by which the ring feeds the rest as found: that
 * point was closed before the crew came, so that nobody has to be dark while it goes back. Nothing where it changes nothing.
 */
export function ringsClosedBack(
  document: StillhotDocument,
  intent: Intent,
  inParts: ReadonlySet<string>,
): Intent | undefined {
  const back = backToService(document, intent.choice.ready, inParts, "closed before it opens");
  const isSame =
    back.length === intent.back.length &&
    back.every(({ way, opening }, at) => {
      const other = intent.back[at]!;
      return way === other.way && opening.key === other.opening.key;
    });
  return isSame ? undefined : { ...intent, ...withStopsFirst(document, back) };
}
