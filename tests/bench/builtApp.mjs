import { existsSync } from "node:fs";
import { afterAll, beforeAll } from "vitest";
import { at } from "../../scripts/lib/project.mjs";
import { serve } from "../../src/cli/server.mjs";
import { startBrowser } from "../e2e/browser.mjs";

/** The built app, served while the benchmarks of a file run, and a browser to measure it in. */
export function builtApp() {
  const app = { browser: undefined, server: undefined };
  beforeAll(async () => {
    if (!existsSync(at("dist/index.html")))
      throw new Error("There is no built app: run `npm run build` first.");
    const started = await startBrowser();
    if (started.missing) throw new Error(started.missing);
    app.browser = started.browser;
    app.server = await serve(at("dist"));
  });
  afterAll(async () => {
    await app.browser?.close();
    await app.server?.close();
  });
  return app;
}
