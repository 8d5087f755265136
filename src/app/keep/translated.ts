import { speech } from "../words/language.svelte";
import { inWords, type Wording } from "./wording";

/** A file of the library in the language of the app: as it is in English, and where its words cannot be had. */
export async function inOwnLanguage(
  text: string,
  french: (() => Promise<Wording>) | undefined,
): Promise<string> {
  if (speech.language !== "fr" || french === undefined) return text;
  const wording = await french().catch(() => undefined);
  return wording === undefined ? text : inWords(text, wording);
}
