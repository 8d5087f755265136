import { devices } from "./devices";
import { document } from "./document";
import { drawing } from "./drawing";
import { naming } from "./naming";

/** The sentences without which no drawing is shown, read or edited. Whoever starts with these alone learns the others later. */
export const first = { ...devices, ...document, ...drawing, ...naming } as const;
