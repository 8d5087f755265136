import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { gzipSync } from "node:zlib";
import { at } from "../../scripts/lib/project.mjs";
import { bundled } from "./bundled.mjs";

/**
 * The scripts that the built page fetches before it can show anything: its entry, what it preloads, and all that those
 * import at once.
 *
 * @returns {Map<string, string>} text by path within dist
 */
export function firstScripts() {
  const html = readFileSync(at("dist/index.html"), "utf8");
  const tags = [...html.matchAll(/<(?:script|link)\b[^>]*>/g)].map(([tag]) => tag);
  return withImports(tags.flatMap((it) => /(?:src|href)="\.\/([^"]+\.js)"/.exec(it)?.[1] ?? []));
}

/** Those, and what they fetch next: the board that paints the drawing. */
export function paintingScripts() {
  const board = readdirSync(at("dist/assets")).find((it) => /^board-[\w-]+\.js$/.test(it));
  return withImports([...firstScripts().keys(), join("assets", board)]);
}

function withImports(paths) {
  const scripts = new Map();
  const add = (path) => {
    if (scripts.has(path)) return;
    const text = readFileSync(at("dist", path), "utf8");
    scripts.set(path, text);
    for (const [, to] of text.matchAll(/\b(?:from|import)\s*["'](\.[^"']+)["']/g))
      add(join(dirname(path), to));
  };
  paths.forEach(add);
  return scripts;
}

/** What scripts weigh on the wire, [bytes, gzipped one by one]. */
export const bytesOf = (scripts) =>
  [...scripts.values()].reduce((sum, text) => sum + gzipSync(text).length, 0);

/** English sentences of the core that the worker carries: it answers in messages, so it needs none. */
export async function sentencesInWorker() {
  const { english } = await bundled("src/core/words/english.ts");
  const worker = readdirSync(at("dist/assets")).find((it) => /^core\.worker-[\w-]+\.js$/.test(it));
  const text = readFileSync(at("dist/assets", worker), "utf8");
  return Object.keys(english).filter((key) => new RegExp(`"${key.replaceAll(".", "\\.")}":`).test(text));
}

/**
 * Keys whose sentence comes later, and which the first scripts can say nonetheless: whole, or put together from a
 * beginning such as `kind.${kind}`.
 */
export async function keysSaidTooEarly() {
  const { first } = await bundled("src/core/terms/messages/en/first.ts");
  const { english: core } = await bundled("src/core/words/english.ts");
  const { app } = await bundled("src/app/words/messages/en/app.ts");
  const { english: own } = await bundled("src/app/words/messages/en/index.ts");
  const later = Object.keys({ ...core, ...own }).filter((key) => !(key in first) && !(key in app));
  const text = [...firstScripts().values()].join("\n");
  const whole = new Set([...text.matchAll(/["'`]([\w-]+(?:\.[\w-]+)+)(?=["'`])/g)].map((it) => it[1]));
  const beginnings = [...text.matchAll(/`([\w-]+\.(?:[\w-]+\.)*)\$\{/g)].map((it) => it[1]);
  const isSaid = (key) =>
    whole.has(key) || beginnings.some((it) => !PATHS.includes(it) && key.startsWith(it));
  return later.filter(isSaid);
}

/** Beginnings that are no keys: of paths within a file. */
const PATHS = ["scenario."];
