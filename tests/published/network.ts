/** What the checks against published networks share: networks in the file's own format, probes, and comparison. */
import { expect } from "vitest";
import type { Unit } from "../../src/core/devices";
import { isUnreadable, readDocument, type System } from "../../src/core/document";
import { type Circuit, circuitOf, EARTH } from "../../src/core/network";
import {
  AS_DRAWN,
  type ElementAmps,
  elementAmps,
  type Solution,
  solve,
  voltsAt,
} from "../../src/core/phasor";
import { nodalOf } from "../../src/core/phasor/nodal";
import { complex, type Complex, type ConductorId } from "../../src/core/terms";

export const FOOT_M = 0.3048;
export const MILE_KM = 1.609344;

/** A stiff source: the format wants some impedance, and this is far below any that matters [Ω]. */
export const STIFF = { z1Ohms: [1e-6, 0], z0Ohms: [1e-6, 0] } as const;
/** A driven ground of no resistance to speak of, for a neutral that is solidly earthed [Ω]. */
export const SOLID_OHMS = 1e-6;

export type SavedKeys = { readonly kind: string; readonly [key: string]: unknown };
export type Elements = Readonly<Record<string, SavedKeys>>;

/** A system read from a file as a user would write it. Points follow from the ends; `earthed` gives driven grounds. */
export function systemOf(elements: Elements, earthed: Readonly<Record<string, number>> = {}): System {
  const points: Record<string, object> = {};
  for (const element of Object.values(elements))
    for (const end of ["from", "to", "alt", "at"])
      if (typeof element[end] === "string") points[element[end] as string] ??= {};
  for (const [point, earthOhms] of Object.entries(earthed)) points[point] = { earthOhms };
  const read = readDocument(
    JSON.stringify({ format: "stillhot", formatVersion: 1, title: "check", system: { points, elements } }),
  );
  if (isUnreadable(read)) throw new Error(JSON.stringify(read.problems));
  return read.document.system;
}

/** A solved network and its currents. */
export interface Solved {
  readonly solution: Solution;
  readonly circuit: Circuit;
  readonly amps: ElementAmps;
}

export function solved(elements: Elements, earthed?: Readonly<Record<string, number>>): Solved {
  return solvedCircuit(circuitOf(systemOf(elements, earthed)));
}

export function solvedCircuit(circuit: Circuit): Solved {
  const solution = solve(nodalOf(circuit), AS_DRAWN);
  expect(solution.singularAt, "the equations must not be singular").toBe(-1);
  expect(solution.settled, "the loads must settle").toBe(true);
  return { solution, circuit, amps: elementAmps(solution) };
}

/** The circuit with one element's transformer units as the file's own words cannot say them. */
export function withUnits(
  circuit: Circuit,
  id: string,
  change: (unit: Unit, index: number) => Unit,
): Circuit {
  const element = circuit.elementIds.indexOf(id as never);
  let index = 0;
  const units = circuit.units.map((it) =>
    it.element === element ? { ...it, part: change(it.part, index++) } : it,
  );
  return { ...circuit, units };
}

/**
 * What a probe reads: `n2/A` volts to earth; `n2/A-n2/B` volts between two conductors; `t1*` volts of the node inside
 * an element (its star); `l1@n2/A` the current that element `l1` takes from that conductor; `a + b` sums.
 */
export function reading(network: Solved, probe: string): Complex {
  if (probe.includes(" + "))
    return probe.split(" + ").reduce((sum, it) => complex.add(sum, reading(network, it)), complex.zero);
  const { circuit, amps, solution } = network;
  const node = (id: string): number => {
    if (id === "earth") return EARTH;
    if (id.endsWith("*"))
      return circuit.ownerOfNode.indexOf(circuit.elementIds.indexOf(id.slice(0, -1) as never));
    const found = circuit.nodeOf.get(id as ConductorId);
    if (found === undefined) throw new Error(`no conductor ${id}`);
    return found;
  };
  const [element, conductor] = probe.split("@");
  if (conductor !== undefined) {
    const index = circuit.elementIds.indexOf(element as never);
    if (index === -1) throw new Error(`no element ${element}`);
    return amps[index]!.get(node(conductor)) ?? complex.zero;
  }
  const [plus, minus] = probe.split("-");
  const volts = (id: string) => voltsAt(solution, node(id));
  return minus === undefined ? volts(plus!) : complex.subtract(volts(plus!), volts(minus));
}

