import { readdirSync } from "node:fs";
import { join } from "node:path";
import { defineConfig } from "vite";
import { LINKED } from "./tests/support/linkedCore.ts";

const modules = readdirSync("src/core", { recursive: true, encoding: "utf8" }).filter(
  (it) => it.endsWith(".ts") && !it.endsWith(".test.ts"),
);

/** The core for the unit tests of `npm test` (tests/support/linkedCore.ts): all of it in one file, and one for each module. */
export default defineConfig({
  publicDir: false,
  build: {
    ssr: true,
    outDir: LINKED,
    target: "node20",
    minify: false,
    rolldownOptions: {
      input: Object.fromEntries(modules.map((it) => [it.slice(0, -".ts".length), join("src/core", it)])),
      preserveEntrySignatures: "strict",
      treeshake: false,
      output: {
        entryFileNames: "[name].mjs",
        chunkFileNames: "all/[name].mjs",
        codeSplitting: { groups: [{ name: "core", test: /src[\\/]core|shared[\\/]/ }] },
      },
    },
  },
});
