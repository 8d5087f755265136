import { speech } from "../words/language.svelte";

/** What a drawing of the library says in another language: its own words, and those in their place. */
export type Wording = Readonly<Record<string, string>>;

/** Keys of a file under which it speaks to people; what stands under others is a name of the format. */
export const SPOKEN: ReadonlySet<string> = new Set([
  "title",
  "notes",
  "label",
  "task",
  "permit",
  "text",
  "prebrief",
  "assume",
  "think",
  "step",
  "where",
  "happened",
  "reactions",
  "takeAway",
  "why",
  "what",
  "expected",
  "note",
]);

/** A file of the library in other words. What these have nothing for stays as it is. */
export function inWords(text: string, wording: Wording): string {
  const said = (value: unknown, key: string): unknown => {
    if (typeof value === "string") return SPOKEN.has(key) ? (wording[value] ?? value) : value;
    if (Array.isArray(value)) return value.map((it) => said(it, key));
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([own, it]) => [own, said(it, own)]));
  };
  return JSON.stringify(said(JSON.parse(text), ""));
}

/** A file of the library in the language of the app: as it is in English, and where its words cannot be had. */
export async function inOwnLanguage(
  text: string,
  french: (() => Promise<Wording>) | undefined,
): Promise<string> {
  if (speech.language !== "fr" || french === undefined) return text;
  const wording = await french().catch(() => undefined);
  return wording === undefined ? text : inWords(text, wording);
}
