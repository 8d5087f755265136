import assert from "node:assert/strict";

const ready = (page) => page.locator("html[data-ready]").waitFor();

async function menu(page, item) {
  await page.locator("header .menu").click();
  await page.locator(`[data-menu="${item}"]`).click();
}

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  ...["desk", "phone"].map((size) => ({
    name: `the tour is offered once, goes on by what is done, and can be taken again (${size})`,
    async run(ctx) {
      const page = await ctx.open({ size });
      await ready(page);
      await page.locator('[data-tour-action="start"]').click();
      await page.locator('[data-tour="0"]').waitFor();
      await page.locator('[data-tour-action="next"]').click();
      await page.locator('[data-tour="1"]').waitFor();
      await page
        .locator('[data-owner="element:c1"]')
        .first()
        .evaluate((row) => row.click());
      await page.locator('[data-action="open"]').click();
      await page.locator('[data-tour="2"]').waitFor();
      if (size === "phone") await page.locator("[data-verdict] button").first().click();
      await page.locator(".threat").first().click();
      await page.locator('[data-tour="3"]').waitFor();
      await page.locator('[data-tour-action="next"]').click();
      await page.locator('[data-tour-action="skip"]').click();
      await page.reload();
      await ready(page);
      assert.equal(await page.locator("[data-tour]").count(), 0);
      await menu(page, "help");
      await page.locator('[data-help="tour"]').click();
      await page.locator('[data-tour="0"]').waitFor();
    },
  })),
  {
    name: "why a conductor is hot is told step by step, from the supply to it",
    async run(ctx) {
      const page = await ctx.open();
      await ready(page);
      await page.locator('[data-owner="element:c1"]').first().click();
      await page.getByRole("tab", { name: "Details" }).click();
      await page.locator("[data-why-button]").click();
      await page.locator('[data-why="energized"]').waitFor();
      const steps = await page.locator("dialog .step").allTextContents();
      assert.match(steps[0], /station bus is on and supplies/);
      assert.match(steps.at(-1), /closed, to Pole 30/);
      await page.getByRole("button", { name: "Light this path" }).click();
      await page.locator("dialog[open]").waitFor({ state: "detached" });
    },
  },
  {
    name: "the glossary finds a word by what it is called elsewhere",
    async run(ctx) {
      const page = await ctx.open();
      await ready(page);
      await menu(page, "help");
      await page.getByPlaceholder("Find a word").fill("spur");
      assert.deepEqual(await page.locator("dialog dt").allTextContents(), ["sideline, tap"]);
    },
  },
  {
    name: "in French everything is French, dates and numbers too, and it stays so",
    async run(ctx) {
      const page = await ctx.open();
      await ready(page);
      await menu(page, "settings");
      await page.locator('[data-language="fr"]').click();
      await page.waitForFunction(() => document.documentElement.lang === "fr");
      await page.reload();
      await page.waitForFunction(() => document.documentElement.lang === "fr");
      await ready(page);
      await page.getByText("Sous tension", { exact: false }).first().waitFor();
      assert.equal(await page.getByText("Only test and grounds make", { exact: false }).count(), 0);
      const device = await ctx.open({ options: { locale: "fr-FR" } });
      await device.waitForFunction(() => document.documentElement.lang === "fr");
    },
  },
];
