import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { deflateRawSync } from "node:zlib";
import { at } from "../../scripts/lib/project.mjs";
import {
  axeFinds,
  begun,
  chooseFiles,
  chooseScenario,
  did,
  doStep,
  finish,
  noSidewaysScroll,
  playAnswer,
  printedBy,
} from "./scenarios.mjs";
import { becomes } from "./becomes.mjs";
import { withVoices } from "./voices.mjs";
import { fileFrom } from "./fileFrom.mjs";

const scenarioFile = (id) => JSON.parse(readFileSync(at(`shared/scenarios/${id}.stillhot.json`), "utf8"));
const firstCutout = scenarioFile("first-cutout");

const sizes = ["desk", "phone"];

/** Lifts the clamp with the houses on it, reads why that failed, and does it right. */
const fallsAndPasses = (size) => ({
  name: `an apprentice falls into a trap, reads the debrief, tries again${size === "desk" ? " and passes" : ""} (${size})`,
  // To its end and with full marks a lesson is played in a learning system: scorm.
  again: size === "desk",
  seconds: 120,
  async run(ctx) {
    const page = await begun(ctx, { size, path: "#scenario" });
    await chooseScenario(page, "first-cutout", "Kim");
    await doStep(page, { do: "inspect", at: "p5" });
    await doStep(page, { do: "brief" });
    await doStep(page, { do: "lift", element: "k1", with: "clamp-stick" });
    await page
      .locator("[data-latest].hit")
      .getByText(/drawn out as an arc/)
      .waitFor();
    await noSidewaysScroll(page);
    await finish(page);

    await page.locator('[data-outcome="failed"]').waitFor();
    const trap = page.locator('[data-trap="clamp-under-load"]');
    await becomes(() => trap.getAttribute("data-caught"), "true");
    const decision = page.locator("[data-decision]").first();
    await decision.getByText("29 CFR 1910.269(l)(12)(i)").first().waitFor();
    await decision.getByText(/The better step/).waitFor();
    await noSidewaysScroll(page);
    await page.locator('[data-act="again"]').click();
    await page.locator('[data-act="begin"]').click();
    await page.locator('[data-over="false"]').waitFor();
    await becomes(() => page.locator("ol[reversed] strong").count(), 0);
    // Passing is the same at every size.
    if (size === "phone") return;
    await playAnswer(page, firstCutout.scenario.answer);
    await finish(page);
    await page.locator('[data-outcome="passed"]').waitFor();
    await becomes(() => trap.getAttribute("data-caught"), "false");
    await page.locator('[data-criterion][data-met="false"]').waitFor({ state: "detached" });
  },
});

const outlivesAReload = {
  name: "an attempt goes on after a reload where it was",
  async run(ctx) {
    const page = await begun(ctx, { path: "#scenario" });
    await chooseScenario(page, "first-cutout", "Kim");
    const hasKeyboard = async () =>
      assert.ok(await page.evaluate(() => document.activeElement !== document.body), "the keyboard is lost");
    await hasKeyboard();
    await doStep(page, { do: "inspect", at: "p5" });
    await hasKeyboard();
    await doStep(page, { do: "brief" });
    await hasKeyboard();
    await page.locator('[data-tab="radio"]').click();
    await page.locator('[data-radio="ask"]').click();
    await becomes(() => page.locator("[data-heard]").textContent(), /\w/, "the operator is heard");
    await page.locator('[data-tab="do"]').click();
    await ctx.settle(page);
    const before = await page.locator("ol[reversed]").textContent();
    await page.reload();
    await page.locator("[data-over]").waitFor();
    await becomes(() => page.locator("ol[reversed]").textContent(), before);
    await page.locator("[data-standing]").getByText("At Pole 12").waitFor();
  },
};

const keepsItsEnd = {
  name: "an exam that has ended is over after a reload as well, offers no practice and no way back into its middle",
  async run(ctx) {
    const document = scenarioFile("first-cutout");
    document.scenario.mode = "exam";
    const file = join(mkdtempSync(join(tmpdir(), "stillhot-exam-")), "exam.stillhot.json");
    writeFileSync(file, JSON.stringify(document));
    const page = await begun(ctx, { path: "#scenario" });
    await chooseFiles(page, page.locator('[data-act="open-scenario"]'), file);
    await page.locator('[data-mode="exam"]').waitFor();
    await becomes(() => page.locator('[data-mode="practice"]').count(), 0);
    await page.locator('[data-act="begin"]').click();
    await doStep(page, { do: "brief" });
    await doStep(page, { do: "lift", element: "k1", with: "clamp-stick" });
    await page.locator('[data-over="true"]').waitFor();
    await page.reload();
    await page.locator('[data-attempt="over"]').click();
    await page.locator('[data-outcome="failed"]').waitFor();
    await page.locator('[data-act="mark-after"]').click();
    await becomes(() => page.locator('[data-act="fork"]').count(), 0);
  },
};

