import { cableCapacitanceExample, cables, rows } from "../../../shared/reference/conductors.json";

/** A bare wire at its usual temperature. */
export interface Wire {
  /** as a file writes it: size first, then material */
  readonly code: string;
  readonly ohmsPerKm: number;
  /** geometric mean radius [m] */
  readonly gmrM: number;
  readonly radiusM: number;
  readonly ampacityAmps: number;
}

/** `ACSR 336.4 (26/7)` is written `336.4 26/7 ACSR`. */
function codeOf(name: string): string {
  const [material, ...size] = name.replace(/[()]/g, "").split(" ");
  return [...size, material].join(" ");
}

const overhead: Wire[] = rows.map((row) => ({
  code: codeOf(row.name),
  ohmsPerKm: row.resistanceOhmPerKm,
  gmrM: row.gmrMm / 1000,
  radiusM: row.diameterMm / 2000,
  ampacityAmps: row.ampacityAmps,
}));

const cableRow = cables.find((row) => row.neutralWires !== undefined)!;

/** The conductor of the 15 kV cable; the same strand serves the aluminium triplex, which has no row of its own. */
const aluminium: Wire = {
  code: "1/0 Al",
  ohmsPerKm: cableRow.resistanceOhmPerKm,
  gmrM: cableRow.gmrMm / 1000,
  radiusM: cableRow.conductorDiameterMm / 2000,
  ampacityAmps: 165,
};

/** Overhead wires and the aluminium conductor. Source: `shared/reference/conductors.json`, row by row. */
export const WIRES: readonly Wire[] = [...overhead, aluminium];

/** A cable with a neutral of strands around it. */
export interface ConcentricCable {
  readonly conductor: Wire;
  readonly insulationOuterRadiusM: number;
  readonly relativePermittivity: number;
  readonly strandCount: number;
  /** radius of the circle through the strands' centres [m] */
  readonly strandCircleM: number;
  readonly strandOhmsPerKm: number;
  readonly strandGmrM: number;
}

/** One strand of No. 14 copper: 14.8722 Ω/mile, GMR 0.00208 ft, 0.0641 in (from memory: Kersting's conductor table). */
const STRAND = { ohmsPerKm: 14.8722 / 1.609344, gmrM: 0.00208 * 0.3048, diameterM: 0.0641 * 0.0254 };

/** 1/0 aluminium 15 kV cable with a one-third concentric neutral. Source: `conductors.json`, cables. */
export const CONCENTRIC_CABLE: ConcentricCable = {
  conductor: aluminium,
  insulationOuterRadiusM: cableCapacitanceExample.insulationOuterRadiusMm / 1000,
  relativePermittivity: cableRow.relativePermittivity,
  strandCount: cableRow.neutralWires,
  strandCircleM: cableRow.diameterOverScreenMm / 2000 + STRAND.diameterM / 2,
  strandOhmsPerKm: STRAND.ohmsPerKm,
  strandGmrM: STRAND.gmrM,
};

const words = (code: string): string[] =>
  code
    .toLowerCase()
    .replace(/aluminium|aluminum|\baac?\b/g, "al")
    .replace(/copper/g, "cu")
    .replace(/[(),]|awg|kcmil|triplex/g, " ")
    .split(/\s+/)
    .filter((it) => it !== "");

/** The wire that a code names (`1/0 ACSR`, `ACSR 1/0`, `336.4 26/7 ACSR`); undefined where the table has none. */
export function wireOf(code: string): Wire | undefined {
  const asked = words(code);
  if (asked.length === 0) return undefined;
  return WIRES.find((wire) => {
    const has = words(wire.code);
    return asked.every((it) => has.includes(it));
  });
}
