import assert from "node:assert/strict";
import { act, begin } from "./bar.mjs";
import { pressAt, pressOn, spotOf } from "./spots.mjs";
import { noSidewaysScroll } from "./scenarios.mjs";
import { becomes } from "./becomes.mjs";

const row = (page, owner) => page.locator(`[data-owner="${owner}"]`).first();
const selectedRow = (page) => page.locator('[role="treeitem"][aria-selected="true"]').first();

const BOTH = [
  ["desk", false],
  ["phone", true],
];

/** Presses the ground of a plate, off everything that is drawn on it. */
async function pressPlate(page, id, touch) {
  await pressAt(page, await spotOf(page, `plate ${id}`), touch);
}

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  ...BOTH.map(([size, touch]) => ({
    name: `a pole is chosen by its number, seen by one tap with all that is on it, and told as whoever stands there has it (${size})`,
    async run(ctx) {
      const page = await begin(ctx, { size });
      await pressPlate(page, "s33", touch);
      await becomes(() => selectedRow(page).getAttribute("aria-label"), /^Pole 33, /);
      await page.locator('.bar [data-action="seen"]').click();
      await becomes(() => selectedRow(page).getAttribute("aria-label"), /^Pole 33, .*\bseen$/);
      await page.getByText("Pole 33: seen").first().waitFor();
      await page.getByRole("button", { name: "Undo" }).first().click();
      await act(page, "details");
      const see = page.locator("[data-see]");
      await see.click();
      await page.locator('[data-seen="true"]').waitFor();
      await becomes(() => see.isDisabled(), true);
      const things = await page.locator("[data-on]").allTextContents();
      assert.match(things[0], /^Line/);
      assert.match(things.join("\n"), /T3 cutout, phases C, closed/);
      await becomes(() => page.locator('[data-reach="0"]').textContent(), /line; T3 bushing/);
      await becomes(() => page.locator('[data-reach="1"]').textContent(), /T3 secondary/);
      await noSidewaysScroll(page);
      await page.locator('[data-work="p14"]').click();
      await becomes(() => page.locator('[data-work="p14"]').getAttribute("aria-pressed"), "true");
      await page.locator('[data-on="element c4"]').click();
      await page.getByText("T3 cutout").first().waitFor();
    },
  })),
  {
    name: "a pole by keyboard alone: from the outline to what is on it, noted as leaning, and moved with all of it",
    async run(ctx) {
      const page = await begin(ctx);
      await row(page, "structure:s33").focus();
      await page.keyboard.press("ArrowUp");
      await page.keyboard.press("ArrowDown");
      await page.keyboard.press("Enter");
      await page.locator("[data-see]").focus();
      await page.keyboard.press("Enter");
      await page.locator('[data-seen="true"]').waitFor();
      await page.getByLabel("Condition").selectOption("leaning");
      await becomes(() => selectedRow(page).getAttribute("aria-label"), /^Pole 33, .*seen, not sound$/);
      await page.locator("[data-drawing]").focus();
      // The first move leaves all places to the person; from then on what is moved moves as it stands.
      await page.keyboard.press("Alt+ArrowRight");
      await ctx.settle(page);
      const before = await Promise.all(["p7", "p14", "c4"].map((it) => spotOf(page, it)));
      await page.keyboard.press("Alt+ArrowRight");
      await ctx.settle(page);
      const after = await Promise.all(["p7", "p14", "c4"].map((it) => spotOf(page, it)));
      const moved = after.map(({ x, y }, nth) => [x - before[nth].x, y - before[nth].y].join());
      assert.equal(new Set(moved).size, 1, `all of it moves alike: ${moved.join(" ")}`);
      await page.keyboard.press("Delete");
      await page
        .getByText(/^With Pole 33 goes what is on it/)
        .first()
        .waitFor();
      await becomes(() => row(page, "element:t3").count(), 0);
    },
  },
  {
    name: "a tap with four houses takes twelve touches at most, and every pole bears its real number (phone)",
    async run(ctx) {
      const page = await begin(ctx, { size: "phone" });
      let touches = 0;
      const tap = async (it) => {
        touches++;
        await it.tap();
      };
      const part = (id) => page.locator(`[data-part="${id}"]`);
      const grow = () => page.locator('.bar [data-action="grow"]');
      await tap(page.getByRole("button", { name: "Menu" }));
      await tap(page.locator('[data-menu="new"]'));
      await tap(page.locator('[data-action="source"]'));
      await tap(grow());
      await tap(part("span"));
      const number = page.locator("[data-number]");
      await tap(number);
      await page.keyboard.type("Pole 30");
      await page.keyboard.press("Enter");
      await tap(grow());
      await tap(part("span"));
      await becomes(() => number.inputValue(), "Pole 31");
      await tap(grow());
      await tap(part("tap4"));
      await tap(page.locator('[data-ask="phase"] [data-chip="A"]'));
      await tap(page.locator("[data-draw]"));
      assert.ok(touches <= 12, `${touches} touches`);
      const names = () =>
        page
          .locator('.outline [data-owner^="structure:"]')
          .evaluateAll((rows) => rows.map((it) => it.getAttribute("aria-label").split(",")[0]));
      await becomes(names, ["Station 1", "Pole 30", "Pole 31", "House 1", "House 2", "House 3", "House 4"]);
      await noSidewaysScroll(page);
    },
  },
  {
    name: "the finder lists no structure and its first point as two lines of one name",
    async run(ctx) {
      const page = await begin(ctx);
      await page.keyboard.press("Control+k");
      await page.locator("[data-find]").fill("pole 3");
      const names = (await page.locator('[data-command^="thing-"] .label').allTextContents()).map((it) =>
        it.trim(),
      );
      assert.ok(names.includes("Pole 33"), names.join("; "));
      assert.deepEqual(
        names.filter((it, nth) => names.indexOf(it) !== nth),
        [],
      );
    },
  },
  ...["the finder", "the drawing"].map((by) => ({
    name: `"go to pole 31 and open the transformer's cutout" is done at once by ${by} (phone)`,
    async run(ctx) {
      const page = await begin(ctx, { size: "phone" });
      let touches = 0;
      if (by === "the finder") {
        await page.getByRole("button", { name: "Menu" }).tap();
        await page.locator('[data-menu="find"]').tap();
        await page.locator("[data-find]").fill("pole31 cutout");
        await page.keyboard.press("Enter");
        touches += 3;
      } else {
        await pressOn(page, "c2", true);
        touches += 1;
      }
      await becomes(() => selectedRow(page).getAttribute("aria-label"), /^Pole 31, T1 cutout, .*closed/);
      await page.locator('.bar [data-action="open"]').tap();
      touches += 1;
      await becomes(() => selectedRow(page).getAttribute("aria-label"), /^Pole 31, T1 cutout, .*open/);
      assert.ok(touches <= 4, `${touches} touches`);
      await noSidewaysScroll(page);
    },
  })),
];
