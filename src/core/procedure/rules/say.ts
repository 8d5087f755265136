import type { Message, MessageGaps, MessageKey } from "../../terms";
import type { RuleMessageKey } from "./words";

/** A sentence of a rule, or another of the core: its key, and what fills its gaps. */
export const say = (key: RuleMessageKey | MessageKey, gaps?: MessageGaps): Message =>
  gaps === undefined ? { key } : { key, with: gaps };
