import { rulesInFrench } from "../procedure";
import { frenchBesideRules } from "../terms";
import type { CoreMessageKey } from "./english";

/** Every sentence that the core says, in French. */
export const french: Readonly<Record<CoreMessageKey, string>> = { ...frenchBesideRules, ...rulesInFrench };
