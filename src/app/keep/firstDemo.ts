import type { StillhotDocument } from "../../core";
import { readText } from "../share/files";
import { speech } from "../words/language.svelte";

/** The drawing that a newcomer sees first, fetched by its name: a newcomer waits for no list. */
export async function firstDemo(): Promise<StillhotDocument | undefined> {
  const { default: text } =
    await import("../../../shared/demos/sideline-three-transformers.stillhot.json?raw");
  const opened = readText(speech.language === "fr" ? await inFrench(text).catch(() => text) : text);
  return "document" in opened ? opened.document : undefined;
}

async function inFrench(text: string): Promise<string> {
  const [{ inWords }, { default: wording }] = await Promise.all([
    import("./wording"),
    import("../../../shared/demos/fr/sideline-three-transformers.json"),
  ]);
  return inWords(text, wording);
}
