import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  assessWithoutWork,
  exportModel,
  isUnreadable,
  readDocument,
  type StillhotDocument,
  writeDocument,
} from "../../src/core";
import { done, importModel, importText } from "../support/imported";
import { randomDocument } from "../support/randomSystems";
import { spell } from "../support/words";
import { draws } from "../support/draws";

const read = (text: string): StillhotDocument | undefined => {
  const found = readDocument(text);
  return isUnreadable(found) ? undefined : found.document;
};

/** Kinds for which the standard has nothing, each of which is named where it is left out. */
const NOT_WRITTEN = ["nearby", "fault", "ground", "arrester"];
/** Keys that change what a drawing does and that the standard has no place for, each of which is named. */
const NOT_CARRIED: Readonly<Record<string, readonly string[]>> = {
  generator: ["on", "outputKw", "outputKvar", "withoutGrid"],
  transformer: ["midTap", "neutral"],
  threeWinding: ["neutral"],
  regulator: ["neutral"],
  source: ["earthed", "inStep", "equal"],
};

/** What of a drawing the standard has words for. */
function carried(document: StillhotDocument): StillhotDocument {
  const elements = Object.entries(document.system.elements).flatMap(([id, saved]) =>
    NOT_WRITTEN.includes(saved.kind)
      ? []
      : [
          [
            id,
            Object.fromEntries(
              Object.entries(saved).filter(([key]) => !NOT_CARRIED[saved.kind]?.includes(key)),
            ),
          ],
        ],
  );
  const system = { ...document.system, elements: Object.fromEntries(elements) as never };
  return read(JSON.stringify({ format: "stillhot", formatVersion: 1, title: document.title, system }))!;
}

const again = (document: StillhotDocument) => done(importText(exportModel(document).text)).document;

interface Bound {
  readonly relative: number;
  /** whatever the share is [V] */
  readonly volts: number;
}

/**
 * The same states, and the same volts but for rounding: Nodes that the model alone
 * has are left out; each conductor of the drawing has to be there.
 */
function expectAlike(before: StillhotDocument, after: StillhotDocument, bound: Bound): void {
  const [was, is] = [before, after].map((it) => assessWithoutWork(it).conductors);
  for (const [id, report] of Object.entries(was!)) {
    const other = is![id as never] as typeof report | undefined;
    expect(`${id} ${other?.state}`).toBe(`${id} ${report.state}`);
    expect(Math.abs(other!.volts - report.volts), id).toBeLessThan(
      bound.volts + bound.relative * report.volts,
    );
  }
}

/**
 * What floats (the low side of a bank whose star or delta is tied to nothing) has its volts to earth from next to nothing, so that
 * the rounding of an impedance shows. A span that is parted is written as two halves, whose charging lies a little otherwise.
 */
const isParted = ({ system }: StillhotDocument) =>
  Object.values(system.elements).some((it) => "parted" in it && it["parted"] !== "");
const boundOf = (document: StillhotDocument): Bound =>
  isParted(document) ? { relative: 1e-3, volts: 1 } : { relative: 1e-4, volts: 1e-3 };

describe("a drawing written as a model comes back with the same states and volts", () => {
  const demos = readdirSync("shared/demos").filter((it) => it.endsWith(".stillhot.json"));
  test.each(demos)("%s", (name) => {
    const document = carried(read(readFileSync(`shared/demos/${name}`, "utf8"))!);
    expectAlike(document, again(document), boundOf(document));
  });

  test("random systems", () => {
    let compared = 0;
    for (let seed = 0; seed < draws(60); seed++) {
      const drawn = read(JSON.stringify(randomDocument(seed, { parts: 10, nonlinearLoads: seed % 2 === 0 })));
      if (drawn === undefined) continue;
      const document = carried(drawn);
      expectAlike(document, again(document), boundOf(document));
      compared++;
    }
    expect(compared).toBeGreaterThan(draws(30));
  });

  const models = ["ieee13-three-winding", "ieee13-assets", "ieee123", "acep-psil", "ieee8500-lateral"];
  test.each(models)("the published feeder %s, which came out of a model", (name) => {
    const { document } = done(importModel(`cim/${name}.xml`));
    expectAlike(document, again(document), { relative: 1e-5, volts: 1e-3 });
  });
});

