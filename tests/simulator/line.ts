/**
 * Line constants for the second implementation: Carson's equations and potential coefficients in SI units from physical
 * constants, written from the file format's page alone. Nothing here comes from `src/core/phasor`.
 */
import table from "../../shared/reference/conductors.json";

export type Ohms = readonly [r: number, x: number];

const MU_0 = 4e-7 * Math.PI;
const EPSILON_0 = 8.8541878128e-12;
const EARTH_OHM_METRES = 100;

/** A conductor in the air: ohms per metre, geometric mean radius, radius and place [m]. */
export interface Wire {
  readonly ohmsPerM: number;
  readonly gmr: number;
  readonly radius: number;
  readonly x: number;
  readonly y: number;
}

const OVERHEAD: Readonly<Record<string, readonly [number, number]>> = {
  A: [-1.12, 10.2],
  B: [0, 10.5],
  C: [1.12, 10.2],
  N: [0.1, 8.4],
  "1": [0.09, 7.6],
  "2": [-0.09, 7.6],
};

/** Places of conductors by their letters; a single phase hangs at B's place. */
export function placesOf(letters: readonly string[]): (readonly [number, number])[] {
  const primaries = letters.filter((it) => "ABC".includes(it)).length;
  return letters.map((it) => (primaries === 1 && "ABC".includes(it) ? OVERHEAD["B"]! : OVERHEAD[it]!));
}

const CODES: Readonly<Record<string, string>> = {
  "1/0 ACSR": "ACSR 1/0",
  "4/0 ACSR": "ACSR 4/0",
  "2 6/1 ACSR": "ACSR 2 (6/1)",
};
export const CONDUCTOR_CODES = Object.keys(CODES);

const urd = table.cables[1]!;

/** Resistance, geometric mean radius and radius of a conductor by the code that a file writes; aluminium 1/0 for none. */
function wireData(code: string): Omit<Wire, "x" | "y"> {
  const row = table.rows.find((it) => it.name === CODES[code]);
  return row === undefined
    ? { ohmsPerM: urd.resistanceOhmPerKm / 1e3, gmr: urd.gmrMm / 1e3, radius: urd.conductorDiameterMm / 2e3 }
    : { ohmsPerM: row.resistanceOhmPerKm / 1e3, gmr: row.gmrMm / 1e3, radius: row.diameterMm / 2e3 };
}

/** The wires of an overhead or secondary span. */
export function wiresOf(
  letters: readonly string[],
  construction: string,
  conductor: string | undefined,
  neutralConductor: string | undefined,
): Wire[] {
  const fallback = construction === "overhead" ? "1/0 ACSR" : "";
  return letters.map((letter, i) => {
    const [x, y] = placesOf(letters)[i]!;
    return { ...wireData((letter === "N" ? neutralConductor : conductor) ?? fallback), x, y };
  });
}

/** Depth at which the loop through earth closes, at 1 Ω·m and 1 Hz: e^7.6786 feet by the modified equations [m]. */
const DEPTH = Math.exp(7.6786) * 0.3048;

/** Carson's equations, modified: the earth adds ωμ₀/8 Ω/m, and the loop closes at the depth above times √(ρ/f). */
function loop(ohmsPerM: number, metres: number, hertz: number): Ohms {
  const omega = 2 * Math.PI * hertz;
  const depth = DEPTH * Math.sqrt(EARTH_OHM_METRES / hertz);
  return [ohmsPerM + (omega * MU_0) / 8, ((omega * MU_0) / (2 * Math.PI)) * Math.log(depth / metres)];
}

/** Series impedance of wires beside each other [Ω/m]. */
export const seriesOf = (wires: readonly Wire[], hertz: number): Ohms[][] =>
  wires.map((a, i) =>
    wires.map((b, j) =>
      i === j ? loop(a.ohmsPerM, a.gmr, hertz) : loop(0, Math.hypot(a.x - b.x, a.y - b.y), hertz),
    ),
  );

/** Impedance between a wire and another one at some distance [Ω/m]. */
export const mutualOf = (metres: number, hertz: number): Ohms => loop(0, metres, hertz);

/** Maxwell's coefficients: the inverse of the potential coefficients [F/m]. */
export function maxwellOf(wires: readonly Pick<Wire, "x" | "y" | "radius">[]): number[][] {
  return inverse(
    wires.map((a, i) =>
      wires.map((b, j) => {
        const apart = i === j ? a.radius : Math.hypot(a.x - b.x, a.y - b.y);
        return Math.log(Math.hypot(a.x - b.x, a.y + b.y) / apart) / (2 * Math.PI * EPSILON_0);
      }),
    ),
  );
}

/** Inverse of a real matrix by Gauss and Jordan. */
function inverse(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...Array.from({ length: n }, (_, j) => (i === j ? 1 : 0))]);
  for (let c = 0; c < n; c++) {
    let best = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(rows[r]![c]!) > Math.abs(rows[best]![c]!)) best = r;
    [rows[c], rows[best]] = [rows[best]!, rows[c]!];
    const pivot = rows[c]![c]!;
    rows[c] = rows[c]!.map((it) => it / pivot);
    for (let r = 0; r < n; r++) {
      const factor = rows[r]![c]!;
      if (r !== c && factor !== 0) rows[r] = rows[r]!.map((it, k) => it - factor * rows[c]![k]!);
    }
  }
  return rows.map((row) => row.slice(n));
}

/** The 15 kV concentric-neutral cable: strands of No. 14 copper on a circle around the insulation's screen. */
const STRANDS = urd.neutralWires!;
const STRAND = {
  ohmsPerM: 14.8722 / 1609.344,
  gmr: 0.00208 * 0.3048,
  diameter: 0.0641 * 0.0254,
};
const CIRCLE = urd.diameterOverScreenMm! / 2e3 + STRAND.diameter / 2;
const CABLE_APART = 0.15;

/** Series impedance of cables side by side: the phases' conductors, then each one's own neutral [Ω/m]. */
export function cableSeriesOf(count: number, hertz: number): Ohms[][] {
  const core = wireData("");
  const sheathGmr = (STRAND.gmr * STRANDS * CIRCLE ** (STRANDS - 1)) ** (1 / STRANDS);
  return Array.from({ length: 2 * count }, (_, i) =>
    Array.from({ length: 2 * count }, (_unused, j) => {
      if (i === j)
        return i < count
          ? loop(core.ohmsPerM, core.gmr, hertz)
          : loop(STRAND.ohmsPerM / STRANDS, sheathGmr, hertz);
      const lanes = Math.abs((i % count) - (j % count));
      return loop(0, lanes === 0 ? CIRCLE : lanes * CABLE_APART, hertz);
    }),
  );
}

/** Capacitance of one cable between its conductor and its own neutral [F/m]. */
export const CABLE_FARAD_PER_M =
  (2 * Math.PI * EPSILON_0 * table.cableCapacitanceExample.relativePermittivity) /
  Math.log(table.cableCapacitanceExample.insulationOuterRadiusMm / (urd.conductorDiameterMm / 2));
