import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  asHeard,
  assess,
  DEVICES,
  deviceOf,
  isUnreadable,
  pointFields,
  readDocument,
  statesByReach,
  structureName,
  structuresOf,
  type DeviceKind,
} from "../../core";
import { outlineOf, rowWords } from "./outline";
import { figures, firstOf, threatSentence, told } from "./words";
import { randomJob } from "../../../tests/support/randomJobs";

test.each([
  [0, "0"],
  [7199.6, "7\u202f200"],
  [119.96, "120"],
  [4.126, "4.13"],
  [0.05, "0.05"],
  [34500, "34\u202f500"],
  [-0.00001, "0"],
  [Infinity, "?"],
])("%d is written with three figures: %s", (value, text) => {
  expect(figures(value)).toBe(text);
});

describe("Every key of every kind has a name and a help", () => {
  test.each(Object.keys(DEVICES) as DeviceKind[])("%s", (kind) => {
    expect(firstOf(`kind.${kind}`)).toBeDefined();
    for (const [key, field] of Object.entries(deviceOf(kind).fields)) {
      if (field.internal === true) continue;
      expect([key, firstOf(`field.${kind}.${key}`, `field.${key}`)]).not.toContain(undefined);
      expect([key, firstOf(`help.${kind}.${key}`, `help.${key}`)]).not.toContain(undefined);
    }
  });

  test("point", () => {
    for (const key of Object.keys(pointFields)) {
      expect([key, firstOf(`field.${key}`)]).not.toContain(undefined);
      expect([key, firstOf(`help.${key}`)]).not.toContain(undefined);
    }
  });
});

const folder = new URL("../../../shared/demos/", import.meta.url);
const demos = readdirSync(folder).filter((it) => it.endsWith(".stillhot.json"));

describe.each(demos)("The outline of %s", (name) => {
  const read = readDocument(readFileSync(new URL(name, folder), "utf8"));
  if (isUnreadable(read)) throw new Error(`${name} does not read`);
  const { document } = read;
  const rows = outlineOf(document);
  const assessment = assess(document);

  test("names every structure and element once, and each point that is not alone on its structure", () => {
    const ids = rows.map(({ owner }) => `${owner.of} ${owner.id}`).sort();
    const structures = [...structuresOf(document.system).values()];
    expect(ids).toEqual(
      [
        ...structures.map(({ id }) => `structure ${id}`),
        ...structures.flatMap(({ points }) => (points.length > 1 ? points.map((id) => `point ${id}`) : [])),
        ...Object.keys(document.system.elements).map((id) => `element ${id}`),
      ].sort(),
    );
  });

  test("has structures as its first level, and each thing under the one where it stands or begins", () => {
    rows.forEach(({ parent, level }, index) => {
      const at = rows.findIndex((it) => it.key === parent);
      expect(parent === undefined ? -1 : at).toBeLessThan(index);
      if (at >= 0) expect(rows[at]!.level).toBe(level - 1);
      expect(level).toBe(rows[index]!.owner.of === "structure" ? 1 : 2);
    });
  });

  test("no two rows begin with one name, and none has an id in it", () => {
    const words = rows.map((row) => rowWords(document, assessment, row));
    const names = rows.map((row) => asHeard(rowWords(document, {}, row)));
    expect(names.filter((it, index) => names.indexOf(it) !== index)).toEqual([]);
    const { points, elements, structures = {} } = document.system;
    const labels = [points, elements, structures].flatMap((map) =>
      Object.values(map as Record<string, { label?: string }>).map((it) => it.label ?? ""),
    );
    const ids = [points, elements, structures]
      .flatMap((map) => Object.keys(map))
      .filter((it) => /\d/.test(it));
    for (const it of words)
      for (const id of ids) {
        const isOfALabel = labels.some((label) => new RegExp(`(?<![\\w-])${id}(?![\\w-])`, "i").test(label));
        if (!isOfALabel) expect(it).not.toMatch(new RegExp(`(?<![\\w-])${id}(?![\\w-])`));
      }
  });

  test("says the states that are known before the volts, and of no conductor that it is dead", () => {
    const states = statesByReach(document.system);
    for (const row of rows.filter(({ owner }) => owner.of === "point" || owner.of === "structure")) {
      const told = rowWords(document, { states }, row);
      expect(told).not.toMatch(/\d V\b|isolated|grounded/);
      if (/energized/.test(rowWords(document, assessment, row))) expect(told).toMatch(/energized|faulted/);
      expect(rowWords(document, {}, row)).not.toMatch(/energized|isolated|grounded/);
    }
  });

  test("never says safe, and leaves no gap unfilled", () => {
    const sentences = [
      ...rows.map((row) => rowWords(document, assessment, row)),
      ...Object.values(assessment.workPoints).flatMap((it) =>
        it.threats.map((threat) => threatSentence(document, threat)),
      ),
    ];
    for (const it of sentences) {
      expect(it).not.toMatch(/\bsafe\b|\{\w+\}|undefined/i);
      expect(it.length).toBeGreaterThan(2);
    }
  });
});

test("the outline of one pole, read aloud, makes sense without the picture", () => {
  const read = readDocument(
    readFileSync(new URL("sideline-three-transformers.stillhot.json", folder), "utf8"),
  );
  if (isUnreadable(read)) throw new Error("it reads");
  const { document } = read;
  const rows = outlineOf(document);
  const pole = rows.find((row) => rowWords(document, {}, row).startsWith("Pole 31"))!;
  const its = rows.filter((row) => row === pole || row.parent === pole.key);
  const told = its.map((row) => rowWords(document, assess(document), row).replaceAll(/\s/g, " "));
  expect(told).toMatchInlineSnapshot(`
    [
      "Pole 31, C energized 7 190 V; 1 energized 124 V; 2 energized 115 V",
      "Pole 31, line, C energized 7 190 V",
      "Pole 31, T1 cutout, phases C, closed",
      "span from Pole 31 to Pole 32, phases C",
      "Pole 31, T1 bushing, C energized 7 190 V",
      "transformer Pole 31, T1, phases C",
      "Pole 31, T1 secondary, 1 energized 124 V; 2 energized 115 V",
      "meters of lots 1 to 3, phases 1 2, closed",
    ]
  `);
});

test("no pole without a number is told by more than two others, one behind the other", () => {
  for (const seed of [1, 2, 3, 4, 5, 6, 7, 8]) {
    const job = randomJob(seed);
    for (const { id } of structuresOf(job.system).values())
      expect(told(structureName(job, id)).match(/toward|branch from|past/g)?.length ?? 0).toBeLessThan(3);
  }
});
