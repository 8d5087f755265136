import { join, relative, resolve, sep } from "node:path";
import type { Plugin } from "vite";

/** Where `vite.core.config.ts` puts the core for the unit tests. */
export const LINKED = ".test-results/core";

const CORE = resolve("src/core");

/**
 * Tests load the core as modules that Node has linked: half of the time in which a worker of the test runner gets ready went
 * into reading each of the core's modules. What fails is told by the lines of what was built; the same test run by itself
 * tells it by those of the sources.
 */
export const linkedCore: Plugin = {
  name: "linked-core",
  enforce: "pre",
  load(id) {
    const [file = ""] = id.split("?");
    if (!file.startsWith(CORE + sep) || !file.endsWith(".ts") || file.endsWith(".test.ts")) return undefined;
    const built = join(resolve(LINKED), relative(CORE, file)).replace(/\.ts$/, ".mjs");
    return `export * from ${JSON.stringify(built)};`;
  },
};
