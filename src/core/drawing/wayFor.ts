import type { StillhotDocument } from "../document";
import { bestLie } from "./arrangement";
import type { Way } from "./layout/inside";

/** A picture that is passed on is about as wide as a page that lies, and no taller than one that stands. */
const PICTURE = { width: 1200, height: 1000 };

/** Which way the line runs on a picture of the whole drawing that nobody has a frame for yet. */
export function wayFor(document: StillhotDocument): Way {
  return bestLie(document, PICTURE, () => 1, 40).way;
}
