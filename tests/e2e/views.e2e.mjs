import assert from "node:assert/strict";
import { axeFinds } from "./scenarios.mjs";
import { becomes } from "./becomes.mjs";

const CUTOUT = "c1";
const row = (page, owner) => page.locator(`[data-owner="${owner}"]`).first();
const isPhone = (size) => size === "phone";

async function begin(ctx, opening, demo = "sideline-three-transformers") {
  const page = await ctx.open({ ...opening, path: `?demo=${demo}` });
  await page.locator("html[data-ready]").waitFor();
  await ctx.settle(page);
  return page;
}

/** The outline is in the page at both sizes; a phone only does not show it. */
async function select(page, owner) {
  await row(page, owner).dispatchEvent("click");
}

async function act(page, action) {
  await page.locator(`[data-action="${action}"]`).first().click();
}

async function look(page, size, view) {
  if (!isPhone(size)) return page.locator(`[data-look="${view}"]`).click();
  await page.locator('[data-look="menu"]').tap();
  await page.locator(`dialog [data-look="${view}"]`).tap();
}

async function details(page, size) {
  if (!isPhone(size)) return page.getByRole("tab", { name: "Details" }).click();
  const inBar = page.locator('.bar [data-action="details"]');
  if ((await inBar.count()) > 0) return inBar.tap();
  await page.locator('.bar [data-action="more"]').tap();
  await page.locator('dialog [data-action="details"]').tap();
}

const noViolation = async (page, where) => assert.deepEqual(await axeFinds(page), [], where);

async function noSidewaysScroll(page) {
  const [wide, inner] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  assert.ok(wide <= inner, `the page is ${wide} px wide in a window of ${inner} px`);
}

