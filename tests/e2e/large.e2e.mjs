import assert from "node:assert/strict";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { becomes } from "./becomes.mjs";
import { bundled } from "./bundled.mjs";
import { chooseFiles } from "./scenarios.mjs";

const title = (page) => page.getByLabel("Title of the drawing");

/** What asks for a file. */
const opener = (page) => page.getByRole("button", { name: "Open a file", exact: true });

/** Watches for how long the page's own thread stands still. */
const watch = (page) =>
  page.evaluate(() => {
    window.longest = 0;
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) window.longest = Math.max(window.longest, duration);
    }).observe({ type: "longtask" });
  });

/** What is slow is told and can be stopped: a utility's model of 8500 nodes, as the program itself writes it. */
export const tests = [
  {
    name: "a model of 8500 nodes is read beside the page: how far it is stands there, Stop leaves the drawing, and it opens whole",
    seconds: 240,
    // It sees for how long the page stands still.
    alone: true,
    async run(ctx) {
      const { exportModel } = await bundled("src/core/index.ts");
      const { drawing8500 } = await bundled("tests/support/ieee8500.ts");
      const folder = mkdtempSync(join(tmpdir(), "stillhot-large-"));
      try {
        const path = join(folder, "feeder.xml");
        const drawing = drawing8500("balanced");
        writeFileSync(path, exportModel(drawing).text);
        const page = await ctx.open();
        page.setDefaultTimeout(120_000);
        await page.locator("html[data-ready]").waitFor();
        await title(page).fill("Mine");
        await title(page).blur();

        await ctx.part("stopped", async () => {
          await chooseFiles(page, opener(page), path);
          await page.getByText(/^\d+ % read$/).waitFor();
          assert.ok(await page.getByRole("progressbar").isVisible());
          await page.locator("[data-stop]").click();
          await page.getByText("Reading of feeder.xml was stopped").first().waitFor();
          assert.equal(await title(page).inputValue(), "Mine");
        });

        await ctx.part("by the keyboard", async () => {
          await chooseFiles(page, opener(page), path);
          await page.locator("[data-waiting]").waitFor();
          await page.keyboard.press("Escape");
          await page.locator("[data-waiting]").waitFor({ state: "detached" });
          assert.equal(await title(page).inputValue(), "Mine");
        });

        await ctx.part("to its end", async () => {
          await watch(page);
          const began = Date.now();
          await chooseFiles(page, opener(page), path);
          await page.locator("[data-waiting=making]").waitFor();
          const meanwhile = await page.evaluate(() => window.longest);
          const took = Date.now() - began;
          assert.ok(
            meanwhile < took / 10,
            `the page stood still for ${meanwhile} of ${took} ms while the file was read`,
          );
          await page.getByText("Opened feeder.xml").first().waitFor();
          await page.locator("[data-told]").first().waitFor();
          await page.getByRole("button", { name: "Close" }).first().click();
          await becomes(() => title(page).inputValue(), drawing.title);
        });
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    },
  },
];
