import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { linkOfSvg, linkTo, readDocument, writeDocument } from "../../src/core";
import { drawing, files, folder, line, openedTap } from "./line";

const file = files({ "tap.json": openedTap(), "drawing.json": drawing() });
const text = (path: string): string => readFileSync(path, "utf8");

test.each(["draw", "sheet"])("C9 %s -o onto a drawing is refused, and the drawing stays", async (command) => {
  const at = folder();
  const out = join(at, "mine.stillhot.json");
  const kept = JSON.stringify(drawing());
  writeFileSync(out, kept);
  const outcome = await line([command, file("tap.json"), "-o", out]);
  expect(outcome).toMatchObject({ code: 2, out: "" });
  expect(outcome.err).toContain("is a drawing, and this would take its place");
  expect(text(out)).toBe(kept);
  expect((await line([command, out, "-o", out])).code).toBe(2);
  expect(text(out)).toBe(kept);
});

test("C9 a command that prints a drawing may write it onto one", async () => {
  const out = join(folder(), "mine.stillhot.json");
  writeFileSync(out, JSON.stringify(openedTap()));
  expect((await line(["plan", out, "-o", out])).err).toBe("");
  expect(JSON.parse(text(out)).job.steps.length).toBeGreaterThan(0);
});

test("C9 nothing is written through a link, whether it leads somewhere or nowhere", async () => {
  const at = folder();
  const [theirs, out, dangling] = ["theirs.txt", "out.svg", "dangling.svg"].map((it) => join(at, it)) as [
    string,
    string,
    string,
  ];
  writeFileSync(theirs, "theirs");
  symlinkSync(theirs, out);
  symlinkSync(join(at, "nowhere"), dangling);
  for (const link of [out, dangling]) {
    const outcome = await line(["draw", file("tap.json"), "-o", link]);
    expect(outcome.code).toBe(2);
    expect(outcome.err).toContain("is a link");
  }
  expect(text(theirs)).toBe("theirs");
  expect(readdirSync(at).sort()).toEqual(["dangling.svg", "out.svg", "theirs.txt"]);
});

test("C9 what a file may be used for stays as it was, and nothing else is left beside it", async () => {
  const at = folder();
  const out = join(at, "mine.svg");
  writeFileSync(out, "old");
  chmodSync(out, 0o600);
  expect((await line(["draw", file("tap.json"), "-o", out])).code).toBe(0);
  expect(statSync(out).mode & 0o777).toBe(0o600);
  expect(readdirSync(at)).toEqual(["mine.svg"]);
});

/** [what stands there, the place to write to] */
test.each<readonly [string, (at: string) => string]>([
  [
    "a link that leads round in a circle",
    (at) => (symlinkSync("loop.svg", join(at, "loop.svg")), "loop.svg"),
  ],
  ["a name that is too long", () => `${"x".repeat(300)}.svg`],
  ["a file for a folder", (at) => (writeFileSync(join(at, "flat"), ""), "flat/out.svg")],
  ["no folder", () => "none/out.svg"],
])("%s: it is said what could not be written, and it is nobody's mistake", async (_, prepare) => {
  const at = folder();
  mkdirSync(at, { recursive: true });
  const out = join(at, prepare(at));
  const outcome = await line(["draw", file("tap.json"), "-o", out]);
  expect(outcome).toMatchObject({ code: 2, out: "" });
  expect(outcome.err).toContain("could not be written");
  expect(outcome.err).not.toMatch(/mistake/);
});

test("a picture from the command line opens again", async () => {
  const out = join(folder(), "tap.svg");
  await line(["draw", file("tap.json"), "-o", out]);
  const read = readDocument(text(file("tap.json")));
  expect("document" in read && linkOfSvg(text(out))).toBe("document" in read && linkTo(read.document));
});

test("C4 letters that a terminal obeys reach it from no command that prints a whole file", async () => {
  const tap = openedTap();
  const label = "csi \u009b31m, del \u007f, nel \u0085";
  const at = files({ "raw.json": { ...tap, title: label, job: { ...tap.job, task: label } } });
  for (const command of ["plan", "draw", "sheet"]) {
    const { out } = await line([command, at("raw.json")]);
    expect(out.length).toBeGreaterThan(100);
    // eslint-disable-next-line no-control-regex -- these are the letters that a terminal obeys
    expect(out).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/);
  }
  const planned = readDocument((await line(["plan", at("raw.json")])).out);
  expect("document" in planned && writeDocument(planned.document)).toContain(label);
  expect(existsSync(at("raw.json"))).toBe(true);
});
