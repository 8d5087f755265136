/** A module of the sources, for a test that asks the program's own code. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "vite";
import { at, root } from "../../scripts/lib/project.mjs";

const modules = new Map();

/** Bundles a module once for all tests of a run, which is many times quicker than to load its hundreds of files one by one. */
export function bundled(...file) {
  const path = at(...file);
  if (!modules.has(path)) modules.set(path, load(path));
  return modules.get(path);
}

async function load(path) {
  const { output } = await build({
    root,
    configFile: false,
    logLevel: "error",
    publicDir: false,
    build: {
      ssr: path,
      write: false,
      minify: false,
      target: "node20",
      rolldownOptions: { output: { codeSplitting: false } },
    },
    ssr: { noExternal: true },
  });
  const folder = mkdtempSync(join(tmpdir(), "stillhot-bundled-"));
  try {
    const made = join(folder, "module.mjs");
    writeFileSync(made, output[0].code);
    return await import(pathToFileURL(made).href);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
