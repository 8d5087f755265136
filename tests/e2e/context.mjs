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
 * @property {boolean} [offline] lets the app keep itself for a time without a network; no other test is about that, and
 *   a third of what the browser did in each of them was to put the app away once more
 * @property {string} [url] another server's address, from `ownServer`
 * @property {import("playwright-core").BrowserContext} [context] opens the page in this context, so as one more tab
 * @property {object} [options] more options of Playwright's `newContext`
 */

/**
 * @typedef {Awaited<ReturnType<typeof makeContext>>} Context
 * @typedef {{ name: string, run(ctx: Context): Promise<void>, seconds?: number }} EndToEndTest
 */

/** @param {import("playwright-core").Browser} browser @param {string} url @param {{ isSlow: boolean }} device */
export async function makeContext(browser, url, { isSlow }) {
  /** @type {string[]} */
  const errors = [];
  /** @type {RegExp[]} */
  const expected = [];
  const contexts = new Set();
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

  async function newContext({ size = "desk", theme = "light", offline = false, options = {} } = {}) {
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
    context.on("page", watch);
    contexts.add(context);
    return context;
  }

  const ctx = {
    /** The address of the built app. */
    url,
    browser,
    /** The errors that pages have reported so far; a test fails when any is left at its end. */
    errors,
    /** @param {Opening} [opening] */
    newContext,
    /**
     * Opens the app in a browser profile of its own.
     * @param {Opening} [opening]
     * @returns {Promise<import("playwright-core").Page>}
     */
    async open(opening = {}) {
      const context = opening.context ?? (await newContext(opening));
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
      for (const page of [...contexts].flatMap((it) => it.pages())) {
        const file = join(folder, `${name}${files.length ? `-${files.length + 1}` : ""}.png`);
        const taken = await page.screenshot({ path: file, timeout: 5_000 }).catch(() => undefined);
        if (taken) files.push(file);
      }
      return files;
    },
    async close() {
      for (const context of contexts) await context.close().catch(() => undefined);
      for (const server of servers) await server.close();
    },
  };
  return ctx;
}
