import { english, type MessageKey } from "./messages/en";

export type { MessageKey };

/** A sentence that a person will read, as a key of the catalogue and what fills its gaps. */
export interface Message {
  readonly key: MessageKey;
  readonly with?: MessageGaps;
}

/** What fills a gap: text and numbers as they are; a nested message is spelled in the same language. */
export type MessageGaps = Readonly<Record<string, string | number | Message>>;

/** One language or region: a file under messages/. A missing key falls back to English. */
export type Catalogue = Readonly<Partial<Record<MessageKey, string>>>;

export const say = (key: MessageKey, gaps?: MessageGaps): Message =>
  gaps === undefined ? { key } : { key, with: gaps };

/** Spells a message out: `{name}` in the catalogue's sentence is filled from the message's gaps. */
export function spell(message: Message, catalogue: Catalogue = english): string {
  const sentence = catalogue[message.key] ?? english[message.key];
  return sentence.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const gap = message.with?.[name];
    if (gap === undefined) return whole;
    return typeof gap === "object" ? spell(gap, catalogue) : String(gap);
  });
}

/** Whether the catalogue has a sentence of this key, for keys put together from the names of things. */
export const isMessageKey = (key: string): key is MessageKey => Object.hasOwn(english, key);
