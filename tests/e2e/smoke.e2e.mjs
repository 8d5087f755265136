import assert from "node:assert/strict";
import { firstLoadBytes, keysSaidTooEarly } from "./firstLoad.mjs";

const MOST_BYTES = 150_000;

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  {
    name: "the app loads, with its name as title",
    async run(ctx) {
      const page = await ctx.open();
      await page.locator("html[data-ready]").waitFor();
      assert.match(await page.title(), /Stillhot$/);
      await page.locator("#app > *").first().waitFor();
    },
  },
  {
    name: "it loads on a phone, in the dark, without scrolling sideways",
    async run(ctx) {
      const page = await ctx.open({ size: "phone", theme: "dark" });
      await page.locator("#app > *").first().waitFor();
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      assert.ok(wide <= 390, `the page is ${wide} px wide`);
    },
  },
  {
    name: "the scripts of the first load weigh less than 150 kB, gzipped",
    async run() {
      const bytes = firstLoadBytes();
      assert.ok(bytes > 0 && bytes < MOST_BYTES, `they weigh ${bytes} bytes`);
    },
  },
  {
    name: "the first load says nothing whose sentence comes later: move it to an area of first.ts, or load it by `later`",
    async run() {
      assert.deepEqual(await keysSaidTooEarly(), []);
    },
  },
];
