import type { StillhotDocument } from "../../core";
import { type Language, speech } from "../words/language.svelte";
import { idOf, shipped } from "./translated";
import type { Wording } from "./wording";

/** One drawing of the library that ships with the app. */
export interface Demo {
  readonly id: string;
  readonly title: string;
  /** by language */
  readonly summary: Readonly<Partial<Record<Language, string>>>;
}

const files = import.meta.glob<string>("../../../shared/demos/*.stillhot.json", {
  query: "?raw",
  import: "default",
});
const indexes = import.meta.glob<readonly Demo[]>("../../../shared/demos/index.json", { import: "default" });
const french = import.meta.glob<Wording>("../../../shared/demos/fr/*.json", { import: "default" });

const frenchOf = (name: string) => french[`../../../shared/demos/fr/${name}.json`];

/** The library's list, in its own order. */
export async function demos(): Promise<readonly Demo[]> {
  const [load] = Object.values(indexes);
  const listed = load === undefined ? [] : await load();
  const titles = speech.language === "fr" ? ((await frenchOf("index")?.()) ?? {}) : {};
  const index = listed.map((it) => ({ ...it, title: titles[it.title] ?? it.title }));
  const there = new Set(Object.keys(files).map(idOf));
  const known = index.filter((it) => there.has(it.id));
  const rest = [...there].filter((id) => !known.some((it) => it.id === id));
  return [...known, ...rest.map((id) => ({ id, title: id.replaceAll("-", " "), summary: {} }))];
}

/** A drawing of the library; nothing where there is none of that name, or it does not read. */
export const demo = (id: string): Promise<StillhotDocument | undefined> => shipped(files, id, frenchOf(id));
