import {
  type Catalogue,
  type CoreMessageKey,
  firstEnglish,
  type Message,
  type MessageGaps,
} from "../../core";
import type { english } from "./messages/en";
import { app } from "./messages/en/app";

/** Every key that the app can say, the core's and its own, whether or not its sentence is at hand yet. */
export type MessageKey = CoreMessageKey | keyof typeof english;

/** A sentence, the core's or the app's own: its key, and what fills its gaps. */
export const say = (key: MessageKey, gaps?: MessageGaps): Message =>
  gaps === undefined ? { key } : { key, with: gaps };

const atHand: Record<string, string> = { ...firstEnglish, ...app };

/** The English sentences at hand: those of the first picture from the start, all others once they are learned. */
export const inEnglish: Catalogue = atHand;

/** Takes more sentences in, before anything says them: whoever loads such code loads its sentences with it. */
export const learn = (sentences: Catalogue): void => void Object.assign(atHand, sentences);

/** Whether there is a sentence of this key at hand, for keys put together from the names of things. */
export const isMessageKey = (key: string): key is MessageKey => Object.hasOwn(atHand, key);
