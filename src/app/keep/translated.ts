import { REGIONS, saidIn } from "../../core";
import { speech } from "../words/language.svelte";
import { inWords, spoken, type Wording } from "./wording";

/** A file of the library in the words of the app: as it is in plain English, and where its words cannot be had. */
export async function inOwnLanguage(
  text: string,
  french: (() => Promise<Wording>) | undefined,
): Promise<string> {
  const { words } = speech;
  if (words === "en") return text;
  if (words !== "fr") return spoken(text, (it) => saidIn(REGIONS[words], it));
  const wording = await french?.().catch(() => undefined);
  return wording === undefined ? text : inWords(text, wording);
}
