import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { becomes } from "./becomes.mjs";
import { noSidewaysScroll } from "./scenarios.mjs";
import { boxAtRest, onPage, spotOf } from "./spots.mjs";
import { fileFrom } from "./fileFrom.mjs";

const picture = (page) => page.locator("[data-underlay]");
const does = (page, what) => page.locator(`[data-underlay-do="${what}"]`);
const press = (it, touch) => (touch ? it.tap() : it.click());
const lieOf = async (page) => (await picture(page).getAttribute("data-underlay")).split(" ").map(Number);

/** A map of black and red lines on white, as somebody photographs it. */
function mapPicture(page) {
  return page
    .evaluate(async () => {
      const canvas = new OffscreenCanvas(800, 600);
      const context = canvas.getContext("2d");
      context.fillStyle = "#ffffff";
      context.fillRect(0, 0, 800, 600);
      context.fillStyle = "#000000";
      context.fillRect(0, 280, 800, 40);
      context.fillStyle = "#ff0000";
      context.fillRect(380, 0, 40, 280);
      const blob = await canvas.convertToBlob({ type: "image/png" });
      return [...new Uint8Array(await blob.arrayBuffer())];
    })
    .then((bytes) => Buffer.from(bytes));
}

/** Opens the panel: by the bar, or behind More where there is no room for it. */
async function openPanel(page, touch) {
  const shown = page.locator('.bar [data-action="trace"]');
  if (await shown.isVisible()) await press(shown, touch);
  else {
    await press(page.locator('.bar [data-action="more"]'), touch);
    await press(page.locator('dialog [data-action="trace"]'), touch);
  }
  await page.locator("[data-underlay-panel]").waitFor();
}

const closePanel = (page, touch) => press(page.locator("[data-underlay-panel] header button"), touch);

const choose = (page, file) => page.locator("[data-underlay-file]").setInputFiles(file);

async function begin(ctx, { size, options, path = "" }) {
  const page = await ctx.open({ size, options, path });
  await page.locator("html[data-ready]").waitFor();
  return page;
}

async function newDrawing(page, touch) {
  await press(page.getByRole("button", { name: "Menu" }), touch);
  await press(page.locator('[data-menu="new"]'), touch);
  await page.locator('.bar [data-action="source"]').waitFor();
}

/** Adds a pole at a spot of the picture, given as a share of its width and height from its middle. */
async function poleOn(page, [across, down], touch) {
  const shown = page.locator('.bar [data-action="place"]');
  if (await shown.isVisible()) await press(shown, touch);
  else {
    await press(page.locator('.bar [data-action="more"]'), touch);
    await press(page.locator('dialog [data-action="place"]'), touch);
  }
  const [x, y, breadth] = await lieOf(page);
  const at = await onPage(page, { x: x + across * breadth, y: y + down * breadth * 0.75 });
  if (touch) await page.touchscreen.tap(at.x, at.y);
  else await page.mouse.click(at.x, at.y);
}

async function tapEmpty(page, touch) {
  const { x, y, width } = await boxAtRest(page.locator("[data-drawing]").first());
  if (touch) await page.touchscreen.tap(x + width / 2, y + 12);
  else await page.mouse.click(x + width / 2, y + 12);
}

