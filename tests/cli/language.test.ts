import { expect, test } from "vitest";
import { COMMANDS } from "../../src/cli/run";
import { english } from "../../src/core/words";
import { files, line, tap } from "./line";

const file = files({ "tap.json": tap(), "bad.json": { format: "stillhot", formatVersion: 1 } });
const at = file("tap.json");
/** What a command reads where it is no drawing alone. */
const READ: Readonly<Record<string, string>> = {
  import: "shared/import/geojson/example.geojson",
  variant: "shared/scenarios/lindens.stillhot.json",
};
const readBy = (name: string): string => READ[name] ?? at;
/** A lesson package is made of the built app, which stands beside the built command line alone: an end-to-end test makes it. */
const ANSWERING = COMMANDS.filter(({ takesFiles, name }) => takesFiles && name !== "package").map(
  ({ name }) => name,
);

/** What a command does not go without. */
const NEEDED: Readonly<Record<string, readonly string[]>> = {
  cut: ["--around", "p2"],
};
const withNeeded = (name: string): readonly string[] => NEEDED[name] ?? [];

/** What a script reads: every key, number and code, without the sentences. */
const skeleton = (value: unknown, key = ""): unknown => {
  if (
    typeof value === "string" &&
    ["message", "help", "why", "text", "control", "summary", "svg", "html", "what", "can"].includes(key)
  )
    return "words";
  if (Array.isArray(value)) return value.map((it) => skeleton(it));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, it]) => [name, skeleton(it, name)]));
};

test.each(ANSWERING)(
  "C8 %s in French: the same keys, codes, numbers and exit code, other sentences",
  async (name) => {
    const [english, french] = await Promise.all([
      line([name, readBy(name), ...withNeeded(name), "--json"]),
      line([name, readBy(name), ...withNeeded(name), "--json", "--language", "fr"]),
    ]);
    expect(french.code).toBe(english.code);
    const [inEnglish, inFrench] = [english, french].map(({ out }) => JSON.parse(out) as unknown);
    expect(skeleton(inFrench)).toEqual(skeleton(inEnglish));
  },
);

test("a finding is told in French, its rule by the same name", async () => {
  const { out, code } = await line(["check", at, "--language=fr"]);
  expect(code).toBe(1);
  expect(out).toContain("SOUS TENSION");
  expect(out).toMatch(/\(equipotential\)\n {2}aucune mise à la terre/);
  expect(out).toContain("Un croquis n'est pas le poteau");
  expect(out).not.toContain(english["page.caution"]);
});

test("the sheet says its language, and what cannot be used is refused in it", async () => {
  const { out } = await line(["sheet", at, "--language", "fr"]);
  expect(out).toContain('<html lang="fr">');
  const refused = await line(["check", file("bad.json"), "--language", "fr"]);
  expect([refused.code, refused.out]).toEqual([2, ""]);
  expect(refused.err).toContain("system");
  expect(refused.err).toContain("manque");
});

test("help is told in either language, wherever the language stands on the line", async () => {
  for (const words of [
    ["--language", "fr", "--help"],
    ["help", "--language=fr"],
    ["check", "--help", "--language", "fr"],
  ])
    expect((await line(words)).out).toMatch(/français|Code de sortie/);
  expect((await line(["--help", "--language", "en"])).out).toBe((await line(["--help"])).out);
});

test("without it every sentence is English, whatever the machine speaks and whatever else is asked at the same time", async () => {
  const plain = await line(["check", at]);
  const [again, french] = await Promise.all([line(["check", at]), line(["check", at, "--language", "fr"])]);
  expect(again.out).toBe(plain.out);
  expect(french.out).not.toBe(plain.out);
});

test.each([
  [["check", at, "--language", "de"], /no language de; there are en, fr/],
  [["check", "--language", at], /is a file, and --language expects a language before it, one of en, fr/],
  [["check", at, "--language"], /--language needs a value/],
  [["check", at, "--language="], /--language needs a value/],
  [["check", at, "--language", "fr", "--language", "fr"], /--language is given twice/],
])("%j is refused", async (words, why) => {
  const { code, out, err } = await line(words);
  expect([code, out]).toEqual([2, ""]);
  expect(err).toMatch(why);
});

test("after -- it is the name of a file", async () => {
  expect((await line(["check", "--", "--language"])).err).toContain("there is no such file");
});
