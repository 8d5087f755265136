import assert from "node:assert/strict";
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { spawnSync } from "node:child_process";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { at } from "../../scripts/lib/project.mjs";
import { axeFinds, chooseFiles } from "./scenarios.mjs";
import { act } from "./bar.mjs";
import { boxAtRest, onPage, pressAt, pressOn, spotOf } from "./spots.mjs";
import { becomes } from "./becomes.mjs";
import { fileFrom } from "./fileFrom.mjs";

const sideline = JSON.parse(
  readFileSync(at("shared/demos/sideline-three-transformers.stillhot.json"), "utf8"),
);
const CUTOUT = "c1";
const WORK_POINT = sideline.job.workPoints.w1.at;

const ready = (page) => page.locator("html[data-ready]").waitFor();
const verdict = (page) => page.locator("[data-verdict]");
const row = (page, owner) => page.locator(`[data-owner="${owner}"]`);
const visible = (page, selector) => page.locator(`${selector}:visible`).first();

async function begin(ctx, opening) {
  const page = await ctx.open(opening);
  await ready(page);
  await ctx.settle(page);
  return page;
}

const middleOf = ({ system }, id) => {
  const { from, to } = system.elements[id];
  const [a, b] = [system.points[from], system.points[to]];
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
};

async function noSidewaysScroll(page) {
  const [wide, inner] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  assert.ok(wide <= inner, `the page is ${wide} px wide in a window of ${inner} px`);
}

/**
 * Runs in the page: the canvas of the drawing on white as it is, and by how much any of its dots differs once all of it
 * was painted again [of 255]. Edges may round a little otherwise where a part was cut out.
 */
async function paintedNowAndAnew() {
  const host = document.querySelector("[data-drawing]");
  const frames = async (count) => {
    for (let n = 0; n < count; n++) await new Promise((done) => requestAnimationFrame(done));
  };
  const dots = () => {
    const { width, height } = host.querySelector("canvas");
    const copy = new OffscreenCanvas(width, height).getContext("2d");
    copy.fillStyle = "white";
    copy.fillRect(0, 0, width, height);
    copy.drawImage(host.querySelector("canvas"), 0, 0);
    return copy.getImageData(0, 0, width, height).data;
  };
  const apartest = (one, other) => {
    let most = 0;
    for (let k = 0; k < one.length; k++) most = Math.max(most, Math.abs(one[k] - other[k]));
    return most;
  };
  const named = async (picture) => new Uint8Array(await crypto.subtle.digest("SHA-256", picture)).join();
  // Until nothing comes any more, states or labels, though the machine be slow.
  let now = dots();
  for (let alike = 0; alike < 3;) {
    const before = now;
    await new Promise((done) => setTimeout(done, 500));
    now = dots();
    alike = apartest(now, before) === 0 ? alike + 1 : 0;
  }
  for (const inset of ["0 2px 0 0", ""]) {
    host.style.inset = inset;
    await frames(3);
  }
  const anew = dots();
  return { now: await named(now), anew: await named(anew), apart: apartest(now, anew) };
}

/** A line of so many poles behind one disconnect, as large as drawings come of which only what is in view is drawn. */
function lineOf(poles, open) {
  const names = Array.from({ length: poles }, (_, n) => `p${n}`);
  const points = Object.fromEntries(
    names.map((name, n) => {
      const [row, along] = [Math.floor(n / 25), n % 25];
      return [
        name,
        { kind: "pole", x: 120 * (row % 2 === 0 ? along : 24 - along), y: 120 * row, label: name },
      ];
    }),
  );
  const spans = names
    .slice(2)
    .map((name, n) => [`sp${n}`, { kind: "span", from: names[n + 1], to: name, phases: "ABC" }]);
  const elements = {
    s1: { kind: "source", at: "p0", phases: "ABC", kvLL: 12.47, z1Ohms: [0.2, 1], z0Ohms: [0.4, 2.2] },
    head: { kind: "disconnect", from: "p0", to: "p1", phases: "ABC", gang: true, open },
    ...Object.fromEntries(spans),
  };
  return { format: "stillhot", formatVersion: 1, title: `line ${open}`, system: { points, elements } };
}

