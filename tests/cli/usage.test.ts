import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import packageJson from "../../package.json";
import { COMMANDS } from "../../src/cli/run";
import { drawing, files, folder, groundedTap, line, tap } from "./line";

const file = files({
  "tap.stillhot.json": tap(),
  "grounded.json": groundedTap(),
  "drawing.json": drawing(),
  "newer.json": { ...drawing(), weather: "rain" },
  "empty.json": "",
  "half.json": '{"format": "stillhot", "formatVersion": 1, "sys',
  "future.json": { format: "stillhot", formatVersion: 99 },
  "list.json": [],
  "latin.json": new Uint8Array([0x7b, 0xe9, 0x7d]),
  "utf16.json": new Uint8Array([0xff, 0xfe, 0x7b, 0x00]),
  "bom.json": `\ufeff${JSON.stringify(drawing())}`,
  "label.json": { ...drawing(), title: "x".repeat(10_000_000) },
  "deep.json": `${"[".repeat(100_000)}`,
  "proto.json": '{"format":"stillhot","formatVersion":1,"system":{"points":{"__proto__":{}},"elements":{}}}',
  "nan.json": '{"format":"stillhot","formatVersion":1,"system":{"points":{"p1":{"x":NaN}},"elements":{}}}',
});

/** [words, what standard error says]: exit code 2, standard output empty */
const REFUSED: readonly (readonly [string, RegExp])[] = [
  ["", /stillhot <command> FILE/],
  ["fly", /no command fly; there are validate, check/],
  ["tap.stillhot.json", /say what to do with it: stillhot check tap/],
  ["constructor", /no command constructor/],
  ["help fly", /no command fly/],
  ["check", /no FILE was given/],
  ["check --json", /no FILE was given/],
  [
    "check drawing.json --jsn",
    /check does not know --jsn; it knows --json, --language, --region, --all, --around, --openings, --jobs, --help/,
  ],
  ["check drawing.json -x", /does not know -x/],
  ["check drawing.json --all=yes", /--all takes no value/],
  ["check --all --all drawing.json", /given twice/],
  ["check - -", /only once/],
  ["draw drawing.json -o", /-o needs a value: -o OUT/],
  ["draw drawing.json --out=", /--out needs a value/],
  ["draw drawing.json tap.stillhot.json -o both.svg", /several files do not fit into one/],
  ["draw drawing.json --palette green", /no palette green; there are sun, night, paper/],
  ["draw drawing.json -o nowhere/x.svg", /could not be written: ENOENT/],
  ["serve drawing.json", /takes no file/],
  ["serve --port 99999", /not a port/],
  ["serve --port -1", /not a port/],
  ["check missing.json", /missing\.json: there is no such file/],
  ["check drawing.json/x.json", /there is no such file/],
  ["check .", /this is a folder/],
  ["check empty.json", /empty\.json: the file is empty/],
  ["check half.json", /the file ends at line 1, column 4\d/],
  ["check future.json", /needs a newer Stillhot/],
  ["check list.json", /expected a Stillhot file/],
  ["check latin.json", /not UTF-8/],
  ["check utf16.json", /UTF-16 text; save it as UTF-8/],
  ["check label.json", /title: found .{1,200}, expected text of at most 2000 letters/],
  ["check deep.json", /more than 50 levels/],
  ["check proto.json", /__proto__ is not allowed/],
  ["check nan.json", /line 1, column \d+: found/],
  ["check /dev/zero", /more than 80 MB/],
];

const placed = (words: string): string[] =>
  words
    .split(" ")
    .filter(Boolean)
    .map((it) => (/\.json/.test(it) ? file(it) : it === "." ? file(".") : it));

test.each(REFUSED)("C1 stillhot %s: refused", async (words, reason) => {
  const { code, out, err } = await line(words === "tap.stillhot.json" ? [words] : placed(words));
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toMatch(reason);
  expect(err, "no stack trace").not.toMatch(/\bat .*:\d+:\d+|Error:/);
  expect(err.length).toBeLessThan(4000);
});

test.each(["validate", "check", "rehearse", "draw"])(
  "%s leaves standard output empty for a bad file",
  async (command) => {
    for (const flag of [[], ["--json"]]) {
      const { code, out, err } = await line([command, file("future.json"), ...flag]);
      expect({ code, out }).toEqual({ code: 2, out: "" });
      expect(err).toContain("needs a newer Stillhot");
    }
  },
);

