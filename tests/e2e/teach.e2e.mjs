import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { at } from "../../scripts/lib/project.mjs";
import { axeFinds, begun, finish, noSidewaysScroll } from "./scenarios.mjs";
import { becomes } from "./becomes.mjs";
import { fileFrom } from "./fileFrom.mjs";

/** Counts every press, choice and text that a person would make. */
function counted(page) {
  let count = 0;
  const one = (selector) => {
    count++;
    return page.locator(selector).first();
  };
  return {
    press: (selector) => one(selector).click(),
    choose: (selector, value) => one(selector).selectOption(value),
    write: async (selector, text) => {
      const field = one(selector);
      await field.fill(text);
      await field.blur();
    },
    get count() {
      return count;
    },
  };
}

/**
 * All that a day at the training yard hides: a generator and a tie that no map has, a cutout of another number, a clamp that
 * is seized; a radio with words of its own, a trap, a hint, and an exam.
 */
const buildsAndShares = (size) => ({
  name: `an instructor builds an exam from a drawing, checks it, tries it and hands it out in at most 25 interactions (${size})`,
  again: size === "desk",
  seconds: 120,
  async run(ctx) {
    const page = await begun(ctx, { size, path: "?demo=quarry-lane#teach" });
    const hand = counted(page);
    await page.locator('[data-field="pick"]').waitFor();
    await hand.choose('[data-field="pick"]', "element g2");
    await hand.press('.chosen [data-act="hide"]');
    await hand.choose('[data-field="pick"]', "element tie");
    await hand.press('.chosen [data-act="hide"]');
    // Number and phases of its plate: the next that no other bears stands there already.
    await hand.choose('[data-field="pick"]', "element c2");
    await becomes(() => page.locator('[data-field="true-label"]').inputValue(), "T3 cutout");
    await hand.press('.chosen [data-truly="label"]');
    await hand.choose('[data-field="pick"]', "element k1");
    await hand.press('.chosen [data-truly="seized"]');
    await becomes(() => page.locator('[data-entry^="fact "]').count(), 4);

    await hand.press('[data-tab="told"]');
    await hand.write('[data-field="title"]', "The quarry");
    await hand.write('[data-field="prebrief"]', "The sideline ends where the map says.");
    await hand.write('[data-field="permit"]', "You hold the sideline from the tap.");
    await hand.choose('[data-field="mode"]', "exam");
    await hand.press('[data-tab="traps"]');
    await hand.press("[data-trap-for]");
    await hand.press('[data-tab="hints"]');
    await hand.write('[data-rung="where"]', "Look behind Lot 7.");
    await hand.press('[data-act="add-hint"]');
    await hand.press('[data-tab="check"]');
    await hand.press('[data-act="check"]');
    await page.locator("[data-solved]").waitFor({ timeout: 60_000 });
    await noSidewaysScroll(page);

    await hand.press('[data-act="try"]');
    await page.locator('[data-act="begin"]').waitFor();
    assert.ok(!(await page.content()).includes("portable generator"));
    await hand.press('[data-act="begin"]');
    await page.locator('[data-mode="exam"] [data-act="finish"]').waitFor();
    await finish(page);
    await page.locator('[data-outcome="failed"]').waitFor();

    // Besides, and not among those: something that happens in the middle, and what finding out earns.
    await page.evaluate(() => (location.hash = "teach"));
    await page.locator('[data-tab="events"]').click();
    await page.locator('[data-field="event"] option').nth(1).waitFor({ state: "attached" });
    await page.locator('[data-field="event"]').selectOption({ index: 1 });
    await page.locator('[data-field="what"]').fill("Somebody calls on the radio.");
    await page.locator('[data-act="add-event"]').click();
    await page.locator('[data-entry^="inject "]').waitFor();
    await page.locator('[data-tab="counts"]').click();
    await page.locator("[data-count-fact]").first().click();

    const download = await fileFrom(page, () => hand.press('[data-act="share"]'));
    const { scenario, system } = JSON.parse(readFileSync(await download.path(), "utf8"));
    for (const id of ["g2", "tie"]) assert.ok(!(id in system.elements), id);
    const facts = Object.values(scenario.truth);
    assert.ok(facts.some(({ set }) => set?.c2?.label === "T3 cutout"));
    assert.ok(facts.some(({ seized }) => seized?.k1));
    assert.equal(scenario.mode, "exam");
    assert.equal(Object.keys(scenario.injects).length, 1);
    assert.ok(scenario.criteria.some(({ when }) => "knows" in when));
    assert.equal(scenario.operator.permit, "You hold the sideline from the tap.");
    assert.deepEqual([scenario.traps.length, scenario.hints.length], [1, 1]);
    assert.ok(hand.count <= 25, `${hand.count} interactions`);
  },
});

