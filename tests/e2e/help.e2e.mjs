import assert from "node:assert/strict";
import { becomes } from "./becomes.mjs";
import { pressAPlace } from "./places.mjs";
import { axeFinds, noSidewaysScroll } from "./scenarios.mjs";

const ready = (page) => page.locator("html[data-ready]").waitFor();

async function menu(page, item) {
  await page.locator("header .menu").click();
  await page.locator(`[data-menu="${item}"]`).click();
}

/** The file with the French sentences. */
const FRENCH_WORDS = /\/french-[\w-]+\.js/;

/** Notes every text that the page shows from its beginning on, and the names that are read aloud. */
function noteWords() {
  globalThis.wordsShown = [];
  const note = () => {
    const names = [...document.querySelectorAll("[aria-label]")].map((it) => it.getAttribute("aria-label"));
    const words = [document.querySelector("#app")?.textContent ?? "", ...names].join("\n").trim();
    if (words !== "") globalThis.wordsShown.push(words);
  };
  new MutationObserver(note).observe(document, {
    childList: true,
    subtree: true,
    characterData: true,
    attributes: true,
  });
}

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  {
    name: "the field of Help is as high as a finger, and both drawings of Teach stand whole at 1280 px",
    async run(ctx) {
      const page = await ctx.open({ path: "?demo=sideline-three-transformers" });
      await page.locator("html[data-ready]").waitFor();
      await page.getByRole("button", { name: "Menu" }).click();
      await page.locator('[data-menu="help"]').click();
      const { height } = await page.locator("dialog input").boundingBox();
      assert.ok(height >= 44, `the field is ${height} px high`);
      await page.keyboard.press("Escape");
      await page.locator("dialog").waitFor({ state: "detached" });
      await page.keyboard.press("6");
      await page.locator(".side.map [data-camera]").waitFor();
      await ctx.settle(page);
      const outside = await page.locator(".side [data-drawing]").evaluateAll((all) =>
        all.flatMap((it) => {
          const [left, top, scale] = it.dataset.camera.split(" ").map(Number);
          return Object.entries(JSON.parse(it.dataset.spots)).flatMap(([id, [x, y]]) => {
            const [atX, atY] = [x * scale + left, y * scale + top];
            return atX < 0 || atY < 0 || atX > it.clientWidth || atY > it.clientHeight ? [id] : [];
          });
        }),
      );
      assert.deepEqual(outside, []);
    },
  },
  ...["desk", "phone"].map((size) => ({
    name: `the tour is offered once, goes on by what is done, and can be taken again (${size})`,
    again: size === "desk",
    async run(ctx) {
      const page = await ctx.open({ size });
      await ready(page);
      await page.locator('[data-tour-action="start"]').click();
      await page.locator('[data-tour="0"]').waitFor();
      await page.locator('[data-tour-action="next"]').click();
      await page.locator('[data-tour="1"]').waitFor();
      await page
        .locator('[data-owner="element:c1"]')
        .first()
        .evaluate((row) => row.click());
      await page.locator('[data-action="open"]').click();
      await page.locator('[data-tour="2"]').waitFor();
      if (size === "phone") await page.locator("[data-verdict] button").first().click();
      await page.locator(".threat").first().click();
      await page.locator('[data-tour="3"]').waitFor();
      await page.locator('[data-tour-action="next"]').click();
      await page.locator('[data-tour-action="skip"]').click();
      await page.reload();
      await ready(page);
      await becomes(() => page.locator("[data-tour]").count(), 0);
      await menu(page, "help");
      await page.locator('[data-help="tour"]').click();
      await page.locator('[data-tour="0"]').waitFor();
    },
  })),
  {
    name: "why a conductor is hot is told step by step, from the supply to it",
    async run(ctx) {
      const page = await ctx.open();
      await ready(page);
      await page.locator('[data-owner="element:c1"]').first().click();
      await page.getByRole("tab", { name: "Details" }).click();
      await page.locator("[data-why-button]").click();
      await page.locator('[data-why="energized"]').waitFor();
      const steps = await page.locator("dialog .step").allTextContents();
      assert.match(steps[0], /station bus is on and supplies/);
      assert.match(steps.at(-1), /closed, to Pole 30/);
      await page.getByRole("button", { name: "Light this path" }).click();
      await page.locator("dialog[open]").waitFor({ state: "detached" });
    },
  },
  {
    name: "the glossary finds a word by what it is called elsewhere",
    async run(ctx) {
      const page = await ctx.open();
      await ready(page);
      await menu(page, "help");
      await page.getByPlaceholder("Find a word").fill("spur");
      await becomes(() => page.locator("dialog dt").allTextContents(), ["sideline, tap"]);
    },
  },
  {
    name: "in French everything is French, dates and numbers too, and it stays so",
    async run(ctx) {
      const page = await ctx.open();
      await ready(page);
      await menu(page, "settings");
      await page.locator('[data-language="fr"]').click();
      await page.waitForFunction(() => document.documentElement.lang === "fr");
      await page.reload();
      await page.waitForFunction(() => document.documentElement.lang === "fr");
      await ready(page);
      await page.getByText("Sous tension", { exact: false }).first().waitFor();
      await becomes(() => page.getByText("Only test and grounds make", { exact: false }).count(), 0);
      const device = await ctx.open({ options: { locale: "fr-FR" } });
      await device.waitForFunction(() => document.documentElement.lang === "fr");
    },
  },
  {
    name: "who reads French sees no word of English first, however late the French words come",
    async run(ctx) {
      const context = await ctx.newContext({ options: { locale: "fr-FR" } });
      await context.route(FRENCH_WORDS, async (route) => {
        await new Promise((done) => setTimeout(done, 600));
        await route.continue();
      });
      await context.addInitScript(noteWords);
      const page = await ctx.open({ context });
      await ready(page);
      await page.getByText("Un croquis n'est pas le poteau", { exact: false }).first().waitFor();
      const shown = await page.evaluate(() => globalThis.wordsShown);
      assert.ok(shown.length > 0);
      assert.deepEqual(
        shown.filter((it) =>
          /A sketch is not the pole|Title of the drawing|Untitled drawing|\bOpen a file\b/.test(it),
        ),
        [],
      );
      await becomes(() => page.evaluate(() => document.documentElement.lang), "fr");
    },
  },
  {
    name: "where the French words do not come, English stands in for them, and yields to them when they do",
    async run(ctx) {
      const context = await ctx.newContext({ options: { locale: "fr-FR" } });
      let letThrough = () => undefined;
      const waiting = new Promise((done) => (letThrough = done));
      await context.route(FRENCH_WORDS, async (route) => {
        await waiting;
        await route.continue();
      });
      const page = await ctx.open({ context });
      await ready(page);
      await page.getByText("A sketch is not the pole", { exact: false }).first().waitFor();
      letThrough();
      await page.getByText("Un croquis n'est pas le poteau", { exact: false }).first().waitFor();
    },
  },
  {
    name: "who reads English waits for no other language",
    async run(ctx) {
      const page = await ctx.open();
      await page.getByText("A sketch is not the pole", { exact: false }).first().waitFor();
      await ready(page);
      const fetched = await page.evaluate(() =>
        performance.getEntriesByType("resource").map((it) => new URL(it.name).pathname),
      );
      assert.ok(fetched.length > 0);
      assert.deepEqual(
        fetched.filter((it) => FRENCH_WORDS.test(it)),
        [],
      );
    },
  },
  {
    name: "where the French words cannot be fetched, English stands in for them",
    async run(ctx) {
      ctx.expectError(/ERR_FAILED|Failed to fetch dynamically imported module/);
      const context = await ctx.newContext({ options: { locale: "fr-FR" } });
      await context.route(FRENCH_WORDS, (route) => route.abort());
      const page = await ctx.open({ context });
      await ready(page);
      await page.getByText("A sketch is not the pole", { exact: false }).first().waitFor();
      await page.locator("[data-canvas], canvas").first().waitFor();
    },
  },
  {
    name: "who chooses a language whose words cannot be fetched is told so, and has them once the app starts again",
    async run(ctx) {
      ctx.expectError(/ERR_FAILED|Failed to fetch dynamically imported module/);
      const context = await ctx.newContext();
      await context.route(FRENCH_WORDS, (route) => route.abort());
      const page = await ctx.open({ context });
      await ready(page);
      await menu(page, "settings");
      const notice = page.locator("[data-language-missing]");
      await becomes(() => notice.count(), 0);
      await page.locator('[data-language="fr"]').click();
      await notice.waitFor();
      assert.match(
        await notice.textContent(),
        /Français: its words could not be fetched, so English stands in/,
      );
      await page.locator('[data-language="en"]').click();
      await notice.waitFor({ state: "detached" });
      await page.locator('[data-language="fr"]').click();
      await notice.waitFor();
      await context.unroute(FRENCH_WORDS);
      await page.locator("[data-language-again]").click();
      await page.waitForFunction(() => document.documentElement.lang === "fr");
    },
  },
  {
    name: "on a phone plan and sheet say what the region says that was chosen, and so does the app once it starts again",
    async run(ctx) {
      const page = await ctx.open({ size: "phone", path: "?demo=quarry-lane" });
      await ready(page);
      const usual = page.getByText("Ask for the permit", { exact: false });
      const regional = page.getByText("Ask for the clearance", { exact: false });
      const sheetSays = async () => page.locator("[data-sheet]").getAttribute("srcdoc");
      await pressAPlace(page, "sheet", "phone");
      await becomes(async () => /Ask for the permit/.test(await sheetSays()), true);
      await menu(page, "settings");
      await page.locator('[data-region="us"]').tap();
      await becomes(() => page.locator('[data-region="us"]').getAttribute("aria-pressed"), "true");
      await noSidewaysScroll(page);
      assert.deepEqual(await axeFinds(page), []);
      await page.keyboard.press("Escape");
      await becomes(async () => /Ask for the clearance/.test(await sheetSays()), true);
      assert.doesNotMatch(await sheetSays(), /\b(permit|barrel|tailboard)s?\b(?!-)/i);
      await page.reload();
      await ready(page);
      await pressAPlace(page, "plan", "phone");
      await regional.first().waitFor();
      await becomes(() => usual.count(), 0);
      await menu(page, "help");
      await page.getByPlaceholder("Find a word").fill("permit");
      await becomes(
        async () => (await page.locator("dialog dt").allTextContents()).includes("clearance"),
        true,
      );
    },
  },
];
