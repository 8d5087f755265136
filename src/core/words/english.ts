import { rulesInEnglish, type RuleMessageKey } from "../procedure";
import { englishBesideRules, type MessageKey } from "../terms";

/** Every key of a sentence that the core says. What speaks around the core has keys of its own beside them. */
export type CoreMessageKey = MessageKey | RuleMessageKey;

/** Every sentence that the core says, in English. A region's words are made of these. */
export const english: Readonly<Record<CoreMessageKey, string>> = { ...englishBesideRules, ...rulesInEnglish };