const hidesInOneStep = {
  name: "what was hidden is put back on the map by one undo",
  async run(ctx) {
    const page = await begun(ctx, { path: "?demo=sideline-far-end-tie#teach" });
    await page.locator('[data-field="pick"]').selectOption({ index: 3 });
    await page.locator('[data-act="hide"]').click();
    await page.locator('[data-entry^="fact "]').waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await page.locator('[data-entry^="fact "]').waitFor({ state: "detached" });
    // Half-written hints stay as well: through a change of tab, and through a reload.
    await page.locator('[data-tab="hints"]').click();
    await page.locator('[data-rung="where"]').fill("At the far end");
    await page.locator('[data-tab="told"]').click();
    await page.reload();
    await page.locator("html[data-ready]").waitFor();
    await page.locator('[data-tab="hints"]').click();
    await becomes(() => page.locator('[data-rung="where"]').inputValue(), "At the far end");
  },
};

/** A pole chosen on the list: the map's own names, in the person's language. */
async function pick(page, label) {
  await page.locator('[data-field="pick"]').selectOption({ label });
  await becomes(() => page.locator(".chosen h3").textContent(), label);
}

const hidesAPole = (size, locale, { undo, tells }) => ({
  name: `a whole pole leaves the map, or bears another number in truth, by one press each, and the debrief tells it (${size}, ${locale})`,
  again: size === "desk",
  async run(ctx) {
    const [pole, next, bears] = ["31", "32", "34"].map(
      (it) => `${locale.startsWith("fr") ? "Poteau" : "Pole"} ${it}`,
    );
    const page = await begun(ctx, {
      size,
      path: "?demo=sideline-three-transformers#teach",
      options: { locale },
    });
    const facts = page.locator('[data-entry^="fact "]');
    const places = () => page.locator('[data-field="pick"] option').allTextContents();
    // One press, one entry, one undo: a pole in the middle of the line, with all that is on it.
    await pick(page, pole);
    await page.locator('.chosen [data-act="hide"]').click();
    await becomes(() => facts.count(), 1);
    assert.ok((await places()).includes(pole), "it is still true");
    await page.getByRole("button", { name: undo }).click();
    await becomes(() => facts.count(), 0);
    // Work is to be done on the next one: that is refused in words, and nothing changes.
    await pick(page, next);
    await page.locator('.chosen [data-act="hide"]').click();
    await page.locator('.notice[role="alert"]').waitFor();
    assert.equal(await facts.count(), 0);
    // A number that nobody has stands there already; it may be typed over.
    await becomes(() => page.locator('[data-field="true-label"]').inputValue(), bears);
    await page.locator('[data-truly="label"]').click();
    await becomes(() => facts.count(), 1);
    await pick(page, pole);
    await page.locator('.chosen [data-act="hide"]').click();
    await becomes(() => facts.count(), 2);
    await noSidewaysScroll(page);

    await page.locator('[data-act="try"]').click();
    await page.locator('[data-act="begin"]').waitFor();
    await page.locator('[data-act="begin"]').click();
    await page.locator("[data-over]").waitFor();
    assert.ok(!(await page.content()).includes(pole), "the learner's map has no such pole");
    await finish(page);
    const told = page.locator("[data-fact]");
    await becomes(() => told.count(), 2);
    const texts = (await told.allTextContents()).join(" | ").replaceAll(/\s/g, " ");
    for (const it of [...tells, pole, bears]) assert.ok(texts.includes(it), `${it}: ${texts}`);
    // Where a look shows it, and which line of "look first" leads there.
    await page.locator("[data-fact] [data-foretold]").first().waitFor();
  },
});

const drawsWhatIsLost = (size) => ({
  name: `what the map has lost is drawn in Sketch: one press leads there and one back (${size})`,
  again: size === "desk",
  async run(ctx) {
    const page = await begun(ctx, { size, path: "?demo=sideline-far-end-tie#teach" });
    await page.locator('[data-act="draw"]').click();
    await page.locator('[data-back-to="teach"]').click();
    await page.locator('[data-field="pick"]').waitFor();
    // Whoever goes to Sketch for something else is not sent back.
    await page.evaluate(() => (location.hash = "sketch"));
    await page.locator("[data-verdict]").waitFor();
    await becomes(() => page.locator("[data-back-to]").count(), 0);
  },
});

