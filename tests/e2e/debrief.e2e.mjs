import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { at } from "../../scripts/lib/project.mjs";
import {
  axeFinds,
  begun,
  chooseFiles,
  chooseScenario,
  finish,
  noSidewaysScroll,
  printedBy,
} from "./scenarios.mjs";
import { becomes } from "./becomes.mjs";
import { bundled } from "./bundled.mjs";
import { fileFrom } from "./fileFrom.mjs";

let made;
/** Ten attempts at one scenario, written by the program's own core: three pass, the others fall into a trap each. */
const tenAttempts = () => (made ??= makeTen());

async function makeTen() {
  const core = await bundled("src/core/index.ts");
  const text = readFileSync(at("shared/scenarios/first-cutout.stillhot.json"), "utf8");
  const { document } = core.readDocument(text);
  const { answer, traps } = core.scenarioOf(document);
  const orders = [answer, ...traps.map(({ fall }) => fall)];
  const folder = mkdtempSync(join(tmpdir(), "stillhot-attempts-"));
  return Array.from({ length: 10 }, (_, index) => {
    const startedAt = `2026-05-04T07:${String(10 + index)}:00Z`;
    const { attempt } = core.playThrough(document, orders[index % orders.length], {
      who: `Apprentice ${index + 1}`,
      startedAt,
    });
    const file = join(folder, `${index + 1}.attempt.json`);
    writeFileSync(file, core.writeAttempt(attempt));
    return file;
  });
}

async function openFiles(page, files) {
  await chooseFiles(page, page.locator('[data-act="open-attempts"]'), files);
}

async function downloaded(page, act) {
  const download = await fileFrom(page, () => page.locator(`[data-act="${act}"]`).click());
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), "utf8") };
}

const comparesTen = (size) => ({
  name: `ten attempts are opened together and compared (${size})`,
  again: size === "desk",
  async run(ctx) {
    const page = await begun(ctx, { size, path: "#debrief" });
    await openFiles(page, await tenAttempts());
    await page.locator("[data-class]").waitFor();
    await becomes(() => page.locator("[data-row]").count(), 10);
    await becomes(() => page.locator('[data-row="passed"]').count(), 3);
    const clamp = page.locator('[data-tally="traps clamp-under-load"]');
    await becomes(() => clamp.getAttribute("data-count"), "3");
    await noSidewaysScroll(page);
    assert.deepEqual(await axeFinds(page), []);

    const { text } = await downloaded(page, "class-csv");
    assert.equal(text.trim().split("\r\n").length, 11);
    const xapi = JSON.parse((await downloaded(page, "class-xapi")).text);
    assert.ok(xapi.some(({ verb }) => verb.id.endsWith("/passed")));

    await page.locator("[data-row] button").nth(1).click();
    await page.locator('[data-outcome="failed"]').waitFor();
  },
});

const takesDroppedFiles = {
  name: "attempt files that are dropped on the page are opened together",
  async run(ctx) {
    const page = await begun(ctx, { path: "#debrief" });
    const texts = (await tenAttempts()).map((file) => readFileSync(file, "utf8"));
    await page.locator("[data-drop]").evaluate((target, them) => {
      const dataTransfer = new DataTransfer();
      them.forEach((text, n) => dataTransfer.items.add(new File([text], `${n}.attempt.json`)));
      for (const type of ["dragover", "drop"])
        target.dispatchEvent(new DragEvent(type, { bubbles: true, cancelable: true, dataTransfer }));
    }, texts);
    await page.locator("[data-class]").waitFor();
    await becomes(() => page.locator("[data-row]").count(), 10);
    await becomes(() => page.locator(".drop").count(), 0);
  },
};

const opensAClass = {
  name: "two hundred attempts are opened together and compared",
  seconds: 120,
  async run(ctx) {
    const page = await begun(ctx, { path: "#debrief" });
    const ten = await tenAttempts();
    const files = Array.from({ length: 200 }, (_, n) => ten[n % ten.length]);
    await page.locator('[data-act="open-attempts"]').waitFor();
    await openFiles(page, files);
    await page.locator("[data-row]").nth(199).waitFor();
    await becomes(() => page.locator('[data-row="passed"]').count(), 60);
    const clamp = page.locator('[data-tally="traps clamp-under-load"]');
    await becomes(() => clamp.getAttribute("data-count"), "60");
  },
};

