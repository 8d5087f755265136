import assert from "node:assert/strict";
import { begin } from "./bar.mjs";
import { becomes } from "./becomes.mjs";
import { pressOrMore } from "./job.mjs";

/**
 * Everyday things: where each is grown, what is answered before it is drawn, and what stands there afterwards that did not
 * before, by the letters with which ids of a kind begin. "low" is the secondary of what was drawn before.
 */
const EVERYDAY = [
  { part: "tap", on: "pole", chips: ["A", "15T", "25"], gives: "c ld m t" },
  { part: "barn", on: "low", chips: [], gives: "ld mb sp" },
  { part: "streetLight", on: "low", chips: [], gives: "d ld" },
  { part: "unequal", on: "pole", chips: ["25", "50", "15"], gives: "t t t" },
  { part: "main", on: "low", chips: [], gives: "mb" },
  { part: "transfer", on: "low", chips: [], gives: "gen ld ts" },
  { part: "openBank", on: "pole", chips: ["AB", "25"], gives: "t" },
  { part: "ratioBank", on: "pole", chips: ["50"], gives: "t" },
  { part: "padmount", on: "pole", chips: ["A", "25"], gives: "e e sp t" },
  { part: "doubleThrow", on: "pole", chips: [], gives: "s sp ts" },
  { part: "bank", on: "pole", chips: ["25"], gives: "t" },
];
/** From the pole or the secondary that is chosen to the thing that stands there. */
const MOST_TAPS = 5;

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  {
    name: "everyday things are grown in a few taps each, and a failed unit is taken out (phone)",
    async run(ctx) {
      const page = await begin(ctx, { size: "phone" });
      let taps = 0;
      const tap = async (it) => {
        taps++;
        await it.tap();
      };
      const outline = page.locator('.outline [role="treeitem"]');
      const choose = (owner) => page.locator(`.outline [data-owner="${owner}"]`).dispatchEvent("click");
      const chosen = () =>
        outline.and(page.locator('[aria-selected="true"]')).first().getAttribute("data-owner");
      const owners = () => outline.evaluateAll((all) => all.map((it) => it.dataset.owner));
      const grow = () => tap(page.locator('.bar [data-action="grow"]'));
      const part = (id) => page.locator(`[data-part="${id}"]`);

      await page.getByRole("button", { name: "Menu" }).tap();
      await page.locator('[data-menu="new"]').tap();
      await page.locator('[data-action="source"]').tap();
      await grow();
      await part("span").tap();
      await page.locator("[data-number]").waitFor();
      const pole = await chosen();
      assert.match(pole, /^structure:/);

      let low = "";
      let bank = "";
      for (const { part: id, on, chips, gives } of EVERYDAY)
        await ctx.part(id, async () => {
          await choose(on === "pole" ? pole : low);
          const before = new Set(await owners());
          taps = 0;
          await grow();
          await tap(part(id));
          for (const [n, chip] of chips.entries()) {
            const asked = page.locator("[data-ask]").nth(n).locator("[data-chip]");
            await tap(asked.filter({ hasText: new RegExp(`^${chip}$`) }));
          }
          await page.locator("dialog[open]").waitFor({ state: "detached" });
          assert.ok(taps <= MOST_TAPS, `${taps} taps`);
          const made = async () =>
            (await owners())
              .filter((it) => it.startsWith("element:") && !before.has(it))
              .map((it) => /:([a-z]+)/.exec(it)[1])
              .toSorted()
              .join(" ");
          await becomes(made, gives);
          if (id === "bank")
            bank = (await owners()).find((it) => it.startsWith("element:") && !before.has(it));
          if (id === "tap" || id === "unequal")
            low = (await owners()).findLast((it) => it.startsWith("point:") && !before.has(it));
        });

      await ctx.part("a failed unit", async () => {
        await choose(bank);
        taps = 0;
        await pressOrMore(page, '[data-action="details"]', '.bar [data-action="more"]', true);
        const failed = page.getByRole("group", { name: "A unit has failed: go on with the other two" });
        await tap(failed.getByRole("button", { name: "B" }));
        await becomes(
          () => page.locator(`.outline [data-owner="${bank}"]`).getAttribute("aria-label"),
          /phases A C/,
        );
      });
    },
  },
];