/** On a phone the place scrolls: what was chosen on the drawing comes in sight by itself. */
const showsWhatWasChosen = {
  name: "what is chosen and what is hidden come in sight on a phone, and what was written by hiding starts folded",
  async run(ctx) {
    const page = await begun(ctx, { size: "phone", path: "?demo=sideline-far-end-tie#teach" });
    const inSight = (selector) =>
      page.waitForFunction((it) => {
        const box = globalThis.document.querySelector(it)?.getBoundingClientRect();
        return box !== undefined && box.top >= 0 && box.bottom <= globalThis.innerHeight;
      }, selector);
    await page.locator('[data-field="pick"]').selectOption({ index: 3 });
    await inSight(".chosen h3");
    await page.locator('[data-act="hide"]').click();
    const lost = page.locator('[data-entry^="fact "] details[data-field="add"]');
    await lost.waitFor();
    await becomes(() => lost.evaluate((it) => it.open), false);
  },
};

/** Every kind of thing that a scenario holds, written by the forms and read back from the file. */
const writesEverything = (size) => ({
  name: `a scenario's reveals, conditions, traps, a changing load, the radio, tools and the debrief are written by forms (${size})`,
  seconds: 120,
  async run(ctx) {
    const page = await begun(ctx, { size, path: "?demo=sideline-far-end-tie#teach" });
    const entry = (name) => page.locator(`[data-entry="${name}"]`);
    const kept = (name) => page.locator(`[data-entry="${name}"][data-draft="false"]`).waitFor();
    const field = (within, name) => within.locator(`[data-field="${name}"]`).first();
    const open = async (panel) => page.locator(`[data-tab="${panel}"]`).click();
    const write = async (within, name, text) => {
      await field(within, name).fill(text);
      await field(within, name).blur();
    };
    const number = async (within, name, text) => {
      await field(within, name).locator("input").fill(text);
      await field(within, name).locator("input").blur();
    };

    // A hidden position, and the test that shows it.
    const things = page.locator('[data-field="pick"] option');
    const tie = things.filter({ hasText: /tie/i }).first();
    await page.locator('[data-field="pick"]').selectOption(await tie.getAttribute("value"));
    await page.locator('.chosen [data-truly="closed"], .chosen [data-truly="open"]').first().click();
    await page.locator('[data-add="reveals"]').click();
    const reveal = entry("reveal 0");
    await reveal.waitFor();
    await becomes(() => reveal.getAttribute("data-draft"), "true");
    await field(reveal, "by").selectOption("test");
    await field(reveal, "at").selectOption({ index: 2 });
    await write(reveal, "text", "The detector glows.");
    await kept("reveal 0");
    await field(reveal, "shows").locator("select").selectOption({ index: 1 });

    // Something that changes after some seconds, up to a minute later.
    await open("events");
    await page.locator('[data-add="injects"]').click();
    const inject = entry("inject e1");
    await inject.waitFor();
    await write(inject, "label", "The load grows");
    await field(inject, "oneOf").selectOption("seconds");
    await kept("inject e1");
    await field(inject, "more").selectOption("plusUpTo");
    await number(inject, "plusUpTo", "60");
    await inject.locator('[data-field="more"]').last().selectOption("set");
    const loads = inject.locator('[data-field="set"] [data-field="about"]');
    const { elements } = JSON.parse(
      readFileSync(at("shared/demos/sideline-far-end-tie.stillhot.json"), "utf8"),
    ).system;
    const load = Object.keys(elements).find((id) => elements[id].kind === "load");
    await loads.selectOption(load);
    await inject.locator('[data-field="set"] [data-field="key"]').selectOption("kw");
    const kw = inject.locator('[data-key="kw"] input');
    await kw.fill("40");
    await kw.blur();

    // What the system operator says, a tool that is not at hand, the level, an objective.
    await open("told");
    const panel = page.locator("#teach-panel");
    await write(panel, "permit", "You hold the section from pole 2.");
    await page.locator('[data-tool="load-break-tool"]').click();
    await number(panel, "level", "3");
    await write(panel, "objectives", "Work at a steady pace.");

    // What may never happen, at once; and time, which counts for some points.
    await open("counts");
    await page.locator('[data-act="count-time"]').click();
    await page.locator('[data-add="criteria"]').click();
    const never = page.locator('[data-entry^="criterion "]').last();
    await field(never, "kind").selectOption("never");
    await write(never, "text", "No ground goes on a live conductor.");
    await field(never, "oneOf").selectOption("rule");
    await field(never, "rule").selectOption("ground-on-live");
    await field(never, "severity").selectOption("danger");
    await field(never, "objective").selectOption({ index: 1 });
    await number(never, "weight", "7");

    // A trap of a condition within another.
    await open("traps");
    await page.locator('[data-add="traps"]').click();
    const trap = entry("trap t1");
    await write(trap, "label", "Believed the map");
    await field(trap, "oneOf").selectOption("any");
    await trap.locator('[data-act="more-any"]').click();
    await trap.locator('[data-field="any"] [data-field="oneOf"]').selectOption("consequence");
    await trap.locator('[data-field="consequence"]').last().selectOption("shock");
    await kept("trap t1");

    await open("hints");
    await page.locator('[data-add="hints"]').click();
    const hint = entry("hint h1");
    await write(hint, "think", "What stands at the far end?");
    await kept("hint h1");
    await hint.locator('[data-field="more"]').last().selectOption("until");
    await field(hint, "oneOf").selectOption("step");
    const pattern = hint.locator('fieldset[data-field="step"]');
    await field(pattern, "more").selectOption("do");
    await field(pattern, "do").selectOption("inspect");

    await open("debrief");
    await write(panel, "takeAway", "Look first.\nThen test.");
    await open("check");
    await page.locator('[data-act="more-answer"]').waitFor();
    await noSidewaysScroll(page);

    const download = await fileFrom(page, () => page.locator('[data-act="share"]').click());
    const { scenario, job } = JSON.parse(readFileSync(await download.path(), "utf8"));
    assert.equal(Object.keys(scenario.truth).length, 1);
    assert.deepEqual([scenario.reveals[0].by, scenario.reveals[0].shows], ["test", ["f1"]]);
    assert.equal(scenario.injects.e1.after.plusUpTo, 60);
    assert.deepEqual(scenario.injects.e1.set, { [load]: { kw: 40 } });
    assert.equal(scenario.operator.permit, "You hold the section from pole 2.");
    assert.equal(scenario.level, 3);
    assert.ok(job.tools.length > 0 && !job.tools.includes("load-break-tool"));
    const last = scenario.criteria.at(-1);
    assert.deepEqual(
      [last.kind, last.when, last.severity, last.weight, last.objective],
      ["never", { rule: "ground-on-live" }, "danger", 7, "o1"],
    );
    assert.ok(scenario.criteria.some(({ when, kind }) => "finishedWithin" in when && kind === "good"));
    assert.deepEqual(scenario.traps[0].when, { any: [{ consequence: "shock" }] });
    assert.deepEqual(scenario.hints[0].until, { step: { do: "inspect" } });
    assert.deepEqual(scenario.debrief.takeAway, ["Look first.", "Then test."]);
  },
});

