import assert from "node:assert/strict";
import { setTimeout as rest } from "node:timers/promises";

/** Only says when to give up, as what is waited for in a page does [ms]. */
const MOST_MS = 30_000;
const LOOK_AGAIN_MS = 50;

/**
 * Holds that what `read` gives becomes `wanted`, which is a pattern or the very thing. What a press brings about is often
 * a moment later on the page: it is waited for as a person would, and what stands there at the end is what a failure tells.
 *
 * @param {() => unknown} read
 * @param {unknown} wanted
 * @param {string} [why]
 */
export async function becomes(read, wanted, why) {
  const giveUp = performance.now() + MOST_MS;
  for (;;) {
    const found = await read();
    try {
      if (wanted instanceof RegExp) assert.match(String(found), wanted, why);
      else assert.deepEqual(found, wanted, why);
      return;
    } catch (error) {
      if (performance.now() > giveUp) throw error;
    }
    await rest(LOOK_AGAIN_MS);
  }
}

/** The app has put all of itself on the device: some three hundred files, on a machine that may be busy with several other pages. */
export const offlineReady = (page) => page.getByText("No network needed").waitFor({ timeout: 90_000 });
