import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { isUnreadable, readDocument, stateColumn, assess } from "../../core";
import { inWords, SPOKEN, type Wording } from "./wording";

const folders = ["shared/demos", "shared/scenarios"];
const files = folders.flatMap((folder) =>
  readdirSync(folder)
    .filter((it) => it.endsWith(".stillhot.json"))
    .map((it): [string, string, Wording] => [
      it.replace(".stillhot.json", ""),
      readFileSync(`${folder}/${it}`, "utf8"),
      wordingOf(`${folder}/fr/${it.replace(".stillhot.json", ".json")}`),
    ]),
);

function wordingOf(path: string): Wording {
  return JSON.parse(readFileSync(path, "utf8")) as Wording;
}

/** All that a file says to people. Where a condition or a step names a thing by an id, that is no sentence. */
function spokenIn(value: unknown, key = ""): string[] {
  if (typeof value === "string") {
    const isName =
      value === "" || (key === "permit" && value === "none") || (key === "where" && !value.includes(" "));
    return SPOKEN.has(key) && !isName ? [value] : [];
  }
  if (typeof value !== "object" || value === null) return [];
  if (Array.isArray(value)) return value.flatMap((it) => spokenIn(it, key));
  return Object.entries(value).flatMap(([own, it]) => spokenIn(it, own));
}

const digitsOf = (text: string): string =>
  [...text.replaceAll(/(?<=\d)[.,\u00a0 ](?=\d)/g, "").matchAll(/\d+/g)]
    .map(([it]) => it)
    .sort()
    .join(" ");

describe.each(files)("%s in French", (_name, text, wording) => {
  const { document } = readable(text);
  const french = readable(inWords(text, wording));

  test("says all of it, and nothing else", () => {
    expect(Object.keys(wording).sort()).toEqual([...new Set(spokenIn(JSON.parse(text)))].sort());
    expect(Object.values(wording).filter((it) => it.trim() === "")).toEqual([]);
  });

  test("keeps every number, and writes spaces before signs that do not break", () => {
    for (const [own, other] of Object.entries(wording)) {
      expect(digitsOf(other), other).toBe(digitsOf(own));
      expect(other).not.toMatch(/[ \w][:;?!](?=\s|$)/u);
    }
  });

  test("asks for nothing back over the radio that was not said", () => {
    const { permit = "", repeat = [] } = (french.document.scenario?.["operator"] ?? {}) as {
      permit?: string;
      repeat?: readonly string[];
    };
    expect(repeat.filter((it) => !permit.includes(it))).toEqual([]);
  });

  test("reads as it does in English, no two names alike that were not, and is as live", () => {
    expect(french.warnings.map(({ rule, where }) => `${rule} ${where}`)).toEqual(
      readable(text).warnings.map(({ rule, where }) => `${rule} ${where}`),
    );
    expect(stateColumn(assess(french.document).conductors)).toEqual(stateColumn(assess(document).conductors));
  });
});

test.each(folders)("the list of %s is French too", (folder) => {
  const list = JSON.parse(readFileSync(`${folder}/index.json`, "utf8")) as {
    title: string;
    summary: unknown;
  }[];
  const said = list.flatMap(({ title, summary }) => [
    title,
    ...(typeof summary === "string" ? [summary] : []),
  ]);
  expect(Object.keys(wordingOf(`${folder}/fr/index.json`)).sort()).toEqual([...new Set(said)].sort());
});

test("what stands under a name of the format is left alone, and what has no other words", () => {
  const file = JSON.stringify({ title: "tie", kind: "tie", steps: [{ note: "rest" }], assume: ["tie", "x"] });
  expect(JSON.parse(inWords(file, { tie: "liaison" }))).toEqual({
    title: "liaison",
    kind: "tie",
    steps: [{ note: "rest" }],
    assume: ["liaison", "x"],
  });
});

function readable(text: string) {
  const read = readDocument(text);
  if (isUnreadable(read)) throw new Error("it does not read");
  return read;
}
