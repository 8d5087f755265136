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
export const inWords = (text: string, wording: Wording): string => spoken(text, (it) => wording[it] ?? it);

/** A file of the library with all that it says to people said in another way. */
export function spoken(text: string, inOtherWords: (sentence: string) => string): string {
  const said = (value: unknown, key: string): unknown => {
    if (typeof value === "string") return SPOKEN.has(key) ? inOtherWords(value) : value;
    if (Array.isArray(value)) return value.map((it) => said(it, key));
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([own, it]) => [own, said(it, own)]));
  };
  return JSON.stringify(said(JSON.parse(text), ""));
}
