import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { at } from "../../scripts/lib/project.mjs";
import { becomes } from "./becomes.mjs";
import { bundled } from "./bundled.mjs";
import { axeFinds, begun, chooseFiles, chooseScenario, noSidewaysScroll, printedBy } from "./scenarios.mjs";
import { fileFrom } from "./fileFrom.mjs";

const WALL = { viewport: { width: 1920, height: 1080 } };
const scenarioText = (id) => readFileSync(at(`shared/scenarios/${id}.stillhot.json`), "utf8");

/** Twelve learners, each with the variant of their number, as their attempt files come back to the instructor. */
async function twelve() {
  const core = await bundled("src/core/index.ts");
  const { document } = core.readDocument(scenarioText("larkfield-storm"));
  const folder = mkdtempSync(join(tmpdir(), "stillhot-class-"));
  return Array.from({ length: 12 }, (_, index) => {
    const variant = core.variantOf(document, index + 1);
    const { answer } = core.scenarioOf(variant);
    // Every third learner gives up in the middle.
    const steps = index % 3 === 2 ? answer.slice(0, 5) : answer;
    const options = { who: `Learner ${index + 1}`, startedAt: "2026-05-04T07:00:00Z", mode: "exam" };
    const { attempt } = core.playThrough(variant, steps, options);
    const file = join(folder, `${index + 1}.attempt.json`);
    writeFileSync(file, core.writeAttempt(attempt));
    return file;
  });
}

async function downloaded(page, act) {
  const download = await fileFrom(page, () => page.locator(`[data-act="${act}"]`).click());
  return readFileSync(await download.path(), "utf8");
}

/** Texts of a scenario that nobody may read before they come to light. */
function hiddenIn(id) {
  const { truth, hints = [], traps = [] } = JSON.parse(scenarioText(id)).scenario;
  const texts = [...Object.values(truth), ...hints, ...traps].flatMap(({ label, text, where, think }) => [
    label,
    text,
    where,
    think,
  ]);
  return texts.filter((it) => it !== undefined && it.length > 25);
}

/** The picture of the code that a phone holds up. */
async function vote(ctx) {
  const phone = await begun(ctx, { size: "phone", path: "#drill", options: { locale: "fr-CA" } });
  await phone.locator('[data-act="card"]').tap();
  await phone.locator('[data-letter="b"]').tap();
  await becomes(() => phone.locator("[data-shown]").textContent(), "b");
  // An order of steps has more options than ten.
  await phone.locator('[data-letter="m"]').waitFor();
  await noSidewaysScroll(phone);
  assert.deepEqual(await axeFinds(phone), []);
  const code = phone.getByRole("img", { name: "Code de votre vote" });
  await code.waitFor();
  return code.screenshot();
}

