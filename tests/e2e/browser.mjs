/** Starts the Chromium of this machine. */
import { chromium } from "playwright-core";
import { findChromium } from "../../scripts/lib/chromium.mjs";

export const flags = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** A started browser, or `{ missing }` with the reason in words. Tests of pages alone need it not `whole`. */
export async function startBrowser(moreFlags = [], { whole = true } = {}) {
  const found = await findChromium({ whole: whole || Boolean(process.env.HEADED) });
  if (found.missing) return found;
  const browser = await chromium.launch({
    executablePath: found.executablePath,
    args: [...flags, ...moreFlags],
    headless: !process.env.HEADED,
  });
  return { browser };
}
