import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { at } from "../../scripts/lib/project.mjs";

const lane = at("shared/demos/quarry-lane.stillhot.json");

/** Runs the built command line. */
function stillhot(words, input = "") {
  const { status, stdout, stderr } = spawnSync(process.execPath, [at("dist-cli/main.js"), ...words], {
    input,
    encoding: "utf8",
    maxBuffer: 1 << 26,
  });
  assert.ok(status === 0 || status === 1, stderr);
  return stdout;
}

/** A job of so many steps: the planned order, after as many looks and questions as it takes. */
function jobOf(count) {
  const file = JSON.parse(stillhot(["plan", lane]));
  const looks = Array.from({ length: count - file.job.steps.length }, (_, n) =>
    n % 2 === 0 ? { do: "ask", text: "is the tie open?" } : { do: "inspect", at: "p2" },
  );
  file.job.steps.splice(4, 0, ...looks);
  return JSON.stringify(file);
}

/** Prints a page as a browser would, and counts its pages. */
async function print(ctx, html, format) {
  const page = await (await ctx.newContext()).newPage();
  await page.setContent(html);
  const cut = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  assert.ok(cut <= 0, `the sheet is ${cut} px too wide for a screen`);
  const pdf = await page.pdf({ format });
  return pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g).length;
}

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = ["Letter", "A4"].flatMap((format) => [
  {
    name: `a sheet of 60 steps prints on two pages of ${format}, and so does a usual one`,
    async run(ctx) {
      assert.equal(await print(ctx, stillhot(["sheet", "-"], jobOf(60)), format), 2);
      assert.equal(await print(ctx, stillhot(["sheet", "-"], stillhot(["plan", lane])), format), 2);
    },
  },
  {
    name: `no line of a sheet is cut by the end of a page (${format})`,
    async run(ctx) {
      // On paper as wide and as long as all of it, every line has the height that it has on a page.
      const page = await (await ctx.newContext()).newPage();
      await page.setContent(stillhot(["sheet", "-"], jobOf(60)));
      await page.emulateMedia({ media: "print" });
      const loose = await page.evaluate(
        () =>
          [...document.querySelectorAll(".step, .hold, li, figure, .crew, .verdict")].filter(
            (it) => getComputedStyle(it).breakInside === "auto",
          ).length,
      );
      assert.equal(loose, 0, "each of these keeps together");
    },
  },
]);
