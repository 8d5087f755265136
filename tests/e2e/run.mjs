/**
 * Runs the end-to-end tests against the built app: `node tests/e2e/run.mjs [--long] [NAMEPART ...]`.
 *
 * Each tests/e2e/*.e2e.mjs exports `tests`, a list of `{ name, run(ctx) }`; context.mjs says what `ctx` offers.
 * Three run at once for each processor, since each waits more than half of its time, each in browser profiles of its own
 * (profiles.mjs). One that is `alone` (it counts frames, or sees what stays for seconds) has the machine to itself at the
 * end. A test fails when `run` throws, takes longer than its `seconds` (120), or a page reports an error.
 * One that tells a story `again`, in a form that is easier than that of another test (a desk after a phone, a wider screen,
 * the other language), runs with --long only. NAMEPART picks the tests whose file or name contains it, in every
 * form. HEADED=1 shows the browser.
 */
import { existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join, relative } from "node:path";
import { pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
import { findChromium } from "../../scripts/lib/chromium.mjs";
import { at, makeResults, root } from "../../scripts/lib/project.mjs";
import { serve } from "../../src/cli/server.mjs";
import { startBrowser } from "./browser.mjs";
import { makeContext } from "./context.mjs";
import { makeProfiles } from "./profiles.mjs";

const { values: given, positionals } = parseArgs({
  options: { long: { type: "boolean", default: false } },
  allowPositionals: true,
});
const parts = positionals.map((it) => it.toLowerCase());
const out = makeResults();
const pictures = join(out, "e2e");
const summary = join(out, "e2e.json");
const outcomes = [];
/** What a test may take where it says nothing else. */
const SECONDS = 120;
const AT_ONCE = Math.min(6, 3 * availableParallelism());

function finish(reason) {
  const failures = outcomes.filter((it) => !it.ok);
  const passed = outcomes.length - failures.length;
  const failed = failures.length + (reason ? 1 : 0);
  if (reason) console.error(reason);
  writeFileSync(summary, `${JSON.stringify({ passed, failed, reason, tests: outcomes }, null, 2)}\n`);
  console.log(`end to end: ${passed} passed, ${failed} failed`);
  process.exit(failed > 0 ? 1 : 0);
}

/** All tests in the order of their files. A file that cannot be loaded is a failed test. */
async function collect() {
  const found = [];
  const names = new Set();
  for (const file of readdirSync(at("tests/e2e")).sort()) {
    if (!file.endsWith(".e2e.mjs")) continue;
    const place = file.replace(".e2e.mjs", "");
    try {
      const { tests } = await import(pathToFileURL(at("tests/e2e", file)).href);
      if (!Array.isArray(tests)) throw new Error(`${file} exports no list named \`tests\``);
      for (const it of tests) {
        const name = `${place}: ${it.name}`;
        if (names.has(name)) throw new Error(`two tests are named "${name}"`);
        names.add(name);
        found.push({ ...it, name });
      }
    } catch (error) {
      const fail = () => Promise.reject(error);
      found.push({ name: `${place}: loads`, run: fail });
    }
  }
  if (parts.length === 0) return given.long ? found : found.filter((it) => !it.again);
  return found.filter((it) => parts.some((part) => it.name.toLowerCase().includes(part)));
}

async function within(seconds, work) {
  let timer;
  const late = new Promise((_, fail) => {
    timer = setTimeout(() => fail(new Error(`took longer than ${seconds} s`)), seconds * 1000);
  });
  try {
    await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
}

async function runOne({ browser, profiles }, url, { name, run, seconds = SECONDS, alone = false }) {
  const from = performance.now();
  // What is timed is timed by a clock that is right.
  const ctx = await makeContext(browser, url, {
    isSlow: Boolean(process.env.SLOW) && !alone,
    isTimed: alone,
    profiles,
  });
  let problem;
  try {
    await within(seconds, run(ctx));
  } catch (error) {
    problem = error.stack ?? String(error);
  }
  if (ctx.errors.length > 0) problem = [problem, ...ctx.errors].filter(Boolean).join("\n");
  const files = problem ? await ctx.picture(pictures, name.replace(/[^\w]+/g, "-")) : [];
  await ctx.close({ failed: Boolean(problem) });
  const ms = Math.round(performance.now() - from);
  console.log(`${problem ? "FAIL" : "  ok"}  ${name} (${ms} ms)`);
  if (problem) console.log(problem.replace(/^/gm, "      "));
  for (const file of files) console.log(`      picture: ${relative(root, file)}`);
  return { name, ok: !problem, ms, ...(problem ? { problem } : {}) };
}

rmSync(pictures, { recursive: true, force: true });
rmSync(summary, { force: true });
mkdirSync(pictures, { recursive: true });
if (!existsSync(at("dist/index.html"))) finish("There is no built app: run `npm run build` first.");

const tests = await collect();
if (tests.length === 0) finish(`No end-to-end test has ${parts.join(" or ")} in its name.`);
const { missing } = await findChromium();
if (missing) finish(missing);
const server = await serve(at("dist"));

/** A browser in which all pages of a profile that show the app are one process. */
async function started() {
  const { browser } = await startBrowser(["--process-per-site"], { whole: false });
  return { browser, profiles: makeProfiles(server.url) };
}

let device = await started();

/** Runs tests one after the other, until none is left. */
async function runAll(left) {
  for (let test = left.shift(); test !== undefined; test = left.shift()) {
    if (!device.browser.isConnected()) device = await started();
    outcomes.push(await runOne(device, server.url, test));
  }
}

// Those that may take long come first, so that none of them is the last to end.
const together = tests
  .filter((it) => !it.alone)
  .sort((a, b) => (b.seconds ?? SECONDS) - (a.seconds ?? SECONDS));
await Promise.all(Array.from({ length: AT_ONCE }, () => runAll(together)));
await runAll(tests.filter((it) => it.alone));
await device.browser.close();
await server.close();
finish();
