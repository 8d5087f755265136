import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync } from "node:fs";
import { createServer } from "node:http";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { extname, join } from "node:path";
import { unzipSync } from "fflate";
import { at } from "../../scripts/lib/project.mjs";
import { becomes } from "./becomes.mjs";
import { begun, doStep, finish } from "./scenarios.mjs";
import { fileFrom } from "./fileFrom.mjs";

const scenario = JSON.parse(readFileSync(at("shared/scenarios/first-cutout.stillhot.json"), "utf8"));
const { answer, objectives } = scenario.scenario;

const TYPES = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".svg": "image/svg+xml",
};

/** An independent run-time of the standard (scorm-again, MIT): the object of a version, and how its values are read. */
const RUN_TIMES = {
  1.2: {
    script: "scorm12.min.js",
    make: "window.API = new Scorm12API({ autocommit: false })",
    api: "API",
    get: "lmsGetValue",
  },
  2004: {
    script: "scorm2004.min.js",
    make: "window.API_1484_11 = new Scorm2004API({ autocommit: false })",
    api: "API_1484_11",
    get: "lmsGetValue",
  },
};
const library = createRequire(import.meta.url)
  .resolve("scorm-again")
  .replace(/dist.*$/, "dist/");

/** The zip that the command line writes. */
function packageOf(version) {
  const out = join(mkdtempSync(join(tmpdir(), "lesson-")), "lesson.zip");
  const file = at("shared/scenarios/first-cutout.stillhot.json");
  execFileSync(process.execPath, [at("bin/stillhot.mjs"), "package", file, "--scorm", version, "-o", out]);
  return readFileSync(out);
}

/** A package unpacked on a server, and a page of a learning system that shows it in a frame. */
async function learningSystem(version) {
  const files = unzipSync(packageOf(version));
  const { script, make } = RUN_TIMES[version];
  const page = `<!doctype html><title>LMS</title><script src="/run-time.js"></script><script>${make};
    const kept = localStorage.getItem("kept"), api = window.API ?? window.API_1484_11;
    if (kept !== null) api.loadFromJSON(JSON.parse(kept));</script>
    <iframe src="/package/lesson.html" style="width:1200px;height:760px;border:0"></iframe>`;
  const server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url, "http://x").pathname);
    const body =
      path === "/"
        ? page
        : path === "/run-time.js"
          ? readFileSync(join(library, script))
          : files[path.replace("/package/", "")];
    response.writeHead(body === undefined ? 404 : 200, {
      "content-type": path === "/" ? "text/html" : (TYPES[extname(path)] ?? "application/octet-stream"),
    });
    response.end(body);
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  return { files, url: `http://127.0.0.1:${server.address().port}/`, close: () => server.close() };
}

/**
 * In the frame of a learning system: half the job, the browser closed, the other half, and what the system was told of it.
 * What differs between the versions is what it is told in: where the job is given up `early` that is all that is asked.
 */
const isALesson = (version, { early = false, again = false } = {}) => ({
  name: `a lesson package plays in a learning system, goes on after a break, and tells how it went${early ? " that was given up" : ""} (SCORM ${version})`,
  seconds: 240,
  again,
  async run(ctx) {
    const system = await learningSystem(version);
    const { api, get } = RUN_TIMES[version];
    try {
      const manifest = Buffer.from(system.files["imsmanifest.xml"]).toString();
      for (const [, href] of manifest.matchAll(/href="([^"]+)"/g)) assert.ok(href in system.files, href);
      const elsewhere = [];
      const begunContext = async () => {
        const context = await ctx.newContext({ options: { viewport: { width: 1280, height: 800 } } });
        context.on("request", (it) => {
          if (!it.url().startsWith(system.url) && !/^(data|blob):/.test(it.url())) elsewhere.push(it.url());
        });
        return context;
      };
      const read = (page, element) =>
        page.evaluate(([name, how, it]) => window[name][how](it), [api, get, element]);
      const opened = async (context) => {
        const page = await context.newPage();
        await page.goto(system.url);
        return {
          page,
          frame: page.frames().find((it) => it.url().includes("/package/")) ?? page.frame({ url: /package/ }),
        };
      };

      let { page, frame } = await opened(await begunContext());
      await frame.locator('[data-field="who"]').waitFor();
      await frame.locator('[data-act="begin"]').click();
      await frame.locator("[data-over]").waitFor();
      const half = early ? 2 : 12;
      for (const step of answer.slice(0, half)) await doStep(frame, step);
      const status = version === "1.2" ? "cmi.core.lesson_status" : "cmi.success_status";
      await becomes(() => read(page, status), version === "1.2" ? "incomplete" : "unknown");
      const remembered = await read(page, "cmi.suspend_data");
      assert.ok(remembered.length > 100 && remembered.length <= 4096, `${remembered.length} letters`);
      await page.close();

      // Another device: only the learning system remembers.
      const other = await begunContext();
      await other.addInitScript(
        (letters) =>
          location.protocol === "http:" && location.pathname === "/" && localStorage.setItem("kept", letters),
        JSON.stringify({ suspend_data: remembered }),
      );
      ({ page, frame } = await opened(other));
      await frame.locator("[data-over]").waitFor();
      for (const step of answer.slice(half, early ? half + 1 : undefined)) await doStep(frame, step);
      await finish(frame);
      await becomes(() => read(page, status), early ? "failed" : "passed");
      const score = version === "1.2" ? "cmi.core.score" : "cmi.score";
      const raw = await read(page, `${score}.raw`);
      assert.ok(early ? raw !== "" && Number(raw) < 100 : Number(raw) === 100, `${raw} points`);
      if (version === "2004") {
        assert.equal(Number(await read(page, "cmi.score.scaled")), 1);
        assert.equal(await read(page, "cmi.completion_status"), "completed");
      }
      assert.equal(Number(await read(page, "cmi.objectives._count")), objectives.length);
      assert.equal(await read(page, "cmi.objectives.0.id"), objectives[0].id);
      const met = version === "1.2" ? "status" : "success_status";
      assert.equal(await read(page, `cmi.objectives.2.${met}`), early ? "failed" : "passed");
      assert.deepEqual(elsewhere, []);
    } finally {
      system.close();
    }
  },
});

/** From the prebrief to the zip: the very bytes that the command line writes. */
const isMadeInTeach = {
  name: "Teach makes the package that the command line makes",
  async run(ctx) {
    const page = await begun(ctx, { path: "#scenario" });
    await page.locator('[data-scenario="first-cutout"]').click();
    await page.locator('[data-act="teach"]').click();
    await page.locator('[data-act="teach-sure"]').click();
    await page.locator('[data-tab="check"]').click();
    for (const version of ["1.2", "2004"]) {
      const download = await fileFrom(page, () => page.locator(`[data-package="${version}"]`).click());
      const made = unzipSync(readFileSync(await download.path()));
      const written = unzipSync(packageOf(version));
      assert.deepEqual(Object.keys(made), Object.keys(written));
      for (const path of Object.keys(written)) assert.ok(Buffer.from(made[path]).equals(written[path]), path);
      await page.locator("[data-packed]").getByText(`scorm-${version}.zip`).waitFor();
    }
  },
};

export const tests = [
  isMadeInTeach,
  isALesson("1.2", { early: true }),
  isALesson("1.2", { again: true }),
  isALesson("2004"),
];
