#!/usr/bin/env node
/** The command line. A package has it built; a clone builds it, and the app for `serve`, when they are missing or older than their sources. */
import { existsSync } from "node:fs";

const here = (path) => new URL(`../${path}`, import.meta.url);

if (existsSync(here("src/cli/main.ts"))) {
  const { buildIfStale, checkNode, install, isFresh } = await import("../scripts/lib/project.mjs");
  const needed = process.argv[2] === "serve" ? ["cli", "app"] : ["cli"];
  if (!needed.every(isFresh)) {
    checkNode();
    install({ toStderr: true });
    for (const name of needed) if (!isFresh(name)) buildIfStale(name, { toStderr: true });
  }
}
await import(here("dist-cli/main.js").href);
