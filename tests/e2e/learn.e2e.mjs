import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { becomes } from "./becomes.mjs";
import { pressAPlace } from "./places.mjs";
import { axeFinds, begun, chooseFiles, noSidewaysScroll } from "./scenarios.mjs";
import { fileFrom } from "./fileFrom.mjs";

const EVENING = new Date("2026-03-03T19:00:00Z");
const DAY_MS = 86_400_000;

const names = (page, attribute) =>
  page.locator(`[${attribute}]`).evaluateAll((all, it) => all.map((one) => one.getAttribute(it)), attribute);

/** Answers every question of an exercise by its first option, and tells the kinds of those that were missed. */
async function answerAll(page, size) {
  const missed = [];
  const [, count] = /of (\d+)/.exec(await page.getByText(/^Question 1 of \d+$/).textContent());
  for (let n = 1; n <= Number(count); n++) {
    await page.getByText(`Question ${n} of ${count}`).waitFor();
    const kind = await page.locator("[data-begin]").getAttribute("data-kind");
    if (size === "phone") await page.locator("[data-option]").first().tap();
    else await page.keyboard.press("a");
    await page.locator('[data-act="answer"]').click();
    await page.locator("[data-why]:focus").waitFor();
    if (Number(await page.locator("[data-why]").getAttribute("data-score")) < 1) missed.push(kind);
    await page.locator('main [data-act="next"]').click();
  }
  await page.locator("[data-sum]").waitFor();
  return missed;
}

/**
 * Somebody who has never seen the app: the first lesson in two presses, its steps by key or by touch, five questions; what
 * was missed waits. On the phone the browser is closed, a night goes by, and it is offered.
 */
const comesBack = (size) => ({
  name: `the first lesson is found in two presses, and what was missed ${size === "phone" ? "is offered tomorrow" : "waits"} (${size})`,
  again: size === "desk",
  seconds: 240,
  async run(ctx) {
    const context = await ctx.newContext({ size });
    await context.clock.setFixedTime(EVENING);
    let page = await begun(ctx, { context });
    // One press at a desk, two on a phone: who has done nothing yet begins with it.
    await pressAPlace(page, "learn", size);
    await page.locator('[data-lesson="0"]').waitFor();
    await noSidewaysScroll(page);
    await page.locator(".lesson h2:focus").waitFor();

    const reasons = [];
    for (let n = 1; n <= 31; n++) {
      if (size === "phone") await page.locator('.lesson [data-act="next"]').tap();
      else await page.keyboard.press("ArrowRight");
      await page.locator(`[data-lesson="${n}"]`).waitFor();
      await page.locator(".lesson h2:focus").waitFor();
      reasons.push(await page.locator("[data-reason]").getAttribute("data-reason"));
      if (n === 10) await noSidewaysScroll(page);
    }
    assert.equal(reasons[9], "test-before-ground");
    assert.equal(reasons[14], "secondary-backfeed");
    await page.locator('[data-act="practise"]').click();
    const missed = await answerAll(page, size);
    assert.ok(missed.length > 0, "the first option is the answer of all five: choose another seed");
    await page.locator('[data-act="path"]').click();
    const waits = missed.map((it) => `drill/${it}/1`).toSorted();
    await becomes(async () => (await names(page, "data-waits")).toSorted(), waits);
    assert.equal(await page.locator("[data-due]").count(), 0);
    // What is kept over a night is the same at every size.
    if (size === "desk") return;

    await page.close();
    await context.clock.setFixedTime(new Date(EVENING.getTime() + DAY_MS));
    page = await begun(ctx, { context });
    await pressAPlace(page, "learn", size);
    await becomes(async () => (await names(page, "data-due-item")).toSorted(), waits);
    await noSidewaysScroll(page);
    await page.locator('[data-act="due"]').click();
    const again = await answerAll(page, size);
    await page.locator('[data-act="path"]').click();
    // Missed again is due tomorrow, right is due in three days: none of it today.
    await becomes(async () => (await names(page, "data-waits")).toSorted(), waits);
    assert.equal(await page.locator("[data-due]").count(), 0);

    await page.close();
    await context.clock.setFixedTime(new Date(EVENING.getTime() + 2 * DAY_MS));
    page = await begun(ctx, { context, path: "#learn" });
    await page.locator('[data-act="next"]').waitFor();
    await becomes(
      async () => (await names(page, "data-due-item")).toSorted(),
      again.map((it) => `drill/${it}/1`).toSorted(),
    );
  },
});