/** Keys of every kind with something in them that is not the default, so that each has to come back or be named. */
const FULL: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47, angleDeg: 5, earthed: false, inStep: false },
  sp1: {
    kind: "span",
    from: "p1",
    to: "p2",
    phases: "ABC",
    lengthM: 120,
    conductor: "4/0 ACSR",
    rodsPerKm: 2.5,
  },
  c1: {
    kind: "cutout",
    from: "p2",
    to: "p3",
    phases: "ABC",
    fuse: { type: "T", amps: 25 },
    loadBreak: "none",
  },
  d1: {
    kind: "disconnect",
    from: "p2",
    to: "p4",
    phases: "ABC",
    gang: true,
    loadBreakAmps: 600,
    visibleGap: false,
  },
  r1: {
    kind: "recloser",
    from: "p2",
    to: "p5",
    phases: "ABC",
    reclosing: false,
    interruptingAmps: 8000,
    tagged: true,
  },
  t1: {
    kind: "transformer",
    from: "p3",
    to: "p6",
    phases: "A",
    connection: "single",
    kva: 25,
    primaryKv: 7.2,
    secondaryV: 240,
    coreLossPercent: 0.3,
  },
  m1: { kind: "meter", from: "p6", to: "p7", phases: "12", count: 2 },
  ld1: { kind: "load", at: "p7", phases: "12", kw: 5, kvar: 1, model: "PQ", customers: 2, critical: true },
  g1: {
    kind: "generator",
    at: "p7",
    phases: "12",
    kva: 8,
    volts: 240,
    on: true,
    interface: "inverter",
    xPercent: 15,
  },
  cp1: { kind: "capacitor", at: "p4", phases: "ABC", kvar: 600, kvLL: 12.47, charged: true },
  x1: { kind: "arrester", at: "p4", phases: "ABC", loose: true },
  gs1: { kind: "ground", at: "p5", phases: "ABC" },
};

test("M1 every key that does not come back is named, with what it belongs to", () => {
  const document = read(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      system: {
        points: Object.fromEntries(
          ["p1", "p2", "p3", "p4", "p5", "p6", "p7"].map((id) => [id, { earthOhms: 25 }]),
        ),
        elements: FULL,
      },
    }),
  )!;
  const { text, leftOut, approximated } = exportModel(document);
  const back = done(importText(text)).document.system.elements as Readonly<
    Record<string, Record<string, unknown>>
  >;
  const told = [...leftOut, ...approximated].flatMap(({ what, names }) =>
    names.map((name) => `${name} ${spell(what)}`),
  );
  const isTold = (id: string, key: string) =>
    told.some((it) => it.startsWith(`${id} `) && (it.endsWith(`: ${key}`) || !(id in back)));
  const silent = Object.entries(FULL).flatMap(([id, record]) =>
    Object.entries(record)
      .filter(([key, value]) => JSON.stringify(back[id]?.[key]) !== JSON.stringify(value) && !isTold(id, key))
      .map(([key]) => `${id} ${key}`),
  );
  // Rods come back as the same ohms at both ends, which is told in those words.
  expect(silent).toEqual(["sp1 rodsPerKm"]);
  expect(told).toContain("sp1 rods along the neutral written as one at each end");
  expect(told).toContain("g1 not written: on");
  expect(told).toContain("s1 not written: earthed");
});

test("the same drawing gives the same file, and another program finds no id twice", () => {
  const document = read(readFileSync("shared/demos/quarry-lane.stillhot.json", "utf8"))!;
  const { text } = exportModel(document);
  expect(exportModel(read(writeDocument(document))!).text).toBe(text);
  const ids = [...text.matchAll(/rdf:about="([^"]*)"/g)].map((it) => it[1]!);
  expect(new Set(ids).size).toBe(ids.length);
  expect(
    [...text.matchAll(/rdf:resource="(urn:uuid:[^"]*)"/g)].filter((it) => !ids.includes(it[1]!)),
  ).toEqual([]);
});

/** A bank of three windings, and a unit on a pole with two secondaries; in the bank the middle winding's share is below zero. */
const THREE_WINDINGS = {
  tw1: {
    kind: "threeWinding",
    from: "p1",
    to: "p2",
    alt: "p3",
    phases: "ABC",
    connection: "D-Yg-D",
    kva: 5000,
    primaryKv: 12.47,
    secondaryV: 4160,
    thirdV: 480,
    rPercent: 0.5,
    xPercent: 8,
    rThirdPercent: 0.75,
    xThirdPercent: 10,
    rBetweenPercent: 0.25,
    xBetweenPercent: 1.5,
    excitingPercent: 0.25,
    secondaryStarOhms: [0, 0.5],
  },
  tw2: {
    kind: "threeWinding",
    from: "p1",
    to: "p4",
    alt: "p5",
    phases: "C",
    connection: "single",
    kva: 50,
    primaryKv: 7.2,
    secondaryV: 240,
    thirdV: 277,
    xPercent: 4,
    xThirdPercent: 5,
    xBetweenPercent: 8,
  },
};

test("three windings come back with what they are, whichever of the standard's two ways has them", () => {
  const document = read(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      system: {
        points: Object.fromEntries(["p1", "p2", "p3", "p4", "p5"].map((id) => [id, { earthOhms: 25 }])),
        elements: { s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47 }, ...THREE_WINDINGS },
      },
    }),
  )!;
  const back = again(document).system.elements as unknown as Record<string, Record<string, unknown>>;
  for (const [id, keys] of Object.entries(THREE_WINDINGS))
    for (const [key, value] of Object.entries(keys))
      if (typeof value === "number") expect(back[id]![key], `${id} ${key}`).toBeCloseTo(value, 9);
      else expect(back[id]![key] ?? "split", `${id} ${key}`).toEqual(value);
  expect(back["tw2"]).toMatchObject({ secondary: "split", third: "two-wire" });
});
