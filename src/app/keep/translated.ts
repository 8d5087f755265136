import { REGIONS, saidIn, type StillhotDocument } from "../../core";
import { speech } from "../words/language.svelte";
import { inWords, spoken, type Wording } from "./wording";
import { readText } from "../share/files";

/** A file of the library in the words of the app: as it is in plain English, and where its words cannot be had. */
async function inOwnLanguage(text: string, french: (() => Promise<Wording>) | undefined): Promise<string> {
  const { words } = speech;
  if (words === "en") return text;
  if (words !== "fr") return spoken(text, (it) => saidIn(REGIONS[words], it));
  const wording = await french?.().catch(() => undefined);
  return wording === undefined ? text : inWords(text, wording);
}

/** The name of a file of the library, by its path. */
export const idOf = (path: string): string => path.split("/").at(-1)!.replace(".stillhot.json", "");

/** A drawing of the library, in the app's language; nothing where there is none of that name, or it does not read. */
export async function shipped(
  files: Readonly<Record<string, () => Promise<string>>>,
  id: string,
  french: (() => Promise<Wording>) | undefined,
): Promise<StillhotDocument | undefined> {
  const path = Object.keys(files).find((it) => idOf(it) === id);
  if (path === undefined) return undefined;
  const opened = readText(await inOwnLanguage(await files[path]!(), french));
  return "document" in opened ? opened.document : undefined;
}
