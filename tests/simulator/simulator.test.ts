/**
 * The solver against a general-purpose circuit simulator, live, on random systems: every conductor's volts within 0.1 %,
 * below 1 % of nominal within 0.1 % of nominal.
 */
import { describe, expect, test } from "vitest";
import { isUnreadable, readDocument } from "../../src/core/document";
import { circuitOf } from "../../src/core/network";
import { AS_DRAWN, type Solution, solve, voltsAt } from "../../src/core/phasor";
import { nodalOf } from "../../src/core/phasor/nodal";
import { type Drawing, type Element, netlistOf } from "./netlist";
import { randomSystem } from "./randomSystem";
import { simulate } from "./simulate";

const SYSTEMS = 240;
/** Systems in one run of the simulator. */
const AT_ONCE = 20;

function solutionOf({ frequencyHz, points, elements }: Drawing): Solution {
  const read = readDocument(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      title: "check",
      system: { frequencyHz, points, elements },
    }),
  );
  if (isUnreadable(read)) throw new Error(JSON.stringify(read.problems));
  return solve(nodalOf(circuitOf(read.document.system)), AS_DRAWN);
}

type Volts = (conductor: string) => readonly [number, number];

function prepared(seed: number) {
  const { drawing, nominalVolts } = randomSystem(seed);
  const solution = solutionOf(drawing);
  const { circuit } = solution.nodal;
  const own: Volts = (conductor) => voltsAt(solution, circuit.nodeOf.get(conductor as never)!);
  const netlist = netlistOf(drawing, {
    prefix: `s${seed}x`,
    nominalVolts,
    volts: solution.settled
      ? (plus, minus) => {
          const [a, b] = [own(plus), own(minus)];
          return [a[0] - b[0], a[1] - b[1]];
        }
      : undefined,
  });
  return { seed, drawing, nominalVolts, solution, own, netlist };
}

/**
 * Secondaries that equal leaks alone tie to earth, so that the volts of their conductors add up to nothing. The simulator
 * has 59.83 V and 60.21 V at the first: its rounding, held against the law instead of against itself.
 */
const FLOATING: readonly { readonly seed: number; readonly conductors: readonly string[] }[] = [
  { seed: 229, conductors: ["p12/C", "p12/N"] },
  { seed: 195, conductors: ["p11/1", "p11/2", "p11/N"] },
  { seed: 215, conductors: ["p11/1", "p11/2", "p11/N"] },
];
const isFloating = (seed: number, conductor: string): boolean =>
  FLOATING.some((it) => it.seed === seed && it.conductors.includes(conductor));

type Prepared = ReturnType<typeof prepared>;

/** What differs, worst first. */
function differences(it: Prepared, simulated: ReadonlyMap<string, readonly [number, number]>): string[] {
  const { solution, netlist, own, nominalVolts, seed } = it;
  expect([...netlist.nodeOf.keys()].sort(), `conductors of system ${seed}`).toEqual(
    [...solution.nodal.circuit.conductorIds].sort(),
  );
  if (solution.singularAt !== -1) return [`system ${seed}: singular at ${solution.singularAt}`];
  return [...netlist.nodeOf].flatMap(([conductor, node]) => {
    if (isFloating(seed, conductor)) return [];
    const [re, im] = node === "0" ? [0, 0] : simulated.get(node)!;
    const [ownRe, ownIm] = own(conductor);
    const size = Math.hypot(re, im);
    const apart = Math.hypot(re - ownRe, im - ownIm);
    const nominal = nominalVolts(conductor.split("/")[0]!) / Math.sqrt(3);
    if (apart <= 0.001 * Math.max(size, nominal * (size < 0.01 * nominal ? 1 : 0))) return [];
    return [
      `system ${seed}: ${conductor} ${Math.hypot(ownRe, ownIm).toPrecision(6)} V, simulator ${size.toPrecision(6)} V, ${apart.toPrecision(3)} apart`,
    ];
  });
}

