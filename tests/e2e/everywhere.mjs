/** Goes on a phone to every place of the app, and opens every sheet and dialog there is, for tests that look at all of them. */
import { pressOrMore, tick } from "./job.mjs";

const DEMO = "?demo=sideline-three-transformers";
const MENU = ["find", "library", "kept", "share", "scan", "help", "notation", "legend", "keys", "settings"];

/** Some touches take a while: what is shown is at rest when nothing on the page moves any more. */
const settled = (page) =>
  page.evaluate(async () => {
    const frame = () => new Promise((done) => requestAnimationFrame(done));
    for (let n = 0; n < 3; n++) await frame();
    await Promise.allSettled(document.getAnimations().map((it) => it.finished));
  });

const close = async (page) => {
  await page.keyboard.press("Escape");
  await page.locator("dialog[open]").waitFor({ state: "detached" });
};
const bar = (page, id) =>
  pressOrMore(
    page,
    `.bar [data-action="${id}"], dialog [data-action="${id}"]`,
    '.bar [data-action="more"]',
    true,
  );
const choose = (page, owner) => page.locator(`[data-owner="${owner}"]`).first().dispatchEvent("click");

/** What Sketch lays over the drawing, and what lies over every place. */
async function sketch(page, see) {
  await see("Sketch");
  await page.locator("[data-places]").tap();
  await page.locator("dialog[open] [data-place]").first().waitFor();
  await see("the places");
  await close(page);
  const menu = page.getByRole("button", { name: "Menu" });
  await menu.tap();
  await page.locator("[data-menu]").first().waitFor();
  await see("the menu");
  await close(page);
  for (const id of MENU) {
    await menu.tap();
    await page.locator(`[data-menu="${id}"]`).tap();
    await page.locator(`[data-menu="${id}"]`).waitFor({ state: "detached" });
    await page.locator("dialog[open]").waitFor();
    await settled(page);
    await see(`menu: ${id}`);
    if (id === "settings") {
      await page.locator("dialog summary, dialog [data-company]").first().waitFor();
      for (const it of await page.locator("dialog details:not([open]) > summary").all()) await it.click();
      await see("menu: settings, all of them");
    }
    await close(page);
  }
  await page.locator('[data-look="menu"]').tap();
  await page.locator('dialog [data-look="mistake"]').waitFor();
  await see("the views");
  await page.locator('dialog [data-look="mistake"]').tap();
  await page.locator("[data-view]").waitFor();
  await see("one mistake away");
  await page.getByRole("button", { name: "Back to the drawing as it is" }).tap();
  await page.locator("[data-view]").waitFor({ state: "detached" });
  // The verdict opens it, also where a small screen has no button for it.
  await page.locator("[data-verdict] button").tap();
  await page.locator("dialog[open]").waitFor();
  await see("the hot list");
  await page.getByRole("button", { name: "Look first: where the drawing may be wrong" }).tap();
  await page.locator("[data-look-first]").first().waitFor();
  await see("where to look first");
  await close(page);
  await page.getByRole("button", { name: "Outline" }).tap();
  await page.locator('dialog [role="treeitem"]').first().waitFor();
  await see("the outline");
  await close(page);
  const pole = await page.locator('[data-owner^="structure:"]').nth(1).getAttribute("data-owner");
  for (const owner of ["point:p3", "element:c1", "element:s1", pole]) {
    await choose(page, owner);
    await settled(page);
    await see(`${owner} is chosen`);
    const more = page.locator('.bar [data-action="more"]');
    if ((await more.count()) > 0) {
      await more.tap();
      await page.locator("dialog [data-action]").first().waitFor();
      await see(`${owner}: more`);
      await close(page);
    }
    await bar(page, "details");
    await page.locator("dialog[open]").waitFor();
    await settled(page);
    await see(`${owner}: details`);
    await close(page);
  }
  await choose(page, "point:p3");
  await bar(page, "grow");
  await page.locator("[data-part]").first().waitFor();
  await see("what comes next");
  await close(page);
  await choose(page, pole);
  await bar(page, "stamp");
  await page.locator('[data-stamp="keep"]').waitFor();
  await see("an arrangement is kept");
  await close(page);
  await bar(page, "piece");
  await page.locator('[data-piece="ask"]').waitFor();
  await see("a part is asked for");
  await page.locator('[data-piece="ask"]').tap();
  await page.locator("[data-piece=found], [data-piece=nothing]").waitFor();
  await see("a part is found");
  await close(page);
}

async function sheet(page, see) {
  await page.locator("[data-sheet]").waitFor();
  await see("Sheet");
}

async function debrief(page, see) {
  await page.locator('[data-act="open-attempts"]').waitFor();
  await see("Debrief, nothing yet");
}

async function plan(page, see) {
  await page.evaluate(() => (location.hash = "#plan"));
  await page.locator("[data-propose]").first().waitFor();
  await see("Plan, no order yet");
  await page.locator("[data-propose]").first().tap();
  await page.locator("[data-use]").waitFor();
  await see("Plan, an order is proposed");
  await page.locator("[data-use]").tap();
  await page.locator("[data-rehearse]").waitFor();
  await see("Plan, an order");
}

