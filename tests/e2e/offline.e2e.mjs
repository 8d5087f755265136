import assert from "node:assert/strict";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { at } from "../../scripts/lib/project.mjs";
import { serve } from "../../src/cli/server.mjs";
import { becomes, offlineReady } from "./becomes.mjs";

const ready = (page) => page.locator("html[data-ready]").waitFor();
const title = (page) => page.getByLabel("Title of the drawing");

async function call(page, name) {
  await title(page).fill(name);
  await title(page).blur();
}

/** Makes a served copy of the app into a newer version of itself. */
function renew(folder, mark) {
  const worker = join(folder, "sw.js");
  writeFileSync(worker, `${readFileSync(worker, "utf8")}\n// ${mark}\n`);
}

/** A served copy of the app of this test's own, which can be made newer. */
async function withOwnCopy(run) {
  const folder = mkdtempSync(join(tmpdir(), "stillhot-dist-"));
  cpSync(at("dist"), folder, { recursive: true });
  const server = await serve(folder);
  try {
    await run(server.url, async (page) => {
      renew(folder, "newer");
      await page.evaluate(async () => {
        const it = await navigator.serviceWorker.getRegistration();
        window.waitedBefore = it.waiting;
        await it.update();
      });
      await page.waitForFunction(async () => {
        const { waiting } = await navigator.serviceWorker.getRegistration();
        return waiting !== null && waiting !== window.waitedBefore;
      });
    });
  } finally {
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

const offer = (page) => page.locator("[data-update]");
const goTo = (page, place) => page.evaluate((it) => (location.hash = it), `#${place}`);

/** Long enough for an offer to show, and for a page to start again. */
const NOTHING_MS = 1500;

/** How work gets under way in each place. */
const WORK = {
  rehearse: async (page) => {
    await page.locator("[data-begin]").click();
    await page.locator("[data-arm]").waitFor();
  },
  scenario: async (page) => {
    await page.locator("[data-scenario]").first().click();
    await page.locator('[data-field="who"]').fill("R. Vane");
    await page.locator('[data-act="begin"]').click();
    await page.locator("[data-over]").waitFor();
  },
  sheet: (page) => page.locator("[data-sheet]").waitFor(),
};

/** What another app shares is opened beside the drawing that was there. */
async function takesWhatIsShared(context, url) {
  /** Sends as the device's share sheet does: a form that is posted to the address of the manifest. */
  const share = async (fields) => {
    const page = await context.newPage();
    const inputs = Object.keys(fields)
      .map((name) => `<input name="${name}" ${name === "file" ? 'type="file"' : ""}>`)
      .join("");
    await page.setContent(
      `<form action="${url}share" method="post" enctype="multipart/form-data">${inputs}<button>go</button></form>`,
    );
    for (const [name, value] of Object.entries(fields)) {
      const input = page.locator(`[name="${name}"]`);
      if (name === "file") await input.setInputFiles(value);
      else await input.fill(value);
    }
    await page.locator("button").click();
    await ready(page);
    return page;
  };
  const demo = readFileSync(at("shared/demos/transfer-switch.stillhot.json"));
  const json = (buffer) => ({ name: "switch.stillhot.json", mimeType: "application/json", buffer });
  const page = await share({ file: json(demo) });
  await page.getByText("Opened switch.stillhot.json").first().waitFor();
  await becomes(() => title(page).inputValue(), JSON.parse(demo).title);
  assert.equal(new URL(page.url()).search, "", "a reload must not look for it again");
  await page.getByRole("button", { name: "Menu" }).click();
  await page.locator('[data-menu="library"]').click();
  await page.getByText("Drawn before").first().waitFor();
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Menu" }).click();
  await page.locator('[data-menu="share"]').click();
  const link = await page.locator('[data-link="short"]').inputValue();
  const byLink = await share({ text: `The drawing for tomorrow: ${link} see you there` });
  await byLink.getByText("Opened What was shared").first().waitFor();
  await becomes(() => title(byLink).inputValue(), JSON.parse(demo).title);
  const hostile = await share({ file: json(Buffer.from('{"format":"stillhot","formatVersion":99}')) });
  await hostile.locator("dialog[open]").getByText("newer", { exact: false }).first().waitFor();
  // By its path: so much is not sent to a browser that has other work.
  const folder = mkdtempSync(join(tmpdir(), "stillhot-large-"));
  const tooLarge = join(folder, "large.stillhot.json");
  writeFileSync(tooLarge, Buffer.alloc(20_000_001, 32));
  const large = await share({ file: tooLarge });
  await large.locator("dialog[open]").getByText("20 MB at most", { exact: false }).first().waitFor();
  rmSync(folder, { recursive: true, force: true });
}

/** @type {import("./context.mjs").EndToEndTest[]} */
export const tests = [
  {
    name: "from a folder of any server it starts, keeps itself, computes, and gives out links that lead there",
    async run(ctx) {
      const root = mkdtempSync(join(tmpdir(), "stillhot-root-"));
      mkdirSync(join(root, "some"));
      cpSync(at("dist"), join(root, "some", "folder"), { recursive: true });
      let server = await serve(root);
      try {
        // Without its last stroke too, as people type it.
        const page = await ctx.open({
          url: server.url,
          path: "some/folder?demo=sideline-three-transformers",
          offline: true,
        });
        await ready(page);
        assert.match(await page.locator("[data-verdict]").textContent(), /^\s*Live/);
        await offlineReady(page);
        const scope = await page.evaluate(() =>
          navigator.serviceWorker.getRegistration().then((it) => it.scope),
        );
        assert.equal(scope, `${server.url}some/folder/`);
        await page.locator('header [data-place="plan"]').click();
        await page.locator("[data-count]").waitFor();
        await page.getByRole("button", { name: "Menu" }).click();
        await page.locator('[data-menu="share"]').click();
        const link = await page.locator('[data-link="short"]').inputValue();
        assert.ok(link.startsWith(`${server.url}some/folder/#`), link.slice(0, 80));
        await page.keyboard.press("Escape");
        await call(page, "Kept in a folder");
        await page.locator('[data-save="saved"]').waitFor();
        const other = await ctx.open({ url: link });
        await ready(other);
        assert.equal(await title(other).inputValue(), "Tanner's Row sideline");
        await other.context().close();
        ctx.expectError(/Failed to load resource|ERR_CONNECTION_REFUSED|ERR_INTERNET_DISCONNECTED/);
        await server.close();
        server = undefined;
        await page.reload();
        await ready(page);
        assert.equal(await title(page).inputValue(), "Kept in a folder");
        await page.locator("[data-count]").waitFor();
      } finally {
        await server?.close();
        rmSync(root, { recursive: true, force: true });
      }
    },
  },
  // The longer words are the harder; where they stand is the same.
  ...[
    { locale: "fr-CA", words: "Sans réseau aussi" },
    { locale: "en-US", words: "No network needed" },
  ].map(({ locale, words }) => ({
    name: `a phone says that no network is needed, where it is read (${locale})`,
    again: locale === "en-US",
    async run(ctx) {
      const viewport = { width: 360, height: 640 };
      const context = await ctx.newContext({ size: "phone", offline: true, options: { viewport, locale } });
      const page = await ctx.open({ context });
      await ready(page);
      const said = page.locator("footer [data-offline]");
      await said.filter({ hasText: words }).waitFor({ timeout: 90_000 });
      const isRead = () =>
        said.evaluate((it) => {
          const { left, right, top, bottom } = it.getBoundingClientRect();
          return (
            it.contains(document.elementFromPoint((left + right) / 2, (top + bottom) / 2)) &&
            right <= innerWidth
          );
        });
      await becomes(isRead, true, `${words} stands in sight`);
    },
  })),
  {
    name: "where nothing keeps the app, a phone does not say that no network is needed",
    async run(ctx) {
      const page = await ctx.open({ size: "phone" });
      await ready(page);
      await page.locator("[data-save]").waitFor();
      assert.equal(await page.locator("[data-offline]").count(), 0);
    },
  },
  {
    name: "after one visit it opens cold with no server: the drawing, every part that is loaded late, and what another app shares",
    seconds: 180,
    async run(ctx) {
      ctx.expectError(/Failed to load resource|ERR_CONNECTION_REFUSED|ERR_INTERNET_DISCONNECTED/);
      const server = await ctx.ownServer();
      const context = await ctx.newContext({ offline: true });
      const first = await ctx.open({ context, url: server.url });
      await ready(first);
      await offlineReady(first);
      await call(first, "Drawn before");
      await first.locator('[data-owner="element:c1"]').click();
      await first.locator('[data-action="open"]').click();
      await first.locator('[data-save="saved"]').waitFor();
      await first.close();
      await server.close();
      await ctx.part("the drawing, and what is loaded late", async () => {
        const page = await ctx.open({ context, url: server.url });
        await ready(page);
        await page.locator('[data-verdict="could-go-live"]').waitFor();
        await becomes(() => title(page).inputValue(), "Drawn before");
        for (const item of ["library", "kept", "share", "scan", "keys", "settings"]) {
          await page.getByRole("button", { name: "Menu" }).click();
          await page.locator(`[data-menu="${item}"]`).click();
          await page.locator("dialog[open] h2").waitFor();
          if (item === "library") await page.locator("[data-demo]").nth(5).waitFor();
          await page.keyboard.press("Escape");
        }
        assert.equal(
          await page.evaluate(() => document.fonts.check("16px 'Atkinson Hyperlegible Next'")),
          true,
        );
        await page.reload();
        await ready(page);
        await page.locator('[data-verdict="could-go-live"]').waitFor();
        await page.close();
      });
      await ctx.part("what another app shares", () => takesWhatIsShared(context, server.url));
    },
  },
  {
    name: "a newer version waits until it is asked for and no window is in a rehearsal, saves first, and takes every window along",
    seconds: 180,
    run: (ctx) =>
      withOwnCopy(async (url, renewFor) => {
        const context = await ctx.newContext({ offline: true });
        const page = await ctx.open({ context, url });
        await ready(page);
        await offlineReady(page);
        await page.reload();
        await ready(page);
        await becomes(() => offer(page).count(), 0);
        const other = await ctx.open({ context, url, path: "?demo=quarry-lane#rehearse" });
        await ready(other);
        await WORK.rehearse(other);
        await page.evaluate(() => (window.before = true));
        await other.evaluate(() => (window.before = true));
        await renewFor(page);
        await offer(page).waitFor();
        await page.waitForTimeout(NOTHING_MS);
        assert.equal(await page.evaluate(() => window.before), true, "it never reloads by itself");
        await page.locator("[data-update-now]").click();
        await page.getByText("Another window is in a rehearsal", { exact: false }).first().waitFor();
        await page.waitForTimeout(NOTHING_MS);
        for (const it of [page, other]) assert.equal(await it.evaluate(() => window.before), true);
        await goTo(other, "sketch");
        await call(other, "Unsaved in the other window");
        await call(page, "Unsaved here");
        await page.locator("[data-update-now]").click();
        for (const it of [page, other]) {
          await it.waitForFunction(() => window.before === undefined);
          await ready(it);
        }
        await becomes(() => title(page).inputValue(), "Unsaved here");
        await becomes(() => title(other).inputValue(), "Unsaved in the other window");
        await becomes(() => offer(page).count(), 0);
      }),
  },
  ...[["rehearse"], ["scenario", "sheet"]].map((places) => ({
    name: `a newer version is not offered in the middle of work, but once it is left (${places.join(", ")})`,
    again: !places.includes("rehearse"),
    seconds: 180,
    run: (ctx) =>
      withOwnCopy(async (url, renewFor) => {
        const page = await ctx.open({ url, path: "?demo=quarry-lane", offline: true });
        await ready(page);
        await offlineReady(page);
        await page.goto(`${url}?demo=quarry-lane`);
        await ready(page);
        for (const place of places)
          await ctx.part(place, async () => {
            await goTo(page, place);
            await WORK[place](page);
            await becomes(() => offer(page).count(), 0);
            // One that is newer still comes while this work goes on.
            await renewFor(page);
            await page.waitForTimeout(NOTHING_MS);
            assert.equal(await offer(page).count(), 0);
            await goTo(page, "sketch");
            await offer(page).waitFor();
            await goTo(page, place);
            await offer(page).waitFor({ state: "detached" });
          });
      }),
  })),
  {
    name: "nothing is asked of any other place, and the page's own rules forbid it",
    async run(ctx) {
      ctx.expectError(/Content Security Policy|Refused to|violates/);
      const context = await ctx.newContext({ offline: true });
      const asked = new Set();
      context.on("request", (request) => {
        const { protocol, origin } = new URL(request.url());
        if (protocol !== "data:" && protocol !== "blob:") asked.add(origin);
      });
      const page = await ctx.open({ context });
      await ready(page);
      for (const item of ["library", "kept", "share"]) {
        await page.getByRole("button", { name: "Menu" }).click();
        await page.locator(`[data-menu="${item}"]`).click();
        await page.locator("dialog[open] h2").waitFor();
        await page.waitForTimeout(200);
        await page.keyboard.press("Escape");
      }
      assert.deepEqual([...asked], [new URL(ctx.url).origin]);
      const tried = await page.evaluate(async () => {
        const outcome = {};
        const inline = document.createElement("script");
        inline.textContent = "window.ranInline = true";
        document.body.append(inline);
        inline.remove();
        const button = document.createElement("button");
        button.setAttribute("onclick", "window.ranHandler = true");
        document.body.append(button);
        button.click();
        button.remove();
        // Not in this very call: what a test evaluates may do what the page may not.
        await new Promise((done) =>
          setTimeout(() => {
            try {
              (0, eval)("window.ranEval = true");
            } catch {
              outcome.eval = "refused";
            }
            done();
          }),
        );
        outcome.fetch = await fetch("https://example.org/").then(
          () => "went out",
          () => "refused",
        );
        outcome.ran = ["ranInline", "ranHandler", "ranEval"].filter((it) => it in window);
        outcome.html = document.documentElement.outerHTML.match(/<script(?![^>]*\bsrc=)[^>]*>/g);
        return outcome;
      });
      assert.deepEqual(tried.ran, []);
      assert.equal(tried.html, null, "no script stands in the page itself");
      assert.equal(tried.eval, "refused");
      assert.equal(tried.fetch, "refused");
    },
  },
];
