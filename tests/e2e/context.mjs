/** What one end-to-end test is given: pages to open, servers to start, and a list of what went wrong meanwhile. */
import { join } from "node:path";
import { at } from "../../scripts/lib/project.mjs";
import { serve } from "../../src/cli/server.mjs";
import { slowDown } from "./slow.mjs";

/** A laptop on the tailgate, and a phone in a glove. */
export const sizes = {
  desk: { viewport: { width: 1280, height: 800 }, hasTouch: false, isMobile: false },
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
};

/**
 * @typedef {object} Opening
 * @property {string} [path] what follows the app's address, such as "?open=x" or "#plan"
 * @property {"desk" | "phone"} [size] 1280 x 800 with a mouse (the default), or 390 x 844 with touch
 * @property {"light" | "dark"} [theme] the color scheme that the browser asks for
 * @property {boolean} [ahead] fetches in a quiet moment what a first press may ask for, as the app does anywhere. Without
 *   it that is fetched when it is asked for, and what nobody presses takes no processor; what is timed has it
 * @property {boolean} [offline] lets the app keep itself for a time without a network; no other test is about that, and
 *   a third of what the browser did in each of them was to put the app away once more
 * @property {string} [url] another server's address, from `ownServer`
 * @property {import("playwright-core").BrowserContext} [context] opens the page in this context, so as one more tab
 * @property {object} [options] more options of Playwright's `newContext`
 */

/**
 * @typedef {Awaited<ReturnType<typeof makeContext>>} Context
 * @typedef {{ name: string, run(ctx: Context): Promise<void>, seconds?: number, alone?: boolean, again?: boolean }} EndToEndTest
 */

/**
 * @param {import("playwright-core").Browser} browser
 * @param {string} url
 * @param {{ isSlow: boolean, isTimed: boolean, profiles: ReturnType<typeof import("./profiles.mjs").makeProfiles> }} device
 */
export async function makeContext(browser, url, { isSlow, isTimed, profiles }) {
  /** @type {string[]} */
  const errors = [];
  /** @type {RegExp[]} */
  const expected = [];
  /** Profiles of this test's own, and those that go on to the next test with what they were made for. */
  const contexts = new Set();
  const lent = new Map();
  const servers = [];
  const note = (text) => {
    if (!expected.some((it) => it.test(text))) errors.push(text);
  };

  function watch(page) {
    page.on("pageerror", (error) => note(`page error: ${error.stack ?? error.message}`));
    page.on("console", (message) => {
      if (message.type() !== "error") return;
      const { url: where, lineNumber } = message.location();
      note(`console error: ${message.text()} (${where}:${lineNumber})`);
    });
    page.on("crash", () => note("the page crashed"));
  }

  async function made({ size = "desk", theme = "light", ahead = isTimed, offline = false, options = {} }) {
    const context = await browser.newContext({
      ...sizes[size],
      colorScheme: theme,
      deviceScaleFactor: 1,
      locale: "en-US",
      serviceWorkers: offline ? "allow" : "block",
      ...options,
    });
    // Only says when to give up: nothing is said to be fast by it.
    context.setDefaultTimeout(30_000);
    if (isSlow) await slowDown(context, { offline });
    else if (!ahead && !offline) await context.addInitScript(neverIdle);
    return context;
  }

  async function newContext(opening = {}) {
    const context = await made(opening);
    context.on("page", watch);
    contexts.add(context);
    return context;
  }

  async function lentContext({ size, theme, ahead, options }) {
    const opening = { size, theme, ahead, options };
    const key = JSON.stringify({ isSlow, isTimed, ...opening });
    const taken = await profiles.take(key, () => made(opening));
    taken.on("page", watch);
    lent.set(taken, key);
    return taken;
  }

  const ctx = {
    /** The address of the built app. */
    url,
    browser,
    /** The errors that pages have reported so far; a test fails when any is left at its end. */
    errors,
    /**
     * A profile that only this test has, for one that changes more of it than what the app keeps.
     * @param {Opening} [opening]
     */
    newContext,
    /**
     * Opens the app in a browser profile in which nothing is kept.
     * @param {Opening} [opening]
     * @returns {Promise<import("playwright-core").Page>}
     */
    async open(opening = {}) {
      const isElsewhere = opening.url !== undefined && !opening.url.startsWith(url);
      const isOwn = opening.offline || isElsewhere;
      const context = opening.context ?? (isOwn ? await newContext(opening) : await lentContext(opening));
      const page = await context.newPage();
      await page.goto(`${opening.url ?? url}${opening.path ?? ""}`);
      return page;
    },
    /** Waits two frames, after which a change is on the canvas. */
    settle: (page) =>
      page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))),
    /** Serves the app a second time, so that a test can take the server away with `close`. */
    async ownServer() {
      const server = await serve(at("dist"));
      servers.push(server);
      return server;
    },
    /** A part of a test, which goes on with the page of the part before it. A failure names it. */
    async part(name, run) {
      try {
        await run();
      } catch (error) {
        error.stack = `in the part "${name}": ${error.stack ?? error}`;
        throw error;
      }
    },
    /** Names an error that this test provokes on purpose, such as a failed request while offline. */
    expectError: (pattern) => expected.push(pattern),
    /** Pictures of all open pages, for a failed test. */
    async picture(folder, name) {
      const files = [];
      for (const page of [...contexts, ...lent.keys()].flatMap((it) => it.pages())) {
        if (profiles.isKeeper(page)) continue;
        const file = join(folder, `${name}${files.length ? `-${files.length + 1}` : ""}.png`);
        const taken = await page.screenshot({ path: file, timeout: 5_000 }).catch(() => undefined);
        if (taken) files.push(file);
      }
      return files;
    },
    /** @param {{ failed: boolean }} outcome what a failed test leaves behind goes to nobody */
    async close({ failed }) {
      for (const context of contexts) await context.close().catch(() => undefined);
      for (const [context, key] of lent) {
        context.off("page", watch);
        await (failed ? profiles.close(context) : profiles.giveBack(key, context));
      }
      for (const server of servers) await server.close();
    },
  };
  return ctx;
}

/** Runs in the page, before anything of it: its hands never rest. */
export function neverIdle() {
  window.requestIdleCallback = () => 0;
}
