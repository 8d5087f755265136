/** What tests of Sketch have in common: a settled page, and the bar under the drawing. */
import { begun } from "./scenarios.mjs";

export async function begin(ctx, opening) {
  const page = await begun(ctx, opening);
  await ctx.settle(page);
  return page;
}

/** An action of the bar, behind More where there is no room for it. */
export async function act(page, id) {
  const shown = page.locator(`.bar [data-action="${id}"]`);
  if (await shown.isVisible()) return shown.click();
  await page.locator('[data-action="more"]').click();
  await page.locator(`dialog [data-action="${id}"]`).click();
}
