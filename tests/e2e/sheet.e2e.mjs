import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { at } from "../../scripts/lib/project.mjs";
import { axeFinds, begun, chooseFiles, noSidewaysScroll } from "./scenarios.mjs";
import { becomes } from "./becomes.mjs";

const sheetOf = async (page) => {
  const frame = page.locator("[data-sheet]");
  await frame.waitFor();
  // The codes that open the drawing come a moment later than the rest.
  await page.frameLocator("[data-sheet]").locator(".code svg").first().waitFor();
  return frame.getAttribute("srcdoc");
};

async function openFile(page, file, name = "Open a file") {
  await chooseFiles(page, page.getByRole("button", { name, exact: true }), file);
}

/** Pages of a PDF as Chromium writes it. */
const pagesOf = (pdf) => (pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g) ?? []).length;

async function printed(page, html, format) {
  const paper = await page.context().newPage();
  await paper.setContent(html, { waitUntil: "load" });
  const pdf = await paper.pdf({ format, preferCSSPageSize: false, printBackground: true });
  await paper.close();
  return pdf;
}

/** A job of sixty steps, as a file. */
function sixtySteps() {
  const document = JSON.parse(readFileSync(at("shared/scenarios/first-cutout.stillhot.json"), "utf8"));
  const { answer } = document.scenario;
  delete document.scenario;
  const without = (...verbs) => answer.filter((it) => !verbs.includes(it.do));
  const looks = ["p6", "p4"].map((at) => ({ do: "inspect", at }));
  // The arrester is secured once, and the line stays covered from the first round to the second.
  document.job.steps = [...without("uncover"), ...without("inspect", "secure", "cover"), ...looks];
  assert.equal(document.job.steps.length, 60);
  const file = join(mkdtempSync(join(tmpdir(), "stillhot-sheet-")), "sixty.stillhot.json");
  writeFileSync(file, JSON.stringify(document));
  return file;
}

const OPEN = { "en-US": "Open a file", "fr-CA": "Ouvrir un fichier" };
const fitsOnPaper = (locale) => ({
  name: `the sheet of a demo and of sixty steps takes at most two pages of Letter and of A4 (${locale})`,
  again: locale === "en-US",
  seconds: 120,
  async run(ctx) {
    const page = await begun(ctx, { path: "?demo=quarry-lane#sheet", options: { locale } });
    for (const format of ["Letter", "A4"]) {
      const pdf = await printed(page, await sheetOf(page), format);
      assert.ok([1, 2].includes(pagesOf(pdf)), `${pagesOf(pdf)} pages of ${format}`);
    }
    await openFile(page, sixtySteps(), OPEN[locale]);
    await page.frameLocator("[data-sheet]").getByText("Alder Court").first().waitFor();
    for (const format of ["Letter", "A4"]) {
      const pdf = await printed(page, await sheetOf(page), format);
      assert.ok([1, 2].includes(pagesOf(pdf)), `${pagesOf(pdf)} pages of ${format} for sixty steps`);
    }
  },
});

const hidesNothingOnPaper = {
  name: "the sheet of a scenario holds nothing of what is hidden in it",
  async run(ctx) {
    const page = await begun(ctx, { path: "#sheet" });
    await openFile(page, at("shared/scenarios/larkfield-lead.stillhot.json"));
    await page.locator('[data-act="teach"]').click();
    await page.locator('[data-act="teach-sure"]').click();
    await page.locator('header [data-place="sheet"]').click();
    await page.frameLocator("[data-sheet]").getByText("Larkfield").first().waitFor();
    const html = await sheetOf(page);
    const { scenario } = JSON.parse(
      readFileSync(at("shared/scenarios/larkfield-lead.stillhot.json"), "utf8"),
    );
    for (const { label } of Object.values(scenario.truth)) assert.ok(!html.includes(label), label);
  },
};

const warnsOfStalePaper = {
  name: "paper of a drawing that has changed since is noticed, and so is a drawing that nobody has touched for long",
  async run(ctx) {
    // The test's own clock is a script, and in the sheet's frame none may run.
    ctx.expectError(/Blocked script execution in 'about:srcdoc'/);
    const context = await ctx.newContext();
    const page = await begun(ctx, { context, path: "?demo=sideline-three-transformers#sketch" });
    const rename = async (title) => {
      await page.locator(".title input").fill(title);
      await page.locator(".title input").press("Enter");
      await page.locator('[data-save="saved"]').waitFor();
    };
    await rename("North side");
    await page.goto(`${page.url().split("?")[0].split("#")[0]}#sheet`);
    await page.locator("html[data-ready]").waitFor();
    await page.locator("[data-sheet]").waitFor();
    await page.locator('[data-act="print"]').click();
    await becomes(() => page.locator("[data-stale]").count(), 0);
    await rename("North side, again");
    await page.locator('[data-stale="changed"]').waitFor();

    await page.clock.install({ time: Date.now() + 13 * 3_600_000 });
    await page.reload();
    await page.locator('[data-stale="old"]').waitFor();
  },
};

const isAccessible = (size, theme) => ({
  name: `axe finds nothing on the sheet's place, and large print is one press away (${size}, ${theme})`,
  again: size === "desk",
  async run(ctx) {
    const page = await begun(ctx, { size, theme, path: "#sheet" });
    const usual = await sheetOf(page);
    assert.deepEqual(await axeFinds(page), []);
    await noSidewaysScroll(page);
    await page.locator('[data-act="large"]').click();
    await page.locator('[data-act="large"][aria-pressed="true"]').waitFor();
    await becomes(async () => (await sheetOf(page)) !== usual, true);
  },
});

export const tests = [
  fitsOnPaper("en-US"),
  fitsOnPaper("fr-CA"),
  hidesNothingOnPaper,
  warnsOfStalePaper,
  isAccessible("desk", "light"),
  isAccessible("phone", "dark"),
];