const teachesAClass = {
  name: "an instructor prints a worksheet and a map, asks a class on a wall, and files the results of twelve variants",
  seconds: 240,
  async run(ctx) {
    const page = await begun(ctx, { path: "#drill", options: WALL });
    await ctx.part("a worksheet, and its key apart", async () => {
      await page.locator('[data-field="seed"]').fill("7");
      const sheet = await printedBy(page, page.locator('[data-act="print"]'));
      assert.match(sheet, /<h2>10\. /);
      assert.match(await printedBy(page, page.locator('[data-act="print-key"]')), /<h2>10\. /);
    });
    await ctx.part("a map without answers", async () => {
      await page.evaluate(() => (location.hash = "scenario"));
      await page.locator('[data-scenario="larkfield-storm"]').click();
      const map = await printedBy(page, page.locator('[data-act="print-map"]'));
      assert.match(map, /<svg/);
      for (const it of hiddenIn("larkfield-storm")) assert.ok(!map.includes(it), it);
    });
    await ctx.part("questions on a wall", async () => {
      await page.locator('[data-act="wall"]').click();
      const wall = page.locator("[data-wall]");
      await wall.waitFor();
      await page.locator("[data-forward]:focus").waitFor();
      const sizes = await wall
        .locator("h2, li span, li strong")
        .evaluateAll((all) => all.map((it) => parseFloat(getComputedStyle(it).fontSize)));
      assert.ok(Math.min(...sizes) >= 36, `letters of ${Math.min(...sizes)} px on a wall of 1920`);
      await noSidewaysScroll(page);
      const answerIsHidden = async () => assert.equal(await wall.locator(".right, [data-answer]").count(), 0);
      await answerIsHidden();

      // Hands: by its button, by its letter, and taken back. A phone: by the code that it shows.
      await wall.locator('[data-vote="0"]').click();
      await page.keyboard.press("a");
      await page.keyboard.press("Shift+A");
      const votes = () =>
        wall.locator("[data-votes]").evaluateAll((all) => all.map((it) => it.dataset.votes));
      await becomes(async () => (await votes())[0], "1");
      const picture = await vote(ctx);
      await wall.locator('[data-act="read-votes"]').click();
      const read = wall.locator('[data-scan="file"]');
      for (let n = 0; n < 2; n++)
        await chooseFiles(page, read, [{ name: "b.png", mimeType: "image/png", buffer: picture }]);
      await becomes(async () => (await votes()).slice(0, 2), ["1", "1"]);
      await wall.locator('[data-act="read-votes"]').click();
      await answerIsHidden();
      assert.deepEqual(await axeFinds(page), []);

      await wall.locator("[data-forward]").press("Enter");
      await wall.locator("[data-answer]").waitFor();
      assert.ok((await wall.locator("li.right").count()) > 0);
      assert.equal(await wall.locator("[data-told]").count(), 0, "the reasons come one by one");
      await wall.locator("[data-forward]").press("Enter");
      await becomes(() => wall.locator("[data-told]").count(), 1);
      // However many options stand above it, what was revealed is in sight.
      await becomes(
        () =>
          wall.locator("[data-told]").evaluate((it) => {
            const { top, bottom } = it.getBoundingClientRect();
            return bottom <= innerHeight + 1 || top <= 1;
          }),
        true,
      );
      for (const it of hiddenIn("larkfield-storm")) assert.ok(!(await page.content()).includes(it), it);
      await page.keyboard.press("Escape");
      await wall.waitFor({ state: "detached" });
      await page.locator("[data-begin]:focus").waitFor();
    });
    await ctx.part("the results of twelve", async () => {
      await page.evaluate(() => (location.hash = "debrief"));
      await chooseFiles(page, page.locator('[data-act="open-attempts"]'), await twelve());
      await becomes(() => page.locator("[data-row]").count(), 12);
      await becomes(() => page.locator('[data-row="passed"]').count(), 8);
      const variants = await page
        .locator("[data-variant]")
        .evaluateAll((all) => all.map((it) => Number(it.dataset.variant)));
      assert.deepEqual(
        variants.toSorted((a, b) => a - b),
        Array.from({ length: 12 }, (_, index) => index + 1),
      );
      assert.equal(await page.locator('[data-pace="within"]').count(), 12);
      assert.equal(await page.locator("[data-class]").count(), 1);
      const rows = (await downloaded(page, "class-csv")).trim().split("\r\n");
      assert.equal(rows.length, 13);
      assert.match(rows[0], /mode.*continued from,variant,minutes allowed,pass mark$/);
      const statements = JSON.parse(await downloaded(page, "class-xapi"));
      assert.ok(statements.some(({ object }) => object.id.includes(":objective:")));
    });
  },
};

/** A permit that is asked for on one phone, given on another, and said back on the first: one log. */
const twoPhones = {
  name: "two phones play one crew: the code goes to the operator and back, and a stale one takes nothing away",
  seconds: 120,
  async run(ctx) {
    const worker = await begun(ctx, { size: "phone", path: "#scenario" });
    await chooseScenario(worker, "larkfield-storm", "Kim");
    await worker.locator('[data-tab="radio"]').tap();
    await worker.locator('[data-radio="request-permit"]').tap();
    const codeOn = async (phone) => {
      await phone.locator('[data-act="crew"]').tap();
      return phone.locator('[data-field="code"]').inputValue();
    };
    const asked = await codeOn(worker);
    await noSidewaysScroll(worker);
    assert.deepEqual(await axeFinds(worker), []);

    const operator = await begun(ctx, { size: "phone", path: "#scenario" });
    await operator.locator('[data-act="join-crew"]').tap();
    await operator.locator('[data-field="typed"]').fill(asked);
    await operator.locator('[data-act="take-over"]').tap();
    await operator.locator('[data-crew="operator"]').waitFor();
    await becomes(() => operator.locator('[data-radio="request-permit"]').isDisabled(), true);
    assert.equal(await operator.locator('[data-tab="do"]').count(), 0, "no hands at the work");
    await operator.locator('[data-radio="receive-permit"]').tap();
    await operator.locator(".radio li.operator").nth(1).waitFor();
    const given = await codeOn(operator);

    await worker.locator('[data-field="typed"]').fill(given);
    await worker.locator('[data-act="take-over"]').tap();
    await worker.locator(".radio li.operator").nth(1).waitFor();
    await becomes(() => worker.locator('[data-radio="receive-permit"]').isDisabled(), true);
    // The code of before knows less than this phone does.
    await worker.locator('[data-act="crew"]').tap();
    await worker.locator('[data-field="typed"]').fill(asked);
    await worker.locator('[data-act="take-over"]').tap();
    await worker.getByRole("alert").waitFor();
    await worker.keyboard.press("Escape");
    await worker.locator(".radio li.operator").nth(1).waitFor();
  },
};

export const tests = [teachesAClass, twoPhones];
