import { press, pressOrMore, SIDELINE } from "./job.mjs";
import { pressOn } from "./spots.mjs";
import { becomes } from "./becomes.mjs";

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = ["desk", "phone"].map((size) => ({
  name: `a clamp that is removed leaves nothing isolated, and is put back by one press (${size})`,
  again: size === "desk",
  async run(ctx) {
    const touch = size === "phone";
    const page = await ctx.open({ size, path: `?demo=${SIDELINE}` });
    await page.locator("html[data-ready]").waitFor();
    await page.locator('[data-verdict="live"]').waitFor();
    await pressOn(page, "k1", touch);
    await pressOrMore(page, '[data-action="delete"]', '.deeds [data-action="more"]', touch);
    const notice = page.getByRole("alert").filter({ hasText: "Cut off from every source" });
    await notice.waitFor();
    await page.locator('[data-verdict="could-go-live"]').waitFor();
    await becomes(() => notice.textContent(), /counts as live/);
    await press(page.locator("[data-mend]"), touch);
    await page.locator('[data-verdict="live"]').waitFor();
  },
}));
