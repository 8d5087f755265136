import assert from "node:assert/strict";
import { becomes } from "./becomes.mjs";
import { doing, linkOf, press, pressOrMore, tick, tickUntil, verdict, withLetters } from "./job.mjs";

const touch = true;
const go = async (page, place) => {
  await page.evaluate((it) => (location.hash = it), place);
  await page.locator("html[data-ready]").waitFor();
};

/** Poles as they are numbered in this drawing; whoever reads another number reads the name of another pole. */
const POLES = ["30", "31"];
const polesRead = async (page) =>
  [...(await page.locator("[data-card]").innerText()).matchAll(/Pole (\d+)/g)].map(([, number]) => number);
const readsTheRightPoles = async (page, poles) => {
  const read = await polesRead(page);
  for (const it of read) assert.ok(poles.includes(it), `the step tells of pole ${it}`);
  return read;
};

async function drawFromNothing(page) {
  const part = (id) => page.locator(`[data-part="${id}"]`);
  const grow = () => press(page.locator('.bar [data-action="grow"]'), touch);
  await press(page.getByRole("button", { name: "Menu" }), touch);
  await press(page.locator('[data-menu="new"]'), touch);
  await press(page.locator('[data-action="source"]'), touch);
  await grow();
  await press(part("span"), touch);
  await press(page.locator("[data-number]"), touch);
  await page.keyboard.type("Pole 30");
  await page.keyboard.press("Enter");
  await grow();
  await press(part("gang"), touch);
  await grow();
  await press(part("span"), touch);
  await becomes(() => page.locator("[data-number]").inputValue(), "Pole 31");
  await pressOrMore(page, '[data-action="work"]', '.bar [data-action="more"]', touch);
  await page.locator('[data-save="saved"]').waitFor();
}

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  { what: "a glove at 360 px", viewport: { width: 360, height: 640 }, glove: true },
  { what: "a phone on its side", viewport: { width: 844, height: 390 } },
  { what: "letters at 200 %", viewport: { width: 390, height: 844 }, letters: "200%" },
].map(({ what, viewport, glove, letters }) => ({
  name: `the whole job from nothing to all clear, over two phones, a rename, a kill and a voltage at the test: ${what}`,
  again: !glove,
  seconds: 240,
  async run(ctx) {
    const phone = async () => {
      const context = await ctx.newContext({ size: "phone", ahead: true, options: { viewport } });
      await withLetters(context, letters);
      return context;
    };
    const first = await ctx.open({ context: await phone() });
    await first.locator("html[data-ready]").waitFor();
    if (glove) await press(first.getByRole("button", { name: "Glove mode" }), touch);
    await drawFromNothing(first);
    await go(first, "plan");
    await press(first.locator("[data-propose]").first(), touch);
    await press(first.locator("[data-use]"), touch);
    await press(first.locator("[data-rehearse]"), touch);
    await press(first.locator("[data-begin]"), touch);
    await first.locator("[data-arm]").waitFor();
    let job = { page: first, touch };
    await tick(job);
    await readsTheRightPoles(first, POLES);

    // Handed over in the middle: the other phone goes on where this one is.
    const due = await doing(first);
    const context = await phone();
    const second = await ctx.open({ context, url: await linkOf(job) });
    await second.locator("[data-under-way]").waitFor();
    if (glove) await press(second.getByRole("button", { name: "Glove mode" }), touch);
    await go(second, "rehearse");
    await second.locator("[data-card]").waitFor();
    await becomes(() => doing(second), due);

    // Somebody has read the pole's plate: from then on every step calls it so.
    await go(second, "sketch");
    await second
      .locator('[data-owner^="structure:"]')
      .filter({ hasText: /^Pole 31/ })
      .first()
      .dispatchEvent("click");
    await pressOrMore(second, '[data-action="details"]', '.bar [data-action="more"]', touch);
    await second.getByLabel("Label", { exact: true }).first().fill("Pole 77");
    await second.keyboard.press("Tab");
    await second.locator('[data-save="saved"]').waitFor();
    await second.keyboard.press("Escape");

    // Killed, and opened again.
    await second.close();
    const again = await ctx.open({ context });
    await again.locator("[data-under-way]").waitFor();
    await go(again, "rehearse");
    await again.locator("[data-card]").waitFor();
    await becomes(() => doing(again), due);
    job = { page: again, touch };

    await tickUntil(job, "test");
    for (const it of await again.locator("[data-challenge]").all()) await it.check();
    await press(again.locator("[data-unexpected]"), touch);
    await press(again.locator('[data-seen="voltage"]'), touch);
    await press(again.locator("[data-stop]"), touch);
    await again.locator('[data-stopped="voltage"]').waitFor();
    await verdict(again, "live");
    await press(again.locator("[data-back-to-step]"), touch);
    await becomes(() => doing(again), "check-detector");
    // What fed it was found and opened: the test is done again, and the job goes on to its end.
    const read = new Set();
    const done = [];
    const end = again.locator("[data-end]");
    for (let n = 0; n < 60; n++) {
      const [card, goOn] = [again.locator("[data-card]"), again.locator("[data-go-on]")];
      await card.or(goOn).or(end).first().waitFor();
      if ((await end.count()) > 0) break;
      if ((await card.count()) === 0) {
        // A voltage is a change that a crew briefs again for: it is warned of, once, and is no danger.
        assert.match(await again.locator("main").last().innerText(), /The briefing no longer/);
        await press(goOn, touch);
        continue;
      }
      for (const it of await readsTheRightPoles(again, ["30", "77"])) read.add(it);
      done.push(await doing(again));
      await tick(job);
    }
    await becomes(() => end.textContent(), /no proof.*dangers 0/s);
    assert.deepEqual([...read].toSorted(), ["30", "77"], "each pole is read by its own name");
    for (const it of ["test", "ground", "work", "unground", "close"])
      assert.ok(done.includes(it), `${it} is done: ${done.join(", ")}`);
    await go(again, "debrief");
    await again.locator("[data-job-done]").waitFor();
    const told = await again.locator("[data-job-done]").innerText();
    assert.ok(told.includes("Pole 77"), told);
  },
}));
