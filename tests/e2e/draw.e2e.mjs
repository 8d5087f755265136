import assert from "node:assert/strict";
import { act, begin } from "./bar.mjs";
import { pressOn, spotOf } from "./spots.mjs";
import { axeFinds, noSidewaysScroll } from "./scenarios.mjs";
import { becomes } from "./becomes.mjs";

const drawing = (page) => page.locator("[data-drawing]");
const row = (page, owner) => page.locator(`[data-owner="${owner}"]`).first();
const undo = (page) => page.getByRole("button", { name: "Undo" }).first();
const found = (page) => page.locator("[data-command]");

async function menu(page, item) {
  await page.getByRole("button", { name: "Menu" }).click();
  await page.locator(`[data-menu="${item}"]`).click();
}

/** Selects by the outline: beside the drawing, or on a phone over it. */
async function selectFromOutline(page, size, owner) {
  if (size === "desk") return row(page, owner).click();
  await page.getByRole("button", { name: "Outline" }).click();
  await page.locator(`dialog [data-owner="${owner}"]`).click();
  await page.locator("dialog").getByRole("button", { name: "Close" }).click();
}

/** Opens the finder: by its key, or on a phone by the menu. */
async function find(page, size, words) {
  if (size === "desk") await page.keyboard.press("Control+k");
  else await menu(page, "find");
  await page.locator("[data-find]").fill(words);
}

/** A cutout and its transformer are gathered and kept under a name. */
async function keepsAnArrangement(page, touch, name) {
  await act(page, "gather");
  await pressOn(page, "c3", touch);
  await pressOn(page, "t2", touch);
  await page.getByText("2 things").first().waitFor();
  await act(page, "stamp");
  await page.locator('[data-stamp="keep"]').click();
  await page.getByText("Give it a name first.").waitFor();
  await page.locator('[data-stamp="name"]').fill(name);
  assert.match(
    await page.locator('[data-stamp="join"] option').first().textContent(),
    /^Pole 32, line, nearest/,
  );
  await page.locator('[data-stamp="keep"]').click();
  await page.getByText(`Kept: ${name}`).waitFor();
}

