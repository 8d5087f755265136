import assert from "node:assert/strict";
import { bytesOf, firstScripts, keysSaidTooEarly, paintingScripts, sentencesInWorker } from "./firstLoad.mjs";

/** What comes before the page says what is live, and what comes with the board that paints it. */
const MOST_BYTES = 150_000;
const MOST_BYTES_PAINTED = 175_000;

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  {
    name: "the app loads, with its name as title",
    async run(ctx) {
      const page = await ctx.open({ ahead: true });
      await page.locator("html[data-ready]").waitFor();
      assert.match(await page.title(), /Stillhot$/);
      await page.locator("#app > *").first().waitFor();
    },
  },
  {
    name: "it loads on a phone, in the dark, without scrolling sideways",
    async run(ctx) {
      const page = await ctx.open({ size: "phone", theme: "dark", ahead: true });
      await page.locator("#app > *").first().waitFor();
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      assert.ok(wide <= 390, `the page is ${wide} px wide`);
    },
  },
  {
    name: "the scripts of the first load weigh less than 150 kB, and with what paints the drawing less than 175 kB",
    async run() {
      const [first, painted] = [firstScripts(), paintingScripts()].map(bytesOf);
      assert.ok(first > 0 && first < MOST_BYTES, `the first load weighs ${first} bytes`);
      assert.ok(painted > first && painted < MOST_BYTES_PAINTED, `with the board it weighs ${painted} bytes`);
    },
  },
  {
    name: "the first load says nothing whose sentence comes later: move it to an area of first.ts, or load it by `later`",
    async run() {
      assert.deepEqual(await keysSaidTooEarly(), []);
    },
  },
  {
    name: "the worker carries no sentences",
    async run() {
      assert.deepEqual(await sentencesInWorker(), []);
    },
  },
];