/** How far the poles stand from where they were put on the picture, in the drawing's units. */
async function apart(page, id, [across, down]) {
  const [[x, y, breadth], spot] = [await lieOf(page), await spotOf(page, id)];
  return Math.hypot(spot.x - (x + across * breadth), spot.y - (y + down * breadth * 0.75));
}

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  ...[
    { what: "desk", size: "desk" },
    { what: "phone, 390 px", size: "phone" },
    { what: "phone, 360 px", size: "phone", options: { viewport: { width: 360, height: 640 } } },
    {
      what: "a glove at 360 px",
      size: "phone",
      options: { viewport: { width: 360, height: 640 } },
      glove: true,
    },
  ].map(({ what, size, options, glove }) => ({
    name: `a photo of the map lies under a new drawing, poles are put on it and stay on it, and no link or file has it (${what})`,
    again: !glove,
    async run(ctx) {
      const touch = size === "phone";
      const page = await begin(ctx, { size, options });
      const map = await mapPicture(page);
      if (glove) await page.getByRole("button", { name: "Glove mode" }).tap();
      await newDrawing(page, touch);
      await openPanel(page, touch);
      await choose(page, { name: "map.png", mimeType: "image/png", buffer: map });
      await picture(page).waitFor();
      await noSidewaysScroll(page);
      const drawing = await page.locator("[data-drawing]").boundingBox();
      const { height } = page.viewportSize();
      assert.ok(drawing.height >= height / 3, `${drawing.height} px of the drawing are left`);
      await closePanel(page, touch);
      const [left, right] = [
        [-0.3, -0.2],
        [0.3, -0.25],
      ];
      await poleOn(page, left, touch);
      await becomes(() => page.locator('.outline [data-owner^="structure:"]').count(), 1);
      // The pole is chosen now: another one begins on empty ground.
      await tapEmpty(page, touch);
      await poleOn(page, right, touch);
      await becomes(() => page.locator('.outline [data-owner^="structure:"]').count(), 2);
      const ids = Object.keys(
        JSON.parse(await page.locator("[data-drawing]").getAttribute("data-spots")),
      ).filter((it) => !it.startsWith("plate "));
      // A tap is snapped to the grid of 20: half a diagonal of it.
      const areThere = async () => [
        (await apart(page, ids[0], left)) < 15 || (await apart(page, ids[0], left)),
        (await apart(page, ids[1], right)) < 15 || (await apart(page, ids[1], right)),
      ];
      await becomes(areThere, [true, true], "each pole stands where it was put on the picture");
      // The picture pans and zooms with the drawing: it keeps its place in the drawing's own units.
      const lie = await lieOf(page);
      const before = await picture(page).boundingBox();
      await press(page.getByRole("button", { name: "Zoom in" }), touch);
      await becomes(async () => (await picture(page).boundingBox()).width > before.width * 1.3, true);
      assert.deepEqual(await lieOf(page), lie);
      // Kept on the device, and there again after a reload.
      await page.locator('[data-save="saved"]').waitFor();
      await page.reload();
      await page.locator("html[data-ready]").waitFor();
      await picture(page).waitFor();
      assert.deepEqual(await lieOf(page), lie);
      await becomes(areThere, [true, true], "the poles are still on it");
      // Nothing that leaves the device has it.
      await press(page.getByRole("button", { name: "Menu" }), touch);
      const download = await fileFrom(page, () => press(page.locator('[data-menu="save"]'), touch));
      const file = readFileSync(await download.path(), "utf8");
      assert.ok(file.length < 4000 && !/image|underlay|base64/.test(file), file.slice(0, 400));
      await press(page.getByRole("button", { name: "Menu" }), touch);
      await press(page.locator('[data-menu="share"]'), touch);
      const link = await page.locator('[data-link="short"]').inputValue();
      await page.keyboard.press("Escape");
      const other = await ctx.open({ size, options, url: link });
      await other.locator("html[data-ready]").waitFor();
      await other.locator('.outline [data-owner^="structure:"]').first().waitFor({ state: "attached" });
      assert.equal(await picture(other).count(), 0);
      // Another drawing of this device has none either; this one has it again.
      await newDrawing(page, touch);
      await becomes(() => picture(page).count(), 0);
    },
  })),
  {
    name: "the picture is moved, sized, turned, hidden, taken away and put back: by mouse, by buttons and by keys",
    async run(ctx) {
      const page = await begin(ctx, { size: "desk", path: "?demo=sideline-three-transformers" });
      const map = await mapPicture(page);
      await openPanel(page);
      await page.locator("[data-underlay-panel]").getByText("stays on this device").waitFor();
      await choose(page, { name: "map.png", mimeType: "image/png", buffer: map });
      await picture(page).waitFor();
      // The program lays this drawing out: that is said, and by one press the poles stay.
      await page.locator("[data-underlay-laid]").waitFor();
      const stood = await spotOf(page, "p7");
      await does(page, "stay").click();
      await becomes(() => page.locator("[data-underlay-laid]").count(), 0);
      await page.locator('[data-save="saved"]').waitFor();
      await page.getByRole("button", { name: "Zoom in" }).click();
      await becomes(async () => Math.abs((await spotOf(page, "p7")).x - stood.x) < 400, true);

      const lie = () => lieOf(page);
      const [x, y, breadth] = await lie();
      const box = await boxAtRest(page.locator("[data-grip]"));
      const scale = Number((await page.locator("[data-drawing]").getAttribute("data-camera")).split(" ")[2]);
      const spots = await page.locator("[data-drawing]").getAttribute("data-spots");
      await page.mouse.move(box.x + 100, box.y + 100);
      await page.mouse.down();
      await page.mouse.move(box.x + 160, box.y + 130, { steps: 3 });
      await page.mouse.up();
      await becomes(async () => Math.abs((await lie())[0] - x - 60 / scale) < 1, true, "a drag moves it");
      assert.ok(Math.abs((await lie())[1] - y - 30 / scale) < 1);
      assert.equal(
        await page.locator("[data-drawing]").getAttribute("data-spots"),
        spots,
        "and nothing of the drawing",
      );
      await page.mouse.wheel(0, -300);
      await becomes(async () => (await lie())[2] > breadth * 1.2, true, "a wheel sizes it");
      for (const [what, key] of [
        ["left", 0],
        ["right", 0],
        ["up", 1],
        ["down", 1],
        ["larger", 2],
        ["smaller", 2],
        ["turnLeft", 3],
        ["turnRight", 3],
      ]) {
        const before = (await lie())[key];
        await does(page, what).click();
        await becomes(async () => (await lie())[key] !== before, true, what);
      }
      await page.locator("[data-grip]").focus();
      for (const [pressed, key] of [
        ["ArrowLeft", 0],
        ["ArrowDown", 1],
        ["+", 2],
        ["-", 2],
        [".", 3],
        [",", 3],
      ]) {
        const before = (await lie())[key];
        await page.keyboard.press(pressed);
        await becomes(async () => (await lie())[key] !== before, true, pressed);
      }
      await does(page, "bring").click();
      await becomes(async () => (await lie())[3], 0, "it comes straight to where one looks");
      await does(page, "hide").click();
      await becomes(() => picture(page).count(), 0);
      await does(page, "hide").click();
      await picture(page).waitFor();
      // No colour of it is left that could be taken for a state, and it is pale.
      const look = await picture(page).evaluate((it) => {
        const { filter, opacity } = getComputedStyle(it);
        return { filter, isPale: Number(opacity) <= 0.26 };
      });
      assert.deepEqual(look, { filter: "grayscale(1)", isPale: true });
      await does(page, "drop").click();
      await becomes(() => picture(page).count(), 0);
      await does(page, "back").click();
      await picture(page).waitFor();
      await does(page, "drop").click();
      await becomes(() => picture(page).count(), 0);
      await page.keyboard.press("Escape");
      await page.locator("[data-underlay-panel]").waitFor({ state: "detached" });
      await page.reload();
      await page.locator("html[data-ready]").waitFor();
      await ctx.settle(page);
      assert.equal(await picture(page).count(), 0, "what was taken away does not come back");
    },
  },
  {
    name: "two fingers size and turn the picture and leave the drawing alone, in French (phone)",
    async run(ctx) {
      const page = await begin(ctx, {
        size: "phone",
        path: "?demo=sideline-three-transformers",
        options: { locale: "fr-CA" },
      });
      const map = await mapPicture(page);
      await openPanel(page, true);
      await page.locator("[data-underlay-panel]").getByText("L'image reste sur cet appareil").waitFor();
      await choose(page, { name: "plan.png", mimeType: "image/png", buffer: map });
      await picture(page).waitFor();
      const before = await lieOf(page);
      const camera = await page.locator("[data-drawing]").getAttribute("data-camera");
      const { x, y, width, height } = await boxAtRest(page.locator("[data-grip]"));
      const middle = { x: x + width / 2, y: y + height / 2 };
      const client = await page.context().newCDPSession(page);
      const touch = (type, ...points) =>
        client.send("Input.dispatchTouchEvent", {
          type,
          touchPoints: points.map(([dx, dy], id) => ({ x: middle.x + dx, y: middle.y + dy, id })),
        });
      await touch("touchStart", [-40, 0]);
      await touch("touchStart", [-40, 0], [40, 0]);
      for (const step of [1, 2, 3, 4]) await touch("touchMove", [-40, 0], [40 + 10 * step, 12 * step]);
      await touch("touchEnd");
      await becomes(async () => (await lieOf(page))[2] > before[2] * 1.3, true, "it has become larger");
      const turn = (await lieOf(page))[3];
      assert.ok(turn > 10 && turn < 45, `turned by ${turn}°`);
      assert.equal(await page.locator("[data-drawing]").getAttribute("data-camera"), camera);
      await noSidewaysScroll(page);
    },
  },
  {
    name: "a picture that is none, is too large, or finds no room is refused in one sentence, and nothing is lost",
    async run(ctx) {
      const page = await begin(ctx, { size: "phone", path: "?demo=sideline-three-transformers" });
      const map = await mapPicture(page);
      const problem = page.locator("[data-underlay-problem]");
      await openPanel(page, true);
      await choose(page, { name: "list.png", mimeType: "image/png", buffer: Buffer.from("no picture") });
      await becomes(() => problem.textContent(), /^list\.png is no picture/);
      await choose(page, { name: "map.png", mimeType: "image/png", buffer: map });
      await picture(page).waitFor();
      await becomes(() => problem.count(), 0);
      const lie = await lieOf(page);
      // What a page can give a file without one on the disk: the browser's own, of 60 MB.
      await page.evaluate(() => {
        const given = new DataTransfer();
        given.items.add(new File([new Uint8Array(60_000_000)], "huge.jpg", { type: "image/jpeg" }));
        const input = document.querySelector("[data-underlay-file]");
        input.files = given.files;
        input.dispatchEvent(new Event("change", { bubbles: true }));
      });
      await becomes(() => problem.textContent(), /60 MB.*nothing was changed/);
      await page.evaluate(() => {
        IDBObjectStore.prototype.put = () => {
          throw new DOMException("no room", "QuotaExceededError");
        };
      });
      await choose(page, { name: "other.png", mimeType: "image/png", buffer: map });
      await becomes(() => problem.textContent(), /no room left for the picture.*drawing is as it was/);
      assert.deepEqual(await lieOf(page), lie, "the picture that was there still lies there");
    },
  },
];
