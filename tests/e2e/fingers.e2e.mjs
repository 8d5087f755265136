import assert from "node:assert/strict";
import { JOURNEYS } from "./everywhere.mjs";
import { becomes } from "./becomes.mjs";
import { press } from "./job.mjs";

/** A finger's width, and a gloved one's, under which nothing is hit for certain [CSS px]. */
const LEAST = 44;

/**
 * What is pressed and smaller than a finger, each as its words and its size. A field in a label is as large as its label,
 * since a press on the label presses it.
 */
export const tooSmall = (page, least = LEAST) =>
  page.evaluate((least) => {
    const PRESSABLE =
      "a[href], button, input:not([type=hidden]), select, textarea, summary, [role=tab], [role=treeitem], [role=option], [role=radio], [role=checkbox], [role=switch]";
    const seen = (it) => {
      const { width, height } = it.getBoundingClientRect();
      return (
        width > 2 && height > 2 && it.checkVisibility({ opacityProperty: true, visibilityProperty: true })
      );
    };
    const isHidden = (it) => {
      for (let at = it; at !== null; at = at.parentElement) {
        const { clipPath } = getComputedStyle(at);
        if (at.inert || clipPath.startsWith("inset(50%")) return true;
      }
      return false;
    };
    const top = document.querySelector("dialog[open]") ?? document.body;
    return [...top.querySelectorAll(PRESSABLE)]
      .filter((it) => seen(it) && !isHidden(it))
      .flatMap((it) => {
        const ticked = ["checkbox", "radio"].includes(it.type);
        const whole = ticked ? (it.closest("label") ?? it) : it;
        const { width, height } = whole.getBoundingClientRect();
        if (width >= least - 0.5 && height >= least - 0.5) return [];
        const words = (it.ariaLabel ?? it.innerText ?? it.name ?? "").trim().slice(0, 40);
        return [
          `${it.tagName.toLowerCase()}.${it.className} "${words}" ${width.toFixed(0)} x ${height.toFixed(0)}`,
        ];
      });
  }, least);

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = JOURNEYS.flatMap(({ path, what, go }) =>
  [false, true].map((glove) => ({
    name: `all that is pressed in ${what} is as large as a finger at 360 px${glove ? ", in a glove" : ""}`,
    again: glove,
    seconds: 300,
    async run(ctx) {
      const page = await ctx.open({
        size: "phone",
        path,
        options: { viewport: { width: 360, height: 640 } },
      });
      await page.locator("html[data-ready]").waitFor();
      if (glove) await press(page.getByRole("button", { name: "Glove mode" }), true);
      let seen = 0;
      await go(page, async (where) => {
        seen++;
        await becomes(() => tooSmall(page), [], where);
        const sideways = () => page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
        await becomes(sideways, false, `${where} is no wider than the screen`);
        if (where === "one mistake away")
          await becomes(
            () => page.locator("[data-drawing]").evaluate((it) => it.clientHeight >= innerHeight / 3),
            true,
            "what a view tells leaves the drawing its third",
          );
      });
      assert.ok(seen > 0, `${path} shows nothing`);
    },
  })),
);
