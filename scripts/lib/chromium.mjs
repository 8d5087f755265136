/** Finds Chromium for the end-to-end tests, and gets one where there is none. Needs nothing installed. */
import { spawnSync } from "node:child_process";
import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { at, run, say } from "./project.mjs";

const NAMES = ["chromium", "chromium-browser", "google-chrome"];

/** The same Chromium without the browser's own windows, which take as much of the processor as the page in them. */
const WITHOUT_WINDOWS = ["chromium-headless-shell"];

const APT_INSTALL = ["install", "-y", "--no-install-recommends"];

/** How each system's package manager installs it, without asking anybody; the last need not be had. */
const MANAGERS = [
  {
    name: "apt-get",
    commands: [["update"], [...APT_INSTALL, "chromium"], [...APT_INSTALL, ...WITHOUT_WINDOWS]],
  },
  { name: "dnf", commands: [["install", "-y", "chromium"]] },
  { name: "apk", commands: [["add", "chromium"]] },
  { name: "pacman", commands: [["-Sy", "--noconfirm", "chromium"]] },
];

const NONE =
  "No browser for the end-to-end tests: install chromium, or name one in CHROMIUM_PATH (looked for " +
  `${NAMES.join(", ")}, the package @sparticuz/chromium and the test library's own).`;

function onPath(name) {
  for (const folder of (process.env.PATH ?? "").split(delimiter)) {
    const file = join(folder, name);
    try {
      accessSync(file, constants.X_OK);
      return file;
    } catch {
      continue;
    }
  }
  return undefined;
}

/** The one that a package brings along, or that the test library installed. */
async function shipped() {
  try {
    return await (await import("@sparticuz/chromium")).default.executablePath();
  } catch {
    // Nobody has to have it.
  }
  const { chromium } = await import("playwright-core");
  const file = chromium.executablePath();
  return existsSync(file) ? file : undefined;
}

/**
 * What to start, or a sentence that says why there is nothing to start. Nothing is downloaded for it.
 *
 * @param {{ whole?: boolean }} [wanted] `whole`: with the windows, which printing and a pretended camera need
 */
export async function findChromium({ whole = true } = {}) {
  const given = process.env.CHROMIUM_PATH;
  if (given)
    return existsSync(given)
      ? { executablePath: given }
      : { missing: `CHROMIUM_PATH names no file: ${given}` };
  for (const name of whole ? NAMES : [...WITHOUT_WINDOWS, ...NAMES]) {
    const executablePath = onPath(name);
    if (executablePath) return { executablePath };
  }
  const executablePath = await shipped().catch(() => undefined);
  return executablePath === undefined ? { missing: NONE } : { executablePath };
}

/** Before a command that root alone may give: nothing for root, `sudo` where it asks for no password. */
function asRoot() {
  if (process.getuid?.() === 0) return [];
  const may = onPath("sudo") && spawnSync("sudo", ["-n", "true"], { stdio: "ignore" }).status === 0;
  return may ? ["sudo", "-n"] : undefined;
}

function installBySystem() {
  const manager = MANAGERS.find(({ name }) => onPath(name));
  const before = manager && asRoot();
  if (before === undefined) return;
  say(`browser: installing chromium with ${manager.name}`);
  for (const words of manager.commands) {
    const [program, ...rest] = [...before, manager.name, ...words];
    if (run(program, rest, { quiet: true, env: { DEBIAN_FRONTEND: "noninteractive" } }) !== 0) return;
  }
}

function installByLibrary() {
  say("browser: installing the test library's own");
  run(process.execPath, [at("node_modules/playwright-core/cli.js"), "install", "chromium"], { quiet: true });
}

/** As `findChromium`, but a machine without one gets it: from its own packages, else from the test library. */
export async function getChromium() {
  let found = await findChromium();
  if (process.env.CHROMIUM_PATH) return found;
  for (const install of [installBySystem, installByLibrary]) {
    if (!found.missing) return found;
    install();
    found = await findChromium();
  }
  return found;
}