/** Each size and each theme once. */
const bothWays = [
  { size: "desk", theme: "light" },
  { size: "phone", theme: "dark" },
];

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  ...bothWays.map(({ size, theme }) => ({
    name: `look first says where the drawing may be wrong, and a press leads there (${size}, ${theme})`,
    again: size === "desk",
    async run(ctx) {
      const page = await begin(ctx, { size, theme });
      if (isPhone(size)) await page.locator("button.hot").tap();
      const open = page.getByRole("button", { name: "Look first: where the drawing may be wrong" });
      await open.focus();
      await page.keyboard.press("Enter");
      const first = page.locator("[data-look-first]").first();
      await first.waitFor();
      await becomes(() => first.textContent(), /if .*, the work point is live at 7/);
      await becomes(
        () => page.locator("[data-ranges]").textContent(),
        /may stand at [\d\s.]+ to [\d\s.]+ V, and the worker may feel/,
      );
      await noSidewaysScroll(page);
      await noViolation(page, "look first");
      await first.focus();
      await page.keyboard.press("Enter");
      await page.locator('[role="treeitem"][aria-selected="true"]').first().waitFor({ state: "attached" });
    },
  })),
  ...bothWays.map(({ size, theme }) => ({
    name: `one mistake away repaints the drawing after the worst, and leaves it as it was (${size}, ${theme})`,
    again: size === "desk",
    async run(ctx) {
      const page = await begin(ctx, { size, theme });
      await select(page, `element:${CUTOUT}`);
      await act(page, "open");
      await page.locator('[data-verdict="could-go-live"]').waitFor();
      const before = await page.locator('[role="tree"]').first().textContent();
      await look(page, size, "mistake");
      await page.locator('[data-otherwise="true"]').getByText("Not as drawn").waitFor();
      const worst = page.locator("[data-worst]");
      await becomes(() => worst.textContent(), /The worst: .*sideline cutout is closed.*C at 7/i);
      await page.locator('[aria-current="step"]').last().waitFor();
      const steps = await page.locator("[data-step]").allTextContents();
      assert.match(steps[0], /station bus/);
      assert.ok(steps.some((it) => /sideline cutout/.test(it)));
      await page.locator(`li[aria-current="step"] [data-step="${steps.length}"]`).waitFor();
      await noSidewaysScroll(page);
      await noViolation(page, "one mistake away");
      await page.getByLabel("Things that may go wrong").fill("3");
      await becomes(() => worst.textContent(), /^The worst: /);
      await page.getByRole("button", { name: "Back to the drawing as it is" }).click();
      await page.locator("[data-view]").waitFor({ state: "detached" });
      await becomes(() => page.locator('[role="tree"]').first().textContent(), before);
      await becomes(() => page.locator("[data-otherwise]").count(), 0);
    },
  })),
  ...bothWays.map(({ size, theme }) => ({
    name: `the margin map marks every point by shape and digit (${size}, ${theme})`,
    again: size === "phone",
    async run(ctx) {
      const page = await begin(ctx, { size, theme });
      await select(page, `element:${CUTOUT}`);
      await act(page, "open");
      await page.locator('[data-verdict="could-go-live"]').waitFor();
      await look(page, size, "margins");
      await page.locator('[data-margins="done"]').waitFor();
      const counts = await page
        .locator("[data-margin] strong")
        .allTextContents()
        .then((all) => all.map(Number));
      assert.equal(
        counts.reduce((sum, it) => sum + it, 0),
        16,
      );
      assert.ok(
        counts[0] > 0 && counts[1] > 0,
        "points that are live now, and points that one thing makes live",
      );
      await page.getByText("None found is not safe").waitFor();
      await noSidewaysScroll(page);
      await page.getByText("The points as a list").click();
      await noViolation(page, "the margin map");
      if (isPhone(size)) return;
      await act(page, "close");
      await page.getByText("The drawing has changed since the map was made").waitFor();
      await page.getByRole("button", { name: "Work it out" }).click();
      await page.locator('[data-margins="done"]').waitFor();
      await page.keyboard.press("Escape");
      await page.locator("[data-view]").waitFor({ state: "detached" });
    },
  })),
  {
    name: "the path is shown whole at once where motion is not wanted",
    async run(ctx) {
      const page = await begin(ctx, { options: { reducedMotion: "reduce" } });
      await select(page, `element:${CUTOUT}`);
      await act(page, "open");
      await look(page, "desk", "mistake");
      const last = page.locator("[data-step]").last();
      await page.locator("[data-step]").first().waitFor();
      await becomes(() => last.evaluate((it) => it.parentElement.getAttribute("aria-current")), "step");
      await becomes(() => page.getByRole("button", { name: "Walk the path again" }).count(), 0);
    },
  },
  ...bothWays.map(({ size, theme }) => ({
    name: `a generator backfeeds the tap with its real volts, while the switch is moved (${size}, ${theme})`,
    again: size === "desk",
    async run(ctx) {
      const page = await begin(ctx, { size, theme }, "portable-generator");
      await select(page, "element:gen1");
      await act(page, "on");
      await select(page, "element:c1");
      await act(page, "open");
      await page
        .locator('[data-owner="point:p4"]')
        .filter({ hasText: "backfed" })
        .first()
        .waitFor({ state: "attached" });
      await select(page, "point:p4");
      await details(page, size);
      const numbers = page.locator('[data-numbers="point"]');
      // Until the worker has answered the table says "not known yet".
      await numbers.filter({ hasText: /backfed/ }).waitFor();
      await becomes(() => numbers.textContent(), /backfed,\s+from 4 Orchard Close, portable set/);
      const volts = Number(
        /(\d+)\u202f(\d+)\u00a0V/
          .exec(await numbers.textContent())
          .slice(1)
          .join(""),
      );
      assert.ok(volts > 6000 && volts < 8000, `${volts} V on the tap`);
      await page.locator("[data-faults] dd").first().waitFor();
      await page.locator('[data-phasor="A"]').waitFor();
      await noSidewaysScroll(page);
      await noViolation(page, "a point's numbers");
      if (isPhone(size)) await page.keyboard.press("Escape");
      await select(page, "element:m2");
      await details(page, size);
      await page.locator("[data-power]").getByText("from 4 Orchard Close, meter base to Pole 140").waitFor();
      await noViolation(page, "an element's numbers");
      if (isPhone(size)) await page.keyboard.press("Escape");
      await look(page, size, "power");
      await page.getByText("The devices as a list").click();
      await page.getByText("portable set at 4 gives").waitFor();
      await noViolation(page, "the flow of power");
    },
  })),
];
