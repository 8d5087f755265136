/** The job as a crew does it in Rehearse, for the tests that go through it. */
import { readFileSync } from "node:fs";
import { at } from "../../scripts/lib/project.mjs";
import { pressOn } from "./spots.mjs";

const demo = (name) => JSON.parse(readFileSync(at(`shared/demos/${name}.stillhot.json`), "utf8"));
export const SIDELINE = "sideline-three-transformers";
export const FAR_TIE = "sideline-far-end-tie";

/** Letters of another size from the first picture on, as a browser's own setting gives them; as they are where none is given. */
export async function withLetters(context, letters) {
  if (letters === undefined) return;
  await context.addInitScript((size) => {
    new MutationObserver((_, observer) => {
      if (document.documentElement === null) return;
      document.documentElement.style.fontSize = size;
      observer.disconnect();
    }).observe(document, { childList: true });
  }, letters);
}

/** A job whose proposed order is about to be rehearsed. */
export async function begin(ctx, { size = "desk", theme = "light", name = SIDELINE, options, letters } = {}) {
  const context = await ctx.newContext({ size, theme, options });
  await withLetters(context, letters);
  const page = await ctx.open({
    // The first demo opens by itself, and is found again after a reload.
    path: name === SIDELINE ? "#plan" : `?demo=${name}#plan`,
    context,
  });
  await page.locator("html[data-ready]").waitFor();
  await page.locator("[data-propose]").first().click();
  await page.locator("[data-use]").click();
  await page.locator("[data-rehearse]").click();
  await page.locator("[data-begin]").click();
  await page.locator("[data-arm]").waitFor();
  return { page, drawing: demo(name), touch: size === "phone" };
}

export const press = (locator, touch) => (touch ? locator.tap() : locator.click());
export const verdict = (page, look) => page.locator(`[data-verdict="${look}"]`).waitFor();
export const doing = (page) => page.locator("[data-card]").getAttribute("data-card");

/** Answers what a hold asks, and ticks the step that is shown: two presses in two places. */
export async function tick({ page, touch }) {
  for (const it of await page.locator("[data-challenge]").all())
    if (!(await it.isChecked())) await press(it, touch);
  await press(page.locator("[data-arm]"), touch);
  await confirm({ page, touch });
}

/** The second press, until the step is ticked: after a tap the page has the click a moment later. */
export async function confirm({ page, touch }) {
  await press(page.locator("[data-confirm]:enabled"), touch);
  await page.locator("[data-confirm]:enabled").waitFor({ state: "detached" });
}

/** Presses what stands in a bar, or behind its More where there is no room for it. */
export async function pressOrMore(page, wanted, more, touch) {
  await page.locator(wanted).or(page.locator(more)).first().waitFor();
  if ((await page.locator(wanted).count()) === 0) await press(page.locator(more), touch);
  await press(page.locator(wanted), touch);
}

/** Ticks steps until one of this kind is shown. */
export async function tickUntil(job, verb) {
  for (let n = 0; n < 40; n++) {
    if ((await doing(job.page)) === verb) return;
    await tick(job);
  }
  throw new Error(`no step ${verb}`);
}

/** Does something of one's own on the drawing: `on` is a device or a point. */
export async function own(job, on, act) {
  const { page, touch } = job;
  if (touch) await page.locator('.bar [data-tab="drawing"]').tap();
  await press(page.getByRole("button", { name: "Show all" }), touch);
  await pressOn(page, on, touch);
  await page.locator(".acts .hint").filter({ hasText: "Do: " }).waitFor();
  await pressOrMore(page, `[data-act="${act}"]`, '.acts [data-act="more"]', touch);
  await page.getByText("Not in the plan").waitFor();
  await tick(job);
}

export async function takeBack({ page, touch }) {
  await press(page.locator("[data-take-back]"), touch);
  await page.locator("[data-arm]").waitFor();
}

/** Leaves the step out, as whoever is asked whether it is meant. */
export async function leaveOut({ page, touch }) {
  await press(page.locator("[data-skip]"), touch);
  await press(page.locator("[data-sure]"), touch);
}
