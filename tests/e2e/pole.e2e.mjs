import assert from "node:assert/strict";
import { act, begin } from "./bar.mjs";
import { pressAt, pressOn, spotOf } from "./spots.mjs";
import { chooseFiles, noSidewaysScroll } from "./scenarios.mjs";
import { becomes } from "./becomes.mjs";

const row = (page, owner) => page.locator(`[data-owner="${owner}"]`).first();
const selectedRow = (page) => page.locator('[role="treeitem"][aria-selected="true"]').first();

/** A source and a cutout on Pole 30 with a span to Pole 31, and what is changed of it, as a file. */
function fileOf(name, change) {
  const system = {
    structures: { s1: { label: "Pole 30" }, s2: { label: "Pole 31" } },
    points: { p1: { on: "s1" }, p2: { on: "s1" }, p3: { on: "s2" }, p4: { on: "s2" } },
    elements: {
      src: { kind: "source", phases: "ABC", at: "p1", kvLL: 12.47 },
      c1: { kind: "cutout", phases: "A", from: "p1", to: "p2" },
      sp1: { kind: "span", phases: "A", from: "p2", to: "p3" },
      c2: { kind: "cutout", phases: "A", from: "p3", to: "p4" },
    },
  };
  change(system);
  const text = JSON.stringify({ format: "stillhot", formatVersion: 1, title: name, system });
  return { name: `${name}.stillhot.json`, mimeType: "application/json", buffer: Buffer.from(text) };
}

/** Poles that are wrong, and what is said of each. */
const REFUSED = [
  [
    "a structure that is not there",
    ({ points }) => (points.p3.on = "s9"),
    /points\.p3\.on: found "s9", expected the id of a structure/,
  ],
  [
    "a point on two",
    ({ points }) => (points.p3.on = ["s1", "s2"]),
    /points\.p3\.on: found a list of 2, expected an id/,
  ],
  [
    "structures in a circle",
    ({ structures }) => Object.assign(structures, { s1: { on: "s2" }, s2: { on: "s1" } }),
    /structures\.s1\.on: a structure is on no other one/,
  ],
  [
    "a label of 2001 letters",
    ({ structures }) => (structures.s1.label = "x".repeat(2001)),
    /structures\.s1\.label: .*at most 2000 letters/,
  ],
];

const WARNED = [
  [
    "ten thousand points on one pole",
    ({ points }) => {
      for (let n = 0; n < 10_000; n++) points[`q${n}`] = { on: "s1" };
    },
    /2 devices and 10002 points are on Pole 30/,
  ],
  [
    "ten thousand cutouts on one pole",
    ({ points, elements }) => {
      for (let n = 0; n < 10_000; n++) {
        points[`q${n}`] = { on: "s1" };
        elements[`k${n}`] = { kind: "cutout", phases: "A", from: "p1", to: `q${n}` };
      }
    },
    /10002 devices and 10002 points are on Pole 30/,
  ],
  [
    "forty poles of one label",
    (system) => {
      for (let n = 0; n < 40; n++) system.structures[`t${n}`] = { label: "Pole 7" };
    },
    /40 things are called Pole 7/,
  ],
  [
    "a device on a pole that it has no end at",
    ({ elements }) => (elements.c2.on = "s1"),
    /is said to be on Pole 30, where it has no end/,
  ],
  [
    "three things to warn of",
    ({ structures, elements }) => {
      structures.s2.label = "POLE-30";
      elements.c2.on = "s1";
      elements.c2.mast = "oak";
    },
    /mast.*are called.*where it has no end|are called.*where it has no end.*mast|are called.*mast.*where it has no end|where it has no end.*are called/,
  ],
];

const TAKEN = [
  ["a label of 2000 letters", ({ structures }) => (structures.s1.label = "Pole ".repeat(400))],
  ["a label that is markup", ({ structures }) => (structures.s1.label = "<img src=x onerror=alert(1)>")],
];

const BOTH = [
  ["desk", false],
  ["phone", true],
];

