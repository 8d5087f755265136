import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { line } from "./line";

/** Every demo and scenario, and the ids of its file that no label and no word of a language could hold. */
const FILES = ["demos", "scenarios"].flatMap((folder) =>
  readdirSync(`shared/${folder}`)
    .filter((it) => it.endsWith(".stillhot.json"))
    .map((it) => `shared/${folder}/${it}`),
);

interface Saved {
  readonly system: Readonly<Record<string, Readonly<Record<string, { readonly label?: string }>>>>;
  readonly job?: { readonly workPoints?: Readonly<Record<string, { readonly label?: string }>> };
}

/** Ids of a file that are found in a text outside of the labels of that file. */
function idsIn(text: string, { system, job }: Saved): string[] {
  const { points = {}, elements = {}, structures = {} } = system;
  const records = { ...points, ...elements, ...structures, ...job?.workPoints };
  const labels = Object.values(records).map((it) => it.label ?? "");
  const words = text.replaceAll(/\s+/g, " ");
  const bare = labels
    .filter((it) => it !== "")
    .sort((a, b) => b.length - a.length)
    .reduce((rest, label) => rest.replaceAll(label, "…"), words);
  return Object.keys(records).filter(
    (id) => /\d/.test(id) && new RegExp(`(?<![\\w-])${id}(?![\\w-])`).test(bare),
  );
}

describe("D13 No id is part of a sentence", () => {
  test.each(FILES)("%s", async (path) => {
    const saved = JSON.parse(readFileSync(path, "utf8")) as Saved;
    for (const language of ["en", "fr"])
      for (const command of ["check", "rehearse", "sheet"]) {
        const { out, err } = await line([command, path, "--language", language]);
        expect([err, out.length > 300]).toEqual(["", true]);
        const read = out.replaceAll(/<style.*?<\/style>/gs, " ").replaceAll(/<[^>]*>/g, " ");
        expect(idsIn(read, saved), `${command} in ${language}`).toEqual([]);
      }
  });

  test("an id in a text is found, and one in a label is not", () => {
    const saved = { system: { elements: { c1: { label: "Cutout c1" }, t1: {} } } };
    expect(idsIn("Cutout c1 and (t1) at ct1", saved)).toEqual(["t1"]);
  });
});
