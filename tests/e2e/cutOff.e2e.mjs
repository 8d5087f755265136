import assert from "node:assert/strict";
import { press, SIDELINE } from "./job.mjs";
import { pressOn } from "./spots.mjs";

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = ["desk", "phone"].map((size) => ({
  name: `a clamp that is removed leaves nothing isolated, and is put back by one press (${size})`,
  async run(ctx) {
    const touch = size === "phone";
    const page = await ctx.open({ size, path: `?demo=${SIDELINE}` });
    await page.locator("html[data-ready]").waitFor();
    await page.locator('[data-verdict="live"]').waitFor();
    await pressOn(page, "k1", touch);
    const remove = page.locator('[data-action="delete"]');
    if ((await remove.count()) === 0) await press(page.locator('.deeds [data-action="more"]'), touch);
    await press(page.locator('[data-action="delete"]'), touch);
    const notice = page.getByRole("alert").filter({ hasText: "Cut off from every source" });
    await notice.waitFor();
    await page.locator('[data-verdict="could-go-live"]').waitFor();
    assert.match(await notice.textContent(), /counts as live/);
    await press(page.locator("[data-mend]"), touch);
    await page.locator('[data-verdict="live"]').waitFor();
  },
}));
