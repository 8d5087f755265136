/** What the tests of scenarios, debriefs and sheets have in common: playing steps as a person does, by the page's own controls. */
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

export async function begun(ctx, opening) {
  const page = await ctx.open(opening);
  await page.locator("html[data-ready]").waitFor();
  return page;
}

/** Presses what asks for a file, and gives it these. */
export async function chooseFiles(page, button, files) {
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), button.click()]);
  await chooser.setFiles(files);
}

/**
 * What is printed from a frame by a press, as HTML. The frame goes when the printing is over, which is at once where
 * nothing asks about it.
 */
export async function printedBy(page, button) {
  await page.evaluate(() => {
    globalThis.printed = new Promise((done) => {
      const observer = new MutationObserver((changes) => {
        const frame = changes.flatMap((it) => [...it.addedNodes]).find((it) => it.matches?.("iframe"));
        if (frame === undefined) return;
        observer.disconnect();
        done(frame.srcdoc);
      });
      observer.observe(document.body, { childList: true });
    });
  });
  await button.click();
  return page.evaluate(() => globalThis.printed);
}

export async function chooseScenario(page, id, who) {
  await page.locator(`[data-scenario="${id}"]`).click();
  await page.locator('[data-field="who"]').fill(who);
  await page.locator('[data-act="begin"]').click();
  await page.locator("[data-over]").waitFor();
}

const ON_THE_RADIO = ["request-permit", "receive-permit", "release-permit"];

/** Does one step: chooses the thing, presses the verb, says what else is asked, and does it. */
export async function doStep(page, step, { workAt = "p5" } = {}) {
  const { do: verb, element, at, phases, with: tool, to, cable, method, gloveClass, expect: expected } = step;
  if (ON_THE_RADIO.includes(verb)) {
    await page.locator('[data-tab="radio"]').click();
    await page.locator(`[data-radio="${verb}"]`).click();
    await page.locator('[data-tab="do"]').click();
    return;
  }
  const owner =
    element !== undefined && verb !== "ground"
      ? `element ${element}`
      : at !== undefined
        ? `point ${verb === "work" ? workAt : at}`
        : undefined;
  if (owner !== undefined) await page.locator('[data-field="pick"]').selectOption(owner);
  const within = owner === undefined ? "" : ".chosen ";
  await page.locator(`${within}[data-do="${verb}"]`).first().click();
  const skip = page.locator('[data-act="skip-predict"]');
  if (await skip.isVisible()) await skip.click();
  const perform = page.locator('[data-act="do"]');
  if (await perform.isVisible()) {
    if (tool !== undefined) await page.locator('[data-field="tool"]').selectOption(tool);
    if (to !== undefined) await page.locator('[data-field="to"]').selectOption(to);
    if (cable !== undefined) await page.locator('[data-field="cable"]').selectOption(cable);
    if (method !== undefined) await page.locator('[data-field="method"]').selectOption(method);
    if (gloveClass !== undefined) await page.locator('[data-field="gloveClass"]').selectOption(gloveClass);
    if (expected !== undefined) await page.locator('[data-field="expect"]').selectOption(expected);
    for (const letter of await page.locator("[data-phase]").all()) {
      const name = await letter.getAttribute("data-phase");
      const isOn = (await letter.getAttribute("aria-pressed")) === "true";
      if (phases !== undefined && isOn !== phases.includes(name)) await letter.click();
    }
    await perform.click();
  }
  await page.locator("[data-latest]").waitFor();
}

export async function playAnswer(page, steps) {
  for (const step of steps) await doStep(page, step);
}

export async function finish(page) {
  await page.locator('[data-act="finish"]').click();
  await page.locator('[data-act="finish-sure"]').click();
  await page.locator("[data-outcome]").waitFor();
}

/** How many lines of the log begin so. */
export const did = (page, words) => page.locator("ol[reversed] strong").filter({ hasText: words }).count();

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/**
 * What axe finds wrong with the page, each as its rule and the thing that it is about: every rule in the theme that the
 * page has, and in the other theme those of contrast, which is all that a theme can change.
 */
export async function axeFinds(page) {
  if (!(await page.evaluate(() => "axe" in globalThis))) await page.evaluate(axe);
  const found = async (runOnly) => {
    await coloursAtRest(page);
    return page.evaluate(async (options) => {
      const { violations } = await globalThis.axe.run(document, { resultTypes: ["violations"], ...options });
      return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(" ")}`));
    }, runOnly);
  };
  const inItsOwn = await found({});
  const isDark = await page.evaluate(() => matchMedia("(prefers-color-scheme: dark)").matches);
  await page.emulateMedia({ colorScheme: isDark ? "light" : "dark" });
  const inTheOther = await found({ runOnly: ["color-contrast"] });
  await page.emulateMedia({ colorScheme: isDark ? "dark" : "light" });
  return [...inItsOwn, ...inTheOther.map((it) => `in the other theme, ${it}`)];
}

/**
 * A button that is pressed, and a page that goes over to another theme, change their colours over some frames: what is
 * read off meanwhile is a colour that nobody chose.
 */
async function coloursAtRest(page) {
  await page.evaluate(async () => {
    const frame = () => new Promise((done) => requestAnimationFrame(done));
    for (let n = 0; n < 3; n++) await frame();
    const running = () => document.getAnimations().filter((it) => it.playState === "running");
    for (let left = running(); left.length > 0; left = running()) {
      await Promise.allSettled(left.map((it) => it.finished));
      await frame();
    }
  });
}

export async function noSidewaysScroll(page) {
  const [wide, inner] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  assert.ok(wide <= inner, `the page is ${wide} px wide in a window of ${inner} px`);
}
