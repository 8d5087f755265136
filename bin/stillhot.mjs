#!/usr/bin/env node
/** The command line. A package has it built; a clone builds it when it is missing or older than its sources. */
import { existsSync } from "node:fs";

const here = (path) => new URL(`../${path}`, import.meta.url);

if (existsSync(here("src/cli/main.ts"))) {
  const { buildIfStale, checkNode, install, isFresh } = await import("../scripts/lib/project.mjs");
  if (!isFresh("cli")) {
    checkNode();
    install({ toStderr: true });
    buildIfStale("cli", { toStderr: true });
  }
}
await import(here("dist-cli/main.js").href);
