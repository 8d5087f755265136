import { readdirSync, writeFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { minify } from "terser";
import { VitePWA } from "vite-plugin-pwa";
import { defineConfig } from "vitest/config";
import { linkedCore } from "./tests/support/linkedCore.ts";

/**
 * Tests that change what others share: a page, the browser's database and settings, or a module that stands in for another.
 * Each loads all modules anew, which takes longer than most of them; all other tests share theirs. A new one is named here.
 */
const APART = [
  "src/app/**/*.svelte.test.ts",
  "src/app/keep/putAway.test.ts",
  "src/app/keep/versions.test.ts",
  "src/app/scenario/shelf.test.ts",
  "src/app/frame/focus.test.ts",
  "src/app/grow/stamps.test.ts",
  "src/app/worker/ownWorker.test.ts",
  "src/app/worker/writing.test.ts",
];

/** Tests in which something else stands in for a module of the core: they load its sources one by one also in `npm test`. */
const STOOD_IN = ["src/core/procedure/rules/unsolved.test.ts"];

const unit = {
  environment: "node",
  setupFiles: ["tests/support/sentences.ts", "tests/support/oneSeed.ts"],
  testTimeout: 60_000,
  hookTimeout: 60_000,
  // What is made and thrown away at once is most of what there is: with room for it, little of it is ever looked at again.
  execArgv: ["--max-semi-space-size=64"],
  // A test over an empty list would pass: each has to look at something.
  expect: { requireAssertions: true },
  // Only where the core was built for them.
  server: { deps: { external: [/[\\/]\.test-results[\\/]core[\\/]/] } },
};

/** In `npm test` the core is linked by Node (tests/support/linkedCore.ts). */
const linked = process.env["LINKED_CORE"] === "1" ? { plugins: [linkedCore] } : {};

/**
 * The core does nothing when it is loaded, but for immer's patches: so what the first picture needs can load alone, and the
 * worker, which answers in messages, carries no sentences.
 */
const treeshake = {
  moduleSideEffects: (id: string) => !/src\/core\//.test(id) || /document\/patching/.test(id),
};

/**
 * What a browser fetches before it shows a drawing is made smaller once more: what one program leaves, a second finds, a
 * hundredth of it. For all the rest it would take a minute of a build.
 */
const smallerFirst = {
  name: "smaller-first",
  generateBundle: {
    order: "post" as const,
    async handler(_options: unknown, bundle: Record<string, { type: string; name?: string; code?: string }>) {
      for (const it of Object.values(bundle)) {
        if (it.type !== "chunk" || (it.name !== "index" && it.name !== "board")) continue;
        const { code } = await minify(it.code ?? "", { module: true, ecma: 2022, compress: AS_WIRED });
        if (code === undefined) throw new Error(`nothing is left of ${it.name}`);
        it.code = code;
      }
    },
  },
};

/** What is written in one way throughout grows smaller on the wire than what is shorter here and there. */
const AS_WIRED = {
  passes: 3,
  keep_fargs: false,
  if_return: false,
  comparisons: false,
  lhs_constants: false,
  switches: false,
};

/** Names the files of the built app in one of them, so that it can pack itself into a lesson. */
const listsFiles = {
  name: "lists-files",
  writeBundle({ dir = "dist" }: { dir?: string | undefined }) {
    const files = readdirSync(dir, { recursive: true, withFileTypes: true })
      .filter((it) => it.isFile())
      .map((it) => relative(dir, join(it.parentPath, it.name)).split(sep).join("/"));
    writeFileSync(join(dir, "files.json"), JSON.stringify(files.sort()));
  },
};

/** The browser app, which works from any folder of any server, and offline after one visit. */
export default defineConfig({
  base: "./",
  publicDir: "static",
  build: {
    outDir: "dist",
    target: "es2022",
    // What of others is in the app, with the notices that their licences ask for.
    license: { fileName: "licences.md" },
    rolldownOptions: {
      treeshake,
      output: {
        // The first script names all others, and what is made of chance grows no smaller on the wire.
        chunkFileNames: "assets/[name]-[hash:7].js",
        assetFileNames: "assets/[name]-[hash:7].[ext]",
        codeSplitting: { groups: [{ name: "first", tags: ["$initial"] }] },
      },
    },
  },
  // What writes pictures speaks, and the words are kept where Svelte sees them change.
  worker: { format: "es", plugins: () => [svelte()], rolldownOptions: { treeshake } },
  plugins: [
    svelte(),
    smallerFirst,
    listsFiles,
    VitePWA({
      registerType: "prompt",
      injectRegister: null,
      workbox: {
        globPatterns: ["**/*.{js,css,html,svg,png,woff2,webmanifest,json}"],
        globIgnores: ["share-target.js"],
        importScripts: ["share-target.js"],
      },
      manifest: {
        name: "Stillhot",
        short_name: "Stillhot",
        description:
          "Draw a small distribution system, open and close things, and see what could still be live.",
        start_url: "./",
        scope: "./",
        display: "standalone",
        background_color: "#ffffff",
        theme_color: "#ffffff",
        icons: [
          { src: "icon.svg", sizes: "any", type: "image/svg+xml", purpose: "any" },
          { src: "icon-192.png", sizes: "192x192", type: "image/png" },
          { src: "icon-512.png", sizes: "512x512", type: "image/png" },
          { src: "icon-maskable-192.png", sizes: "192x192", type: "image/png", purpose: "maskable" },
          { src: "icon-maskable-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
        ],
        // Opened from the device's own list of files, where it has one.
        file_handlers: [{ action: "./", accept: { "application/json": [".json"] } }],
        // Sent by another app of the device, where it can: static/share-target.js takes it.
        share_target: {
          action: "./share",
          method: "POST",
          enctype: "multipart/form-data",
          params: {
            title: "title",
            text: "text",
            url: "url",
            files: [
              {
                name: "file",
                accept: [
                  "application/json",
                  ".json",
                  "image/svg+xml",
                  "image/png",
                  "image/jpeg",
                  "text/plain",
                ],
              },
            ],
          },
        },
      },
    }),
  ],
  // Svelte's own tests need its browser half, also where they run in Node.
  ...(process.env["VITEST"] ? { resolve: { conditions: ["browser"] } } : {}),
  test: {
    maxWorkers: "100%",
    projects: [
      {
        extends: true,
        ...linked,
        test: {
          ...unit,
          name: "unit",
          include: ["src/**/*.test.ts", "tests/**/*.test.ts"],
          exclude: ["tests/e2e/**", "tests/bench/**", ...APART, ...STOOD_IN],
          // The core keeps no state between two files: its modules are loaded once for all of them.
          isolate: false,
        },
      },
      {
        extends: true,
        ...linked,
        test: { ...unit, name: "unit-apart", include: APART },
      },
      {
        extends: true,
        test: { ...unit, name: "unit-stood-in", include: STOOD_IN },
      },
      {
        extends: true,
        test: {
          name: "bench",
          environment: "node",
          setupFiles: ["tests/support/sentences.ts"],
          include: ["tests/bench/**/*.bench.{ts,mjs}"],
          testTimeout: 600_000,
          hookTimeout: 600_000,
        },
      },
    ],
  },
});
