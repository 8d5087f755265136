import assert from "node:assert/strict";
import { readFileSync } from "node:fs";

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
  const [download] = await Promise.all([page.waitForEvent("download"), press()]);
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

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  ...["desk", "phone"].map((size) => ({
    name: `a link holds the drawing, and opens it on another device with the same fingerprint (${size})`,
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
      assert.equal(await title(other).inputValue(), "Sent by link");
      assert.equal(await letters(other), sent);
      assert.equal(new URL(other.url()).hash, "", "an edited drawing must not stand under an old link");
    },
  })),
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
      for (const [{ name, path }, type] of [
        [png, "image/png"],
        [svg, "image/svg+xml"],
      ]) {
        const other = await begin(ctx);
        await drop(other, name, type, readFileSync(path));
        await other.getByText(`Opened ${name}`).first().waitFor();
        assert.equal(await letters(other), sent);
      }
      const chosen = await begin(ctx);
      const choosing = chosen.waitForEvent("filechooser");
      await chosen.getByRole("button", { name: "Open a file" }).first().click();
      await (await choosing).setFiles(png.path.replace(/$/, ""));
      await chosen.waitForFunction(
        () => document.querySelector("header input")?.value === "Inside a picture",
      );
      // By paste, from the text of an SVG.
      const pasted = await begin(ctx);
      await pasted.evaluate(
        (text) => {
          const data = new DataTransfer();
          data.setData("text/plain", text);
          document.body.dispatchEvent(
            new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }),
          );
        },
        readFileSync(svg.path, "utf8"),
      );
      await pasted.waitForFunction(
        () => document.querySelector("header input")?.value === "Inside a picture",
      );
      assert.equal(await letters(pasted), sent);
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
      assert.equal(await title(page).inputValue(), "Untouched");
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
      assert.equal(await page.locator('[data-link="short"]').count(), 0);
    },
  },
  {
    name: "the printed page has the drawing, its fingerprint and the caution, and nothing of the app",
    async run(ctx) {
      const page = await begin(ctx);
      const mark = await letters(page);
      await page.waitForTimeout(300);
      await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
      await page.emulateMedia({ media: "print" });
      await page.locator("#paper svg").waitFor();
      const words = await page.locator("#paper").innerText();
      assert.ok(words.includes(mark));
      assert.match(words, /Only test and grounds make a conductor dead/);
      assert.equal(await page.locator("#app").isVisible(), false);
      const pdf = await page.pdf({ format: "A4" });
      assert.equal(pdf.toString("latin1").match(/\/Type\s*\/Page\b/g).length, 1);
    },
  },
];
