import { app } from "./app";
import { devices } from "./devices";
import { document } from "./document";
import { drawing } from "./drawing";
import { hazard } from "./hazard";

/**
 * The sentences that come with the app: those of the first picture of a drawing, and of reading and editing it.
 * What only a panel or another place says stands in another area, which the app learns when that is first opened.
 */
export const first = { ...app, ...devices, ...document, ...drawing, ...hazard } as const;
