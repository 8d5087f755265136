import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import {
  calledAlike,
  isUnreadable,
  readValue,
  type StillhotDocument,
  structuresOf,
  writeDocument,
} from "../../src/core";
import { assess } from "../../src/core/hazard";
import type { Json } from "../../src/core/terms";
import { drawFrom, randomDocument } from "../support/randomSystems";

type Records = Record<string, Record<string, Json>>;
interface Saved {
  readonly system: { readonly structures?: Records; readonly points: Records; readonly elements: Records };
}

const LIBRARY = ["demos", "scenarios"].flatMap((folder) =>
  readdirSync(`shared/${folder}`)
    .filter((it) => it.endsWith(".stillhot.json"))
    .map((it) => `shared/${folder}/${it}`),
);

function read(file: object): StillhotDocument {
  const found = readValue(file as Json);
  if (isUnreadable(found)) throw new Error(found.problems.map(({ path }) => path).join());
  return found.document;
}

/** What is electrical in the answers: states and volts of conductors, verdicts and margins of work points. */
function electrical(document: StillhotDocument) {
  const { conductors, workPoints } = assess(document);
  return {
    conductors: Object.entries(conductors).map(([id, { state, volts }]) => [id, state, volts]),
    works: Object.entries(workPoints).map(([id, { verdict, margin }]) => [id, verdict, margin]),
  };
}

/** A file as it was before it named structures. */
function withoutStructures({ system: { structures: _, ...system }, ...file }: Saved): object {
  const bare = (records: Records) =>
    Object.fromEntries(
      Object.entries(records).map(([id, { on, ...rest }]) => [
        id,
        typeof on === "boolean" ? { on, ...rest } : rest,
      ]),
    );
  return { ...file, system: { ...system, points: bare(system.points), elements: bare(system.elements) } };
}

test.each(LIBRARY)(
  "D12 nothing electrical depends on the structures of %s, and no two things have one name",
  (path) => {
    const { scenario: _, ...saved } = JSON.parse(readFileSync(path, "utf8")) as Saved & { scenario?: Json };
    const document = read(saved);
    expect(Object.keys(document.system.structures!).length).toBeGreaterThan(2);
    expect(electrical(document)).toEqual(electrical(read(withoutStructures(saved))));
    expect(calledAlike(document.system)).toEqual([]);
  },
);

test.each(LIBRARY)("D19 %s without its structures gives its bytes back", (path) => {
  const { scenario: _, ...saved } = JSON.parse(readFileSync(path, "utf8")) as Saved & { scenario?: Json };
  const text = `${JSON.stringify(withoutStructures(saved), null, 2)}\n`;
  const document = read(JSON.parse(text) as object);
  assess(document);
  expect(structuresOf(document.system).size).toBeGreaterThan(1);
  expect(writeDocument(document)).toBe(writeDocument(read(JSON.parse(text) as object)));
  expect(JSON.parse(writeDocument(document))).toEqual(JSON.parse(text));
  expect(writeDocument(read(JSON.parse(writeDocument(document)) as object))).toBe(writeDocument(document));
});

/** Sixty of the seeds; a thousand were run outside the suite. */
test("D12 nor on what points of random drawings say they are on", () => {
  for (let seed = 1; seed <= 60; seed++) {
    const draw = drawFrom(seed);
    const plain = randomDocument(seed + 500, { parts: 14 }) as unknown as Saved;
    const structures = { s1x: { label: "Pole 1" }, s2x: { label: "Pole 2" }, s3x: { kind: "vault" } };
    const points = Object.fromEntries(
      Object.entries(plain.system.points).map(([id, saved]) => [
        id,
        draw.chance(0.6) ? { ...saved, on: draw.oneOf(Object.keys(structures)) } : saved,
      ]),
    );
    const told = { ...plain, system: { ...plain.system, structures, points } };
    const states = (file: object) => electrical(read(file)).conductors;
    expect(states(told), `seed ${seed}`).toEqual(states(plain));
  }
});