/** Opens a drawing as a file that is dropped on the app, and takes one of its elements, from near by. */
async function take(ctx, document, element) {
  const page = await begin(ctx);
  const drawing = page.locator("[data-drawing]");
  const camera = () => drawing.getAttribute("data-camera");
  await becomes(camera, /\d/);
  const other = await camera();
  const data = await page.evaluateHandle((text) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], "line.stillhot.json", { type: "application/json" }));
    return transfer;
  }, JSON.stringify(document));
  await page.locator(".app").dispatchEvent("drop", { dataTransfer: data });
  await page.waitForFunction((title) => globalThis.document.title.includes(title), document.title);
  await becomes(async () => (await camera()) !== other, true, "all of the other drawing comes in view");
  const scale = async () => Number((await camera()).split(" ")[2]);
  const { x, y } = await onPage(page, middleOf(document, element));
  await page.mouse.move(x, y);
  const fromAfar = await scale();
  for (let turn = 0; turn < 4; turn++) await page.mouse.wheel(0, -250);
  await becomes(async () => (await scale()) > 3 * fromAfar, true, "the drawing is seen from near by");
  await pressAt(page, middleOf(document, element));
  await ctx.settle(page);
  return page;
}

/** Reads what could still make it live, as a person does: verdict first, then the list. */
async function readsWhatCouldMakeItLive(page, { size }) {
  await verdict(page).and(page.locator('[data-verdict="could-go-live"]')).waitFor();
  await page.getByText("Only test and grounds make a conductor dead.").first().waitFor();
  if (size === "phone") await verdict(page).locator("button").first().click();
  await page
    .getByText(/sideline cutout is closed/i)
    .last()
    .waitFor();
  // Each way is a row of the hot list.
  await page.locator(".threat").nth(1).waitFor();
}

