import { execFileSync } from "node:child_process";
import { appendFileSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
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
