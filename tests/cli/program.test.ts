import { spawn, spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, expect, test } from "vitest";
import packageJson from "../../package.json";
import { drawing, folder, openedTap } from "./line";

const root = resolve(dirname(fileURLToPath(import.meta.url)), "../..");
const program = join(root, "bin/stillhot.mjs");
const built = join(root, "dist-cli/main.js");
const at = folder();
writeFileSync(join(at, "opened.json"), JSON.stringify(openedTap()));
writeFileSync(join(at, "drawing.json"), JSON.stringify(drawing()));

/** Starts a program in the folder of the files and waits for its end. */
function start(file: string, words: readonly string[], input = "") {
  const { status, stdout, stderr } = spawnSync(process.execPath, [file, ...words], {
    cwd: at,
    input,
    encoding: "utf8",
  });
  return { code: status, out: stdout, err: stderr };
}

// A clone builds the command line when a source is newer; that says so on standard error, once.
beforeAll(() => void start(program, ["--version"]), 120_000);

test("a clone answers, with the exit code and nothing on standard error", () => {
  expect(start(program, ["--version"])).toMatchObject({ code: 0, out: `${packageJson.version}\n` });
  const { code, out, err } = start(built, ["check", "opened.json", "--json"]);
  expect({ code, err }).toEqual({ code: 1, err: "" });
  expect(JSON.parse(out)).toMatchObject({ file: "opened.json", ok: false });
});

test("`npx .` in a clone", () => {
  const words = ["npx", "--offline", "--no", "--", ".", "validate", join(at, "drawing.json"), "--json"];
  const { status, stdout } = spawnSync(words[0]!, words.slice(1), {
    cwd: root,
    encoding: "utf8",
    shell: process.platform === "win32",
  });
  expect({ status, ...JSON.parse(stdout) }).toMatchObject({ status: 0, ok: true });
});

test("standard input through a pipe, and bad input", () => {
  const input = JSON.stringify(openedTap());
  expect(JSON.parse(start(built, ["check", "-", "--json"], input).out)).toMatchObject({
    file: "-",
    ok: false,
  });
  expect(start(built, ["check", "-"], "{")).toMatchObject({ code: 2, out: "" });
  expect(start(built, [])).toMatchObject({ code: 2, out: "" });
});

test("C6 whoever reads may leave early: no message, and the exit code still stands", async () => {
  const { status, stdout, stderr } = spawnSync(
    "bash",
    [
      "-c",
      `set -o pipefail; for n in {1..40}; do echo opened.json; done | xargs "$0" "$1" check --all | head -n 1`,
      process.execPath,
      built,
    ],
    { cwd: at, encoding: "utf8" },
  );
  // xargs gives 123 where the program it started gave 1
  expect({ status, stderr }).toEqual({ status: 123, stderr: "" });
  expect(stdout).toBe("opened.json · Tap\n");
});

/** What `npm pack` would put into the package, in an empty folder without any other package. */
test("C7 the packed files run by themselves", () => {
  const listed = spawnSync("npm", ["pack", "--dry-run", "--json", "--ignore-scripts"], {
    cwd: root,
    encoding: "utf8",
    shell: process.platform === "win32",
  });
  const [{ files }] = JSON.parse(listed.stdout) as [{ files: readonly { path: string }[] }];
  const place = folder();
  for (const { path } of files) {
    mkdirSync(dirname(join(place, path)), { recursive: true });
    cpSync(join(root, path), join(place, path));
  }
  expect(existsSync(join(place, "node_modules"))).toBe(false);
  const installed = join(place, "bin/stillhot.mjs");
  expect(start(installed, ["--version"])).toEqual({ code: 0, out: `${packageJson.version}\n`, err: "" });
  expect(start(installed, ["check", "opened.json"])).toMatchObject({ code: 1, err: "" });
  expect(start(installed, ["draw", "drawing.json"]).out).toMatch(/^<svg /);
});

test("serve answers on loopback until it is stopped", async () => {
  const child = spawn(process.execPath, [built, "serve", "--port", "0", "--json"]);
  const told = await new Promise<string>((done) => {
    child.stdout.once("data", (it: Buffer) => done(String(it)));
    child.once("exit", () => done(""));
  });
  // Before the app is built there is nothing to serve, and that is said.
  if (told === "") return expect(existsSync(join(root, "dist/index.html"))).toBe(false);
  const { url } = JSON.parse(told) as { url: string };
  expect(url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
  expect(await (await fetch(url)).text()).toContain("<title>Stillhot</title>");
  const ended = new Promise((done) => child.once("exit", done));
  child.kill("SIGINT");
  expect(await ended).toBe(0);
});

test("C10 files side by side: the same answers in the files' order, and a bad one stops nothing", () => {
  writeFileSync(join(at, "bad.json"), "{");
  const names = ["opened.json", "bad.json", "drawing.json", "missing.json", "opened.json"];
  for (const json of [["--json"], []]) {
    const alone = start(built, ["check", ...names, ...json]);
    expect(alone.code).toBe(2);
    expect(start(built, ["check", "--jobs", "3", ...names, ...json])).toEqual(alone);
  }
  const { code, err } = start(built, ["check", "--jobs", "0", "opened.json"]);
  expect({ code, err }).toMatchObject({ code: 2, err: expect.stringContaining("--jobs") as string });
});
