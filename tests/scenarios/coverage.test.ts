import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { isUnreadable, readDocument, scenarioOf } from "../../src/core";
import { listed, scenarioFile } from "./library";

const page = (name: string) => readFileSync(new URL(`../../docs/${name}`, import.meta.url), "utf8");

test("the table of apprentice tasks says what the files say", () => {
  const rows = [...page("training-coverage.md").matchAll(/^\| `([\w-]+)` \|.*\| ([^|]+) \|$/gm)];
  const tasksOf = (id: string) =>
    new Set((scenarioOf(scenarioFile(id)).objectives ?? []).flatMap(({ tasks }) => tasks ?? []));
  for (const [, task, named] of rows) {
    const covering = listed.map(({ id }) => id).filter((id) => tasksOf(id).has(task!));
    expect(named, task).toBe(covering.length === listed.length ? "all" : covering.join(", "));
    expect(covering.length, task).toBeGreaterThan(0);
  }
  const known = new Set(rows.map(([, task]) => task));
  for (const { id } of listed) for (const task of tasksOf(id)) expect(known, id).toContain(task);
  // The list of the library says it too, for the path, which opens no scenario to know its tasks.
  for (const { id, tasks } of listed) expect(tasks.toSorted(), id).toEqual([...tasksOf(id)].sort());
});

test("the example of the page on scenarios reads", () => {
  const example = /```json\n([^]*?)```/.exec(page("scenarios.md"))![1]!;
  const pole = (x: number) => ({ x, kind: "pole" });
  const file = {
    format: "stillhot",
    formatVersion: 1,
    system: {
      points: { p1: pole(0), p2: pole(1), p5: pole(2), p6: pole(3) },
      elements: {
        s1: { kind: "source", phases: "A", at: "p1", kvLL: 12.47 },
        c1: { kind: "cutout", phases: "A", from: "p1", to: "p2" },
        sp1: { kind: "span", phases: "A", from: "p2", to: "p5" },
        d1: { kind: "disconnect", phases: "A", from: "p5", to: "p6", open: "A" },
        gen1: { kind: "generator", phases: "A", at: "p5", kva: 5, volts: 12470 },
      },
    },
    scenario: JSON.parse(example) as unknown,
  };
  const read = readDocument(JSON.stringify(file));
  expect(isUnreadable(read) ? read.problems : read.warnings).toEqual([]);
});