test.each(["", ...COMMANDS.map(({ name }) => name)])(
  "help for %s teaches on standard output",
  async (name) => {
    const words = name === "" ? ["--help"] : [name, "--help"];
    const { code, out, err } = await line(words);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out.split("\n").length).toBeGreaterThan(6);
    expect(out).not.toMatch(/\{\w+\}|undefined|\bsafe\b/);
    expect(out.split("\n").every((it) => it.length <= 125)).toBe(true);
    expect((await line(name === "" ? ["help"] : ["help", name])).out).toBe(out);
  },
);

test("--version is the package's own", async () => {
  expect(await line(["--version"])).toEqual({ code: 0, out: `${packageJson.version}\n`, err: "" });
});

test("standard input, with a byte order mark, in pieces that split a letter", async () => {
  const bytes = Buffer.from(`\ufeff${JSON.stringify({ ...drawing(), title: "Ångström" })}`);
  const at = bytes.indexOf(0xc3) + 1;
  const { code, out } = await line(["validate", "-", "--json"], {
    stdin: [bytes.subarray(0, at), bytes.subarray(at)],
  });
  expect({ code, out: JSON.parse(out) }).toEqual({
    code: 0,
    out: { file: "-", ok: true, findings: [], errors: [] },
  });
});

test("one byte order mark is let through, and not two", async () => {
  const { code, out, err } = await line(["validate", "-"], {
    stdin: [`\ufeff\ufeff${JSON.stringify(drawing())}`],
  });
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toMatch(/^standard input: line 1, column 2/);
});

test.each([
  ["an id", (key: string) => ({ ...drawing(), system: { points: { [key]: {} }, elements: {} } })],
  ["an unknown key", (key: string) => ({ ...drawing(), [key]: 1 })],
])("%s of a million letters is named in a line, not written out", async (_, made) => {
  const long = files({ "long.json": made("k".repeat(1_000_000)) })("long.json");
  for (const words of [
    ["validate", long],
    ["validate", long, "--json"],
  ]) {
    const { out, err } = await line(words);
    expect(out + err).toContain("kkk");
    expect((out + err).length).toBeLessThan(2000);
  }
});

test("an empty standard input is refused", async () => {
  const { code, out, err } = await line(["check", "-"]);
  expect({ code, out, err }).toEqual({ code: 2, out: "", err: "standard input: the file is empty\n" });
});

test("validate --json tells the errors as JSON on standard error", async () => {
  const { out, err } = await line(["validate", "--json", file("future.json"), file("drawing.json")]);
  expect(JSON.parse(out)).toEqual({ file: file("drawing.json"), ok: true, findings: [], errors: [] });
  const told = JSON.parse(err);
  expect(told).toMatchObject({ file: file("future.json"), ok: false, errors: [{ path: "formatVersion" }] });
});

test("keys of a newer file are a finding, exit code 1", async () => {
  const { code, out } = await line(["validate", "--json", file("newer.json")]);
  expect(code).toBe(1);
  expect(JSON.parse(out)).toMatchObject({ ok: false, findings: [{ rule: "unknown-key", where: "weather" }] });
});

test("after -- everything is a file", async () => {
  expect((await line(["check", "--", "--json"])).err).toBe("--json: there is no such file\n");
});

test("draw prints one SVG, whatever state it shows, and a note of unknown keys aside", async () => {
  const { code, out, err } = await line(["draw", file("tap.stillhot.json")]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(out).toMatch(/^<svg [^>]*role="img"/);
  expect(out).toMatch(/<\/svg>\n$/);
  const newer = await line(["draw", file("newer.json")]);
  expect(newer.code).toBe(1);
  expect(newer.err).toContain("(unknown-key)");
});

test("draw -o writes a file, and into a folder one for each", async () => {
  const at = folder();
  const one = await line(["draw", file("drawing.json"), "-o", join(at, "one.svg")]);
  expect(one).toEqual({
    code: 0,
    out: `${file("drawing.json")}: written to ${join(at, "one.svg")}\n`,
    err: "",
  });
  const many = await line(["draw", file("tap.stillhot.json"), file("drawing.json"), "--json", `--out=${at}`]);
  expect(
    many.out
      .trimEnd()
      .split("\n")
      .map((it) => JSON.parse(it).out),
  ).toEqual([join(at, "tap.svg"), join(at, "drawing.svg")]);
  expect(readdirSync(at).sort()).toEqual(["drawing.svg", "one.svg", "tap.svg"]);
  expect(readFileSync(join(at, "one.svg"), "utf8")).toBe(readFileSync(join(at, "drawing.svg"), "utf8"));
});

test("what cannot be written leaves what was there", async () => {
  const at = folder();
  const out = join(at, "kept.svg");
  writeFileSync(out, "kept");
  await line(["draw", file("half.json"), "-o", out]);
  expect(readFileSync(out, "utf8")).toBe("kept");
  expect(readdirSync(at)).toEqual(["kept.svg"]);
});
