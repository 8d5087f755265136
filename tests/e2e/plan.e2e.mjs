import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { axeFinds, begun } from "./scenarios.mjs";
import { pressOrMore } from "./job.mjs";
import { boxAtRest, pressOn } from "./spots.mjs";
import { becomes } from "./becomes.mjs";
import { pressAPlace } from "./places.mjs";

async function begin(ctx, opening = {}) {
  const page = await ctx.open({ path: "?demo=sideline-three-transformers#plan", ...opening });
  await page.locator("html[data-ready]").waitFor();
  await page.locator("[data-count]").waitFor();
  await ctx.settle(page);
  return page;
}

/** Presses a point or a device, all of the drawing brought into view first. */
async function press(ctx, page, id, touch) {
  const fit = page.getByRole("button", { name: "Show all" });
  await (touch ? fit.tap() : fit.click());
  await ctx.settle(page);
  await pressOn(page, id, touch);
}

async function act(page, id) {
  await pressOrMore(page, `[data-act="${id}"]`, '.acts [data-act="more"]');
}

const step = (page, n) => page.locator(`[data-step="${n}"]`);
const count = (page) => page.locator("[data-count]").getAttribute("data-count");

async function propose(page) {
  await page.locator("[data-propose]").first().click();
  await page.locator("[data-use]").waitFor();
}

async function usesTheProposal(page) {
  await propose(page);
  await page.getByText("none objects").waitFor();
  await page
    .getByText(/customers out: 7, critical: load at Workshop/)
    .first()
    .waitFor();
  await becomes(() => page.locator('[data-proposed="5"]').textContent(), /sideline cutout.*station bus/s);
  await page.locator("[data-use]").click();
  await step(page, 20).waitFor();
  await becomes(() => page.locator(".mark.danger, .mark.warning, .mark.harm").count(), 0);
}

/** How far the drawing reaches up under the verdict, which stays while the rest of the page is scrolled [px]. */
const underVerdict = (page) =>
  page.evaluate(() => {
    const bottomOf = (it) => document.querySelector(it).getBoundingClientRect().bottom;
    const { top } = document.querySelector("[data-drawing]").getBoundingClientRect();
    return Math.max(0, Math.round(bottomOf("[data-verdict]") - top));
  });

/** Whether the top of `part` can be seen in the panel as far as that was scrolled. */
const beginsInPanel = (part) =>
  part.evaluate((it) => {
    const { top, bottom } = it.closest("[role=tabpanel]").getBoundingClientRect();
    const of = it.getBoundingClientRect();
    return of.top >= top && of.top < bottom;
  });

