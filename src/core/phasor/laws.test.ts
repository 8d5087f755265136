/** Laws that every solution of the network keeps, on random systems of every kind of element. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isUnreadable, readDocument, type System } from "../document";
import { type Circuit, circuitOf, EARTH } from "../network";
import { AS_DRAWN, elementAmps, type Solution, solve, voltsAt } from ".";
import { solveInPlace } from "./ldlt";
import { nodalOf } from "./nodal";
import { LEAK_SIEMENS } from "./tolerances";
import { complex, type Complex } from "../terms";
import type { Drawing, Element } from "../../../tests/simulator/netlist";
import { chance, randomSystem } from "../../../tests/simulator/randomSystem";

const seeds = fc.integer({ min: 1, max: 1_000_000_000 });
/** One seed, so that a run says the same on every machine; any other seed must hold too. */
const RUNS = { numRuns: 60, seed: 1 };

const LINEAR = { model: undefined, outputKw: undefined, outputKvar: undefined, withoutGrid: undefined };

/** A drawing as it is in a file. `linear` makes every load an impedance, and of a machine at a set output one that holds its volts. */
function systemOf({ frequencyHz, points, elements }: Drawing, { linear = false } = {}): System {
  const kept = linear
    ? Object.fromEntries(Object.entries(elements).map(([id, it]) => [id, { ...it, ...LINEAR }]))
    : elements;
  const system = { frequencyHz, points, elements: kept };
  const read = readDocument(JSON.stringify({ format: "stillhot", formatVersion: 1, title: "law", system }));
  if (isUnreadable(read)) throw new Error(JSON.stringify(read.problems));
  return read.document.system;
}

function solutionOf(circuit: Circuit): Solution {
  const solution = solve(nodalOf(circuit), AS_DRAWN);
  expect(solution.singularAt).toBe(-1);
  return solution;
}

const solvedDrawing = (drawing: Drawing) => solutionOf(circuitOf(systemOf(drawing)));

/** Volts by conductor. */
const voltsOf = (solution: Solution): Map<string, Complex> =>
  new Map([...solution.nodal.circuit.nodeOf].map(([id, node]) => [id, voltsAt(solution, node)]));

/** Largest nominal volts of a drawing: what small differences are measured against. */
const scaleOf = (solution: Solution): number =>
  Math.max(
    1,
    ...solution.nodal.circuit.nominalVolts,
    ...[...voltsOf(solution).values()].map(complex.magnitude),
  );

function expectSameVolts(found: Solution, wanted: ReadonlyMap<string, Complex>, within = 1e-5): void {
  const volts = voltsOf(found);
  const scale = scaleOf(found);
  for (const [id, value] of wanted) {
    const apart = complex.magnitude(complex.subtract(volts.get(id)!, value));
    expect(apart / scale, `${id}: ${volts.get(id)}, wanted ${value}`).toBeLessThan(within);
  }
}

const times = (a: Complex, b: Complex) => complex.times(a, complex.conjugate(b));

describe("S2 currents into every conductor sum to zero", () => {
  test("through all elements, its leak and its driven ground", () =>
    fc.assert(
      fc.property(seeds, (seed) => {
        const { drawing } = randomSystem(seed);
        const solution = solvedDrawing(drawing);
        const { circuit } = solution.nodal;
        const sums = Array.from({ length: circuit.nodeCount }, () => ({ sum: complex.zero, flow: 0 }));
        const take = (node: number, amps: Complex) => {
          if (node === EARTH) return;
          sums[node] = {
            sum: complex.add(sums[node]!.sum, amps),
            flow: sums[node]!.flow + complex.magnitude(amps),
          };
        };
        for (const byNode of elementAmps(solution)) byNode.forEach((amps, node) => take(node, amps));
        for (let node = 0; node < circuit.conductorCount; node++)
          take(node, complex.scale(voltsAt(solution, node), LEAK_SIEMENS));
        for (const { node, ohms } of circuit.rods)
          take(node, complex.scale(voltsAt(solution, node), 1 / ohms));
        sums.forEach(({ sum, flow }, node) =>
          expect(complex.magnitude(sum), `node ${node} of seed ${seed}`).toBeLessThan(1e-6 * flow + 1e-6),
        );
      }),
      RUNS,
    ));
});

