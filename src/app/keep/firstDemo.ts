import type { StillhotDocument } from "../../core";
import { readText } from "../share/files";

/** The drawing that a newcomer sees first, fetched by its name: a newcomer waits for no list. */
export async function firstDemo(): Promise<StillhotDocument | undefined> {
  const { default: text } =
    await import("../../../shared/demos/sideline-three-transformers.stillhot.json?raw");
  const opened = readText(text);
  return "document" in opened ? opened.document : undefined;
}
