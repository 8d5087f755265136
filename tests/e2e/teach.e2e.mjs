import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { axeFinds, begun, finish, noSidewaysScroll } from "./scenarios.mjs";

/** Counts every press, choice and text that a person would make. */
function counted(page) {
  let count = 0;
  const one = (selector) => {
    count++;
    return page.locator(selector).first();
  };
  return {
    press: (selector) => one(selector).click(),
    choose: (selector, value) => one(selector).selectOption(value),
    write: async (selector, text) => {
      const field = one(selector);
      await field.fill(text);
      await field.blur();
    },
    get count() {
      return count;
    },
  };
}

const buildsAndShares = (size) => ({
  name: `an instructor builds a scenario from a drawing, tries it, checks it and shares it in at most 25 interactions (${size})`,
  seconds: 120,
  async run(ctx) {
    const page = await begun(ctx, { size, path: "?demo=sideline-far-end-tie#teach" });
    const hand = counted(page);
    await page.locator('[data-field="pick"]').waitFor();
    const ties = await page.locator('[data-field="pick"] option').allTextContents();
    const tie = ties.findIndex((it) => /tie/i.test(it));
    assert.ok(tie > 0, ties.join(", "));
    await hand.choose('[data-field="pick"]', { index: tie });
    await hand.press('[data-act="hide"]');
    await page.locator("[data-fact]").waitFor();
    await hand.write("[data-fact] textarea", "A switch joins the far end to another line.");
    await hand.press('[data-panel="events"]');
    const events = await page.locator('[data-field="event"] option').count();
    assert.ok(events > 1);
    await hand.choose('[data-field="event"]', { index: 1 });
    await hand.write('[data-field="what"]', "Somebody calls on the radio.");
    await hand.press('[data-act="add-event"]');
    await page.locator("[data-inject]").waitFor();
    await hand.press('[data-panel="told"]');
    await hand.write('[data-field="title"]', "The far end");
    await hand.write('[data-field="prebrief"]', "The sideline ends where the map says.");
    await hand.write('[data-field="objectives"]', "Find what the map does not show.");
    await hand.press('[data-panel="counts"]');
    await hand.press("[data-count-fact]");
    await hand.press('[data-panel="hints"]');
    await hand.write('[data-rung="where"]', "Look at the far end.");
    await hand.press('[data-act="add-hint"]');
    await hand.press('[data-panel="check"]');
    await hand.press('[data-act="check"]');
    await page.locator("[data-solved]").waitFor({ timeout: 40_000 });
    await noSidewaysScroll(page);

    await hand.press('[data-act="try"]');
    await page.locator('[data-act="begin"]').waitFor();
    assert.ok(!(await page.content()).includes("A switch joins the far end"));
    await hand.press('[data-act="begin"]');
    await finish(page);
    await page.locator('[data-outcome="failed"]').waitFor();

    await page.evaluate(() => (location.hash = "teach"));
    const download = page.waitForEvent("download");
    await hand.press('[data-act="share"]');
    const saved = JSON.parse(readFileSync(await (await download).path(), "utf8"));
    const [fact] = Object.values(saved.scenario.truth);
    for (const id of Object.keys(fact.add.elements)) assert.ok(!(id in saved.system.elements));
    assert.equal(Object.keys(saved.scenario.injects).length, 1);
    assert.ok(hand.count <= 25, `${hand.count} interactions`);
  },
});

const hidesInOneStep = {
  name: "what was hidden is put back on the map by one undo",
  async run(ctx) {
    const page = await begun(ctx, { path: "?demo=sideline-far-end-tie#teach" });
    await page.locator('[data-field="pick"]').selectOption({ index: 3 });
    await page.locator('[data-act="hide"]').click();
    await page.locator("[data-fact]").waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await page.locator("[data-fact]").waitFor({ state: "detached" });
  },
};

const isAccessible = (size, theme) => ({
  name: `axe finds nothing while a scenario is built (${size}, ${theme})`,
  async run(ctx) {
    const page = await begun(ctx, { size, theme, path: "?demo=sideline-far-end-tie#teach" });
    await page.locator('[data-field="pick"]').selectOption({ index: 3 });
    for (const panel of ["hide", "events", "told", "counts", "hints", "check"]) {
      await page.locator(`[data-panel="${panel}"]`).click();
      assert.deepEqual(await axeFinds(page), [], panel);
    }
    await noSidewaysScroll(page);
  },
});

export const tests = [
  buildsAndShares("desk"),
  buildsAndShares("phone"),
  hidesInOneStep,
  isAccessible("desk", "light"),
  isAccessible("phone", "dark"),
];
