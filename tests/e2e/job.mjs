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

/**
 * A job whose proposed order is about to be rehearsed, or whose next step is the first to do `until`. Whoever asks for the
 * first such job brings it so far by the screen; the others open it by its link, as the crew's other device does.
 */
export async function begin(
  ctx,
  { size = "desk", theme = "light", name = SIDELINE, until, options, letters } = {},
) {
  const link = await linkOfJob(ctx, name, until);
  const opening = { size, theme, options };
  const context = letters === undefined ? undefined : await ctx.newContext(opening);
  if (context) await withLetters(context, letters);
  const page = await ctx.open({ ...opening, url: link, context });
  await page.locator("html[data-ready]").waitFor();
  await page.evaluate(() => (location.hash = "#rehearse"));
  const touch = size === "phone";
  if (until === undefined) await press(page.locator("[data-begin]"), touch);
  await page.locator("[data-arm]").waitFor();
  return { page, drawing: demo(name), touch };
}

/** The same by the screen alone, from a demo on. */
export async function beginAnew(ctx, { size = "desk", name = SIDELINE } = {}) {
  const page = await orderInUse(ctx, { size, name });
  await page.locator("[data-rehearse]").click();
  await page.locator("[data-begin]").click();
  await page.locator("[data-arm]").waitFor();
  return { page, drawing: demo(name), touch: size === "phone" };
}

async function orderInUse(ctx, { size, name }) {
  const page = await ctx.open({
    size,
    // The first demo opens by itself, and is found again after a reload.
    path: name === SIDELINE ? "#plan" : `?demo=${name}#plan`,
  });
  await page.locator("html[data-ready]").waitFor();
  await page.locator("[data-propose]").first().click();
  await page.locator("[data-use]").click();
  await page.locator("[data-rehearse]").waitFor();
  return page;
}

/** What another device is given. */
export async function linkOf({ page, touch }) {
  await press(page.getByRole("button", { name: "Menu" }), touch);
  await press(page.locator('[data-menu="share"]'), touch);
  const link = await page.locator('[data-link="short"]').inputValue();
  await page.keyboard.press("Escape");
  return link;
}

/** Links of jobs that were brought so far, by demo and step. */
const links = new Map();

function linkOfJob(ctx, name, until) {
  const key = `${name} ${until}`;
  const known = links.get(key) ?? bringSoFar(ctx, name, until);
  links.set(key, known);
  // Who waits for it fails as well; the next tries anew.
  known.catch(() => links.delete(key));
  return known;
}

/** Which of the steps of the first demo's order stands before which, so that nobody walks to one twice. */
const BEFORE = { tag: "open", "check-detector": "tag", test: "check-detector", untag: "test" };

async function bringSoFar(ctx, name, until) {
  if (until === undefined)
    return linkOf({ page: await orderInUse(ctx, { size: "desk", name }), touch: false });
  const before = name === SIDELINE ? BEFORE[until] : undefined;
  const job = await begin(ctx, { name, until: before });
  await tickUntil(job, until);
  return linkOf(job);
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