async function noSidewaysScroll(page) {
  const [wide, inner] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  assert.ok(wide <= inner, `the page is ${wide} px wide in a window of ${inner} px`);
}

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  {
    name: "another drawing that is opened beside its order is shown as if it had been the first",
    async run(ctx) {
      const drawing = readFileSync("shared/demos/floating-wye-delta-bank.stillhot.json", "utf8");
      const camera = (page) => page.locator("[data-drawing]").getAttribute("data-camera");
      const first = await ctx.open({ path: "?demo=floating-wye-delta-bank#plan", size: "phone" });
      await first.locator("[data-count]").waitFor();
      await ctx.settle(first);
      const page = await begin(ctx, { size: "phone" });
      const data = await page.evaluateHandle((text) => {
        const transfer = new DataTransfer();
        transfer.items.add(new File([text], "bank.stillhot.json", { type: "application/json" }));
        return transfer;
      }, drawing);
      await page.locator(".app").dispatchEvent("drop", { dataTransfer: data });
      await becomes(() => camera(page), await camera(first));
    },
  },
  ...["desk", "phone"].map((size) => ({
    name: `one press proposes an order with its reasons, and it is walked step by step (${size})`,
    again: size === "desk",
    async run(ctx) {
      const page = await begun(ctx, { size, path: "?demo=sideline-three-transformers" });
      await pressAPlace(page, "plan", size);
      await page.locator("[data-next]:focus").waitFor();
      await becomes(() => underVerdict(page), 0);
      await usesTheProposal(page);
      // An order that comes into use is read from its first step.
      await becomes(() => beginsInPanel(step(page, 1)), true);
      for (let n = 0; n < 5; n++) await page.locator("[data-forward]").click();
      await page.locator('[data-verdict="could-go-live"]').waitFor();
      await page
        .getByText(/breaks 3.15 A by the load-break tool/i)
        .first()
        .waitFor();
      for (let n = 5; n < 11; n++) await page.locator("[data-forward]").click();
      await page.locator('[data-verdict="grounded"]').waitFor();
      await page.locator("[data-back]").click();
      await page.locator('[data-verdict="could-go-live"]').waitFor();
      await noSidewaysScroll(page);
    },
  })),
  ...[
    ["desk", false],
    ["phone", true],
  ].map(([size, touch]) => ({
    name: `acts on the drawing become steps, with findings and what they bring about (${size}, ${touch ? "touch" : "mouse"})`,
    again: size === "desk",
    async run(ctx) {
      const page = await begin(ctx, { size });
      await press(ctx, page, "k1", touch);
      await act(page, "lift");
      await becomes(() => step(page, 1).textContent(), /Lift sideline clamp/);
      await step(page, 1).locator('[data-consequence="arc"]').waitFor();
      await page.locator('[data-callout="arc"]').waitFor();
      const found = step(page, 1).locator('[data-finding="load-break"]');
      await becomes(() => found.textContent(), /3.15 A.*1910\.269/s);
      await step(page, 1).locator("[data-remove]").click();
      await page.getByText("No steps yet").waitFor();
      await page.keyboard.press("Control+z");
      await step(page, 1).waitFor();
    },
  })),
  {
    name: "by keyboard alone: a step from the drawing, moved, changed, deleted and undone",
    async run(ctx) {
      const page = await begin(ctx);
      await page.locator("[data-drawing]").focus();
      await page.keyboard.press("w");
      for (let n = 0; n < 40; n++) {
        if (/sideline cutout/.test(await page.locator(".acts .hint").textContent())) break;
        await page.keyboard.press("ArrowLeft");
      }
      await becomes(() => page.locator("[data-spoken]").textContent(), /sideline cutout.*closed/);
      await page.keyboard.press("Space");
      await becomes(() => step(page, 1).textContent(), /Open sideline cutout, C, with the load-break tool/);
      await page.keyboard.press("Escape");
      await page.locator('.acts [data-act="brief"]').focus();
      await page.keyboard.press("Enter");
      await step(page, 2).locator('[data-move="up"]').focus();
      await page.keyboard.press("Enter");
      await becomes(() => step(page, 1).textContent(), /tailboard/);
      await page.keyboard.press("PageDown");
      await becomes(() => count(page), "2");
      await step(page, 2).locator("[data-edit]").focus();
      await page.keyboard.press("Enter");
      await step(page, 2).locator('[data-key="with"]').selectOption("extending-stick");
      await becomes(() => step(page, 2).textContent(), /with the extending stick/);
      await step(page, 2).locator("[data-remove]").focus();
      await page.keyboard.press("Enter");
      await step(page, 2).waitFor({ state: "detached" });
      await page.locator("[data-drawing]").focus();
      await page.keyboard.press("Control+z");
      await step(page, 2).waitFor();
    },
  },
  {
    name: "a step is dragged to another place, as one undo entry",
    async run(ctx) {
      const page = await begin(ctx);
      await act(page, "brief");
      await act(page, "request-permit");
      await act(page, "check-detector");
      await page.locator("[data-back]").click();
      const handle = await boxAtRest(step(page, 3).locator(".handle"));
      const first = await boxAtRest(step(page, 1));
      await page.mouse.move(handle.x + 20, handle.y + handle.height / 2);
      await page.mouse.down();
      await page.mouse.move(handle.x + 20, first.y + 30, { steps: 5 });
      await page.mouse.move(handle.x + 20, first.y + 4, { steps: 5 });
      await page.mouse.up();
      await becomes(() => step(page, 1).textContent(), /detector/);
      await page.keyboard.press("Control+z");
      await becomes(() => step(page, 1).textContent(), /tailboard/);
    },
  },
  {
    name: "mine and the proposed order stand side by side from their first difference",
    async run(ctx) {
      const page = await begin(ctx);
      await usesTheProposal(page);
      await step(page, 6).locator("button.step").click();
      await step(page, 6).locator("[data-remove]").click();
      await page.locator('[data-tab="proposal"]').click();
      await page.locator("[data-compare]").click();
      await page.getByText("The same up to step 5.").waitFor();
      const row = page.locator("[data-comparison] tbody tr").first();
      await becomes(() => row.locator("td").nth(1).textContent(), /6\s+Tag Pole 30, sideline cutout/);
      assert.equal((await row.locator("td").first().textContent()).trim(), "");
      await page.locator("[data-use]").click();
      await becomes(() => step(page, 6).textContent(), /Tag sideline cutout/);
    },
  },
  {
    name: "each threat ends in what would take it away, tried as it is ticked",
    async run(ctx) {
      const page = await begin(ctx);
      await press(ctx, page, "c1", false);
      await act(page, "open");
      await page.locator('[data-tab="controls"]').click();
      await page
        .getByText(/If Pole 30, sideline cutout is closed/)
        .first()
        .waitFor();
      const tag = page
        .locator("[data-control]")
        .filter({ hasText: /^\s*Tag Pole 30, sideline cutout, then Block/ })
        .first();
      await tag.locator("input").check();
      await page.locator("[data-with]").waitFor();
      const ground = page
        .locator("[data-control]")
        .filter({ hasText: /ground set.* on: Pole 32, line, C/ })
        .first();
      await ground.locator("input").check();
      await page
        .locator("[data-with]")
        .getByText(/Isolated/)
        .waitFor();
      await page.locator("[data-take]").click();
      await page.locator('[data-tab="steps"]').click();
      const verbs = async () =>
        (await page.locator("[data-step] .words").allTextContents()).map((it) => it.split(" ")[0]);
      await becomes(verbs, ["Open", "Tag", "Block", "Put"]);
    },
  },
  {
    name: "digits go to the places, and the address holds the place through a reload",
    async run(ctx) {
      const page = await begin(ctx);
      await page.locator("[data-drawing]").focus();
      // Each is announced, and has the keyboard.
      for (const [n, name] of [
        "Sketch",
        "Plan",
        "Rehearse",
        "Debrief",
        "Sheet",
        "Teach",
        "Learn",
      ].entries()) {
        await page.keyboard.press(String(n + 1));
        await page.locator("[data-arrived]").getByText(name, { exact: true }).waitFor();
        await page.locator(":not(body):focus").waitFor();
      }
      await page.keyboard.press("1");
      await page.locator("[data-drawing]:focus").waitFor();
      // So does each sheet, and closed by Escape it gives the keyboard back to what was pressed.
      for (const sheet of ["library", "kept", "share", "scan", "help", "notation", "keys", "settings"]) {
        await page.locator("header .menu").focus();
        await page.keyboard.press("Enter");
        await page.locator(`[data-menu="${sheet}"]`).press("Enter");
        await page.locator(`[data-menu="${sheet}"]`).waitFor({ state: "detached" });
        await page.locator("dialog[open] :focus").first().waitFor();
        await page.keyboard.press("Escape");
        await page.locator("header .menu:focus").waitFor();
      }
      await page.keyboard.press("2");
      await page.locator("[data-count]").waitFor();
      await page.reload();
      await page.locator("[data-count]").waitFor();
      await page.goBack();
      await page.locator(".sketch").waitFor();
    },
  },
  ...["desk", "phone"].map((size) => ({
    name: `no accessibility violation that axe finds (${size})`,
    again: size === "desk",
    async run(ctx) {
      const page = await begin(ctx, { size });
      const check = async (where) => assert.deepEqual(await axeFinds(page), [], where);
      await check("as it opens");
      await press(ctx, page, "k1", size === "phone");
      await act(page, "lift");
      await step(page, 1).locator("[data-edit]").click();
      await check("a step that went wrong, being changed");
      await page.locator('[data-tab="controls"]').click();
      await page.locator("[data-control]").first().waitFor();
      await check("threats");
      await page.locator('[data-tab="proposal"]').click();
      await propose(page);
      await check("proposal");
      await page.locator("[data-compare]").click();
      await check("comparison");
      await page.locator('[data-tab="outline"]').click();
      await check("outline");
    },
  })),
];