describe("S3 power in equals power out", () => {
  test("what sources give is what the rest takes, and nothing but a source gives", () =>
    fc.assert(
      fc.property(seeds, (seed) => {
        const { drawing } = randomSystem(seed);
        // A circuit alongside gives power through its coupling: it has no element that could own up to it.
        const elements = Object.fromEntries(
          Object.entries(drawing.elements).filter(([, it]) => it.kind !== "nearby"),
        );
        const solution = solvedDrawing({ ...drawing, elements });
        const { circuit } = solution.nodal;
        const amps = elementAmps(solution);
        const taken = circuit.elementIds.map((id, element) => {
          let va = complex.zero;
          for (const [node, current] of amps[element]!)
            va = complex.add(va, times(voltsAt(solution, node), current));
          return { id, kind: elements[id]!.kind, va };
        });
        const gives = (kind: string) => kind === "source" || kind === "generator";
        const given = taken.filter(({ kind }) => gives(kind)).reduce((sum, { va }) => sum - va[0], 0);
        const size = taken.reduce((sum, { va }) => sum + complex.magnitude(va), 1);
        const leaks = [...voltsOf(solution).values()].reduce(
          (sum, it) => sum + complex.magnitude(it) ** 2 * LEAK_SIEMENS,
          0,
        );
        const rods = circuit.rods.reduce(
          (sum, { node, ohms }) => sum + complex.magnitude(voltsAt(solution, node)) ** 2 / ohms,
          0,
        );
        const used = taken.filter(({ kind }) => !gives(kind)).reduce((sum, { va }) => sum + va[0], 0);
        expect(Math.abs(given - used - leaks - rods) / size).toBeLessThan(1e-6);
        for (const { id, kind, va } of taken)
          if (!gives(kind)) expect(va[0] / size, `${kind} ${id} of seed ${seed}`).toBeGreaterThan(-1e-6);
      }),
      RUNS,
    ));
});

/** What rounding leaves beside a solidly earthed neutral [Ω]. */
const MICROOHM = 1e-6;

describe("S4 volts at one conductor from a current at another are the same the other way", () => {
  test("between any two conductors", () =>
    fc.assert(
      fc.property(seeds, fc.nat(), fc.nat(), (seed, first, second) => {
        const solution = solvedDrawing(randomSystem(seed).drawing);
        const { placeOf, size, circuit } = solution.nodal;
        const [a, b] = [first, second].map((it) => placeOf[it % circuit.conductorCount]!);
        const voltsFrom = (at: number, read: number): Complex => {
          const re = new Float64Array(size);
          const im = new Float64Array(size);
          re[at] = 1;
          solveInPlace(solution.factor, re, im);
          return [re[read]!, im[read]!];
        };
        const [there, back] = [voltsFrom(a!, b!), voltsFrom(b!, a!)];
        const own = Math.max(complex.magnitude(voltsFrom(a!, a!)), complex.magnitude(voltsFrom(b!, b!)));
        expect(complex.magnitude(complex.subtract(there, back))).toBeLessThan(1e-5 * own + MICROOHM);
      }),
      RUNS,
    ));
});

describe("S5 scaling every source scales every volt, where loads are impedances", () => {
  test("by any factor", () =>
    fc.assert(
      fc.property(seeds, fc.double({ min: 0.01, max: 50, noNaN: true }), (seed, factor) => {
        const circuit = circuitOf(systemOf(randomSystem(seed).drawing, { linear: true }));
        const scaled: Circuit = {
          ...circuit,
          emfs: circuit.emfs.map((it) => ({
            ...it,
            part: {
              ...it.part,
              legs: it.part.legs.map((leg) => ({ ...leg, volts: complex.scale(leg.volts, factor) })),
            },
          })),
          stretches: circuit.stretches.map((it) => ({
            ...it,
            alongside: it.alongside.map((along) => ({
              ...along,
              volts: along.volts * factor,
              amps: along.amps * factor,
            })),
          })),
        };
        const wanted = [...voltsOf(solutionOf(circuit))].map(([id, volts]): [string, Complex] => [
          id,
          complex.scale(volts, factor),
        ]);
        const found = solutionOf(scaled);
        expectSameVolts(found, new Map(wanted));
      }),
      RUNS,
    ));
});

/** The same list in another order. */
function shuffled<T>(list: readonly T[], seed: number): T[] {
  const { whole } = chance(seed);
  const left = [...list];
  return list.map(() => left.splice(whole(0, left.length - 1), 1)[0]!);
}

const renamed = (element: Element, names: ReadonlyMap<string, string>): Element =>
  Object.fromEntries(
    Object.entries(element).map(([key, value]) => [
      key,
      ["from", "to", "alt", "at"].includes(key) ? (names.get(value as string) ?? value) : value,
    ]),
  ) as unknown as Element;

