import assert from "node:assert/strict";

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
];
