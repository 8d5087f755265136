import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import encodeQR from "qr";
import { startBrowser } from "./browser.mjs";
import { axeFinds, chooseFiles, noSidewaysScroll } from "./scenarios.mjs";
import { becomes } from "./becomes.mjs";
import { fileFrom } from "./fileFrom.mjs";

const ready = (page) => page.locator("html[data-ready]").waitFor();
const title = (page) => page.getByLabel("Title of the drawing");
const letters = async (page) => {
  await page.locator('[data-fingerprint]:not([data-fingerprint=""])').waitFor();
  return page.locator("[data-fingerprint]").getAttribute("data-fingerprint");
};

async function begin(ctx, opening) {
  const page = await ctx.open(opening);
  await ready(page);
  return page;
}

async function share(page) {
  await page.getByRole("button", { name: "Menu" }).click();
  await page.locator('[data-menu="share"]').click();
}

async function downloaded(page, press) {
  const download = await fileFrom(page, press);
  return { name: download.suggestedFilename(), path: await download.path() };
}

/** Drops a file onto the page as a person does from a folder. */
async function drop(page, name, type, buffer) {
  const data = await page.evaluateHandle(
    ([named, kind, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([Uint8Array.from(content)], named, { type: kind }));
      return transfer;
    },
    [name, type, [...buffer]],
  );
  await page.locator(".app").dispatchEvent("drop", { dataTransfer: data });
}

/** What was done on the way of a file into a drawing is read, and put away. */
async function closeTold(page) {
  const told = page.locator("[data-told]").first();
  await told.waitFor();
  await page.getByRole("button", { name: "Close" }).first().click();
  await told.waitFor({ state: "detached" });
}

async function scan(page) {
  await page.getByRole("button", { name: "Menu" }).click();
  await page.locator('[data-menu="scan"]').click();
  await page.locator("[data-scanner]").waitFor();
}

/** The picture of the one code that the app shows of the open drawing, as a phone would photograph it. */
async function photographCode(page) {
  await share(page);
  const code = page.locator('[data-code="1"]');
  await code.scrollIntoViewIfNeeded();
  const picture = await code.screenshot();
  await page.keyboard.press("Escape");
  return picture;
}

async function choosePicture(page, ...files) {
  await chooseFiles(
    page,
    page.locator('[data-scan="file"]'),
    files.map((buffer, n) => ({ name: `photo-${n + 1}.png`, mimeType: "image/png", buffer })),
  );
}