async function rehearse(page, see) {
  const job = { page, touch: true };
  await page.evaluate(() => (location.hash = "#rehearse"));
  await page.locator("[data-begin]").waitFor();
  await see("Rehearse, before");
  await page.locator("[data-begin]").tap();
  await page.locator("[data-arm]").waitFor();
  await see("Rehearse, a step");
  await page.locator("[data-skip]").tap();
  await page.locator("[data-sure]").waitFor();
  await see("Rehearse, is it left out?");
  await close(page);
  for (let n = 0; n < 30 && (await page.locator("[data-card]").getAttribute("data-card")) !== "test"; n++) {
    const verb = await page.locator("[data-card]").getAttribute("data-card");
    if (n < 6) await see(`Rehearse, ${verb}`);
    await tick(job);
  }
  await see("Rehearse, a hold");
  for (const it of await page.locator("[data-challenge]").all()) await it.check();
  await page.locator("[data-arm]").tap();
  await page.locator("[data-confirm]:enabled").waitFor();
  await see("Rehearse, an armed step");
  await page.locator("[data-unexpected]").tap();
  await page.locator("[data-seen]").first().tap();
  await see("Rehearse, it is not as expected");
  await page.locator("[data-stop]").tap();
  await page.locator("[data-stopped]").waitFor();
  await see("Rehearse, stopped");
  await page.locator("[data-brief]").tap();
  await page.locator("[data-back-to-plan]").waitFor();
  await see("Rehearse, a step of one's own");
  await page.locator('.bar [data-tab="drawing"]').tap();
  await see("Rehearse, the drawing");
  await page.locator('.bar [data-tab="log"]').tap();
  await page.locator("[data-again]").waitFor();
  await see("Rehearse, done so far");
  await page.locator("[data-hold-screen]").tap();
  await page.locator("dialog[open], [data-held]").first().waitFor();
  await see("Rehearse, the screen is held");
}

async function scenario(page, see) {
  await page.locator("[data-scenario]").first().waitFor();
  await see("Scenario, the list");
  await page.locator('[data-scenario="first-cutout"]').click();
  await page.locator('[data-act="begin"]').waitFor();
  await see("Scenario, the prebrief");
  await page.locator('[data-field="who"]').fill("Sam");
  await page.locator('[data-act="begin"]').click();
  await page.locator("[data-over]").waitFor();
  for (const tab of await page.locator("[role=tab]").all()) {
    await tab.tap();
    await settled(page);
    await see(`Scenario, ${await tab.getAttribute("data-tab")}`);
  }
  await page.locator('[data-tab="do"]').tap();
  await page.locator('[data-field="pick"]').selectOption("element c1");
  await page.locator(".chosen [data-do]").first().waitFor();
  await see("Scenario, what can be done");
  await page.locator(".chosen [data-do]").first().tap();
  await settled(page);
  await see("Scenario, how it is done");
  await page.locator('[data-act="skip-predict"]').or(page.locator('[data-act="finish"]')).first().waitFor();
  if (await page.locator('[data-act="skip-predict"]').isVisible())
    await page.locator('[data-act="skip-predict"]').tap();
  await page.locator('[data-act="finish"]').click();
  await see("Scenario, is it over?");
  await page.locator('[data-act="finish-sure"]').click();
  await page.locator("[data-outcome]").waitFor();
  await see("Debrief of an attempt");
}

async function teach(page, see) {
  await page.locator('[data-field="pick"]').waitFor();
  await page.locator('[data-field="pick"]').selectOption({ index: 2 });
  await page.locator('[data-act="hide"]').click();
  for (const tab of await page.locator("[role=tab]").all()) {
    await tab.tap();
    await settled(page);
    await see(`Teach, ${await tab.getAttribute("data-tab")}`);
    for (const it of await page.locator("[data-add]").all()) if (await it.isVisible()) await it.tap();
    await settled(page);
    await see(`Teach, ${await tab.getAttribute("data-tab")} with one of each`);
  }
}

async function drill(page, see) {
  await page.locator('[data-act="start"]').waitFor();
  await see("Practise, before");
  await page.locator('[data-act="start"]').click();
  await page.locator("[data-option]").first().waitFor();
  await see("Practise, a question");
  await page.locator("[data-option]").first().tap();
  await page.locator('[data-act="answer"]').click();
  await page.locator("[data-why]").waitFor();
  await see("Practise, an answer");
}

async function learn(page, see) {
  await page.locator('[data-act="before"]').waitFor();
  await see("Learn, a lesson");
  await page.locator('.lesson [data-act="close"]').tap();
  await page.locator('main [data-act="next"]').first().waitFor();
  for (const it of await page.locator("main details:not([open]) > summary").all()) await it.click();
  await see("Learn");
}

/**
 * The parts of the way, each begun on a page of its own at its path: `go(page, see)` calls `see` wherever something is
 * shown.
 */
export const JOURNEYS = [
  { what: "Sketch and what lies over every place", path: DEMO, go: sketch },
  {
    what: "Plan and Rehearse",
    path: DEMO,
    async go(page, see) {
      await plan(page, see);
      await rehearse(page, see);
    },
  },
  { what: "Sheet", path: `${DEMO}#sheet`, go: sheet },
  { what: "Debrief", path: "#debrief", go: debrief },
  { what: "Scenario", path: "#scenario", go: scenario },
  { what: "Teach", path: `${DEMO}#teach`, go: teach },
  { what: "Practise", path: "#drill", go: drill },
  { what: "Learn", path: "#learn", go: learn },
];
