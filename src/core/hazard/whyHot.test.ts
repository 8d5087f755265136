import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { draws } from "../../../tests/support/draws";
import { randomDocument } from "../../../tests/support/randomSystems";
import { readDocument, type StillhotDocument } from "../document";
import type { ConductorId } from "../terms";
import { assess } from "./assess";
import { whyHot } from "./whyHot";

const read = (text: string): StillhotDocument => {
  const file = readDocument(text);
  if (!("document" in file)) throw new Error("it does not read");
  return file.document;
};

/** Each path begins at its source and ends at the conductor; its sources are those that the assessment names. */
function check(document: StillhotDocument) {
  const { conductors } = assess(document);
  for (const [id, { sources, state }] of Object.entries(conductors)) {
    const ways = whyHot(document, id as ConductorId);
    expect(ways.map((it) => it.source).sort()).toEqual([...sources].sort());
    if (state === "energized") expect(ways.some((it) => !it.isBackfeed)).toBe(true);
    for (const { steps, source } of ways) {
      expect(steps[0]).toMatchObject({ by: "source", element: source });
      expect(steps.at(-1)!.to).toBe(id);
    }
  }
}

const folder = "shared/demos";
test.each(readdirSync(folder).filter((it) => it.endsWith(".stillhot.json")))("%s", (name) =>
  check(read(readFileSync(`${folder}/${name}`, "utf8"))),
);

test("random systems", () => {
  for (let seed = 1; seed <= draws(60); seed++)
    check(read(JSON.stringify(randomDocument(seed, { parts: 18 }))));
});

test("a customer's generator goes backwards through the transformer", () => {
  const asked = readFileSync(`${folder}/portable-generator.stillhot.json`, "utf8");
  const running = asked.replaceAll(/("kind": "generator".*?) \}/g, '$1, "on": true }');
  const document = read(running.replaceAll('"on": true, "on": true', '"on": true'));
  const back = Object.keys(assess(document).conductors).flatMap((id) =>
    whyHot(document, id as ConductorId).filter((it) => it.steps.some((step) => step.by === "back")),
  );
  expect(back.length).toBeGreaterThan(0);
  for (const { isBackfeed } of back) expect(isBackfeed).toBe(true);
});
