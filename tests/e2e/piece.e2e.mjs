import { becomes } from "./becomes.mjs";
import { press, pressOrMore } from "./job.mjs";
import { pressOn } from "./spots.mjs";

const TIE = "sideline-far-end-tie";

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = ["desk", "phone"].map((size) => ({
  name: `what is around a pole becomes a drawing of its own with the same verdict, kept at once (${size})`,
  again: size === "desk",
  async run(ctx) {
    const touch = size === "phone";
    const page = await ctx.open({ size, path: `?demo=${TIE}` });
    await page.locator("html[data-ready]").waitFor();
    await page.locator('[data-verdict="live"]').waitFor();
    await pressOn(page, "c1", touch);
    await pressOrMore(page, '[data-action="piece"]', '.deeds [data-action="more"]', touch);
    await press(page.locator('[data-openings="1"]'), touch);
    await press(page.locator('[data-piece="ask"]'), touch);
    await page.locator('[data-piece="found"]').waitFor();
    await page.getByText("Cut off beyond").first().waitFor();
    await press(page.locator('[data-piece="open"]'), touch);
    await becomes(() => page.title(), /, around /);
    await page.getByText(/^Opened: .*, around /).waitFor();
    await page.locator('[data-verdict="live"]').waitFor();
    // It is kept at once.
    await page.reload();
    await page.locator("html[data-ready]").waitFor();
    await becomes(() => page.title(), /, around /);
  },
}));