const twoSideBySide = {
  name: "two attempts stand side by side from where they first differ",
  async run(ctx) {
    const page = await begun(ctx, { path: "#debrief" });
    const files = await tenAttempts();
    await openFiles(page, files.slice(0, 2));
    await becomes(() => page.locator("[data-common]").getAttribute("data-common"), "3");
    await page
      .locator('[data-side="first"] li')
      .first()
      .getByText(/Open .*T1 cutout/)
      .waitFor();
    await page
      .locator('[data-side="second"] li')
      .first()
      .getByText(/Lift .*tap clamp/)
      .waitFor();
    assert.deepEqual(await axeFinds(page), []);
  },
};

const noticesAnEdit = {
  name: "a log that somebody edited is noticed, and the others are still taken",
  async run(ctx) {
    const page = await begun(ctx, { path: "#debrief" });
    const files = await tenAttempts();
    const edited = files[1].replace(".attempt.json", ".edited.json");
    writeFileSync(edited, readFileSync(files[1], "utf8").replace('"verb":"lift"', '"verb":"open"'));
    await openFiles(page, [files[0], edited]);
    await page
      .getByRole("alert")
      .getByText(/was edited/)
      .waitFor();
    await page.locator('[data-act="the-others"]').click();
    await page.locator('[data-outcome="passed"]').waitFor();
  },
};

const replays = (size, theme) => ({
  name: `an attempt is replayed on the drawing, saved and opened again, and axe finds nothing (${size}, ${theme})`,
  again: size === "desk",
  async run(ctx) {
    const page = await begun(ctx, { size, theme, path: "#debrief" });
    const files = await tenAttempts();
    await openFiles(page, files[1]);
    await page.locator('[data-outcome="failed"]').waitFor();
    await page.locator('[data-act="mark-after"]').click();
    await page.locator('[data-act="mark-after"]').click();
    await page.locator('[data-field="scrub"]').press("ArrowRight");
    const pictures = page.locator(".pictures [data-drawing]");
    await becomes(() => pictures.count(), 2);
    for (const picture of await pictures.all())
      await becomes(
        async () => Number(await picture.getAttribute("data-symbol-px")) >= 17,
        true,
        "symbols and labels can be told apart",
      );
    assert.deepEqual(await axeFinds(page), []);
    await noSidewaysScroll(page);
    const saved = await downloaded(page, "save-attempt");
    assert.equal(saved.text, readFileSync(files[1], "utf8"));
    assert.match(await printedBy(page, page.locator('[data-act="print-record"]')), /<html/);
  },
});

const playsOn = {
  name: "an attempt is played on from its middle, as another one",
  async run(ctx) {
    const page = await begun(ctx, { path: "#debrief" });
    const files = await tenAttempts();
    await openFiles(page, files[1]);
    await page.locator('[data-act="mark-after"]').click();
    await page.locator('[data-act="fork"]').click();
    await page.locator('[data-over="false"]').waitFor();
    assert.ok((await page.locator("ol[reversed] li").count()) >= 1);
  },
};

const saysWhichLookWouldHaveTold = {
  name: "of what was hidden, the debrief says which line of look first would have led there (phone)",
  async run(ctx) {
    const page = await begun(ctx, { size: "phone", path: "#scenario" });
    await chooseScenario(page, "larkfield-calls", "Kim");
    await finish(page);
    const told = page.locator('[data-fact="neutral"] [data-foretold]');
    await told.getByText(/Look first, .* by its line [1-3]: /).waitFor({ timeout: 60_000 });
    await noSidewaysScroll(page);
  },
};

export const tests = [
  comparesTen("desk"),
  comparesTen("phone"),
  takesDroppedFiles,
  opensAClass,
  twoSideBySide,
  noticesAnEdit,
  replays("desk", "light"),
  replays("phone", "dark"),
  playsOn,
  saysWhichLookWouldHaveTold,
];
