import { speech } from "../words/language.svelte";

/** Whether this device has voices of its own. */
export const hasVoices = (): boolean => "speechSynthesis" in globalThis;

/** Says sentences by the device's own voices, in the app's language; what was being said before gives way. */
export function sayAloud(...sentences: readonly string[]): void {
  if (!hasVoices()) return;
  speechSynthesis.cancel();
  const words = new SpeechSynthesisUtterance(sentences.filter(Boolean).join(". "));
  words.lang = speech.locale;
  speechSynthesis.speak(words);
}

/** Stops what is being read aloud. */
export function beQuiet(): void {
  if (hasVoices()) speechSynthesis.cancel();
}