/** Presses the ground of a plate, off everything that is drawn on it. */
async function pressPlate(page, id, touch) {
  await pressAt(page, await spotOf(page, `plate ${id}`), touch);
}

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  {
    name: "what is wrong with the poles of a file is said, nothing of the drawing at hand is lost, and what misleads is named until it is put away (phone)",
    seconds: 120,
    async run(ctx) {
      const page = await ctx.open({ size: "phone" });
      await page.locator("html[data-ready]").waitFor();
      const title = page.getByLabel("Title of the drawing");
      const open = async (file) => {
        const choose = page.locator('[data-menu="open"]');
        // The menu stays where nothing came of it.
        if (!(await choose.isVisible())) await page.getByRole("button", { name: "Menu" }).click();
        await chooseFiles(page, choose, file);
      };
      const before = await title.inputValue();
      for (const [what, change, said] of REFUSED)
        await ctx.part(what, async () => {
          await open(fileOf("bad", change));
          const told = page.getByRole("dialog", { name: /was not opened\. Your drawing is as it was/ });
          await told.getByText(said).waitFor();
          await told.getByRole("button", { name: "Close" }).first().click();
          assert.equal(await title.inputValue(), before);
        });
      for (const [what, change, said] of WARNED)
        await ctx.part(what, async () => {
          await open(fileOf("misleading", change));
          await page.getByRole("alert").getByText(said).waitFor();
          await becomes(() => title.inputValue(), "misleading");
          await noSidewaysScroll(page);
          await page.getByRole("alert").getByRole("button").last().click();
          await page.getByRole("alert").waitFor({ state: "detached" });
        });
      await ctx.part("such a pole is chosen and told, a page of it at a time", async () => {
        const [, change] = WARNED.find(([what]) => what === "ten thousand cutouts on one pole");
        await open(fileOf("crowd", change));
        await becomes(() => title.inputValue(), "crowd");
        await page.getByRole("alert").getByRole("button").last().click();
        await pressPlate(page, "s1", true);
        await becomes(() => selectedRow(page).getAttribute("data-owner"), "structure:s1");
        await act(page, "details");
        const things = page.locator("[data-on]");
        await becomes(() => things.count(), 60);
        await page.locator("[data-more-of-list]").first().click();
        await becomes(() => things.count(), 120);
        assert.ok((await page.locator('[role="treeitem"]').count()) < 80);
        await noSidewaysScroll(page);
        await page.keyboard.press("Escape");
      });
      for (const [what, change] of TAKEN)
        await ctx.part(what, async () => {
          await open(fileOf(what, change));
          await becomes(() => title.inputValue(), what);
          await page.locator('.outline [data-owner="structure:s2"]').first().waitFor({ state: "attached" });
          await noSidewaysScroll(page);
        });
    },
  },
  ...BOTH.map(([size, touch]) => ({
    name: `a pole is chosen by its number, seen by one tap with all that is on it, and told as whoever stands there has it (${size})`,
    again: size === "desk",
    async run(ctx) {
      const page = await begin(ctx, { size });
      await pressPlate(page, "s33", touch);
      await becomes(() => selectedRow(page).getAttribute("aria-label"), /^Pole 33, /);
      await page.locator('.bar [data-action="seen"]').click();
      await becomes(() => selectedRow(page).getAttribute("aria-label"), /^Pole 33, .*\bseen$/);
      await page.getByText("Pole 33: seen").first().waitFor();
      await page.getByRole("button", { name: "Undo" }).first().click();
      await act(page, "details");
      const see = page.locator("[data-see]");
      await see.click();
      await page.locator('[data-seen="true"]').waitFor();
      await becomes(() => see.isDisabled(), true);
      const things = await page.locator("[data-on]").allTextContents();
      assert.match(things[0], /^Line/);
      assert.match(things.join("\n"), /T3 cutout, phases C, closed/);
      await becomes(() => page.locator('[data-reach="0"]').textContent(), /line; T3 bushing/);
      await becomes(() => page.locator('[data-reach="1"]').textContent(), /T3 secondary/);
      await noSidewaysScroll(page);
      await page.locator('[data-work="p14"]').click();
      await becomes(() => page.locator('[data-work="p14"]').getAttribute("aria-pressed"), "true");
      await page.locator('[data-on="element c4"]').click();
      await page.getByText("T3 cutout").first().waitFor();
    },
  })),
  {
    name: "a pole by keyboard alone: from the outline to what is on it, noted as leaning, and moved with all of it",
    async run(ctx) {
      const page = await begin(ctx);
      await row(page, "structure:s33").focus();
      await page.keyboard.press("ArrowUp");
      await page.keyboard.press("ArrowDown");
      await page.keyboard.press("Enter");
      await page.locator("[data-see]").focus();
      await page.keyboard.press("Enter");
      await page.locator('[data-seen="true"]').waitFor();
      await page.getByLabel("Condition").selectOption("leaning");
      await becomes(() => selectedRow(page).getAttribute("aria-label"), /^Pole 33, .*seen, not sound$/);
      await page.locator("[data-drawing]").focus();
      // The first move leaves all places to the person; from then on what is moved moves as it stands.
      await page.keyboard.press("Alt+ArrowRight");
      await ctx.settle(page);
      const before = await Promise.all(["p7", "p14", "c4"].map((it) => spotOf(page, it)));
      await page.keyboard.press("Alt+ArrowRight");
      await ctx.settle(page);
      const after = await Promise.all(["p7", "p14", "c4"].map((it) => spotOf(page, it)));
      const moved = after.map(({ x, y }, nth) => [x - before[nth].x, y - before[nth].y].join());
      assert.equal(new Set(moved).size, 1, `all of it moves alike: ${moved.join(" ")}`);
      await page.keyboard.press("Delete");
      await page
        .getByText(/^With Pole 33 goes what is on it/)
        .first()
        .waitFor();
      await becomes(() => row(page, "element:t3").count(), 0);
    },
  },
  {
    name: "a tap with four houses takes twelve touches at most, and every pole bears its real number (phone)",
    async run(ctx) {
      const page = await begin(ctx, { size: "phone" });
      let touches = 0;
      const tap = async (it) => {
        touches++;
        await it.tap();
      };
      const part = (id) => page.locator(`[data-part="${id}"]`);
      const grow = () => page.locator('.bar [data-action="grow"]');
      await tap(page.getByRole("button", { name: "Menu" }));
      await tap(page.locator('[data-menu="new"]'));
      await tap(page.locator('[data-action="source"]'));
      await tap(grow());
      await tap(part("span"));
      const number = page.locator("[data-number]");
      await tap(number);
      await page.keyboard.type("Pole 30");
      await page.keyboard.press("Enter");
      await tap(grow());
      await tap(part("span"));
      await becomes(() => number.inputValue(), "Pole 31");
      await tap(grow());
      await tap(part("tap4"));
      await tap(page.locator('[data-ask="phase"] [data-chip="A"]'));
      await tap(page.locator("[data-draw]"));
      assert.ok(touches <= 12, `${touches} touches`);
      const names = () =>
        page
          .locator('.outline [data-owner^="structure:"]')
          .evaluateAll((rows) => rows.map((it) => it.getAttribute("aria-label").split(",")[0]));
      await becomes(names, ["Station 1", "Pole 30", "Pole 31", "House 1", "House 2", "House 3", "House 4"]);
      await noSidewaysScroll(page);
    },
  },
  {
    name: "the finder lists no structure and its first point as two lines of one name",
    async run(ctx) {
      const page = await begin(ctx);
      await page.keyboard.press("Control+k");
      await page.locator("[data-find]").fill("pole 3");
      const names = (await page.locator('[data-command^="thing-"] .label').allTextContents()).map((it) =>
        it.trim(),
      );
      assert.ok(names.includes("Pole 33"), names.join("; "));
      assert.deepEqual(
        names.filter((it, nth) => names.indexOf(it) !== nth),
        [],
      );
    },
  },
  ...["the finder", "the drawing"].map((by) => ({
    name: `"go to pole 31 and open the transformer's cutout" is done at once by ${by} (phone)`,
    again: by === "the drawing",
    async run(ctx) {
      const page = await begin(ctx, { size: "phone" });
      let touches = 0;
      if (by === "the finder") {
        await page.getByRole("button", { name: "Menu" }).tap();
        await page.locator('[data-menu="find"]').tap();
        await page.locator("[data-find]").fill("pole31 cutout");
        await page.keyboard.press("Enter");
        touches += 3;
      } else {
        await pressOn(page, "c2", true);
        touches += 1;
      }
      await becomes(() => selectedRow(page).getAttribute("aria-label"), /^Pole 31, T1 cutout, .*closed/);
      await page.locator('.bar [data-action="open"]').tap();
      touches += 1;
      await becomes(() => selectedRow(page).getAttribute("aria-label"), /^Pole 31, T1 cutout, .*open/);
      assert.ok(touches <= 4, `${touches} touches`);
      await noSidewaysScroll(page);
    },
  })),
];
