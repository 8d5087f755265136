import { readFileSync } from "node:fs";
import { gunzipSync } from "fflate";
import { readDocument, type StillhotDocument } from "../../src/core";

/** Tables of the IEEE 8500-node feeder and its solutions; source, licence and units stand in the files. */
interface Tables {
  readonly source_bus: { bus: string; kvLL: number; pu: number; z1Ohms: number[]; z0Ohms: number[] };
  readonly source_reactor: { from: string; to: string; xOhms: number };
  readonly substation_transformer: Readonly<Record<string, string>> & {
    kva: number;
    primaryKv: number;
    secondaryKv: number;
    rPercent: number;
    xPercent: number;
  };
  readonly service_transformers: {
    sizesKva: Readonly<Record<string, number>>;
    magnetizingPercent: number;
    fullWinding: { rPercent: number; xPercent: number };
  };
  readonly regulators: readonly {
    id: string;
    from: string;
    to: string;
    tapsBalanced: number[];
    tapsUnbalanced: number[];
  }[];
  readonly capacitors: readonly { id: string; bus: string; kvarPerPhase: number; kvLL: number }[];
  readonly data: {
    readonly buses: readonly [id: string, x: number, y: number, conductors: string][];
    readonly lines: readonly [
      id: string,
      from: string,
      to: string,
      phases: string,
      code: string,
      m: number,
    ][];
    readonly triplex: readonly [id: string, from: string, to: string, code: string, m: number][];
    readonly switches: readonly [id: string, from: string, to: string, phases: string, state: string][];
    readonly service_transformers: readonly [
      id: string,
      bus: string,
      phase: string,
      secondaryBus: string,
      size: string,
    ][];
    readonly loads: readonly [id: string, bus: string, kw: number, kwLeg1: number, kwLeg2: number][];
    readonly line_codes: Readonly<Record<string, { n: number; r: number[][]; x: number[][]; c: number[][] }>>;
  };
}

export type LoadCase = "balanced" | "unbalanced";
/** A bus, then volts to earth and degrees of each of its conductors in the order of the alphabet. */
type VoltsRow = readonly [bus: string, ...figures: number[]];

const inflated = (name: string): unknown =>
  JSON.parse(new TextDecoder().decode(gunzipSync(readFileSync(`shared/import/ieee8500/${name}.json.gz`))));

export const feeder8500 = (): Tables => inflated("feeder") as Tables;

/** Volts of the feeder as a drawing says it: ideal switches and regulators, exciting current without losses. */
export const volts8500 = (of: LoadCase): readonly VoltsRow[] =>
  (inflated("voltages") as Record<LoadCase, { stillhotModel: VoltsRow[] }>)[of].stillhotModel;

const KM_OF_ONE = 1000;
/** kvar of a kW at the power factor of every load, 0.97. */
const KVAR_A_KW = Math.tan(Math.acos(0.97));
const FEET_A_METRE = 3.2808;

/** Every neutral is perfect earth, as in the published model: the matrices are reduced to the phases. */
const PERFECT_EARTH = { earthOhms: 1e-6 };

