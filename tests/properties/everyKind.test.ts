/** A kind of device that no demo, no scenario and no random drawing holds is asked none of the laws. */
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { DEVICES } from "../../src/core/devices";
import { randomDocument } from "../support/randomSystems";

const drawings = ["demos", "scenarios"].flatMap((folder) => {
  const at = new URL(`../../shared/${folder}/`, import.meta.url);
  return readdirSync(at)
    .filter((it) => it.endsWith(".stillhot.json"))
    .map((it) => JSON.parse(readFileSync(new URL(it, at), "utf8")) as ReturnType<typeof randomDocument>);
});

test("every kind of device stands in a demo, a scenario or a random drawing", () => {
  const random = Array.from({ length: 100 }, (_, seed) => randomDocument(seed, { parts: 30 }));
  const met = new Set(
    [...drawings, ...random].flatMap(({ system }) => Object.values(system.elements).map((it) => it["kind"])),
  );
  expect(Object.keys(DEVICES).filter((it) => !met.has(it))).toEqual([]);
});