/** What an instructor hid stands nowhere on the page, seen or unseen, before it has come to light. */
const keepsSecrets = {
  name: "nothing that is hidden stands on the page before it comes to light",
  async run(ctx) {
    const { scenario } = scenarioFile("larkfield-lead");
    const secrets = [
      ...Object.values(scenario.truth ?? {}).flatMap(({ label, text }) => [label, text]),
      ...Object.values(scenario.truth ?? {}).flatMap(({ add }) => Object.keys(add?.elements ?? {})),
      ...(scenario.traps ?? []).flatMap(({ label, text }) => [label, text]),
      ...(scenario.reveals ?? []).map(({ text }) => text),
      ...(scenario.criteria ?? []).map(({ text }) => text),
      ...(scenario.hints ?? []).flatMap(({ where, step }) => [where, step]),
    ].filter((it) => it !== undefined && it.length > 3);
    assert.ok(secrets.length > 5);
    const page = await begun(ctx, { path: "#scenario" });
    const look = async () => {
      const html = await page.content();
      for (const secret of secrets) assert.ok(!html.includes(secret), `the page holds: ${secret}`);
    };
    await page.locator('[data-scenario="larkfield-lead"]').click();
    await page.locator('[data-act="begin"]').waitFor();
    await look();
    await page.locator('[data-act="begin"]').click();
    await page.locator("[data-over]").waitFor();
    await look();
    await page.locator('[data-tab="hints"]').click();
    await page.locator("[data-hint]").first().waitFor();
    await look();
    await page.locator('[data-tab="radio"]').click();
    await page.locator("[data-radio]").first().waitFor();
    await look();
    await page.locator('[data-tab="do"]').click();
    await page.locator('[data-act="open-predict"]').click();
    await page.locator('[data-act="skip-predict"]').first().waitFor();
    await look();
  },
};

/** By link or by file: what is to be played is not looked into, but by whoever says to be the one who teaches. */
const isHandedOver = (size) => ({
  name: `a scenario that is handed over opens at its prebrief, and what it hides stands behind a step of the instructor's own (${size})`,
  again: size === "desk",
  async run(ctx) {
    const document = scenarioFile("larkfield-lead");
    document.scenario.mode = "exam";
    const [secret] = Object.values(document.scenario.truth);
    const link = `d1.${deflateRawSync(JSON.stringify(document)).toString("base64url")}`;
    const page = await begun(ctx, { size, path: `#${link}` });
    const opensAtPrebrief = async () => {
      await page.locator('[data-act="begin"]').waitFor();
      await page.getByText(document.scenario.prebrief.slice(0, 30)).waitFor();
      assert.deepEqual(
        await page.locator("[data-mode]").evaluateAll((them) => them.map((it) => it.dataset.mode)),
        ["exam"],
      );
      assert.ok(!(await page.content()).includes(secret.label));
    };
    await opensAtPrebrief();
    await page.locator(".page button", { hasText: /^Back$/ }).click();
    await page.locator("[data-scenario]").first().waitFor();

    const file = join(mkdtempSync(join(tmpdir(), "stillhot-handed-")), "handed.stillhot.json");
    writeFileSync(file, JSON.stringify(document));
    await page.getByRole("button", { name: "Menu" }).click();
    await chooseFiles(page, page.locator('[data-menu="open"]'), file);
    await opensAtPrebrief();
    await noSidewaysScroll(page);
    await page.locator('[data-act="teach"]').focus();
    await page.keyboard.press("Enter");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.locator('.teach [data-act="try"]').waitFor();
    assert.ok((await page.content()).includes(secret.label));
  },
});

const asksForHints = {
  name: "a hint is a ladder, and each rung stands in the log",
  async run(ctx) {
    const page = await begun(ctx, { path: "#scenario" });
    await chooseScenario(page, "first-cutout", "");
    await page.locator('[data-tab="hints"]').click();
    await page.locator('[data-hint="where"]').first().click();
    await page.getByText(firstCutout.scenario.hints[0].where).first().waitFor();
    await page.locator('[data-hint="think"]').first().click();
    await becomes(() => did(page, "Ask for a hint"), 2);
  },
};