/** The feeder as a drawing. */
export function drawing8500(of: LoadCase): StillhotDocument {
  const tables = feeder8500();
  const { data, source_bus: source, source_reactor: reactor, substation_transformer: station } = tables;
  const points: Record<string, object> = {};
  for (const [id, x, y] of data.buses)
    points[id] = { label: id, x: round(x / FEET_A_METRE), y: round(-y / FEET_A_METRE), ...PERFECT_EARTH };
  const elements: Record<string, object> = {};
  const add = (id: string, record: object) => (elements[`e-${id}`] = { label: id, ...record });
  const span = (code: string) => {
    const { r, x, c } = data.line_codes[code]!;
    const whole = (lower: number[][], row: number, column: number) =>
      lower[Math.max(row, column)]![Math.min(row, column)]!;
    const each = <Entry>(entry: (row: number, column: number) => Entry) =>
      r.map((_, row) => r.map((_unused, column) => entry(row, column)));
    return {
      neutral: false,
      zOhmsPerKm: each((row, column) => [whole(r, row, column), whole(x, row, column)]),
      // nF/km at 60 Hz
      bMicroSPerKm: each((row, column) => (whole(c, row, column) * 2 * Math.PI * 60) / 1000),
    };
  };

  add("source", {
    kind: "source",
    at: source.bus,
    phases: "ABC",
    kvLL: source.kvLL * source.pu,
    z1Ohms: source.z1Ohms,
    z0Ohms: source.z0Ohms,
  });
  add("reactor", {
    kind: "span",
    from: reactor.from,
    to: reactor.to,
    phases: "ABC",
    lengthM: KM_OF_ONE,
    neutral: false,
    zOhmsPerKm: [0, 1, 2].map((row) => [0, 1, 2].map((column) => [0, row === column ? reactor.xOhms : 0])),
    bMicroSPerKm: [0, 1, 2].map(() => [0, 0, 0]),
  });
  add("station", {
    kind: "transformer",
    from: station["from"],
    to: station["to"],
    phases: "ABC",
    connection: "D-Yg",
    kva: station.kva,
    primaryKv: station.primaryKv,
    secondaryV: station.secondaryKv * 1000,
    rPercent: station.rPercent,
    xPercent: station.xPercent,
    excitingPercent: 0,
    neutral: false,
  });
  for (const { id, from, to, tapsBalanced, tapsUnbalanced } of tables.regulators) {
    const [a, b, c] = of === "balanced" ? tapsBalanced : tapsUnbalanced;
    add(id, { kind: "regulator", from, to, phases: "ABC", taps: { A: a, B: b, C: c } });
  }
  for (const { id, bus, kvarPerPhase, kvLL } of tables.capacitors)
    add(id, { kind: "capacitor", at: bus, phases: "ABC", kvar: 3 * kvarPerPhase, kvLL, connection: "wye" });
  for (const [id, from, to, phases, code, lengthM] of data.lines)
    add(id, { kind: "span", from, to, phases, lengthM, ...span(code) });
  for (const [id, from, to, code, lengthM] of data.triplex)
    add(id, { kind: "span", construction: "secondary", from, to, phases: "12", lengthM, ...span(code) });
  for (const [id, from, to, phases, state] of data.switches)
    add(
      id,
      state === "jumper"
        ? { kind: "lead", from, to, phases }
        : {
            kind: "disconnect",
            from,
            to,
            phases,
            gang: true,
            ...(state === "open" ? { open: phases, normallyOpen: true } : {}),
          },
    );
  const { sizesKva, magnetizingPercent, fullWinding } = tables.service_transformers;
  for (const [id, from, phases, to, size] of data.service_transformers)
    add(id, {
      kind: "transformer",
      from,
      to,
      phases,
      connection: "single",
      kva: sizesKva[size],
      primaryKv: 7.2,
      secondaryV: 240,
      rPercent: fullWinding.rPercent,
      xPercent: fullWinding.xPercent,
      excitingPercent: magnetizingPercent,
    });
  for (const [id, at, kw, kwLeg1, kwLeg2] of data.loads) {
    const load = (phases: string, power: number) => ({
      kind: "load",
      at,
      phases,
      kw: power,
      kvar: power * KVAR_A_KW,
      model: "PQ",
      connection: "wye",
    });
    if (of === "balanced") add(id, { ...load("12", kw), customers: 1 });
    else {
      add(`${id}-1`, { ...load("1", kwLeg1), customers: 1 });
      add(`${id}-2`, load("2", kwLeg2));
    }
  }
  const read = readDocument(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      title: "IEEE 8500-node feeder",
      system: { frequencyHz: 60, points, elements },
    }),
  );
  if (!("document" in read)) throw new Error(JSON.stringify(read.problems.slice(0, 5)));
  return read.document;
}

const round = (metres: number): number => Math.round(10 * metres) / 10;
