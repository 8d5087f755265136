/** Finds Chromium on this machine and starts it. Nothing is ever downloaded. */
import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { chromium } from "playwright-core";

export const flags = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

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

/** What to start, or a sentence that says why there is nothing to start. */
export async function findChromium() {
  const given = process.env.CHROMIUM_PATH;
  if (given) {
    return existsSync(given)
      ? { executablePath: given }
      : { missing: `CHROMIUM_PATH names no file: ${given}` };
  }
  for (const name of ["chromium", "chromium-browser", "google-chrome"]) {
    const executablePath = onPath(name);
    if (executablePath) return { executablePath };
  }
  try {
    const packed = (await import("@sparticuz/chromium")).default;
    return { executablePath: await packed.executablePath() };
  } catch {
    return {
      missing:
        "No browser for the end-to-end tests: install chromium, or name one in CHROMIUM_PATH (looked for " +
        "chromium, chromium-browser, google-chrome and the package @sparticuz/chromium).",
    };
  }
}

/** A started browser, or `{ missing }` with the reason in words. */
export async function startBrowser(moreFlags = []) {
  const found = await findChromium();
  if (found.missing) return found;
  const browser = await chromium.launch({
    executablePath: found.executablePath,
    args: [...flags, ...moreFlags],
    headless: !process.env.HEADED,
  });
  return { browser };
}