/** The menu names seven places; a scenario is one of the two things that can be rehearsed. */
const isReachedFromRehearse = (size) => ({
  name: `a scenario is reached from Rehearse, and the way back leads to the drawing's order (${size})`,
  async run(ctx) {
    const page = await begun(ctx, { size, path: "#rehearse" });
    if (size === "phone") await page.locator("[data-places]").click();
    const menu = page.locator(size === "phone" ? "dialog [data-place]" : ".places .row [data-place]");
    await becomes(
      () => menu.evaluateAll((all) => all.map((it) => it.dataset.place)),
      ["sketch", "plan", "rehearse", "debrief", "sheet", "teach", "learn"],
    );
    if (size === "phone") await menu.nth(2).click();
    await page.locator('[data-which="scenario"]').click();
    await page.locator("[data-scenario]").first().waitFor();
    assert.equal(new URL(page.url()).hash, "#scenario");
    if (size === "desk")
      await becomes(() => page.locator('[data-place="rehearse"][aria-current="page"]').count(), 1);
    await page.locator('[data-which="order"]').click();
    await page.locator("[data-begin]").waitFor();
    if (size === "desk") {
      await page.keyboard.press("4");
      await page.locator('[data-view="none"]').waitFor();
    }
  },
});

/** A scenario of five minutes, in which time is all that counts. */
function soonOver() {
  const document = scenarioFile("first-cutout");
  document.scenario.minutes = 5;
  document.scenario.criteria = [
    { id: "time", kind: "good", text: "Done in time.", when: { finishedWithin: 5 }, weight: 5 },
  ];
  const file = join(mkdtempSync(join(tmpdir(), "stillhot-time-")), "soon.stillhot.json");
  writeFileSync(file, JSON.stringify(document));
  return file;
}

const keepsTime = (size) => ({
  name: `the clock stands when it is stopped, outlives a reload, and being late ends nothing and is told (${size})`,
  again: size === "desk",
  async run(ctx) {
    const context = await ctx.newContext({ size });
    // Six minutes go by at a word: no machine is too slow for them.
    await context.addInitScript(() => {
      const now = Date.now;
      let minutes = 0;
      Date.now = () => now() + minutes * 60_000;
      window.passSixMinutes = () => void (minutes += 6);
    });
    const page = await begun(ctx, { context, path: "#scenario" });
    await chooseFiles(page, page.locator('[data-act="open-scenario"]'), soonOver());
    await page.locator('[data-act="begin"]').click();
    await page.locator("[data-clock]").click();
    await page.locator("[data-stopped]").waitFor();
    await page.evaluate(() => window.passSixMinutes());
    await page.locator('[data-act="go-on"]').click();
    await page.locator("[data-stopped]").waitFor({ state: "detached" });
    // It is looked at anew when it goes on.
    assert.equal(await page.locator("[data-late]").count(), 0, "time ran while the clock stood");
    await page.evaluate(() => window.passSixMinutes());
    await page.locator("[data-late]").waitFor();
    await noSidewaysScroll(page);
    assert.deepEqual(await axeFinds(page), []);
    await page.reload();
    await page.locator("[data-late]").waitFor();
    await doStep(page, { do: "brief" });
    await finish(page);
    await page.locator("[data-outcome] [data-late]").waitFor();
    await becomes(() => page.locator('[data-criterion][data-met="false"]').count(), 1);
    const download = await fileFrom(page, () => page.locator('[data-act="save-attempt"]').click());
    const { log } = JSON.parse(readFileSync(await download.path(), "utf8"));
    assert.ok(
      log.every(({ at }) => at >= 360 && at < 720),
      JSON.stringify(log.map(({ at }) => at)),
    );
  },
});

const hearsTheRadio = (locale) => ({
  name: `what comes over the radio is read aloud where that is asked for (${locale})`,
  again: locale === "en-US",
  async run(ctx) {
    const context = await withVoices(ctx, { size: "phone", options: { locale } });
    const page = await begun(ctx, { path: "#scenario", context });
    await chooseScenario(page, "larkfield-lead", "");
    await page.locator('[data-tab="radio"]').tap();
    await page.locator('[data-radio="request-permit"]').tap();
    await page.locator(".radio li.operator").first().waitFor();
    assert.deepEqual(await page.evaluate(() => window.said), []);
    await page.locator(".radio [data-aloud]").tap();
    await page.locator('[data-radio="receive-permit"]').tap();
    const heard = page.locator(".radio li.operator");
    await becomes(() => heard.count(), 2);
    await becomes(
      async () => {
        const [lang, words] = (await page.evaluate(() => window.said)).at(-1) ?? [];
        const last = (await heard.allTextContents()).join(" ");
        return lang === locale && words.split(". ").every((it) => last.includes(it.replace(/\.$/, "")));
      },
      true,
      "the operator's last words are said",
    );
  },
});

