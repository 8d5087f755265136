import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { becomes } from "./becomes.mjs";
import { bundled } from "./bundled.mjs";
import { press, pressOrMore } from "./job.mjs";
import { chooseFiles } from "./scenarios.mjs";
import { fileFrom } from "./fileFrom.mjs";

const title = (page) => page.getByLabel("Title of the drawing");

/** Nothing that is written of a drawing may hold the page's own thread for longer [ms]. */
const STANDS_STILL_MS = 200;

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
      const { exportMap, exportModel, ModelImport, readableImport } = await bundled("src/core/index.ts");
      const { drawing8500 } = await bundled("tests/support/ieee8500.ts");
      const folder = mkdtempSync(join(tmpdir(), "stillhot-large-"));
      try {
        const path = join(folder, "feeder.xml");
        const drawing = drawing8500("balanced");
        const model = exportModel(drawing).text;
        writeFileSync(path, model);
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

        await ctx.part("written again, beside the page, and stopped", async () => {
          await page.getByRole("button", { name: "Menu" }).click();
          await watch(page);
          await page.locator('[data-menu="share"]').click();
          await page.locator('[data-link="long"]').waitFor();
          await page.locator('[data-share="svg"]').focus();
          await page.keyboard.press("Enter");
          await page.locator("[data-waiting=writing]").waitFor();
          await page.keyboard.press("Escape");
          await page.getByText("was stopped. Nothing was saved.", { exact: false }).waitFor();
          // The keyboard is where it was asked.
          await becomes(() => page.evaluate(() => document.activeElement.dataset.share), "svg");
        });

        const imported = new ModelImport();
        imported.write(model);
        imported.endFile();
        const { document: opened } = readableImport(imported.finish());
        for (const [as, write] of [
          ["map", exportMap],
          ["model", exportModel],
        ])
          await ctx.part(`as a ${as}, which the page's own thread does not wait for`, async () => {
            const download = await fileFrom(page, () => page.locator(`[data-share="${as}"]`).click());
            assert.ok(readFileSync(await download.path(), "utf8") === write(opened).text);
            await page.getByText("what of the drawing is not in it").waitFor();
            await page.getByRole("button", { name: "Close" }).first().click();
            if (as === "model") return;
            await page.getByRole("button", { name: "Menu" }).click();
            await page.locator('[data-menu="share"]').click();
          });
        const longest = await page.evaluate(() => window.longest);
        assert.ok(longest < STANDS_STILL_MS, `the page stood still for ${longest} ms`);

        // The browser's own layout of a million letters in a field takes as long as it takes.
        await ctx.part("as text, which is written, read and taken over", async () => {
          await page.getByRole("button", { name: "Menu" }).click();
          await page.locator('[data-menu="notation"]').click();
          const text = page.locator("[data-notation]");
          await text.waitFor();
          // A person types into its first line, and does not paste a million letters.
          await text.evaluate((it) => {
            it.focus();
            it.setSelectionRange("title ".length, it.value.indexOf("\n"));
          });
          await page.keyboard.type('"Typed');
          await page.locator("[data-notation-apply]:disabled").waitFor();
          await page.getByText("Line 1: ").first().waitFor();
          await page.keyboard.type(' over"');
          await page.locator("[data-notation-apply]:enabled").click();
          await becomes(() => title(page).inputValue(), "Typed over");
        });
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    },
  },
  ...["desk", "phone"].map((size) => ({
    name: `of 8500 nodes, what is around a pole that the finder finds becomes a drawing with the same verdict (${size})`,
    again: size === "desk",
    seconds: 240,
    async run(ctx) {
      const touch = size === "phone";
      const { drawing8500 } = await bundled("tests/support/ieee8500.ts");
      const { writeDocument } = await bundled("src/core/index.ts");
      const drawing = drawing8500("balanced");
      const { to } = Object.values(drawing.system.elements).find((it) => it.connection === "single");
      const { label } = drawing.system.points[to];
      const page = await ctx.open({ size });
      page.setDefaultTimeout(120_000);
      await page.locator("html[data-ready]").waitFor();
      const file = {
        name: "feeder.json",
        mimeType: "application/json",
        buffer: Buffer.from(writeDocument(drawing)),
      };
      if (touch) await press(page.getByRole("button", { name: "Menu" }), touch);
      await chooseFiles(page, touch ? page.locator('[data-menu="open"]') : opener(page), file);
      await becomes(() => title(page).inputValue(), drawing.title);

      const choose = async () => {
        if (touch) {
          await press(page.getByRole("button", { name: "Menu" }), touch);
          await press(page.locator('[data-menu="find"]'), touch);
        } else await page.keyboard.press("Control+k");
        await page.locator("[data-find]").fill(label);
        await press(page.locator('[data-command^="thing-"]').filter({ hasText: label }).first(), touch);
        await page.locator("[data-find]").waitFor({ state: "detached" });
      };
      const act = (id) => pressOrMore(page, `[data-action="${id}"]`, '.deeds [data-action="more"]', touch);
      /** What is said of the place; how many things nobody has seen is of the whole drawing. */
      const verdict = () => page.locator("[data-verdict] .main").innerText();

      await choose();
      await act("work");
      await page.locator('[data-verdict="live"]').waitFor();
      const ofTheWhole = await verdict();
      await act("piece");
      await press(page.locator('[data-piece="ask"]'), touch);
      await page.locator('[data-piece="found"]').waitFor();
      await press(page.locator('[data-piece="open"]'), touch);
      await becomes(() => page.title(), /, around /);
      await becomes(verdict, ofTheWhole);
    },
  })),
];