/** Magnitude and angle in degrees, as the documents print them; no angle where there is nothing to turn. */
export type Phasor = readonly [magnitude: number, degrees: number | null];

export interface Tolerance {
  /** of the magnitude [1] */
  readonly relative: number;
  readonly degrees: number;
  /** below this magnitude only the difference counts [V or A] … */
  readonly smallBelow?: number;
  /** … and this is the most that it may be [V or A] */
  readonly absolute?: number;
}

export const turned = (degrees: number): number => ((((degrees + 180) % 360) + 360) % 360) - 180;

/** How far a reading is from what is wanted, in words; nothing where it is close enough. */
export function deviation(probe: string, found: Complex, [magnitude, degrees]: Phasor, tolerance: Tolerance) {
  const [foundMagnitude, foundDegrees] = [complex.magnitude(found), complex.angleDegrees(found)];
  const spelled = `${probe}: ${foundMagnitude.toPrecision(7)} at ${foundDegrees.toFixed(3)}°, wanted ${magnitude} at ${degrees}°`;
  const { relative, degrees: mostDegrees, smallBelow = 0, absolute = 0 } = tolerance;
  if (magnitude < smallBelow) {
    const apart =
      degrees === null
        ? foundMagnitude
        : complex.magnitude(complex.subtract(found, complex.polar(magnitude, degrees)));
    return apart <= absolute ? undefined : `${spelled} (${apart.toPrecision(3)} apart)`;
  }
  const off = Math.abs(foundMagnitude - magnitude);
  if (!(off <= relative * magnitude + absolute * 1e-9))
    return `${spelled} (${((100 * off) / magnitude).toPrecision(3)} %)`;
  if (degrees !== null && !(Math.abs(turned(foundDegrees - degrees)) <= mostDegrees))
    return `${spelled} (${turned(foundDegrees - degrees).toFixed(3)}°)`;
  return undefined;
}

/** Every probe reads what is wanted. All that do not are named together. */
export function expectReadings(
  network: Solved,
  wanted: Readonly<Record<string, Phasor>>,
  tolerance: Tolerance | ((probe: string) => Tolerance),
): void {
  const wrong = Object.entries(wanted).flatMap(
    ([probe, phasor]) =>
      deviation(
        probe,
        reading(network, probe),
        phasor,
        typeof tolerance === "function" ? tolerance(probe) : tolerance,
      ) ?? [],
  );
  expect(wrong).toEqual([]);
}

/** Probes with what a document prints for them, in the same order. */
export const paired = (
  probes: readonly string[],
  phasors: readonly (readonly number[])[],
): [string, Phasor][] => probes.map((probe, index) => [probe, phasors[index] as unknown as Phasor]);

/** The matrix of ohms per mile as the format wants it, per kilometre; rows and columns as given. */
export const ohmsPerKm = (perMile: readonly (readonly (readonly number[])[])[]): [number, number][][] =>
  perMile.map((row) => row.map(([r, x]) => [r! / MILE_KM, x! / MILE_KM]));

export const zeros = (size: number): number[][] =>
  Array.from({ length: size }, () => new Array<number>(size).fill(0));

/** A span by its matrix alone, in ohms per mile, without capacitance. */
export const lineOf = (
  from: string,
  to: string,
  phases: string,
  feet: number,
  ohmsPerMile: readonly (readonly (readonly number[])[])[],
  neutral = false,
): SavedKeys => ({
  kind: "span",
  from,
  to,
  phases,
  neutral,
  lengthM: feet * FOOT_M,
  zOhmsPerKm: ohmsPerKm(ohmsPerMile),
  bMicroSPerKm: zeros(ohmsPerMile.length),
});