/** What of an element matters to a solution, in words. */
function traitsOf(element: Element): string[] {
  const { kind } = element;
  const says = (key: string) => element[key] !== undefined && element[key] !== "";
  const traits = [kind];
  for (const key of ["open", "parted", "cut", "failed", "blown", "removed", "bypassed", "bridged"])
    if (says(key)) traits.push(`${kind} ${key}`);
  for (const key of [
    "zOhmsPerKm",
    "bMicroSPerKm",
    "toPhases",
    "midTap",
    "taps",
    "coreLossPercent",
    "primaryStarOhms",
    "secondaryStarOhms",
  ])
    if (says(key)) traits.push(`${kind} with ${key}`);
  for (const key of ["to", "relation", "connection", "model", "construction", "position"])
    if (typeof element[key] === "string" && !/^p\d+$/.test(element[key]))
      traits.push(`${kind} ${element[key]}`);
  if (element["neutral"] === false) traits.push(`${kind} without neutral`);
  if (`${element["parted"] ?? ""}${element["cut"] ?? ""}`.includes("N"))
    traits.push(`${kind} neutral broken`);
  if (kind === "threeWinding")
    traits.push(
      `three windings, ${element["connection"] === "single" ? `single ${element["third"] as string}` : `third ${(element["connection"] as string).split("-")[2]!}`}`,
    );
  if (kind === "transformer") {
    const up = (element["secondaryV"] as number) > 1000 * (element["primaryKv"] as number) ? " up" : "";
    traits.push(`${element["connection"] as string}${up}`);
    if (element["connection"] === "single")
      traits.push(
        `single ${(element["secondary"] as string) ?? "split"} of ${(element["phases"] as string).length}`,
      );
  }
  if (kind === "source" && element["earthed"] === false) traits.push("source unearthed");
  if (kind === "generator") {
    const phases = element["phases"] as string;
    if (element["outputKw"] !== undefined && element["on"] === true)
      traits.push(`generator at an output, without grid ${(element["withoutGrid"] as string) ?? "stops"}`);
    if (element["on"] === true) traits.push(`generator on ${/[12]/.test(phases) ? "12" : phases.length}`);
  }
  return traits;
}

const TRAITS = [
  ...["source", "source unearthed", "span", "span cable", "span secondary", "span without neutral"],
  ...["span parted", "span neutral broken", "span with zOhmsPerKm", "span with bMicroSPerKm"],
  ...["span with toPhases", "lead with toPhases"],
  ...[
    "clamp with toPhases",
    "cutout with toPhases",
    "disconnect with toPhases",
    "recloser with toPhases",
    "breaker with toPhases",
    "elbow with toPhases",
  ],
  ...[
    "lead",
    "lead cut",
    "lead neutral broken",
    "clamp open",
    "cutout open",
    "cutout blown",
    "cutout removed",
  ],
  ...[
    "disconnect open",
    "recloser open",
    "breaker open",
    "elbow open",
    "meter",
    "meter open",
    "main",
    "main open",
  ],
  ...["transfer utility", "transfer generator", "transfer off", "transfer bridged"],
  ...["regulator", "regulator open", "regulator bypassed", "regulator without neutral"],
  ...["Yg-Yg", "Y-D", "Yg-D", "D-Yg", "D-D", "openY-openD", "transformer with midTap"],
  ...["D", "Yg", "Y"].map((it) => `three windings, third ${it}`),
  ...["split", "two-wire"].map((it) => `three windings, single ${it}`),
  ...["Yg-Y", "Y-Y", "transformer with primaryStarOhms", "transformer with secondaryStarOhms"],
  "transformer with coreLossPercent",
  ...["Yg-Yg up", "Y-D up", "Yg-D up", "D-Yg up", "D-D up", "openY-openD up"],
  ...["single split of 1", "single split of 2", "single two-wire of 1", "single two-wire of 2"],
  ...[
    "load",
    "load delta",
    "load I",
    "load PQ",
    "generator on 12",
    "generator on 1",
    "generator on 2",
    "generator on 3",
    "generator at an output, without grid stops",
    "generator at an output, without grid carries-on",
  ],
  ...["capacitor", "capacitor delta", "capacitor open", "arrester", "arrester failed"],
  ...["ground neutral", "ground earth", "ground both", "fault neutral", "fault earth", "fault phases"],
  ...["nearby crossing", "nearby underbuild", "nearby parallel"],
];

test.each(FLOATING)(
  "a secondary that equal leaks alone tie to earth: system $seed",
  ({ seed, conductors }) => {
    const { own } = prepared(seed);
    const volts = conductors.map((it) => own(it));
    const sum = volts.reduce((total, [re, im]) => [total[0] + re, total[1] + im] as const, [0, 0] as const);
    expect(Math.hypot(...sum)).toBeLessThan(1e-3 * Math.hypot(...volts[0]!));
    expect(Math.hypot(...volts[0]!)).toBeGreaterThan(50);
  },
);

describe("random systems against a circuit simulator", () => {
  const seeds = Array.from({ length: SYSTEMS }, (_, index) => index + 1);
  const systems = seeds.map(prepared);

  test("between them, every kind of element in every state that the format has", () => {
    const met = new Set(systems.flatMap(({ drawing }) => Object.values(drawing.elements).flatMap(traitsOf)));
    expect(TRAITS.filter((it) => !met.has(it))).toEqual([]);
  });

  test.each([60, 50])("every conductor's volts, %d Hz", async (hertz) => {
    const of = systems.filter(({ drawing }) => drawing.frequencyHz === hertz);
    const wrong: string[] = [];
    for (let at = 0; at < of.length; at += AT_ONCE) {
      const batch = of.slice(at, at + AT_ONCE);
      const simulated = await simulate(
        batch.flatMap(({ netlist }) => netlist.lines),
        hertz,
      );
      for (const it of batch) wrong.push(...differences(it, simulated));
    }
    expect(wrong).toEqual([]);
  });
});
