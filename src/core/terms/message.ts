import type { english } from "./messages/en";
import { first } from "./messages/en/first";

/** Every key of the catalogue, whether or not its sentence is at hand yet. */
export type MessageKey = keyof typeof english;

/** A sentence that a person will read, as a key of the catalogue and what fills its gaps. */
export interface Message {
  readonly key: MessageKey;
  readonly with?: MessageGaps;
}

/** What fills a gap: text as it is, a number with the point or comma of the language; a nested message is spelled in the same language. */
export type MessageGaps = Readonly<Record<string, string | number | Message>>;

/** One language or region: a file under messages/. A missing key falls back to English. */
export type Catalogue = Readonly<Partial<Record<MessageKey, string>>>;

/** The English sentences at hand: those of the first picture from the start, all others once they are learned. */
const atHand: Partial<Record<MessageKey, string>> = { ...first };

/** Takes more sentences in, before anything says them: whoever loads such code loads its sentences with it. */
export const learn = (sentences: Catalogue): void => void Object.assign(atHand, sentences);

export const say = (key: MessageKey, gaps?: MessageGaps): Message =>
  gaps === undefined ? { key } : { key, with: gaps };

/** Spells a message out: `{name}` in the catalogue's sentence is filled from the message's gaps. A label is itself. */
export function spell(message: Message | string, catalogue: Catalogue = atHand): string {
  if (typeof message === "string") return withoutTurns(message);
  const sentence = catalogue[message.key] ?? atHand[message.key];
  if (sentence === undefined) throw new Error(`nothing has learned the sentence ${message.key} yet`);
  return sentence.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const gap = message.with?.[name];
    if (gap === undefined) return whole;
    if (typeof gap === "object") return spell(gap, catalogue);
    return typeof gap === "number" ? numberIn(catalogue, gap) : withoutTurns(gap);
  });
}

const numberIn = (catalogue: Catalogue, value: number): string =>
  String(value).replace(".", catalogue["number.point"] ?? atHand["number.point"]!);

/** A label with what would turn the words after it around shown as its code: it must not change how a verdict reads. */
export const withoutTurns = (text: string): string =>
  text.replace(/[\u202a-\u202e\u2066-\u2069]/g, (it) => `\\u${it.charCodeAt(0).toString(16)}`);

/** Whether there is a sentence of this key at hand, for keys put together from the names of things. */
export const isMessageKey = (key: string): key is MessageKey => Object.hasOwn(atHand, key);
