import assert from "node:assert/strict";
import { axeFinds, begun, noSidewaysScroll, printedBy } from "./scenarios.mjs";
import { becomes } from "./becomes.mjs";

/** From Rehearse, by touch on a phone and by key at a desk, to the end of the questions. */
const isAnswered = (size) => ({
  name: `short exercises are found, answered, explained and counted (${size})`,
  again: size === "phone",
  seconds: 180,
  async run(ctx) {
    const page = await begun(ctx, { size, path: "#rehearse" });
    await page.locator('[data-which="drill"]').click();
    await page.locator('[data-level="2"]').click();
    await page.locator('[data-field="seed"]').fill("7");
    await noSidewaysScroll(page);
    await page.locator('[data-act="start"]').click();
    for (let n = 1; n <= 5; n++) {
      await page.getByText(`Question ${n} of 5`).waitFor();
      await page.locator("[data-begin]:focus").waitFor();
      if (size === "phone") await page.locator("[data-option]").first().click();
      else await page.keyboard.press("a");
      await becomes(() => page.locator("[data-option]").first().getAttribute("aria-pressed"), "true");
      if (n === 1) assert.deepEqual(await axeFinds(page), []);
      await page.locator('[data-act="answer"]').click();
      await page.locator("[data-why]:focus").waitFor();
      assert.ok((await page.locator('[data-option][data-right="true"]').count()) > 0);
      const score = Number(await page.locator("[data-why]").getAttribute("data-score"));
      assert.ok(score >= -1 && score <= 1);
      if (n === 1) assert.deepEqual(await axeFinds(page), []);
      await noSidewaysScroll(page);
      await page.locator('[data-act="next"]').click();
    }
    await page.locator("[data-sum]").waitFor();
    await page.locator('[data-act="again"]').waitFor();
  },
});

const isPrinted = {
  name: "a worksheet of exercises is printed, and its key apart",
  seconds: 120,
  async run(ctx) {
    const page = await begun(ctx, { path: "#drill" });
    await page.locator('[data-field="seed"]').fill("7");
    const sheet = await printedBy(page, page.locator('[data-act="print"]'));
    const key = await printedBy(page, page.locator('[data-act="print-key"]'));
    assert.match(sheet, /<h1>Worksheet<\/h1>/);
    assert.match(key, /<h1>Key to the worksheet<\/h1>/);
    assert.match(sheet, /sheet 7/);
    assert.equal(sheet.match(/<section>/g).length, 10);
    assert.equal(key.match(/<section>/g).length, 10);
  },
};

const isOnOwnDrawing = {
  name: "exercises ask of the drawing at hand, in French too",
  seconds: 120,
  async run(ctx) {
    const page = await begun(ctx, { path: "#drill", options: { locale: "fr-FR" } });
    await page.getByRole("heading", { name: /^S'exercer/ }).waitFor();
    await page.locator('[data-level="own"]').click();
    await page.locator('[data-act="start"]').click();
    await page.locator("[data-option]").first().waitFor();
  },
};

export const tests = [isAnswered("desk"), isAnswered("phone"), isPrinted, isOnOwnDrawing];
