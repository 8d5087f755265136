import assert from "node:assert/strict";
import { becomes } from "./becomes.mjs";

const ready = (page) => page.locator("html[data-ready]").waitFor();

async function menu(page, item) {
  await page.getByRole("button", { name: "Menu" }).click();
  await page.locator(`[data-menu="${item}"]`).click();
}

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = ["desk", "phone"].map((size) => ({
  name: `a tap is typed as text, taken over as one edit, and undone (${size})`,
  again: size === "desk",
  async run(ctx) {
    const page = await ctx.open({ size });
    await ready(page);
    await menu(page, "notation");
    const text = page.locator("[data-notation]");
    const before = await text.inputValue();
    assert.match(before, /^title .+\nhertz 60\n/);
    await text.fill("p1 station\n  s1 source ABC kvLL=12.47\n  c1 cutout");
    await page.getByText("Line 3: c1 has no far end", { exact: false }).waitFor();
    await becomes(() => page.locator("[data-notation-apply]").isDisabled(), true);
    // Escape leaves what was typed.
    await page.keyboard.press("Escape");
    await text.waitFor({ state: "detached" });
    await menu(page, "notation");
    await becomes(() => text.inputValue(), /c1 cutout$/);
    await text.fill(
      'title Typed\np1 station "Bus" @0,0\n  s1 source ABC kvLL=12.47\nsp1 span ABC\np2 pole "Pole 1" @200,0\n  w1 work A\n',
    );
    await page.locator("[data-notation-apply]").click();
    await page.locator('[data-verdict="live"]').waitFor();
    await becomes(() => page.getByLabel("Title of the drawing").inputValue(), "Typed");
    await page.getByRole("button", { name: "Undo" }).first().click();
    await menu(page, "notation");
    await becomes(() => text.inputValue(), before);
  },
}));