const opensTheCutout = (size, touch) => ({
  name: `a newcomer opens the sideline demo and its cutout, and reads what could still make it live (${size}, ${touch ? "touch" : "mouse"})`,
  async run(ctx) {
    const page = await begin(ctx, { size });
    await becomes(() => verdict(page).getAttribute("data-verdict"), "live");
    await noSidewaysScroll(page);
    const cutout = await spotOf(page, CUTOUT);
    await pressAt(page, cutout, touch);
    await page.locator('[data-action="open"]').click();
    await readsWhatCouldMakeItLive(page, { size });
    await page.locator(".threat").first().click();
    if (size === "desk") {
      await page.locator(".path").getByText("sideline cutout").waitFor();
      await becomes(
        () => page.locator("[data-way-range]").textContent(),
        /By the map \d.* to \d.* V; felt: /,
      );
    }
    const words = await row(page, `point:${WORK_POINT}`).first().textContent();
    assert.match(words, /isolated, not proven dead/);
    await noSidewaysScroll(page);
  },
});

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  opensTheCutout("desk", false),
  opensTheCutout("phone", true),
  {
    name: "what an edit paints anew is what painting all anew would show",
    async run(ctx) {
      const page = await begin(ctx);
      const pictures = new Set();
      await pressOn(page, CUTOUT);
      const acts = [
        () => page.locator('[data-action="open"]').click(),
        () => page.keyboard.press("Control+z"),
        () => page.keyboard.press("Control+y"),
        () => page.locator('[data-action="tag"]').click(),
        () => page.locator('[data-action="close"]').click(),
        () => page.keyboard.press("Delete"),
        () => page.keyboard.press("Control+z"),
      ];
      for (const act of acts) {
        await act();
        await ctx.settle(page);
        const { now, apart } = await page.evaluate(paintedNowAndAnew);
        assert.ok(apart < 32, `after ${act} a dot of the canvas is ${apart} of 255 off the drawing`);
        pictures.add(now);
      }
      assert.ok(pictures.size > 3, "the acts are seen on the canvas");
    },
  },
  ...[
    { viewport: { width: 390, height: 844 }, locale: "en-US" },
    { viewport: { width: 360, height: 740 }, locale: "fr-CA" },
  ].map(({ viewport, locale }) => ({
    name: `on a phone half of the height is the drawing's, the verdict has two lines until it is tapped, and buttons hold their words (${viewport.width})`,
    again: locale === "en-US",
    async run(ctx) {
      const page = await begin(ctx, {
        size: "phone",
        path: "?demo=quarry-lane",
        options: { viewport, locale },
      });
      const isHalf = async (where) => {
        const { height } = await boxAtRest(page.locator("[data-drawing]:visible"));
        assert.ok(height >= viewport.height / 2 - 0.5, `the drawing is ${height} px high ${where}`);
        const lines = await verdict(page)
          .locator(".words")
          .first()
          .evaluate((it) => it.clientHeight / parseFloat(getComputedStyle(it).lineHeight));
        assert.ok(lines < 2.6, `the verdict has ${lines} lines ${where}`);
        const cut = await page
          .locator(".deeds button:visible")
          .evaluateAll((all) =>
            all.filter((it) => it.scrollWidth > it.clientWidth).map((it) => it.innerText),
          );
        assert.deepEqual(cut, [], `words reach beyond their button ${where}`);
      };
      await isHalf("in Sketch");
      await pressOn(page, "c1", true);
      await page.locator("[data-action]").first().waitFor();
      await isHalf("in Sketch with a thing chosen");
      await page.evaluate(() => (location.hash = "plan"));
      await page.locator(".plan [data-drawing]").waitFor();
      await isHalf("in Plan");
    },
  })),
  ...[
    { width: 844, height: 390 },
    { width: 915, height: 412 },
  ].map((viewport) => ({
    name: `on a phone held sideways the drawing has room, and nothing lies over the verdict (${viewport.width})`,
    again: viewport.height > 390,
    async run(ctx) {
      const page = await begin(ctx, { size: "phone", options: { viewport } });
      for (const place of ["sketch", "plan"]) {
        await page.evaluate((hash) => (location.hash = hash), place);
        await page.locator("[data-drawing]:visible").waitFor();
        await ctx.settle(page);
        const covered = () =>
          verdict(page).evaluate((strip) => {
            const { left, right, top, bottom } = strip.getBoundingClientRect();
            const spots = Array.from({ length: 40 }, (_, n) => left + ((n + 0.5) / 40) * (right - left));
            const isOver = (x, y) => !strip.contains(document.elementFromPoint(x, y));
            return spots.filter((x) => isOver(x, top + 4) || isOver(x, bottom - 6));
          });
        await becomes(covered, [], `something lies over the verdict in ${place}`);
        const drawing = await boxAtRest(page.locator("[data-drawing]:visible"));
        const strip = await verdict(page).boundingBox();
        assert.ok(
          drawing.y >= strip.y + strip.height - 1,
          `the drawing begins below the verdict in ${place}`,
        );
        assert.ok(
          drawing.height > viewport.height * 0.4,
          `the drawing is ${drawing.height} px high in ${place}`,
        );
        await noSidewaysScroll(page);
      }
    },
  })),
  {
    name: "a large drawing of which all comes to look otherwise is what it would be if it was opened so",
    async run(ctx) {
      const [live, dead] = [lineOf(500, ""), lineOf(500, "ABC")];
      const page = await take(ctx, live, "head");
      const pictures = [];
      for (const action of ["open", "close", "open"]) {
        await page.locator(`[data-action="${action}"]`).click();
        await ctx.settle(page);
        const { anew, apart } = await page.evaluate(paintedNowAndAnew);
        // Long lines round more than short ones where a part was cut out; another state is another colour altogether.
        assert.ok(apart < 64, `after ${action} a dot of the canvas is ${apart} of 255 off the drawing`);
        pictures.push(anew);
      }
      const [opened, closed, again] = pictures;
      const drawnOpen = await (await take(ctx, dead, "head")).evaluate(paintedNowAndAnew);
      const drawnClosed = await (await take(ctx, live, "head")).evaluate(paintedNowAndAnew);
      assert.ok(opened !== closed, "what hangs from it is seen to change");
      assert.ok(opened === drawnOpen.anew, "opened by hand it looks as if it was drawn open");
      assert.ok(closed === drawnClosed.anew, "closed by hand it looks as if it was drawn closed");
      assert.ok(again === opened, "opened again it looks as it did");
    },
  },
  {
    name: "the same by keyboard alone",
    async run(ctx) {
      const page = await begin(ctx);
      await page.locator("[data-drawing]").focus();
      await page.keyboard.press("w");
      await becomes(() => row(page, `point:${WORK_POINT}`).getAttribute("aria-selected"), "true");
      // What may come next is chosen by typing its name: neither that nor a space closes the sheet.
      await page.keyboard.press("Insert");
      await page.locator('[data-field="kind"]:focus').waitFor();
      await page.keyboard.type("ground set");
      await becomes(() => page.locator("[data-part]").count(), 1);
      await page.keyboard.press("Escape");
      await page.locator("[data-drawing]:focus").waitFor();
      const chosen = () =>
        page.locator('[data-owner][aria-selected="true"]').first().getAttribute("data-owner");
      for (let at = await chosen(); at !== `element:${CUTOUT}`; at = await chosen()) {
        await page.keyboard.press("ArrowLeft");
        await becomes(async () => (await chosen()) !== at, true);
      }
      await page.keyboard.press("Space");
      await readsWhatCouldMakeItLive(page, { size: "desk" });
      await page.keyboard.press("t");
      await becomes(() => page.locator(".threat").first().getAttribute("aria-pressed"), "true");
      await page.keyboard.press("Control+z");
      await page.locator('[data-verdict="live"]').waitFor();
    },
  },
  {
    name: "a button that gives way to another when it is pressed leaves the keyboard on that one",
    async run(ctx) {
      const page = await begin(ctx);
      await row(page, `element:${CUTOUT}`).click();
      await page.locator('[data-action="open"]').focus();
      for (const next of ["close", "open"]) {
        await page.keyboard.press("Enter");
        await page.locator(`[data-action="${next}"]:focus`).waitFor();
      }
    },
  },
  {
    name: "the outline does the same for whoever does not see the drawing",
    async run(ctx) {
      const page = await begin(ctx);
      await row(page, `element:${CUTOUT}`).focus();
      await page.keyboard.press("ArrowDown");
      await page.keyboard.press("ArrowUp");
      await page.keyboard.press("Space");
      await page.locator('[data-verdict="could-go-live"]').waitFor();
      await becomes(() => row(page, `element:${CUTOUT}`).textContent(), /open/);
    },
  },
  ...[
    ["desk", false],
    ["phone", true],
  ].map(([size, touch]) => ({
    name: `a transformer tap of their own: drawn, saved, and checked with the same answer (${size})`,
    again: size === "desk",
    async run(ctx) {
      const page = await begin(ctx, { size });
      let taps = 0;
      const tap = async (locator) => {
        taps++;
        if (touch) await locator.tap();
        else await locator.click();
      };
      const menu = async (item) => {
        await page.getByRole("button", { name: "Menu" }).click();
        await page.locator(`[data-menu="${item}"]`).click();
      };
      await menu("new");
      await page.getByText("Nothing drawn yet").first().waitFor();
      await tap(page.locator('[data-action="source"]'));
      await tap(page.locator('[data-action="grow"]'));
      await tap(page.locator('[data-part="span"]'));
      await tap(page.locator('[data-action="grow"]'));
      await tap(page.getByRole("group", { name: "On which phases?" }).getByText("B", { exact: true }));
      await tap(page.getByRole("group", { name: "On which phases?" }).getByText("C", { exact: true }));
      await tap(page.locator('[data-part="tap4"]'));
      await tap(page.locator('[data-ask="link"] [data-chip="15T"]'));
      await tap(page.locator('[data-ask="kva"] [data-chip="37.5"]'));
      await tap(page.locator('[data-action="work"]'));
      assert.ok(taps <= 12, `${taps} taps`);
      await page.locator('[data-verdict="live"]').waitFor();

      await pressAt(page, { x: 160, y: 0 }, touch);
      await page
        .getByText(/Cutout 1/)
        .first()
        .waitFor();
      const cutout = page.locator('[data-owner^="element:"]').filter({ hasText: "Cutout 1" }).first();
      if (size === "desk") await cutout.click();
      else if ((await page.locator('[data-action="open"]').count()) === 0) {
        await page.getByRole("button", { name: "Outline" }).tap();
        await page.locator('dialog [data-owner^="element:"]').filter({ hasText: "Cutout 1" }).first().tap();
        await page.keyboard.press("Escape");
      }
      await page.locator('[data-action="open"]').click();
      await page.locator('[data-verdict="could-go-live"]').waitFor();

      const download = await fileFrom(page, () =>
        size === "phone" ? menu("save") : page.keyboard.press("Control+s"),
      );
      const file = join(mkdtempSync(join(tmpdir(), "stillhot-")), "own.stillhot.json");
      await download.saveAs(file);
      const saved = JSON.parse(readFileSync(file, "utf8"));
      const kinds = Object.values(saved.system.elements).map((it) => it.kind);
      assert.equal(kinds.filter((it) => it === "meter").length, 4);
      assert.ok(kinds.includes("transformer") && kinds.includes("cutout") && kinds.includes("source"));

      if (!existsSync(at("dist-cli/main.js"))) return;
      const checked = spawnSync(process.execPath, [at("bin/stillhot.mjs"), "check", file, "--json"], {
        encoding: "utf8",
      });
      if (!checked.stdout.startsWith("{")) return;
      const { workPoints } = JSON.parse(checked.stdout);
      assert.equal(workPoints.w1.verdict, "could-go-live");
      const margin = await verdict(page)
        .getByText(/^Margin/)
        .textContent();
      assert.equal(margin, `Margin ${workPoints.w1.margin}`);
    },
  })),
  {
    name: "a file that cannot be read leaves the drawing alone, and says why",
    async run(ctx) {
      const page = await begin(ctx);
      const before = await page.locator('[role="tree"]').textContent();
      const folder = mkdtempSync(join(tmpdir(), "stillhot-"));
      for (const [name, text, why] of [
        ["cut.stillhot.json", '{"format": "stillhot", "formatVer', /cut\.stillhot\.json was not opened/],
        [
          "dangling.stillhot.json",
          JSON.stringify({
            format: "stillhot",
            formatVersion: 1,
            title: "x",
            system: {
              points: { p1: { x: 0, y: 0 } },
              elements: { c1: { kind: "cutout", from: "p1", to: "p9", phases: "A" } },
            },
          }),
          /system\.elements\.c1\.to/,
        ],
        ["newer.stillhot.json", JSON.stringify({ ...sideline, formatVersion: 9 }), /9/],
      ]) {
        const file = join(folder, name);
        writeFileSync(file, text);
        await chooseFiles(page, page.getByRole("button", { name: "Open a file" }), file);
        await page.locator("dialog").getByText(why).first().waitFor();
        await page.locator("dialog").getByRole("button", { name: "Close" }).last().click();
        await becomes(() => page.locator('[role="tree"]').textContent(), before);
      }
    },
  },
  {
    name: "a file opens, with markup in its labels as plain text",
    async run(ctx) {
      const page = await begin(ctx);
      const file = join(mkdtempSync(join(tmpdir(), "stillhot-")), "markup.stillhot.json");
      const nasty = '<img src=x onerror="document.title=1">';
      const drawing = structuredClone(sideline);
      drawing.system.points[WORK_POINT].label = nasty;
      writeFileSync(file, JSON.stringify(drawing));
      await chooseFiles(page, page.getByRole("button", { name: "Open a file" }), file);
      await page.locator('[role="tree"]').getByText(nasty).first().waitFor();
      await becomes(() => page.locator("img").count(), 0);
    },
  },
  {
    name: "undo and redo take back and repeat edits of every sort, and survive a reload",
    async run(ctx) {
      const page = await begin(ctx);
      const count = () => page.locator('[role="tree"] [role="treeitem"]').count();
      const before = await count();
      const isLess = () => becomes(async () => (await count()) < before, true);
      await row(page, `point:${WORK_POINT}`).click();
      await page.locator("[data-drawing]").focus();
      await page.keyboard.press("Alt+ArrowRight");
      await page.keyboard.press("Delete");
      await isLess();
      await page.locator('[data-save="saved"]').waitFor();
      await page.reload();
      await ready(page);
      await isLess();
      await page.getByRole("button", { name: "Undo" }).first().click();
      await becomes(() => count(), before);
      await page.getByRole("button", { name: "Undo" }).first().click();
      await becomes(() => page.getByRole("button", { name: "Undo" }).first().isDisabled(), true);
      await page.getByRole("button", { name: "Redo" }).first().click();
      await page.getByRole("button", { name: "Redo" }).first().click();
      await isLess();
    },
  },
  {
    name: "a note gives way at once to whoever goes on with the drawing, and undo stays in the bar",
    async run(ctx) {
      const page = await begin(ctx);
      await row(page, "element:ld3").click();
      await page.locator("[data-drawing]").focus();
      await page.keyboard.press("Delete");
      const note = page.locator(".notice");
      await note.getByRole("button", { name: "Undo" }).waitFor();
      const { x, y } = await boxAtRest(page.locator("[data-drawing]").first());
      await page.mouse.click(x + 20, y + 20);
      // By itself it goes later than this.
      await note.waitFor({ state: "detached", timeout: 4000 });
      await page.locator("header").getByRole("button", { name: "Undo" }).click();
      await row(page, "element:ld3").waitFor();
    },
  },
  {
    name: "every change is kept on the device, and found again after a reload",
    async run(ctx) {
      const page = await begin(ctx, { size: "phone" });
      await pressOn(page, CUTOUT, true);
      await page.locator('[data-action="open"]').tap();
      await page.locator('[data-save="saved"]').waitFor();
      await page.reload();
      await ready(page);
      await becomes(() => verdict(page).getAttribute("data-verdict"), "could-go-live");
    },
  },
  {
    name: "a mouse drags a pole with all that is on it, as one undo entry",
    async run(ctx) {
      const page = await begin(ctx);
      const point = await spotOf(page, WORK_POINT);
      const from = await onPage(page, point);
      const to = { x: from.x - 120, y: from.y + 10 };
      await page.mouse.move(from.x, from.y);
      await page.mouse.down();
      await page.mouse.move((from.x + to.x) / 2, to.y, { steps: 4 });
      await page.mouse.move(to.x, to.y, { steps: 4 });
      await page.mouse.up();
      const undo = page.getByRole("button", { name: "Undo" }).first();
      await page.waitForFunction(() => document.querySelector('[data-save="saved"]') !== null);
      const moved = await onPage(page, await spotOf(page, WORK_POINT));
      const beside = Math.hypot(moved.x - to.x, moved.y - to.y);
      assert.ok(beside < 40, `it lies ${beside} px beside where it was dropped`);
      await page.keyboard.press("Control+z");
      await ctx.settle(page);
      await becomes(() => spotOf(page, WORK_POINT), point);
      await becomes(() => undo.isDisabled(), true);
    },
  },
  {
    name: "moving by two taps, without a drag, and taking it back",
    async run(ctx) {
      const page = await begin(ctx, { size: "phone" });
      const point = await spotOf(page, WORK_POINT);
      await pressAt(page, point, true);
      await page.locator('[data-action="more"]').tap();
      await page.locator('dialog [data-action="move"]').tap();
      await pressAt(page, { x: point.x - 40, y: point.y - 60 }, true);
      await page.locator('[data-save="saved"]').waitFor();
      await page.getByRole("button", { name: "Undo" }).first().tap();
      await becomes(() => page.getByRole("button", { name: "Undo" }).first().isDisabled(), true);
    },
  },
  {
    name: "a swipe over the drawing pans it, and changes nothing",
    async run(ctx) {
      const page = await begin(ctx, { size: "phone" });
      const from = await onPage(page, await spotOf(page, WORK_POINT));
      const session = await page.context().newCDPSession(page);
      const touch = (type, x, y) =>
        session.send("Input.dispatchTouchEvent", {
          type,
          touchPoints: type === "touchEnd" ? [] : [{ x, y }],
        });
      await touch("touchStart", from.x, from.y);
      for (let step = 1; step <= 8; step++) await touch("touchMove", from.x + step * 8, from.y - step * 6);
      await touch("touchEnd");
      const movedBy = async () => (await onPage(page, await spotOf(page, WORK_POINT))).x - from.x;
      await becomes(async () => (await movedBy()) > 40, true, "the drawing moved with the finger");
      await becomes(() => page.getByRole("button", { name: "Undo" }).first().isDisabled(), true);
    },
  },
  ...["desk", "phone"].map((size) => ({
    name: `who has panned all of the drawing out of sight is told so, and brings it back by one press (${size})`,
    async run(ctx) {
      const page = await begin(ctx, { size });
      const back = page.locator("[data-bring-back]");
      const box = await page.locator("[data-drawing]").boundingBox();
      const away = async () => {
        const session = await page.context().newCDPSession(page);
        const [x, y] = [box.x + box.width * 0.7, box.y + box.height * 0.2];
        const send = (type, at) =>
          size === "phone"
            ? session.send("Input.dispatchTouchEvent", {
                type: `touch${type}`,
                touchPoints: type === "End" ? [] : [{ x, y: at }],
              })
            : {
                Start: () => page.mouse.down(),
                Move: () => page.mouse.move(x, at),
                End: () => page.mouse.up(),
              }[type]();
        for (let sweep = 0; sweep < 8; sweep++) {
          if (size === "desk") {
            await page.mouse.move(x, y);
            await page.keyboard.down("Space");
          }
          await send("Start", y);
          for (let step = 1; step <= 6; step++) await send("Move", y + (step / 6) * box.height * 0.6);
          // A finger that is lifted while it flies takes the next tap with it.
          await page.waitForTimeout(100);
          await send("Move", y + box.height * 0.6);
          await send("End", y);
          if (size === "desk") await page.keyboard.up("Space");
        }
      };
      assert.equal(await back.count(), 0);
      await away();
      await page.getByText("Nothing of the drawing is in sight.").waitFor();
      if (size === "phone") await back.tap();
      else await back.press("Enter");
      await back.waitFor({ state: "detached" });
      await page.locator("[data-drawing]:focus").waitFor();
      const spot = await onPage(page, await spotOf(page, WORK_POINT));
      assert.ok(
        spot.x > box.x && spot.x < box.x + box.width && spot.y > box.y && spot.y < box.y + box.height,
      );
    },
  })),
  ...["the drawing", "the outline"].map((where) => ({
    name: `joining by two taps, without a drag, on ${where}`,
    async run(ctx) {
      const page = await begin(ctx, { size: "phone" });
      await page.getByRole("button", { name: "Show all" }).tap();
      const { points, structures } = sideline.system;
      const poles = Object.keys(points).filter(
        (id) => (structures[points[id].on]?.kind ?? "pole") === "pole",
      );
      const pick = async (end) => {
        if (where === "the drawing") return pressOn(page, poles.at(end), true);
        await page.getByRole("button", { name: "Outline" }).tap();
        await page.locator("dialog .structure").nth(end).tap();
        await page.locator("dialog .structure").waitFor({ state: "detached" });
      };
      await page.locator('[data-action="join"]').tap();
      await pick(0);
      await pick(-1);
      await page.locator('[data-join="tie"]').tap();
      await page
        .locator('[role="tree"]')
        .getByText(/^disconnect/)
        .first()
        .waitFor({ state: "attached" });
    },
  })),
  {
    name: "a sheet that opens under a finger takes that finger's click for nothing, and the next one for what it is",
    async run(ctx) {
      const page = await begin(ctx, { size: "phone" });
      // A click alone, as a browser sends it after a finger was lifted where meanwhile something else stands.
      const stays = page.evaluate(
        () =>
          new Promise((done) => {
            const watch = new MutationObserver(() => {
              const close = document.querySelector("dialog[open] .head button");
              if (close === null) return;
              watch.disconnect();
              close.dispatchEvent(new MouseEvent("click", { bubbles: true, cancelable: true, detail: 1 }));
              setTimeout(() => done(document.querySelector("dialog[open]") !== null), 100);
            });
            watch.observe(document.body, { subtree: true, childList: true, attributes: true });
          }),
      );
      await page.getByRole("button", { name: "Outline" }).tap();
      assert.equal(await stays, true);
      await page.locator("dialog .head button").tap();
      await page.locator("dialog").waitFor({ state: "detached" });
    },
  },
  {
    name: "a tap goes onto another phase whole by one press, and one undo takes it back",
    async run(ctx) {
      const page = await begin(ctx);
      const phasesOf = () =>
        page.locator('[role="tree"] .element').evaluateAll((rows) => rows.map((it) => it.textContent.trim()));
      const before = await phasesOf();
      await row(page, "element:k1").click();
      await act(page, "phase-A");
      await page.waitForFunction((was) => {
        const rows = [...document.querySelectorAll('[role="tree"] .element')].map((it) =>
          it.textContent.trim(),
        );
        return rows.filter((it, nth) => it !== was[nth]).length >= 4;
      }, before);
      await page.locator("header").getByRole("button", { name: "Undo" }).click();
      await page.waitForFunction(
        (was) =>
          [...document.querySelectorAll('[role="tree"] .element')].every(
            (it, nth) => it.textContent.trim() === was[nth],
          ),
        before,
      );
    },
  },
  {
    name: "a key of a device is changed in the details, and a wrong one is refused in words",
    async run(ctx) {
      const page = await begin(ctx);
      await row(page, "element:t1").click();
      await page.getByRole("tab", { name: "Details" }).click();
      const rating = page.getByLabel("Rating");
      await rating.fill("75");
      await rating.press("Enter");
      await page.locator('[data-save="saved"]').waitFor();
      await rating.fill("-5");
      await rating.press("Tab");
      await page.getByRole("alert").first().waitFor();
      await becomes(() => page.getByRole("alert").first().textContent(), /more than 0/);
    },
  },
  ...["desk", "phone"].map((size) => ({
    name: `no accessibility violation that axe finds (${size})`,
    again: size === "desk",
    async run(ctx) {
      const page = await begin(ctx, { size });
      const check = async (where) => assert.deepEqual(await axeFinds(page), [], where);
      await check("as it opens");
      await pressOn(page, CUTOUT, size === "phone");
      await page.locator('[data-action="open"]').click();
      await check("with the cutout open");
      if (size === "desk") {
        for (const tab of ["Details", "Legend"]) {
          await page.getByRole("tab", { name: tab }).click();
          await check(tab);
        }
        await page.getByRole("button", { name: "Library" }).click();
      } else {
        await visible(page, '[data-action="more"]').tap();
        await check("more");
        await page.keyboard.press("Escape");
        await page.getByRole("button", { name: "Menu" }).tap();
        await check("menu");
        await page.locator('[data-menu="library"]').tap();
      }
      await page.locator("[data-demo]").first().waitFor();
      await check("library");
      await page.keyboard.press("Escape");
      if (size === "desk") {
        await page.getByRole("button", { name: "Settings" }).click();
        await page.getByText("Limits of this drawing").waitFor();
        await check("settings");
        await page.keyboard.press("Escape");
      }
      // What was selected before may have moved it under a button.
      await page.locator("[data-drawing]").focus();
      await page.keyboard.press("0");
      await pressOn(page, WORK_POINT, size === "phone");
      await page.locator('[data-action="grow"]').click();
      await page.locator("[data-part]").first().waitFor();
      await check("growing");
    },
  })),
];