const talksOnTheRadio = {
  name: "a permit is asked for, received and said back",
  async run(ctx) {
    const page = await begun(ctx, { path: "#scenario" });
    await chooseScenario(page, "larkfield-lead", "");
    await page.locator('[data-tab="radio"]').click();
    await page.locator('[data-radio="request-permit"]').click();
    await page.locator('[data-radio="receive-permit"]').click();
    await page.locator('[data-field="repeat"]').fill("I have the permit");
    await page.locator('[data-radio="confirm"]').click();
    assert.ok((await page.locator(".radio li.operator").count()) >= 2);
  },
};

const isAccessible = (size, theme) => ({
  name: `axe finds nothing in the list, the prebrief and the attempt (${size}, ${theme})`,
  again: size === "desk",
  async run(ctx) {
    const page = await begun(ctx, { size, theme, path: "#scenario" });
    await page.locator("[data-scenario]").first().waitFor();
    assert.deepEqual(await axeFinds(page), []);
    await page.locator('[data-scenario="first-cutout"]').click();
    assert.deepEqual(await axeFinds(page), []);
    await page.locator('[data-act="begin"]').click();
    await doStep(page, { do: "inspect", at: "p5" });
    assert.deepEqual(await axeFinds(page), []);
    await page.locator('[data-act="open-predict"]').click();
    assert.deepEqual(await axeFinds(page), []);
    await noSidewaysScroll(page);
  },
});

/** Whoever said once what is live may be asked after each switching: what is otherwise now is said before it is shown. */
const foresees = {
  name: "what is live is said after each switching before it is shown, as long as that is wanted (phone, French)",
  async run(ctx) {
    const options = { locale: "fr-CA" };
    const page = await begun(ctx, { size: "phone", theme: "dark", path: "#scenario", options });
    await chooseScenario(page, "first-cutout", "Kim");
    const cutout = firstCutout.system.elements.c1;
    const said = (letter) => page.locator(`[data-conductor="${cutout.to}/${letter}"]`);
    await page.locator('[data-act="open-predict"]').click();
    await page.locator('[data-act="predict"]').click();
    await page.locator('[data-act="predict-each"]').click();
    const open = { do: "open", element: "c1", phases: "B", with: "load-break-tool" };
    await doStep(page, open);
    // As it was before is marked; what is beyond the cutout is otherwise now.
    await becomes(() => said("B").getAttribute("aria-pressed"), "true");
    await said("B").click();
    assert.deepEqual(await axeFinds(page), []);
    await noSidewaysScroll(page);
    await page.locator('[data-act="predict"]').click();
    await page.locator('[data-act="predict-no-more"]').click();
    await doStep(page, { do: "lift", element: "k1", phases: "B", with: "clamp-stick" });
    assert.equal(await page.locator(".predict").count(), 0);
    await finish(page);
    await page
      .locator("[data-foreseen]")
      .getByText(/^Après une manœuvre/)
      .waitFor();
  },
};

const isAVariant = {
  name: "a learner plays the variant of their name, and record and table say which",
  seconds: 120,
  async run(ctx) {
    const page = await begun(ctx, { path: "#scenario" });
    await page.locator('[data-scenario="first-cutout"]').click();
    await page.locator('[data-act="variant-by-name"]:disabled').waitFor();
    await page.locator('[data-field="who"]').fill("Kim");
    await page.locator('[data-act="variant-by-name"]').click();
    const number = await page.locator('[data-field="variant"]').inputValue();
    assert.ok(Number(number) > 0);
    // The prebrief is already that of the variant.
    await becomes(
      async () => (await page.locator("h2").first().textContent()).includes("Alder Court"),
      false,
    );
    await page.locator('[data-act="begin"]').click();
    await page.locator("[data-over]").waitFor();
    await finish(page);
    const record = await printedBy(page, page.locator('[data-act="print-record"]'));
    assert.match(record, new RegExp(`Variant</th><td>${number}</td>`));
  },
};

export const tests = [
  foresees,
  isAVariant,
  ...sizes.map(fallsAndPasses),
  outlivesAReload,
  keepsItsEnd,
  keepsSecrets,
  ...sizes.map(isHandedOver),
  asksForHints,
  isReachedFromRehearse("desk"),
  isReachedFromRehearse("phone"),
  keepsTime("desk"),
  keepsTime("phone"),
  talksOnTheRadio,
  ...["en-US", "fr-CA"].map(hearsTheRadio),
  isAccessible("desk", "light"),
  isAccessible("phone", "dark"),
];
