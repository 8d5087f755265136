import assert from "node:assert/strict";
import { becomes } from "./becomes.mjs";
import { axeFinds, noSidewaysScroll } from "./scenarios.mjs";

/** Where each digit leads, what stands there once it is there, and the two that only Rehearse leads to. */
const BY_DIGIT = [
  ["sketch", ".sketch [data-verdict]"],
  ["plan", "[data-count]"],
  ["rehearse", "[data-begin]"],
  ["debrief", '[data-act="open-attempts"]'],
  ["sheet", "[data-sheet]"],
  ["teach", '[data-field="pick"]'],
  ["learn", "[data-lesson]"],
];
const BY_REHEARSE = [
  ["scenario", "[data-scenario]"],
  ["drill", '[data-act="start"]'],
];

/** Words that English cannot do without, and French does not know. */
const ENGLISH = /\b(?:the|and|with|of|is|not|your|this)\b/i;

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  {
    name: "at a desk each place is reached by its key, is French, is no wider than the window, and axe finds nothing in it",
    async run(ctx) {
      const page = await ctx.open({
        path: "?demo=sideline-three-transformers",
        options: { locale: "fr-CA" },
      });
      await page.locator("html[data-ready]").waitFor();
      const see = async (place, mark) => {
        await page.locator(mark).first().waitFor();
        assert.equal(new URL(page.url()).hash, `#${place}`);
        await becomes(() => page.evaluate(() => document.activeElement !== document.body), true);
        await becomes(async () => ENGLISH.exec(await page.locator("body").innerText())?.[0], undefined);
        await noSidewaysScroll(page);
        assert.deepEqual(await axeFinds(page), []);
      };
      for (const [nth, [place, mark]] of BY_DIGIT.entries())
        await ctx.part(place, async () => {
          await page.keyboard.press(String(nth + 1));
          await see(place, mark);
        });
      for (const [place, mark] of BY_REHEARSE)
        await ctx.part(place, async () => {
          await page.keyboard.press("3");
          await page.locator(`[data-which="${place}"]`).focus();
          await page.keyboard.press("Enter");
          await see(place, mark);
        });
    },
  },
];