/** Power that an impedance draws at some volts, as a load says it. */
export function powerOf(ohms: Complex, volts: number): { kw: number; kvar: number } {
  const [r, x] = ohms;
  const va = (volts * volts) / (r * r + x * x);
  return { kw: (r * va) / 1000, kvar: (x * va) / 1000 };
}

/** A symmetric matrix from its upper triangle [aa, ab, ac, bb, bc, cc], the rows of these phases only. */
function ofPhases<Entry>(upper: readonly Entry[], phases: string): Entry[][] {
  const at = [
    [0, 1, 2],
    [1, 3, 4],
    [2, 4, 5],
  ];
  const rows = [...phases].map((letter) => "ABC".indexOf(letter));
  return rows.map((row) => rows.map((column) => upper[at[row]![column]!]!));
}

/** One line configuration as the feeder documents print them: per mile, upper triangle, B in microsiemens. */
export interface Configuration {
  readonly Z: readonly (readonly number[])[];
  readonly B: readonly number[];
}

/** A span of a document's configuration, without a neutral of its own: the matrix has it reduced. */
export const spanOf = (
  from: string,
  to: string,
  phases: string,
  feet: number,
  { Z, B }: Configuration,
): SavedKeys => ({
  ...lineOf(from, to, phases, feet, ofPhases(Z, phases)),
  bMicroSPerKm: ofPhases(B, phases).map((row) => row.map((it) => it / MILE_KM)),
});

/** Phases that a configuration carries: those with an impedance of their own. */
export const phasesOf = ({ Z }: Configuration): string =>
  [..."ABC"].filter((letter) => ofPhases(Z, letter)[0]![0]![0] !== 0).join("");

/** A row of a document's table of spot loads: three branches, wye to the neutral or delta ab, bc, ca. */
export interface SpotLoad {
  readonly node: string;
  readonly connection: string;
  readonly model: string;
  readonly kW_kvar: Readonly<Record<"ph1" | "ph2" | "ph3", readonly number[]>>;
}

/** A load of the format for each branch of the table's row that draws anything. */
export function loadsOf({ node, connection, model, kW_kvar }: SpotLoad): Elements {
  const branches = connection === "Y" ? ["A", "B", "C"] : ["AB", "BC", "AC"];
  const { ph1, ph2, ph3 } = kW_kvar;
  return Object.fromEntries(
    [ph1, ph2, ph3].flatMap(([kw, kvar], index) =>
      kw === 0 && kvar === 0
        ? []
        : [
            [
              `ld${node}-${branches[index]}`,
              {
                kind: "load",
                at: node,
                phases: branches[index],
                kw,
                kvar,
                model,
                connection: connection === "Y" ? "wye" : "delta",
              },
            ],
          ],
    ),
  ) as Elements;
}

/** Every point of the elements earthed solidly, where the documents leave the neutral out. */
export function allEarthed(elements: Elements): Record<string, number> {
  const points = Object.values(elements).flatMap((element) =>
    ["from", "to", "at"].flatMap((end) => (typeof element[end] === "string" ? [element[end]] : [])),
  );
  return Object.fromEntries(points.map((point) => [point, SOLID_OHMS]));
}

/** Per-unit volts of a table, letter by letter, as probes in volts. */
export const profile = (
  table: Readonly<Record<string, Readonly<Partial<Record<"a" | "b" | "c", readonly number[]>>>>>,
  baseVolts: (node: string) => number,
): [string, Phasor][] =>
  Object.entries(table).flatMap(([node, byLetter]) =>
    Object.entries(byLetter).map(([letter, [perUnit, degrees]]): [string, Phasor] => [
      `${node}/${letter.toUpperCase()}`,
      [perUnit! * baseVolts(node), degrees!],
    ]),
  );