const isCarried = {
  name: "a learner's record is carried to another device and back, and nothing is lost or counted twice",
  seconds: 120,
  async run(ctx) {
    const practised = async (page) => {
      await page.locator('[data-task="identify"] button').click();
      await answerAll(page, "desk");
      await page.locator('[data-act="path"]').click();
      await page.locator('[data-act="carry"]:enabled').waitFor();
    };
    const carried = async (page) => {
      const download = await fileFrom(page, () => page.locator('[data-act="carry"]').click());
      return download.path();
    };
    const triedIn = (file) => JSON.parse(readFileSync(file, "utf8")).tried.map(({ id }) => id);
    const takenIn = async (page, file, count) => {
      await chooseFiles(page, page.locator('[data-act="take-in"]'), [file]);
      await page.locator("[data-said]").getByText(`Taken in: ${count} `).waitFor();
    };
    const begunAnew = async () => {
      const page = await begun(ctx, { path: "#learn" });
      await page.locator('.lesson [data-act="close"]').click();
      return page;
    };
    const one = await begunAnew();
    await practised(one);
    const other = await begunAnew();
    await practised(other);
    const ofOne = await carried(one);
    await takenIn(other, ofOne, 1);
    const ofBoth = await carried(other);
    await takenIn(one, ofBoth, 1);
    await takenIn(one, ofOne, 0);
    // It opens as any file does, wherever the app is.
    const third = await begun(ctx);
    await third.getByRole("button", { name: "Menu" }).click();
    await chooseFiles(third, third.locator('[data-menu="open"]'), [ofBoth]);
    await third.locator('[data-act="carry"]:enabled').waitFor();
    assert.deepEqual(triedIn(await carried(third)), triedIn(ofBoth));
    assert.deepEqual(triedIn(await carried(one)), triedIn(ofBoth));
    assert.equal(new Set(triedIn(ofBoth)).size, 2);
    // What is no record changes nothing.
    await chooseFiles(one, one.locator('[data-act="take-in"]'), [
      { name: "x.json", mimeType: "application/json", buffer: Buffer.from("{}") },
    ]);
    await one.locator("[data-said]").getByText("This is no record").waitFor();
    await one.locator('[data-act="forget"]').click();
    await one.locator('[data-act="forget"]').click();
    await one.locator('[data-act="carry"]:disabled').waitFor();
  },
};

/** By a clock that runs: one that stands still keeps the page from showing its other theme. */
const isAccessible = (size) => ({
  name: `axe finds nothing wrong with the path and the first lesson (${size})`,
  again: size === "phone",
  seconds: 90,
  async run(ctx) {
    const page = await begun(ctx, { size, path: "#learn" });
    await page.locator('.lesson [data-act="close"]').click();
    await page.locator('[data-item="lesson/first-cutout"]').waitFor();
    assert.deepEqual(await axeFinds(page), []);
    await page.locator('[data-item="lesson/first-cutout"]').click();
    await page.locator(".lesson h2:focus").waitFor();
    for (let n = 1; n <= 10; n++) {
      if (size === "desk") await page.keyboard.press("ArrowRight");
      else await page.locator('.lesson [data-act="next"]').click();
      await page.locator(`[data-lesson="${n}"]`).waitFor();
      await page.locator(".lesson h2:focus").waitFor();
    }
    assert.deepEqual(await axeFinds(page), []);
  },
});

const isFound = {
  name: "the finder knows the words lesson, practise and exercise, in French too",
  seconds: 90,
  async run(ctx) {
    for (const [locale, words] of [
      ["en-US", ["lesson", "practise", "exercise"]],
      ["fr-FR", ["leçon", "pratiquer", "exercice", "s'exercer"]],
    ]) {
      const page = await begun(ctx, { options: { locale } });
      for (const word of words) {
        await page.keyboard.press("Control+k");
        await page.locator("dialog[open] input").fill(word);
        await page.locator('[data-command="place-learn"]').waitFor();
        await page.keyboard.press("Escape");
        await page.locator("dialog[open]").waitFor({ state: "detached" });
      }
      await page.keyboard.press("Control+k");
      await page.locator("dialog[open] input").fill(words[0]);
      await page.locator('[data-command="place-learn"]').click();
      // Whoever has done nothing yet begins with the first lesson at once.
      await page.locator('[data-lesson="0"]').waitFor();
      if (locale === "fr-FR") await page.getByText("Remplacer le parafoudre de T1").waitFor();
    }
  },
};

export const tests = [
  comesBack("desk"),
  comesBack("phone"),
  isAccessible("desk"),
  isAccessible("phone"),
  isCarried,
  isFound,
];