describe("S6 names and order change nothing", () => {
  test("points under other names, all in another order", () =>
    fc.assert(
      fc.property(seeds, fc.integer(), (seed, order) => {
        const { drawing } = randomSystem(seed);
        const ids = Object.keys(drawing.points);
        const names = new Map(shuffled(ids, order).map((id, index) => [id, `q${index}`]));
        const points = Object.fromEntries(
          shuffled(ids, order + 1).map((id) => [names.get(id)!, drawing.points[id]!]),
        );
        const elements = Object.fromEntries(
          shuffled(Object.entries(drawing.elements), order + 2).map(([id, it]) => [id, renamed(it, names)]),
        );
        const wanted = [...voltsOf(solvedDrawing(drawing))].map(([id, volts]): [string, Complex] => {
          const [point, letter] = id.split("/") as [string, string];
          return [`${names.get(point)!}/${letter}`, volts];
        });
        expectSameVolts(solvedDrawing({ ...drawing, points, elements }), new Map(wanted));
      }),
      RUNS,
    ));
});

describe("S7 an island that nothing joins changes nothing", () => {
  test("beside the network", () =>
    fc.assert(
      fc.property(seeds, seeds, (seed, islandSeed) => {
        const { drawing } = randomSystem(seed);
        const other = randomSystem(islandSeed).drawing;
        const names = new Map(Object.keys(other.points).map((id) => [id, `i${id}`]));
        const island = Object.entries(other.elements).map(([id, it]): [string, Element] => [
          `i${id}`,
          { ...renamed(it, names), ...(it.kind === "nearby" ? { span: `i${it["span"] as string}` } : {}) },
        ]);
        // Loads that do not settle stand as impedances everywhere: that is told, and not this law.
        const withIsland = systemOf(
          {
            ...drawing,
            points: {
              ...drawing.points,
              ...Object.fromEntries(Object.entries(other.points).map(([id, it]) => [names.get(id)!, it])),
            },
            elements: { ...drawing.elements, ...Object.fromEntries(island) },
          },
          { linear: true },
        );
        const alone = voltsOf(solutionOf(circuitOf(systemOf(drawing, { linear: true }))));
        expectSameVolts(solutionOf(circuitOf(withIsland)), alone);
      }),
      RUNS,
    ));
});

describe("S8 closing a switch between two points at the same volts changes nothing", () => {
  /** A drawing, and two branches alike from one of its points, with an open switch between their ends. */
  function twin(seed: number, pick: number, open: boolean): Drawing {
    const { drawing } = randomSystem(seed);
    const ends = Object.values(drawing.elements).filter(
      (it) => it["from"] !== undefined && it.kind !== "transformer" && it.kind !== "transfer",
    );
    const beside = ends[pick % Math.max(1, ends.length)];
    const at = (beside?.["from"] ?? "p0") as string;
    const phases = (beside?.["phases"] ?? Object.values(drawing.elements)[0]!["phases"]) as string;
    const branch = (to: string) => ({ kind: "span", from: at, to, phases, lengthM: 100, neutral: false });
    return {
      ...drawing,
      points: { ...drawing.points, left: {}, right: {} },
      elements: {
        ...drawing.elements,
        toLeft: branch("left"),
        toRight: branch("right"),
        tie: {
          kind: "disconnect",
          from: "left",
          to: "right",
          phases,
          neutral: false,
          ...(open ? { open: true } : {}),
        },
      },
    };
  }

  test("between two branches alike", () =>
    fc.assert(
      fc.property(seeds, fc.nat(), (seed, pick) => {
        const wanted = voltsOf(solvedDrawing(twin(seed, pick, true)));
        const closed = solvedDrawing(twin(seed, pick, false));
        expectSameVolts(closed, wanted);
        const { circuit } = closed.nodal;
        const tie = elementAmps(closed)[circuit.elementIds.indexOf("tie" as never)]!;
        for (const amps of tie.values()) expect(complex.magnitude(amps)).toBeLessThan(1e-3);
      }),
      RUNS,
    ));

  test("between a point and itself, by a second way beside a lead", () =>
    fc.assert(
      fc.property(seeds, fc.nat(), (seed, pick) => {
        const drawn = (open: boolean): Drawing => {
          const drawing = twin(seed, pick, open);
          const { phases } = drawing.elements["tie"]! as unknown as { phases: string };
          const lead = { kind: "lead", from: "left", to: "right", phases, neutral: false };
          return { ...drawing, elements: { ...drawing.elements, lead } };
        };
        expectSameVolts(solvedDrawing(drawn(false)), voltsOf(solvedDrawing(drawn(true))));
      }),
      RUNS,
    ));
});