/** A film that a pretended camera plays: the picture on white, still, in the raw form that Chromium reads. */
async function filmOf(page, picture, file) {
  const grey = await page.evaluate(
    async ([data, width, height]) => {
      const image = await createImageBitmap(new Blob([Uint8Array.from(data)], { type: "image/png" }));
      const canvas = new OffscreenCanvas(width, height);
      const context = canvas.getContext("2d");
      context.fillStyle = "#ffffff";
      context.fillRect(0, 0, width, height);
      const side = height * 0.94;
      context.imageSmoothingEnabled = false;
      context.drawImage(image, (width - side) / 2, (height - side) / 2, side, side);
      const { data: pixels } = context.getImageData(0, 0, width, height);
      let text = "";
      for (let at = 0; at < pixels.length; at += 4) text += pixels[at] > 127 ? "1" : "0";
      return text;
    },
    [[...picture], FILM.width, FILM.height],
  );
  const luma = Buffer.from(grey, "latin1").map((it) => (it === 0x31 ? 235 : 16));
  const chroma = Buffer.alloc(luma.length / 2, 128);
  const frame = Buffer.concat([Buffer.from("FRAME\n"), luma, chroma]);
  const head = `YUV4MPEG2 W${FILM.width} H${FILM.height} F10:1 Ip A1:1 C420jpeg\n`;
  writeFileSync(file, Buffer.concat([Buffer.from(head), frame, frame]));
}
const FILM = { width: 1280, height: 720 };

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  ...["desk", "phone"].map((size) => ({
    name: `a link holds the drawing, and opens it on another device with the same fingerprint (${size})`,
    again: size === "desk",
    async run(ctx) {
      const page = await begin(ctx, { size });
      await title(page).fill("Sent by link");
      await title(page).blur();
      const sent = await letters(page);
      await share(page);
      const link = await page.locator('[data-link="short"]').inputValue();
      assert.match(link, /#d1\.[\w-]+$/);
      assert.ok(link.length < 8000);
      await page.locator('[data-code="1"]').waitFor();
      const other = await begin(ctx, { size, url: link });
      await becomes(() => title(other).inputValue(), "Sent by link");
      assert.equal(await letters(other), sent);
      assert.equal(new URL(other.url()).hash, "", "an edited drawing must not stand under an old link");
    },
  })),
  {
    name: "a map and a utility's model open as drawings, and all that was done on the way is told",
    async run(ctx) {
      const page = await begin(ctx);
      await title(page).fill("Written as a map");
      await title(page).blur();
      await share(page);
      const map = await downloaded(page, () => page.locator('[data-share="map"]').click());
      assert.equal(map.name, "written-as-a-map.geojson");
      await page.locator("[data-told]").first().waitFor();
      const other = await begin(ctx);
      await drop(other, map.name, "application/geo+json", readFileSync(map.path));
      await other.getByText(`Opened ${map.name}`).first().waitFor();
      await becomes(() => title(other).inputValue(), "Written as a map");

      await closeTold(other);

      await closeTold(page);
      await share(page);
      const written = await downloaded(page, () => page.locator('[data-share="model"]').click());
      assert.equal(written.name, "written-as-a-map.xml");
      await page.locator("[data-told]").first().waitFor();
      await drop(other, written.name, "application/xml", readFileSync(written.path));
      await other.getByText(`Opened ${written.name}`).first().waitFor();
      await becomes(() => title(other).inputValue(), "Written as a map");
      await closeTold(other);

      const model = readFileSync("shared/import/cases/05-regulator-steps.xml");
      await drop(other, "regulator.xml", "application/xml", model);
      await other.locator('[data-told="assumed"]').waitFor();
      await closeTold(other);
      await drop(other, "bad.xml", "application/xml", Buffer.from('<!DOCTYPE x []><rdf:RDF xmlns:rdf="x"/>'));
      await other
        .getByText(/document type/)
        .first()
        .waitFor();
    },
  },
  {
    name: "the PNG of a large drawing is painted beside the page as the browser itself paints its SVG, and opens again",
    async run(ctx) {
      const page = await begin(ctx);
      const poles = Array.from({ length: 60 }, (_, n) => n);
      const large = {
        format: "stillhot",
        formatVersion: 1,
        title: "Large",
        system: {
          points: Object.fromEntries(
            ["p", "q"].flatMap((it) =>
              poles.map((n) => [`${it}${n}`, { label: `${it === "p" ? "Pole" : "House"} ${n}` }]),
            ),
          ),
          elements: {
            s: { kind: "source", at: "p0", phases: "ABC", kvLL: 12.47 },
            ...Object.fromEntries(
              poles.flatMap((n) => [
                [
                  `t${n}`,
                  {
                    kind: "transformer",
                    from: `p${n}`,
                    to: `q${n}`,
                    phases: "ABC"[n % 3],
                    connection: "single",
                    kva: 25,
                    primaryKv: 7.2,
                    secondaryV: 240,
                  },
                ],
                [`l${n}`, { kind: "load", at: `q${n}`, phases: "12", kw: 5, customers: 2 }],
                ...(n === 0
                  ? []
                  : [
                      [
                        `n${n}`,
                        {
                          kind: "span",
                          from: `p${Math.max(0, n - 1 - (n % 4))}`,
                          to: `p${n}`,
                          phases: "ABC",
                          lengthM: 50,
                        },
                      ],
                    ]),
              ]),
            ),
          },
        },
      };
      await drop(page, "large.json", "application/json", Buffer.from(JSON.stringify(large)));
      await becomes(() => title(page).inputValue(), "Large");
      await share(page);
      const svg = await downloaded(page, () => page.locator('[data-share="svg"]').click());
      await share(page);
      const png = await downloaded(page, () => page.locator('[data-share="png"]').click());
      const apart = await page.evaluate(
        async ([asSvg, asPng]) => {
          const picture = async (type, letters) => {
            const image = new Image();
            image.src = `data:${type};base64,${letters}`;
            await image.decode();
            return image;
          };
          const [drawn, painted] = [await picture("image/svg+xml", asSvg), await picture("image/png", asPng)];
          const { naturalWidth: width, naturalHeight: height } = painted;
          const pixels = (image) => {
            const context = Object.assign(document.createElement("canvas"), { width, height }).getContext(
              "2d",
            );
            context.drawImage(image, 0, 0, width, height);
            return context.getImageData(0, 0, width, height).data;
          };
          const [a, b] = [pixels(drawn), pixels(painted)];
          const shape = Math.abs((width / height) * (drawn.naturalHeight / drawn.naturalWidth) - 1);
          let differing = 0;
          let inked = 0;
          for (let at = 0; at < a.length; at += 4) {
            if (
              Math.abs(a[at] - b[at]) + Math.abs(a[at + 1] - b[at + 1]) + Math.abs(a[at + 2] - b[at + 2]) >
              150
            )
              differing++;
            if (a[at] + a[at + 1] + a[at + 2] < 500) inked++;
          }
          return { shape, inked, differing, width, height };
        },
        [svg, png].map(({ path }) => readFileSync(path).toString("base64")),
      );
      assert.ok(apart.shape < 0.01, `of another shape: ${apart.shape}`);
      assert.ok(apart.inked > 10_000, `hardly anything is drawn: ${apart.inked}`);
      // Edges of letters may fall otherwise.
      assert.ok(apart.differing < apart.inked / 50, `${apart.differing} of ${apart.inked} pixels differ`);
      const other = await begin(ctx);
      await drop(other, png.name, "image/png", readFileSync(png.path));
      await becomes(() => title(other).inputValue(), "Large");
    },
  },
  {
    name: "SVG and PNG carry the drawing and open again by drop, by the file button and by paste",
    async run(ctx) {
      const page = await begin(ctx);
      await title(page).fill("Inside a picture");
      await title(page).blur();
      const sent = await letters(page);
      await share(page);
      const png = await downloaded(page, () => page.locator('[data-share="png"]').click());
      assert.equal(png.name, "inside-a-picture.png");
      await share(page);
      const svg = await downloaded(page, () => page.locator('[data-share="svg"]').click());
      const other = await begin(ctx);
      /** One way in which the picture comes to another device, whose drawing is another one before. */
      const opensBy = (way, open) =>
        ctx.part(way, async () => {
          await title(other).fill("Another");
          await title(other).blur();
          await open();
          await becomes(() => title(other).inputValue(), "Inside a picture");
          assert.equal(await letters(other), sent);
        });
      for (const [{ name, path }, type] of [
        [png, "image/png"],
        [svg, "image/svg+xml"],
      ])
        await opensBy(`dropped ${type}`, async () => {
          await drop(other, name, type, readFileSync(path));
          await other.getByText(`Opened ${name}`).first().waitFor();
        });
      await opensBy("the file button", () =>
        chooseFiles(other, other.getByRole("button", { name: "Open a file" }).first(), png.path),
      );
      await opensBy("pasted text of an SVG", () =>
        other.evaluate(
          (text) => {
            const data = new DataTransfer();
            data.setData("text/plain", text);
            document.body.dispatchEvent(
              new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }),
            );
          },
          readFileSync(svg.path, "utf8"),
        ),
      );
    },
  },
  ...["desk", "phone"].map((size) => ({
    name:
      size === "desk"
        ? "a photograph of a code is known again, and tells paper that is stale (desk)"
        : "a photograph of a code opens its drawing, tells paper that is stale, and refuses anything else (phone)",
    again: size === "desk",
    async run(ctx) {
      const page = await begin(ctx, { size, path: "?demo=transformer-tap" });
      await title(page).fill("On paper");
      await title(page).blur();
      const printed = await letters(page);
      const picture = await photographCode(page);
      await scan(page);
      await page.locator("[data-no-camera]").waitFor();
      await choosePicture(page, picture);
      await page.locator('[data-likeness="same"]').getByText(printed).waitFor();
      await page.keyboard.press("Escape");
      // The drawing is changed, the paper is not.
      await page.getByRole("button", { name: "Menu" }).click();
      await page.locator('[data-menu="settings"]').click();
      await page.getByRole("button", { name: "50 Hz" }).click();
      await page.keyboard.press("Escape");
      await page.waitForFunction((it) => {
        const now = document.querySelector("[data-fingerprint]").getAttribute("data-fingerprint");
        return now !== "" && now !== it;
      }, printed);
      const now = await letters(page);
      await scan(page);
      await choosePicture(page, picture);
      const stale = await page.locator('[data-likeness="stale"]').innerText();
      assert.ok(stale.includes(printed) && stale.includes(now), stale);
      assert.deepEqual(await axeFinds(page), []);
      await noSidewaysScroll(page);
      // What follows is the same at every size.
      if (size === "desk") return;
      await page.locator('[data-scan="open"]').click();
      await page.waitForFunction(
        (it) => document.querySelector("[data-fingerprint]").getAttribute("data-fingerprint") === it,
        printed,
      );
      await scan(page);
      await choosePicture(page, await page.locator("body").screenshot());
      await page.locator("[data-problem]").getByText("No code could be read", { exact: false }).waitFor();
      const foreign = Buffer.from(encodeQR("https://example.com/?pay=100", "gif", { border: 4, scale: 6 }));
      await choosePicture(page, foreign);
      await page.locator("[data-problem]").getByText("holds no drawing", { exact: false }).waitFor();
      assert.equal(await letters(page), printed);
      await page.keyboard.press("Escape");
      // The photograph is opened as a file too.
      const other = await begin(ctx, { size });
      await drop(other, "photo.png", "image/png", picture);
      await other.getByText("Opened photo.png").first().waitFor();
      assert.equal(await letters(other), printed);
    },
  })),
  {
    name: "codes of a drawing that takes several are photographed together",
    async run(ctx) {
      const page = await begin(ctx);
      const points = {};
      for (let k = 0; k < 60; k++) {
        const label = [...crypto.getRandomValues(new Uint32Array(3))].map((it) => it.toString(36)).join(" ");
        points[`p${k}`] = { label, x: k * 40, y: 0 };
      }
      const file = { format: "stillhot", formatVersion: 1, title: "Wide", system: { points, elements: {} } };
      await drop(page, "wide.json", "application/json", Buffer.from(JSON.stringify(file)));
      await page.waitForFunction(() => document.querySelector("header input")?.value === "Wide");
      const sent = await letters(page);
      await share(page);
      await page.locator('[data-code="2"]').waitFor();
      const pictures = [];
      for (const code of await page.locator("[data-code]").all()) {
        await code.scrollIntoViewIfNeeded();
        pictures.push(await code.screenshot());
      }
      const other = await begin(ctx);
      await scan(other);
      await choosePicture(other, pictures[1]);
      await other.locator('[data-parts="2"]').waitFor();
      await choosePicture(other, ...pictures);
      await other.locator('[data-likeness="other"]').waitFor();
      await other.locator('[data-scan="open"]').click();
      await other.waitForFunction(() => document.querySelector("header input")?.value === "Wide");
      assert.equal(await letters(other), sent);
    },
  },
  {
    name: "the camera reads a code by itself, and is let go",
    async run(ctx) {
      const page = await begin(ctx, { path: "?demo=transformer-tap" });
      const sent = await letters(page);
      const film = join(mkdtempSync(join(tmpdir(), "stillhot-film-")), "code.y4m");
      await filmOf(page, await photographCode(page), film);
      const { browser } = await startBrowser([
        "--use-fake-device-for-media-stream",
        `--use-file-for-fake-video-capture=${film}`,
      ]);
      try {
        const context = await browser.newContext({ permissions: ["camera"], locale: "en-US" });
        const phone = await context.newPage();
        await phone.goto(`${ctx.url}?demo=transformer-tap`);
        await ready(phone);
        await phone.evaluate(() => {
          const { mediaDevices } = navigator;
          const ask = mediaDevices.getUserMedia.bind(mediaDevices);
          mediaDevices.getUserMedia = async (wanted) => (window.given = await ask(wanted));
        });
        await scan(phone);
        await phone.locator('[data-likeness="same"]').getByText(sent).waitFor({ timeout: 60_000 });
        const tracks = () => phone.evaluate(() => window.given.getTracks().map((it) => it.readyState));
        await becomes(() => tracks(), ["ended"]);
        const denied = await (await browser.newContext({ permissions: [], locale: "en-US" })).newPage();
        await denied.goto(ctx.url);
        await ready(denied);
        await scan(denied);
        await denied.locator('[data-no-camera="refused"]').waitFor();
      } finally {
        await browser.close();
      }
    },
  },
  {
    name: "a foreign SVG, a damaged link and a photograph are refused, and the drawing stays as it was",
    async run(ctx) {
      const page = await begin(ctx);
      await title(page).fill("Untouched");
      await title(page).blur();
      const before = await letters(page);
      const foreign =
        '<svg xmlns="http://www.w3.org/2000/svg" onload="window.ran = true"><script>window.ran = true</script></svg>';
      await drop(page, "foreign.svg", "image/svg+xml", Buffer.from(foreign));
      await page.getByText("This picture carries no drawing", { exact: false }).first().waitFor();
      await page.keyboard.press("Escape");
      await drop(page, "photo.jpg", "image/jpeg", Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16]));
      await page.getByText("neither a drawing's file", { exact: false }).first().waitFor();
      await page.keyboard.press("Escape");
      await page.evaluate(() => (location.hash = "#d1.AAAAnotadrawing"));
      await page.getByText("cut off or damaged", { exact: false }).first().waitFor();
      await page.keyboard.press("Escape");
      assert.equal(await page.evaluate(() => window.ran), undefined);
      await becomes(() => title(page).inputValue(), "Untouched");
      assert.equal(await letters(page), before);
    },
  },
  {
    name: "a drawing too large for a link is offered as a file",
    async run(ctx) {
      const page = await begin(ctx);
      const points = {};
      const elements = { s1: { kind: "source", at: "p0", phases: "ABC", kvLL: 12.47 } };
      for (let k = 0; k < 400; k++) {
        const label = [...crypto.getRandomValues(new Uint32Array(2))].map((it) => it.toString(36)).join(" ");
        points[`p${k}`] = { label, x: k * 40, y: 0 };
        if (k > 0) elements[`n${k}`] = { kind: "span", from: `p${k - 1}`, to: `p${k}`, phases: "ABC" };
      }
      const file = { format: "stillhot", formatVersion: 1, title: "Long", system: { points, elements } };
      await drop(page, "long.json", "application/json", Buffer.from(JSON.stringify(file)));
      await page.waitForFunction(() => document.querySelector("header input")?.value === "Long");
      await share(page);
      await page.locator('[data-link="long"]').waitFor();
      await becomes(() => page.locator('[data-link="short"]').count(), 0);
    },
  },
  ...["light", "dark"].map((theme) => ({
    name: `the printed page has the drawing in black on white, its legend, fingerprint and caution, and nothing of the app (${theme})`,
    again: theme === "light",
    async run(ctx) {
      const page = await begin(ctx, { theme, ahead: true });
      const mark = await letters(page);
      // What lays the page out is fetched when the hands rest: a print before that finds nothing.
      await page.waitForFunction(() => {
        window.dispatchEvent(new Event("beforeprint"));
        return document.querySelector("#paper > svg") !== null;
      });
      await page.emulateMedia({ media: "print" });
      await page.locator("#paper > svg").waitFor();
      const words = await page.locator("#paper").innerText();
      assert.ok(words.includes(mark));
      assert.match(words, /Only test and grounds make a conductor dead/);
      await becomes(() => page.locator("#app").isVisible(), false);
      await becomes(
        () => page.locator("#paper .key li svg").count(),
        8,
        "each state with its line and badge",
      );
      for (const state of ["Energized", "Backfed", "Isolated", "Grounded"])
        assert.ok(words.includes(state), state);
      const painted = await page.evaluate(() => {
        const colours = new Set();
        for (const it of document.querySelectorAll("#paper, #paper *")) {
          const style = getComputedStyle(it);
          for (const one of [style.color, style.fill, style.stroke, style.backgroundColor]) colours.add(one);
        }
        const isGrey = (it) => {
          const [r, g, b] = it.match(/[\d.]+/g)?.map(Number) ?? [0, 0, 0];
          return r === g && g === b;
        };
        return [...colours].filter((it) => !isGrey(it));
      });
      assert.deepEqual(painted, [], "everything is black, white or grey");
      assert.equal(
        await page.evaluate(() => getComputedStyle(document.body).backgroundColor),
        "rgb(255, 255, 255)",
      );
      for (const format of ["A4", "Letter"]) {
        const pdf = await page.pdf({ format });
        assert.equal(pdf.toString("latin1").match(/\/Type\s*\/Page\b/g).length, 1, format);
      }
    },
  })),
];
