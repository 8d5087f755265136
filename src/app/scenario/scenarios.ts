import type { StillhotDocument } from "../../core";
import { shipped } from "../keep/translated";
import type { Wording } from "../keep/wording";
import { speech } from "../words/language.svelte";

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

const french = import.meta.glob<Wording>("../../../shared/scenarios/fr/*.json", { import: "default" });

const frenchOf = (name: string) => french[`../../../shared/scenarios/fr/${name}.json`];

const listed = async (): Promise<readonly ListedScenario[]> => (await Object.values(indexes)[0]?.()) ?? [];
const frenchOfList = async (): Promise<Wording> => (await frenchOf("index")?.()) ?? {};

/** The library's list, easiest first. What a scenario teaches is left out: it would give its trap away. */
export async function scenarios(): Promise<readonly ListedScenario[]> {
  const words = speech.language === "fr" ? await frenchOfList() : {};
  return (await listed())
    .map((it) => ({ ...it, title: words[it.title] ?? it.title, summary: words[it.summary] ?? it.summary }))
    .sort((a, b) => a.level - b.level);
}

/** The scenario of the library with a title in any language; nothing where there is none. */
export async function scenarioTitled(title: string): Promise<ListedScenario | undefined> {
  const words = await frenchOfList();
  return (await listed()).find((it) => [it.title, words[it.title]].includes(title));
}

/** A scenario of the library; nothing where there is none of that name, or it does not read. */
export const scenario = (id: string): Promise<StillhotDocument | undefined> =>
  shipped(files, id, frenchOf(id));
