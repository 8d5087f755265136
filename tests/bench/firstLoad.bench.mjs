import { expect, test } from "vitest";
import { sizes } from "../e2e/context.mjs";
import { bytesOf, firstScripts } from "../e2e/firstLoad.mjs";
import { builtApp } from "./builtApp.mjs";

/** How many times slower than this machine the processor is taken to be. */
const SLOWED = 4;
const ROUNDS = 5;

const app = builtApp();

test(`first load on a phone, processor slowed ${SLOWED} times: drawing, verdict, interactive`, async () => {
  const rounds = [];
  for (let n = 0; n < ROUNDS; n++) rounds.push({ ...(await firstLoad()), work: await workOfFirstLoad() });
  const median = (of) => rounds.map((it) => it[of]).sort((a, b) => a - b)[ROUNDS >> 1];
  console.log(
    `first load: ${bytesOf(firstScripts())} bytes of script, gzipped; drawn after ${median("drawn")} ms, ` +
      `verdict after ${median("answered")} ms, interactive after ${median("interactive")} ms ` +
      `(medians of ${ROUNDS}, processor slowed ${SLOWED} times, nothing kept)\n` +
      `of which the page's own work, whatever else the machine does: ${SLOWED} times ${median("work")} ms`,
  );
  expect(rounds.every((it) => it.answered > 0)).toBe(true);
});

/** One load in a profile of its own, as a newcomer has it. [ms since the page was asked for] */
async function firstLoad() {
  const context = await app.browser.newContext(sizes.phone);
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
  await page.addInitScript(watchLoad);
  await page.goto(app.server.url);
  await page.waitForFunction(() => globalThis.loaded.interactive !== undefined, undefined, {
    timeout: 60_000,
  });
  const loaded = await page.evaluate(() => globalThis.loaded);
  await context.close();
  return loaded;
}

/** Processor time that the page takes until it is drawn, at full speed. [ms] */
async function workOfFirstLoad() {
  const context = await app.browser.newContext(sizes.phone);
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send("Performance.enable", { timeDomain: "threadTicks" });
  await page.goto(app.server.url);
  await page.locator("html[data-ready]").waitFor();
  const { metrics } = await session.send("Performance.getMetrics");
  await context.close();
  return Math.round(metrics.find((it) => it.name === "TaskDuration").value * 1000);
}

/**
 * Runs in the page. It is drawn when the app says that it is ready, and answered when the verdict is one. Interactive is
 * when a frame comes after both: a press is then answered in the frame after it.
 */
function watchLoad() {
  const QUIET_MS = 50;
  const loaded = (globalThis.loaded = {});
  let last = performance.now();
  const frame = (now) => {
    const since = Math.round(performance.now());
    if (document.documentElement?.dataset.ready !== undefined) loaded.drawn ??= since;
    const verdict = document.querySelector("[data-verdict]")?.dataset.verdict;
    if (loaded.drawn !== undefined && !["unknown", "none", undefined].includes(verdict))
      loaded.answered ??= since;
    if (loaded.answered !== undefined && now - last < QUIET_MS) loaded.interactive ??= since;
    last = now;
    if (loaded.interactive === undefined) requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}
