/** What the scripts share: where things are, what is out of date, and how to run a tool. Needs nothing installed. */
import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
/** A path inside the project. */
export const at = (...parts) => join(root, ...parts);
/** Where test runs leave their counts and pictures; git ignores it. */
export const results = at(".test-results");

const stamp = at("node_modules", ".stillhot-lock");

/** Says that a step begins, on stderr when stdout belongs to someone else. */
export const say = (text) => console.log(`› ${text}`);

/** Runs a program here and waits. Returns its exit code; a program that cannot start gives 127. */
export function run(program, args, { quiet = false, toStderr = false, env = {} } = {}) {
  const stdout = quiet ? "pipe" : toStderr ? process.stderr : "inherit";
  const stderr = quiet ? "pipe" : "inherit";
  const done = spawnSync(program, args, {
    cwd: root,
    stdio: ["ignore", stdout, stderr],
    env: { ...process.env, ...env },
    shell: process.platform === "win32" && program === "npm",
    maxBuffer: 64 * 1024 * 1024,
  });
  if (quiet && done.status !== 0) process.stderr.write(`${done.stdout ?? ""}${done.stderr ?? ""}`);
  if (done.error) console.error(`${program} did not start: ${done.error.message}`);
  return done.status ?? 127;
}

/** Runs a program here beside others. Returns its exit code and all that it wrote. */
export const runBeside = (program, args) =>
  new Promise((done) => {
    const written = [];
    const child = spawn(program, args, { cwd: root, stdio: ["ignore", "pipe", "pipe"] });
    for (const stream of [child.stdout, child.stderr]) stream.on("data", (chunk) => written.push(chunk));
    const end = (code) => done({ code, text: Buffer.concat(written).toString() });
    child.on("error", (error) => {
      written.push(Buffer.from(`${program} did not start: ${error.message}\n`));
      end(127);
    });
    child.on("close", (code) => end(code ?? 1));
  });

/** Runs the program of an installed package, without npm in between. */
export const tool = (file, args, options) =>
  run(process.execPath, [at("node_modules", file), ...args], options);

/** The build tools need a newer Node than the built command line does. */
export function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  console.error(`Node ${process.versions.node} is too old to build Stillhot: install Node 20.19 or newer.`);
  process.exit(1);
}

const lockHash = () =>
  createHash("sha256")
    .update(readFileSync(at("package-lock.json")))
    .digest("hex");

/** Why packages must be installed, or nothing when they are as the lock file says. */
export function whyInstall() {
  const installed = at("node_modules", ".package-lock.json");
  if (!existsSync(installed)) return "node_modules is missing";
  if (existsSync(stamp) && readFileSync(stamp, "utf8") === lockHash()) return undefined;
  if (statSync(installed).mtimeMs >= statSync(at("package-lock.json")).mtimeMs) return undefined;
  return "node_modules is older than package-lock.json";
}

/** Installs what the lock file names, when it is not there yet. Ends the program when that fails. */
export function install({ toStderr = false } = {}) {
  const tell = toStderr ? console.error : say;
  const why = whyInstall();
  if (!why) return tell("packages: as the lock file says");
  tell(`packages: installing, since ${why}`);
  const missing = !existsSync(at("node_modules"));
  const code = run("npm", [missing ? "ci" : "install", "--include=dev", "--no-audit", "--no-fund"], {
    toStderr,
  });
  if (code !== 0) {
    console.error("The packages could not be installed: see above.");
    process.exit(1);
  }
  writeFileSync(stamp, lockHash());
}

/** The newest time at which anything under these paths changed; folders count, so a deletion does too. */
function newest(paths) {
  let latest = 0;
  for (const path of paths) {
    if (!existsSync(path)) continue;
    const it = statSync(path);
    latest = Math.max(latest, it.mtimeMs);
    if (it.isDirectory())
      latest = Math.max(latest, newest(readdirSync(path).map((name) => join(path, name))));
  }
  return latest;
}

const shared = ["src/core", "shared", "package.json", "package-lock.json", "tsconfig.json"];
const builds = {
  app: {
    title: "the browser app",
    output: "dist/index.html",
    sources: [...shared, "src/app", "static", "index.html", "vite.config.ts", "svelte.config.js"],
    args: ["build", "--logLevel", "warn"],
  },
  cli: {
    title: "the command line",
    output: "dist-cli/main.js",
    sources: [...shared, "src/cli", "vite.cli.config.ts"],
    args: ["build", "-c", "vite.cli.config.ts", "--logLevel", "warn"],
  },
};

/** Whether a build is there and no source is newer. */
export function isFresh(name) {
  const { output, sources } = builds[name];
  return existsSync(at(output)) && statSync(at(output)).mtimeMs >= newest(sources.map((it) => at(it)));
}

const VITE = "vite/bin/vite.js";

/** Builds the app or the command line. Returns the exit code. */
export const build = (name, options) => tool(VITE, builds[name].args, options);

/** What builds the app or the command line: an installed program, and what it is told. */
export const builderOf = (name) => [VITE, builds[name].args];

/** Builds only what is out of date, saying so. Ends the program when that fails. */
export function buildIfStale(name, { toStderr = false } = {}) {
  const tell = toStderr ? console.error : say;
  const { title } = builds[name];
  if (isFresh(name)) return tell(`build: ${title} is up to date`);
  tell(`build: ${title}`);
  if (build(name, { toStderr }) === 0) return;
  console.error(`The build of ${title} failed: see above.`);
  process.exit(1);
}

/** A folder for the results of a test run. */
export function makeResults() {
  mkdirSync(results, { recursive: true });
  return results;
}
