import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import {
  begin,
  beginAnew,
  confirm,
  doing,
  leaveOut,
  linkOf,
  press,
  pressOrMore,
  tick,
  tickUntil,
  verdict,
} from "./job.mjs";
import { pressOn } from "./spots.mjs";
import { becomes } from "./becomes.mjs";
import { withVoices } from "./voices.mjs";
import { fileFrom } from "./fileFrom.mjs";

const go = async (page, place) => {
  await page.evaluate((it) => (location.hash = it), place);
  await page.locator("html[data-ready]").waitFor();
};
const openLog = ({ page, touch }) => press(page.locator('.bar [data-tab="log"]'), touch);
const openStep = ({ page, touch }) => press(page.locator('.bar [data-tab="step"]'), touch);

/** What `Save to a file` writes. */
async function savedFile(page) {
  await page.getByRole("button", { name: "Menu" }).click();
  const download = await fileFrom(page, () => page.locator('[data-menu="save"]').click());
  return JSON.parse(readFileSync(await download.path(), "utf8"));
}

/** Says that what was seen is not what the step expects, as somebody at the pole does. */
async function stopAt({ page, touch }, seen) {
  await press(page.locator("[data-unexpected]"), touch);
  await press(page.locator(`[data-seen="${seen}"]`), touch);
  await press(page.locator("[data-stop]"), touch);
  await page.locator(`[data-stopped="${seen}"]`).waitFor();
}

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  {
    // In `npm test` the whole job is handed over, and killed: wholeJob.
    name: "the other device goes on where this one is, and each survives a reload (phone)",
    again: true,
    async run(ctx) {
      const size = "phone";
      const job = await beginAnew(ctx, { size });
      await tickUntil(job, "open");
      const { page } = job;
      const file = await savedFile(page);
      const done = file.job.steps.filter((it) => it.done).length;
      assert.ok(done >= 3, `${done} steps of the file are done`);
      assert.equal(file.log.filter((it) => it.step !== undefined).length, done);

      const other = await ctx.open({ size, url: await linkOf(job) });
      await other.locator("html[data-ready]").waitFor();
      // At once: it is not to be the first demo that stands there then.
      await other.reload();
      await other.locator("[data-under-way]").waitFor();
      await go(other, "#rehearse");
      const there = { ...job, page: other };
      await other.locator("[data-card]").waitFor();
      await becomes(() => doing(other), "open");
      await tick(there);
      const step = await other.locator("[data-current]").textContent();
      await other.reload();
      await other.locator("[data-card]").waitFor();
      await becomes(() => other.locator("[data-current]").textContent(), step);
    },
  },
  {
    name: "a demo in which something was ticked is there again after a reload, with its ticks",
    async run(ctx) {
      const page = await ctx.open({ path: "?demo=sideline-far-end-tie#rehearse" });
      const job = { page, touch: false };
      const title = page.getByLabel("Title of the drawing");
      await page.locator("html[data-ready]").waitFor();
      const name = await title.inputValue();
      await page.locator("[data-begin]").click();
      if ((await page.locator("[data-card]").count()) > 0) await tick(job);
      await page.reload();
      await page.locator(".bar").waitFor();
      await becomes(() => title.inputValue(), name);
    },
  },
  {
    name: "a job under way survives a rename, says it, and asks for a briefing only where it matters",
    async run(ctx) {
      const job = await begin(ctx, { until: "open" });
      const { page } = job;
      const step = await page.locator("[data-current]").textContent();
      await go(page, "#sketch");
      await page.locator("[data-under-way]").waitFor();
      await page.getByRole("button", { name: "Show all" }).click();
      await ctx.settle(page);
      await pressOn(page, "p1");
      await page.getByRole("tab", { name: "Details" }).click();
      await page.getByLabel("Label", { exact: true }).first().fill("Pole 77");
      await page.keyboard.press("Tab");
      await page.locator("[data-under-way] button").click();
      await page.locator("[data-card]").waitFor();
      await becomes(() => page.locator("[data-current]").textContent(), step, "the same step is due");
      await becomes(() => page.locator('[data-since="changed"]').textContent(), /Pole 77/);
      await becomes(() => page.locator("[data-brief-again]").count(), 0, "a name asks for no briefing");
      await openLog(job);
      await page.locator('[data-mark="changed"]').filter({ hasText: "Pole 77" }).waitFor();

      await go(page, "#sketch");
      // By its row: the drawing may still be finding its place on the screen that came back.
      await page.locator('[data-owner="element:c1"]').first().dispatchEvent("click");
      await pressOrMore(page, '[data-action="delete"]', '.deeds [data-action="more"]');
      await go(page, "#rehearse");
      await page.locator("[data-brief-again]").click();
      await becomes(() => doing(page), "brief");
      await tick(job);
      await becomes(() => page.locator("[data-brief-again]").count(), 0);
    },
  },
  ...["desk", "phone"].map((size) => ({
    name: `undo strikes the last step, and what changes the record is asked once more (${size})`,
    again: size === "desk",
    async run(ctx) {
      const job = await begin(ctx, { size });
      const { page, touch } = job;
      await tick(job);
      const first = await doing(page);
      await tick(job);
      await press(page.getByRole("button", { name: "Undo" }), touch);
      await press(page.locator("[data-sure]"), touch);
      await becomes(() => doing(page), first, "the struck step is due again");
      await press(page.locator("[data-skip]"), touch);
      await page.getByRole("button", { name: "Close" }).click();
      await becomes(() => doing(page), first, "nothing is left out by one press");
      await leaveOut(job);
      await becomes(async () => (await doing(page)) !== first, true);
      await openLog(job);
      await becomes(() => page.locator("[data-entry]").count(), 3);
      await press(page.locator("[data-again]"), touch);
      await press(page.locator("[data-sure]"), touch);
      await page.locator('[data-mark="again"]').waitFor();
      await becomes(() => page.locator('[data-struck="false"]').count(), 0);
      await becomes(() => page.locator("[data-entry]").count(), 3, "nothing is erased");
      await openStep(job);
      await becomes(() => doing(page), "brief");
    },
  })),
  {
    name: "a voltage at the test stops the job, and nothing goes on before a test is as expected (phone)",
    async run(ctx) {
      const size = "phone";
      const job = await begin(ctx, { size, until: "test" });
      const { page, touch } = job;
      for (const it of await page.locator("[data-challenge]").all()) await it.check();
      await page.locator('[data-verdict="could-go-live"], [data-verdict="isolated"]').waitFor();
      await stopAt(job, "voltage");
      await verdict(page, "live");
      const stopped = page.locator("[data-stopped]");
      await becomes(() => stopped.textContent(), /No ground goes on.*taken for live.*Back out.*operator/s);
      await page.reload();
      await page.locator('[data-stopped="voltage"]').waitFor();
      await verdict(page, "live");
      await press(page.locator("[data-back-to-step]"), touch);
      // Before the test is done again, which is not ticked, the detector is proven again.
      await becomes(() => doing(page), "check-detector");
      await tick(job);
      await becomes(() => doing(page), "test", "the step is not ticked");
      await openLog(job);
      await page.locator('[data-mark="unexpected"]').waitFor();
      await openStep(job);
      // Whoever leaves the test out and reaches for the ground is warned before, not after.
      await tickUntil({ ...job, page }, "test");
      await leaveOut(job);
      while ((await doing(page)) !== "ground")
        await ((await doing(page)) === "test" ? leaveOut(job) : tick(job));
      await page.locator('[data-would="danger"] [data-finding="test-before-ground"]').waitFor();
      await verdict(page, "live");
    },
  },
  ...["desk", "phone"].map((size) => ({
    name: `after a voltage the crew briefs again, and the detector is proven before the next test and after it (${size})`,
    again: true,
    async run(ctx) {
      const job = await begin(ctx, { size, until: "test" });
      const { page, touch } = job;
      for (const it of await page.locator("[data-challenge]").all()) await it.check();
      await stopAt(job, "voltage");
      await press(page.locator("[data-brief]"), touch);
      await tick(job);
      const done = [];
      for (let n = 0; n < 8 && done.at(-1) !== "ground"; n++) {
        done.push(await doing(page));
        await becomes(() => page.locator("[data-would]").count(), 0, `${done.at(-1)} breaks no rule`);
        await tick(job);
      }
      assert.deepEqual(done.slice(0, 2), ["check-detector", "test"]);
      assert.equal(done[done.lastIndexOf("test") + 1], "check-detector", done.join(", "));
      await press(page.locator('.bar [data-tab="log"]'), touch);
      await page.locator('[data-mark="unexpected"]').waitFor();
    },
  })),
  {
    name: "a detector that shows nothing where it is proven strikes the tests since its last proof (phone)",
    async run(ctx) {
      const job = await begin(ctx, { size: "phone", until: "test" });
      const { page, touch } = job;
      await tick(job);
      await becomes(() => doing(page), "check-detector");
      await stopAt(job, "silent");
      await becomes(() => page.locator("[data-stopped]").textContent(), /proves nothing.*another detector/s);
      await press(page.locator("[data-back-to-step]"), touch);
      // Once more from the proof: what the broken one showed counts for nothing.
      const done = [];
      for (let n = 0; n < 3; n++) {
        done.push(await doing(page));
        await tick(job);
      }
      assert.deepEqual(done, ["check-detector", "test", "check-detector"]);
      await openLog(job);
      await becomes(() => page.locator('[data-struck="true"]').count(), 1, "one test is struck");
    },
  },
  {
    name: "what did not open, and somebody else's tag, each say what they mean and how to back out",
    async run(ctx) {
      const job = await begin(ctx, { until: "open" });
      const { page } = job;
      for (const it of await page.locator("[data-challenge]").all()) await it.check();
      await stopAt(job, "stuck");
      await becomes(
        () => page.locator("[data-stopped]").textContent(),
        /still closed.*Hands off the handle/s,
      );
      await page.locator("[data-brief]").click();
      await tick(job);
      await becomes(() => doing(page), "open");
      await stopAt(job, "tag");
      await becomes(() => page.locator("[data-stopped]").textContent(), /whoever hung it/);
    },
  },
  {
    name: "work is told of its danger on arrival, and is no black button before its point stands grounded",
    async run(ctx) {
      const page = await ctx.open({ path: "?demo=sideline-three-transformers#rehearse" });
      await page.locator("html[data-ready]").waitFor();
      await page.locator("[data-begin]").click();
      const [work, more] = [page.locator('[data-act="work"]'), page.locator('.acts [data-act="more"]')];
      await work.or(more).first().waitFor();
      if ((await work.count()) === 0) await more.click();
      await work.waitFor();
      assert.ok(!(await work.evaluate((it) => it.classList.contains("main"))));
      await work.click();
      await page.locator('[data-would="danger"] [data-finding="work-not-safe"]').waitFor();
      for (const it of await page.locator("[data-challenge]").all()) await it.check();
      assert.ok(!(await page.locator("[data-confirm]").evaluate((it) => it.classList.contains("main"))));
      await go(page, "#sketch");
      await page.locator("[data-live-first]").waitFor();
    },
  },
  {
    name: "the log with the permit's number stands in Debrief and on the sheet's record",
    async run(ctx) {
      const job = await begin(ctx, { size: "phone", until: "receive-permit" });
      const { page } = job;
      await page.locator("[data-said]").fill("no. 4711, until 16:00");
      await tick(job);
      await tick(job);
      await go(page, "#debrief");
      const done = page.locator("[data-job-done]");
      await done.locator("[data-entry]").filter({ hasText: "no. 4711, until 16:00" }).waitFor();
      await becomes(() => done.locator("[data-strike]").count(), 0, "a debrief changes nothing");
      await done.locator('[data-to="sheet"]').tap();
      const sheet = page.frameLocator("[data-sheet]");
      await sheet.locator(".record li").filter({ hasText: "no. 4711" }).waitFor();
      await becomes(() => sheet.locator("body").textContent(), /Permit no\. 4711, until 16:00, held by/);
    },
  },
  ...[
    // So held the whole job is done: wholeJob.
    { what: "a glove at 360 px", viewport: { width: 360, height: 640 }, glove: true, again: true },
    { what: "a phone on its side", viewport: { width: 844, height: 390 }, glove: false, again: true },
    { what: "a glove on a phone on its side", viewport: { width: 844, height: 390 }, glove: true },
    {
      what: "letters at 200 %",
      viewport: { width: 390, height: 844 },
      glove: false,
      letters: "200%",
      again: true,
    },
    {
      what: "letters at 200 % at 360 px",
      viewport: { width: 360, height: 640 },
      glove: false,
      letters: "200%",
    },
  ].map(({ what, viewport, glove, letters, again }) => ({
    name: `the press at hand is always in sight, and each step starts at its top: ${what}`,
    again,
    async run(ctx) {
      const job = await begin(ctx, { size: "phone", options: { viewport }, letters });
      const { page } = job;
      if (glove) await page.getByRole("button", { name: "Glove mode" }).tap();
      const inSight = async (selector) => {
        const it = page.locator(selector);
        await it.waitFor();
        const isSeen = () =>
          it.evaluate((button) => {
            const { left, right, top, bottom } = button.getBoundingClientRect();
            const corners = [top + 4, bottom - 4].flatMap((y) => [left + 8, right - 8].map((x) => [x, y]));
            const isWhole = corners.every(([x, y]) => button.contains(document.elementFromPoint(x, y)));
            const around = button.closest(".do").getBoundingClientRect();
            return { isWhole, isLarge: right - left >= around.width - 32 && bottom - top >= 96 };
          });
        await becomes(async () => (await isSeen()).isWhole, true, `${selector} is wholly in sight`);
        if (glove)
          await becomes(
            async () => (await isSeen()).isLarge,
            true,
            `${selector} is as large as a gloved hand needs`,
          );
      };
      const cutButtons = () => {
        return page.evaluate(() =>
          [...document.querySelectorAll(".tabs button, .deeds button, footer button, header button")]
            .filter((it) => it.offsetParent !== null)
            .filter((it) => {
              const { left, right } = it.getBoundingClientRect();
              return it.scrollWidth > it.clientWidth + 1 || left < 0 || right > innerWidth + 1;
            })
            .map((it) => it.textContent.trim() || it.ariaLabel),
        );
      };
      const nothingIsCut = () => becomes(cutButtons, [], "no button is cut");
      const isAThird = async () => {
        const { height } = await page.locator("[data-drawing]").boundingBox();
        return height >= viewport.height / 3;
      };
      const drawingHasAThird = () => becomes(isAThird, true, "the drawing has a third of the screen");
      await nothingIsCut();
      await page.locator('.bar [data-tab="drawing"]').tap();
      await drawingHasAThird();
      await nothingIsCut();
      await page.locator('.bar [data-tab="step"]').tap();
      for (let n = 0; n < 7; n++) {
        const startsAtItsTop = async () => {
          const [head, read] = await Promise.all(
            ["[data-card] .where", "[data-card] .read"].map((it) => page.locator(it).boundingBox()),
          );
          return head.y >= read.y - 1 && head.y < read.y + 40;
        };
        await becomes(startsAtItsTop, true, `step ${n + 1} starts at its top`);
        // Of what is to be done two lines at least are read before anything is scrolled.
        const linesInSight = () =>
          page.locator("[data-current]").evaluate((head) => {
            const range = document.createRange();
            range.selectNodeContents(head);
            const lines = [...range.getClientRects()];
            const isSeen = ({ left, top, bottom }) =>
              [top + 6, bottom - 6].every((y) => document.elementFromPoint(left + 3, y) === head);
            return Math.min(2, lines.length) - lines.filter(isSeen).length;
          });
        await becomes(async () => (await linesInSight()) <= 0, true, `step ${n + 1} is read at once`);
        for (const it of await page.locator("[data-challenge]").all()) await it.check();
        await inSight("[data-arm]");
        await page.locator("[data-arm]").tap();
        await inSight("[data-confirm]:enabled");
        await confirm(job);
      }
      for (const place of ["plan", "sketch"]) {
        await go(page, place);
        await page.locator("[data-drawing]").waitFor();
        await drawingHasAThird();
        await nothingIsCut();
      }
    },
  })),
  ...[
    { locale: "en-US", says: /tailboard.*[Ss]ay what you see/s },
    { locale: "fr-CA", says: /causerie|rencontre|équipe/i },
  ].map(({ locale, says }) => ({
    name: `steps are read aloud where that is asked for, and are silent before (${locale})`,
    again: locale === "en-US",
    async run(ctx) {
      const context = await withVoices(ctx, { size: "phone", options: { locale } });
      const page = await ctx.open({ path: "?demo=sideline-far-end-tie#plan", context });
      await page.locator("html[data-ready]").waitFor();
      await page.locator("[data-propose]").first().tap();
      await page.locator("[data-use]").tap();
      await page.locator("[data-rehearse]").tap();
      await page.locator("[data-begin]").tap();
      await page.locator("[data-arm]").waitFor();
      assert.deepEqual(await page.evaluate(() => window.said), []);
      await page.locator("[data-aloud]").tap();
      await page.locator("[data-arm]").tap();
      await page.waitForFunction(() => window.said.length > 1);
      const said = await page.evaluate(() => window.said);
      assert.ok(said.every(([lang]) => lang === locale));
      assert.match(said.at(-1)[1], says);
    },
  })),
  {
    name: "the count of what nobody has seen opens the list of it, nearest pole first; work is marked on a device",
    async run(ctx) {
      const page = await ctx.open({ path: "?demo=sideline-three-transformers", size: "phone" });
      await page.locator("html[data-ready]").waitFor();
      await page.locator("[data-verdict] button.main").tap();
      const count = page.locator("[data-unseen-count]");
      const told = async () => Number((await count.textContent()).match(/\d+/)[0]);
      await count.waitFor();
      const before = await told();
      await count.tap();
      const first = page.locator("[data-unseen]").first();
      await becomes(() => first.textContent(), /^Pole 32/);
      await first.tap();
      await page.locator('.bar [data-action="seen"]').tap();
      await page.locator("[data-verdict] button.main").tap();
      await page.waitForFunction(
        (was) =>
          Number(document.querySelector("[data-unseen-count]")?.textContent.match(/\d+/)?.[0] ?? was) < was,
        before,
      );
      await page.keyboard.press("Escape");
      await page.getByRole("button", { name: "Outline" }).tap();
      await page.locator('dialog [data-owner="element:c2"]').tap();
      await page.keyboard.press("Escape");
      await pressOrMore(page, '[data-action="work"]', '.bar [data-action="more"]', true);
      await page.locator("[data-verdict]").filter({ hasText: "Pole 31" }).waitFor();
    },
  },
  {
    name: "a photo of a pole stays on the device through a reload, until it is thrown away",
    async run(ctx) {
      const page = await ctx.open({ path: "?demo=sideline-three-transformers", size: "phone" });
      await page.locator("html[data-ready]").waitFor();
      const openPole = async () => {
        await page.getByRole("button", { name: "Outline" }).tap();
        await page
          .locator("dialog .structure")
          .filter({ hasText: /^Pole 32/ })
          .tap();
        await page.keyboard.press("Escape");
        await page.locator('.bar [data-action="details"]').tap();
        await page.locator("[data-photo-take]").waitFor();
      };
      await openPole();
      // A drawing is this device's once something of it is noted.
      await page.locator("[data-see]").tap();
      await page.locator('[data-save="saved"]').waitFor();
      const picture = await page.screenshot({ clip: { x: 0, y: 0, width: 40, height: 40 } });
      await page
        .locator("[data-photo-file]")
        .setInputFiles({ name: "pole.png", mimeType: "image/png", buffer: picture });
      await page.locator("img[data-photo]").waitFor();
      await page.reload();
      await page.locator("html[data-ready]").waitFor();
      await openPole();
      await page.locator("img[data-photo]").waitFor();
      await page.locator("[data-photo-drop]").tap();
      await page.locator("img[data-photo]").waitFor({ state: "detached" });
    },
  },
  {
    name: "the browser's own print prints the sheet where the sheet is shown",
    async run(ctx) {
      const page = await ctx.open({ path: "?demo=sideline-three-transformers#sheet" });
      await page.locator("iframe[data-sheet]").waitFor();
      await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
      await page.emulateMedia({ media: "print" });
      const sheet = page.locator("#paper table.sheet");
      await sheet.waitFor();
      await becomes(() => sheet.innerText(), /Tanner's Row/);
      await becomes(() => page.locator("#app").isVisible(), false);
    },
  },
  {
    name: "Back closes what lies over the page before it leaves the page, and lets no held screen go",
    async run(ctx) {
      const job = await begin(ctx, { size: "phone" });
      const { page } = job;
      await page.locator("[data-skip]").tap();
      await page.locator("dialog[open]").waitFor();
      await page.goBack();
      await page.locator("dialog").waitFor({ state: "detached" });
      await page.locator("[data-card]").waitFor();
      await page.locator("[data-hold-screen]").tap();
      await page.goBack();
      await becomes(() => page.locator('[data-held="verdict"]').textContent(), /^Live .*7.200\sV/);
      await becomes(() => page.locator('[data-held="step"]').textContent(), /tailboard/);
      await page.locator('[data-free="1"]').tap();
      await page.locator('[data-free="2"]').tap();
      // One sheet that gives way to another, and one that leads elsewhere, leave nothing behind that has to be gone back over.
      await page.getByRole("button", { name: "Menu" }).tap();
      await page.locator('[data-menu="settings"]').tap();
      await page.locator("dialog[open]").waitFor();
      await page.goBack();
      await page.locator("dialog").waitFor({ state: "detached" });
      await page.locator("[data-places]").tap();
      await page.locator('dialog [data-place="sheet"]').tap();
      await page.locator("dialog").waitFor({ state: "detached" });
      await page.goBack();
      await page.locator("[data-card]").waitFor();
      assert.match(page.url(), /#rehearse$/);
    },
  },
  {
    name: "a closed sheet holds up neither a reload nor a link, and Back leaves at one press",
    async run(ctx) {
      const page = await ctx.open({ path: "?demo=sideline-three-transformers#sketch", size: "phone" });
      const openAndClose = async () => {
        await page.getByRole("button", { name: "Menu" }).tap();
        await page.locator("dialog[open]").waitFor();
        await page.locator('dialog [aria-label="Close"]').tap();
        await page.locator("dialog").waitFor({ state: "detached" });
      };
      await page.locator("[data-drawing]").waitFor();
      await openAndClose();
      const length = await page.evaluate(() => history.length);
      await openAndClose();
      assert.equal(await page.evaluate(() => history.length), length, "one entry serves every sheet");
      await page.evaluate(() => (window.before = true));
      await page.reload();
      assert.equal(await page.evaluate(() => window.before), undefined);
      await page.locator("[data-drawing]").waitFor();
      await openAndClose();
      await page.goto(`${ctx.url}?elsewhere#plan`);
      await page.locator("[data-count]").waitFor();
      await openAndClose();
      await page.evaluate(() => history.back());
      await page.waitForURL(/#sketch$/);
      await page.locator("[data-drawing]").waitFor();
    },
  },
  {
    name: "where the phone's Back asks to close, no entry of the history is made, and a held screen stays",
    async run(ctx) {
      const userAgent =
        "Mozilla/5.0 (Linux; Android 15; Mobile) AppleWebKit/537.36 Chrome/140.0 Mobile Safari/537.36";
      const job = await begin(ctx, { size: "phone", options: { userAgent } });
      const { page } = job;
      const length = await page.evaluate(() => history.length);
      await page.locator("[data-skip]").tap();
      await page.locator("dialog[open]").waitFor();
      assert.equal(await page.evaluate(() => history.state), null);
      await page.keyboard.press("Escape");
      await page.locator("dialog").waitFor({ state: "detached" });
      assert.equal(await page.evaluate(() => history.length), length);
      await page.locator("[data-hold-screen]").tap();
      for (let press = 0; press < 3; press++) await page.keyboard.press("Escape");
      await ctx.settle(page);
      assert.equal(await page.locator('dialog:modal [data-held="verdict"]').count(), 1);
    },
  },
];
