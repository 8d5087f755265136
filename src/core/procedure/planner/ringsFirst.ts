import type { StillhotDocument } from "../../document";
import { backToService } from "./backToService";
import { inThisOrder } from "./closing";
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
    back: backToService(document, choice.ready, inParts, "closed before it opens"),
  };
}
