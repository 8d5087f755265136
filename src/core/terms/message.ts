import type { englishBesideRules } from "./messages/en";

/** Every key of the core's catalogue, but for those of the rules. */
export type MessageKey = keyof typeof englishBesideRules;

/**
 * A sentence that a person will read, as a key of a catalogue and what fills its gaps. Only `say` makes one, and knows the
 * keys; whatever carries it further need not.
 */
export interface Message {
  readonly key: string;
  readonly with?: MessageGaps;
}

/** What fills a gap: text as it is, a number with the point or comma of the language; a nested message is spelled in the same language. */
export type MessageGaps = Readonly<Record<string, string | number | Message>>;

/** The sentences of one language or region by their keys. Whoever spells a message hands in the one to spell it by. */
export type Catalogue = Readonly<Partial<Record<string, string>>>;

/** A sentence of the core: its key, and what fills its gaps. */
export const say = (key: MessageKey, gaps?: MessageGaps): Message =>
  gaps === undefined ? { key } : { key, with: gaps };

/**
 * Spells a message out: `{name}` in the catalogue's sentence is filled from the message's gaps. A label is itself.
 *
 * @throws Error where the catalogue lacks the sentence
 */
export function spell(message: Message | string, catalogue: Catalogue): string {
  if (typeof message === "string") return withoutTurns(message);
  const sentence = catalogue[message.key];
  if (sentence === undefined) throw new Error(`the catalogue at hand has no sentence ${message.key}`);
  return sentence.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const gap = message.with?.[name];
    if (gap === undefined) return whole;
    if (typeof gap === "object") return spell(gap, catalogue);
    return typeof gap === "number" ? numberIn(catalogue, gap) : withoutTurns(gap);
  });
}

const numberIn = (catalogue: Catalogue, value: number): string =>
  String(value).replace(".", catalogue["number.point"] ?? ".");

/** A label with what would turn the words after it around shown as its code: it must not change how a verdict reads. */
export const withoutTurns = (text: string): string =>
  text.replace(/[\u202a-\u202e\u2066-\u2069]/g, (it) => `\\u${it.charCodeAt(0).toString(16)}`);
