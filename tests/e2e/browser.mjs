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
