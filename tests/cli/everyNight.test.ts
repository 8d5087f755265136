import { execFileSync } from "node:child_process";
import { appendFileSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { startHelper } from "../../src/cli/helper";
import { folder } from "./line";

/** Stands in for the program: answers each file with a line, and says of one that there is something wrong. */
const PROGRAM = `#!/bin/sh
shift 4
for file in "$@"; do echo "{\\"file\\":\\"$file\\",\\"ok\\":true}"; done
exit 1
`;

function night(files: number) {
  const at = folder();
  const names = Array.from({ length: files }, (_, k) => `feeder ${k}.stillhot.json`);
  writeFileSync(join(at, "list.txt"), `${names.join("\n")}\n`);
  writeFileSync(join(at, "program"), PROGRAM, { mode: 0o755 });
  const task = (index: number, count: number) =>
    execFileSync(
      "scripts/everyNight.sh",
      [join(at, "list.txt"), join(at, `${index}`), `${index}`, `${count}`],
      {
        env: { ...process.env, STILLHOT: join(at, "program") },
      },
    );
  const answered = (index: number) =>
    readFileSync(join(at, `${index}`), "utf8")
      .split("\n")
      .filter((it) => it !== "")
      .map((it) => (JSON.parse(it) as { file: string }).file);
  return { at, names, task, answered };
}

test("each drawing is one task's", () => {
  const { names, task, answered } = night(11);
  [0, 1, 2].forEach((it) => task(it, 3));
  const all = [0, 1, 2].flatMap(answered);
  expect(all.sort()).toEqual([...names].sort());
});

test("a task that was cut off goes on, and asks again only what has no whole line", () => {
  const { at, names, task, answered } = night(4);
  const kept = { file: names[0], ok: false };
  writeFileSync(join(at, "0"), `${JSON.stringify(kept)}\n`);
  appendFileSync(join(at, "0"), `{"file":"${names[1]}","ok":tr`);
  task(0, 1);
  expect(answered(0)).toEqual(names);
  expect(readFileSync(join(at, "0"), "utf8").split("\n")[0]).toBe(JSON.stringify(kept));
});

/** A program that says which thread of its process answers, and that its memory is as full as its line says. */
const COUNTING = `
import { parentPort, threadId } from "node:worker_threads";
parentPort.on("message", ([heldBytes]) => parentPort.postMessage({ answer: threadId, heldBytes: Number(heldBytes) }));
`;

test("a helper that is full is started anew before its next file, and one that is not goes on", async () => {
  const program = join(folder(), "counting.mjs");
  writeFileSync(program, COUNTING);
  const helper = startHelper(pathToFileURL(program), 1000);
  const threads: unknown[] = [];
  for (const heldBytes of [10, 1001, 10, 10]) threads.push(await helper.ask([String(heldBytes)]));
  helper.end();
  expect(threads[1]).toBe(threads[0]);
  expect(threads[2]).not.toBe(threads[1]);
  expect(threads[3]).toBe(threads[2]);
});