const isAccessible = (size, theme) => ({
  name: `axe finds nothing while a scenario is built (${size}, ${theme})`,
  again: size === "desk",
  async run(ctx) {
    const page = await begun(ctx, { size, theme, path: "?demo=sideline-far-end-tie#teach" });
    await page.locator('[data-field="pick"]').selectOption({ index: 3 });
    for (const panel of ["hide", "events", "told", "counts", "traps", "hints", "debrief", "check"]) {
      await page.locator(`[data-tab="${panel}"]`).click();
      assert.deepEqual(await axeFinds(page), [], panel);
    }
    await noSidewaysScroll(page);
  },
});

export const tests = [
  buildsAndShares("desk"),
  buildsAndShares("phone"),
  // By the smaller screen, which leaves the forms less room; what they write is the same at every size.
  writesEverything("phone"),
  hidesInOneStep,
  hidesAPole("desk", "en-US", {
    undo: "Undo",
    tells: ["is hidden from the map", "bears “Pole 34” in truth"],
  }),
  hidesAPole("phone", "fr-CA", {
    undo: "Défaire",
    tells: ["est caché du plan", "porte en vérité « Poteau 34 »"],
  }),
  drawsWhatIsLost("desk"),
  drawsWhatIsLost("phone"),
  showsWhatWasChosen,
  isAccessible("desk", "light"),
  isAccessible("phone", "dark"),
];
