import type { StillhotDocument } from "../../core";
import { readText } from "../share/files";

/** One scenario of the library that ships with the app, as its list tells of it before it is opened. */
export interface ListedScenario {
  readonly id: string;
  readonly title: string;
  readonly level: number;
  readonly minutes: number;
  readonly summary: string;
  /** what an apprentice must be able to do, by the keys of docs/training-coverage.md */
  readonly tasks: readonly string[];
}

const files = import.meta.glob<string>("../../../shared/scenarios/*.stillhot.json", {
  query: "?raw",
  import: "default",
});
const indexes = import.meta.glob<readonly ListedScenario[]>("../../../shared/scenarios/index.json", {
  import: "default",
});

const idOf = (path: string) => path.split("/").at(-1)!.replace(".stillhot.json", "");

/** The library's list, easiest first. What a scenario teaches is left out: it would give its trap away. */
export async function scenarios(): Promise<readonly ListedScenario[]> {
  const [load] = Object.values(indexes);
  const list = load === undefined ? [] : await load();
  return [...list].sort((a, b) => a.level - b.level);
}

/** A scenario of the library; nothing where there is none of that name, or it does not read. */
export async function scenario(id: string): Promise<StillhotDocument | undefined> {
  const path = Object.keys(files).find((it) => idOf(it) === id);
  if (path === undefined) return undefined;
  const opened = readText(await files[path]!());
  return "document" in opened ? opened.document : undefined;
}