const BOTH = [
  ["desk", false],
  ["phone", true],
];

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  ...BOTH.map(([size, touch]) => ({
    name: `an arrangement of one's own is kept, put into another drawing, renamed and deleted (${size})`,
    again: size === "desk",
    async run(ctx) {
      const page = await begin(ctx, { size });
      await keepsAnArrangement(page, touch, "Mill tap");
      await menu(page, "new");
      await page.locator('[data-action="source"]').click();
      await page.locator('[data-action="grow"]').click();
      await page.locator('[data-own="Mill tap"]').click();
      await row(page, "element:t2").waitFor({ state: "attached" });
      await becomes(() => page.locator('[data-owner^="element:"]').count(), 3);
      await undo(page).click();
      await becomes(() => page.locator('[data-owner^="element:"]').count(), 1);
      await page.locator('[data-save="saved"]').waitFor();
      await page.reload();
      await page.locator("html[data-ready]").waitFor();
      await selectFromOutline(page, size, "structure:p1");
      await page.locator('[data-action="grow"]').click();
      await page.locator('[data-stamp="manage"]').click();
      const name = page.getByLabel("New name of Mill tap");
      await name.fill("Sawmill tap");
      await name.press("Enter");
      await noSidewaysScroll(page);
      await page.locator('[data-own="Sawmill tap"] [data-stamp="delete"]').click();
      await page.getByText("Delete for good?").click();
      await page.locator('[data-stamp="manage"]').waitFor({ state: "detached" });
      await becomes(() => page.locator("[data-own]").count(), 0);
    },
  })),
  {
    name: "an arrangement of one's own by keyboard alone",
    async run(ctx) {
      const page = await begin(ctx);
      await row(page, "element:c3").focus();
      await row(page, "element:c3").press("ArrowDown");
      await row(page, "element:sp4").press("ArrowUp");
      await page.keyboard.press("F6");
      await page.keyboard.press("Shift+ArrowRight");
      await page.keyboard.press("k");
      await page.locator('[data-stamp="name"]:focus').waitFor();
      await page.keyboard.type("Mill cutout");
      await page.keyboard.press("Enter");
      await page.getByText("Kept: Mill cutout").waitFor();
      await becomes(() => drawing(page).evaluate((it) => it === document.activeElement), true);
      await page.keyboard.press("Home");
      await page.keyboard.press("Insert");
      const own = page.locator('[data-own="Mill cutout"]');
      await own.waitFor();
      for (let tab = 0; tab < 20; tab++) {
        if (await own.evaluate((it) => it === document.activeElement)) break;
        await page.keyboard.press("Tab");
      }
      await page.keyboard.press("Enter");
      await page.getByText("Add Mill cutout").waitFor();
      await page.keyboard.press("Control+z");
      await becomes(() => undo(page).isDisabled(), true);
    },
  },
  {
    name: "what is no arrangement is refused in one sentence, by keyboard",
    async run(ctx) {
      const page = await begin(ctx);
      await row(page, "element:ld1").click();
      await drawing(page).focus();
      await page.keyboard.press("k");
      const alert = page.locator('dialog [role="alert"]');
      await alert.waitFor();
      await becomes(() => alert.textContent(), /^Select at least one line or device/);
      await becomes(() => page.locator('[data-stamp="name"]').count(), 0);
    },
  },
  {
    name: "what another program put among the arrangements is shown as unreadable, and can be deleted",
    async run(ctx) {
      const page = await begin(ctx);
      await keepsAnArrangement(page, false, "Mill tap");
      await page.evaluate(
        () =>
          new Promise((done, fail) => {
            const opening = indexedDB.open("stillhot");
            opening.onsuccess = () => {
              const transaction = opening.result.transaction("stamps", "readwrite");
              transaction
                .objectStore("stamps")
                .put({ id: "x", savedAt: 0, join: "p1", text: '{"format":1}' });
              transaction.oncomplete = () => done(opening.result.close());
              transaction.onerror = fail;
            };
            opening.onerror = fail;
          }),
      );
      await row(page, "point:p2").click();
      await page.locator('[data-action="grow"]').click();
      await becomes(() => page.locator('[data-own="cannot be read"]').isDisabled(), true);
      await becomes(() => page.locator('[data-own="Mill tap"]').isEnabled(), true);
      await page.locator('[data-stamp="manage"]').click();
      await page.locator('[data-own="cannot be read"] [data-stamp="delete"]').click();
      await page.getByText("Delete for good?").click();
      await page.locator('[data-own="cannot be read"]').waitFor({ state: "detached" });
    },
  },
  {
    name: "tidying by key leaves a drawing to the program again, as one undo entry",
    async run(ctx) {
      const page = await begin(ctx);
      await row(page, "point:p7").click();
      const before = await spotOf(page, "p7");
      await drawing(page).focus();
      await page.keyboard.press("Alt+ArrowRight");
      await ctx.settle(page);
      const moved = await spotOf(page, "p7");
      assert.notDeepEqual(moved, before);
      await page.keyboard.press("l");
      await page.getByText("Tidy the drawing").waitFor();
      await becomes(() => spotOf(page, "p7"), before);
      await drawing(page).focus();
      await page.keyboard.press("l");
      await page.getByRole("alert").first().waitFor();
      await becomes(() => page.getByRole("alert").first().textContent(), /in its place already/);
      await page.keyboard.press("Control+z");
      await ctx.settle(page);
      await becomes(() => spotOf(page, "p7"), moved);
    },
  },
  {
    name: "tidying by touch, and taking it back",
    again: true,
    async run(ctx) {
      const page = await begin(ctx, { size: "phone" });
      const before = await spotOf(page, "p7");
      await pressOn(page, "p7", true);
      await drawing(page).focus();
      await page.keyboard.press("Alt+ArrowRight");
      await page.keyboard.press("Escape");
      await act(page, "tidy");
      await page.getByText("Tidy the drawing").waitFor();
      await becomes(() => spotOf(page, "p7"), before);
      await noSidewaysScroll(page);
      await undo(page).tap();
      await undo(page).tap();
      await becomes(() => undo(page).isDisabled(), true);
    },
  },
  ...BOTH.map(([size]) => ({
    name: `the finder finds a command by its words, shows its key, and does it (${size})`,
    again: size === "desk",
    async run(ctx) {
      const page = await begin(ctx, { size });
      await find(page, size, "tidy");
      const first = found(page).first();
      await becomes(() => first.getAttribute("data-command"), "tidy");
      await becomes(() => first.locator("kbd").textContent(), "L");
      if (size === "desk") await page.keyboard.press("Enter");
      else await first.tap();
      await page.getByText("is in its place already").waitFor();
      await find(page, size, "open demo generator");
      await page.keyboard.press("ArrowDown");
      await page.keyboard.press("ArrowUp");
      await page.keyboard.press("Enter");
      await page.waitForFunction(() => !document.title.startsWith("Tanner"));
      await find(page, size, "nothing of this kind");
      await page.getByText("Nothing has these words.").waitFor();
    },
  })),
  ...BOTH.map(([size]) => ({
    name: `the finder finds a thing of the drawing by what stands on the pole, and goes to it (${size})`,
    again: size === "desk",
    async run(ctx) {
      const page = await begin(ctx, { size });
      await find(page, size, "cutout");
      const thing = page.locator('[data-command^="thing-"]').first();
      const id = await thing.getAttribute("data-command");
      const name = (await thing.locator(".label").textContent()).trim();
      await page.locator("[data-find]").fill(name.toUpperCase().replace(/[ ,]+/g, "-"));
      await becomes(() => found(page).first().getAttribute("data-command"), id);
      if (size === "desk") await page.keyboard.press("Enter");
      else await found(page).first().tap();
      await page.locator("[data-find]").waitFor({ state: "detached" });
      if (size === "phone") await page.getByRole("button", { name: "Outline" }).click();
      const owner = id.replace(/^thing-(\w+)-/, "$1:");
      await page.locator(`[data-owner="${owner}"][aria-selected="true"]`).first().waitFor();
    },
  })),
  {
    name: "a command that cannot be done says why, and Escape leads back to the drawing",
    async run(ctx) {
      const page = await begin(ctx);
      await drawing(page).focus();
      await page.keyboard.press("/");
      await page.locator("[data-find]").fill("undo");
      const first = found(page).first();
      await becomes(() => first.getAttribute("aria-disabled"), "true");
      await becomes(() => first.textContent(), /nothing to undo/);
      await page.keyboard.press("Enter");
      await becomes(() => page.locator("[data-find]").isVisible(), true);
      await page.keyboard.press("Escape");
      await page.locator("[data-find]").waitFor({ state: "detached" });
      await becomes(() => drawing(page).evaluate((it) => it === document.activeElement), true);
      await page.keyboard.press("Control+k");
      await page.locator("[data-find]").fill("go to plan");
      await page.keyboard.press("Enter");
      await page.waitForFunction(() => location.hash === "#plan");
      await page.keyboard.press("Control+k");
      await page.locator("[data-find]").fill("tidy");
      await becomes(() => found(page).first().textContent(), /in Sketch only/);
    },
  },
  {
    name: "the finder speaks the language that it was told to speak, with or without accents",
    async run(ctx) {
      const page = await begin(ctx);
      await find(page, "desk", "francais");
      await page.keyboard.press("Enter");
      await page.locator('html[lang="fr"]').waitFor();
      await find(page, "desk", "epingler");
      await becomes(() => found(page).first().getAttribute("data-command"), "pin");
      await becomes(() => found(page).first().textContent(), /sélectionnez d'abord quelque chose/);
    },
  },
  {
    name: "the list of keys has every key of the finder, and single letters can be turned off",
    async run(ctx) {
      const page = await begin(ctx);
      await find(page, "desk", "");
      const keyed = await found(page)
        .filter({ has: page.locator("kbd") })
        .evaluateAll((all) => all.map((it) => it.dataset.command).filter((it) => !it.startsWith("place-")));
      await page.locator("[data-find]").fill("single");
      await page.keyboard.press("Enter");
      await drawing(page).focus();
      await page.keyboard.press("l");
      await page.keyboard.press("/");
      await becomes(() => page.locator("[data-find]").count(), 0);
      await becomes(() => undo(page).isDisabled(), true);
      await page.locator("header .menu").click();
      await page.locator('[data-menu="keys"]').click();
      await page.getByText("Single-letter keys are turned off").waitFor();
      const listed = await page.locator("[data-keys]").evaluateAll((all) => all.map((it) => it.dataset.keys));
      // The browser's own print is no key of ours.
      assert.deepEqual(
        keyed.filter((it) => it !== "print" && !listed.includes(it)),
        [],
      );
      assert.ok(listed.includes("tidy") && listed.includes("escape"));
    },
  },
  ...BOTH.map(([size, touch]) => ({
    name: `axe finds nothing in the finder, the keys, and the arrangements (${size})`,
    again: size === "desk",
    async run(ctx) {
      const page = await begin(ctx, { size });
      await keepsAnArrangement(page, touch, "Mill tap");
      await find(page, size, "");
      await found(page).first().waitFor();
      assert.deepEqual(await axeFinds(page), []);
      await page.locator("[data-find]").fill("undo");
      assert.deepEqual(await axeFinds(page), []);
      assert.equal(
        await page.locator("[data-find]").inputValue(),
        "undo",
        "another theme takes nothing away",
      );
      await noSidewaysScroll(page);
      await page.keyboard.press("Escape");
      await menu(page, "keys");
      await page.locator("[data-keys]").first().waitFor();
      assert.deepEqual(await axeFinds(page), []);
      await noSidewaysScroll(page);
      await page.keyboard.press("Escape");
      await pressOn(page, "c2", touch);
      await act(page, "stamp");
      await page.locator('[data-stamp="name"]').waitFor();
      assert.deepEqual(await axeFinds(page), []);
      await page.keyboard.press("Escape");
      await selectFromOutline(page, size, "point:p12");
      await page.locator('[data-action="grow"]').click();
      await page.locator('[data-own="Mill tap"]').waitFor();
      await becomes(
        () => page.locator('[data-own="Mill tap"]').isDisabled(),
        true,
        "a primary tap on a secondary",
      );
      assert.deepEqual(await axeFinds(page), []);
      await page.locator('[data-stamp="manage"]').click();
      assert.deepEqual(await axeFinds(page), []);
    },
  })),
];
