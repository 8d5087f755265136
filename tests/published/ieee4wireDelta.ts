/** The IEEE four-wire delta feeder in the file's own format, for its checks and its picture. */
import feeder from "../../shared/feeders/ieee4wire-delta.json";
import { type Complex } from "../../src/core/terms";
import { type Elements, lineOf, type SavedKeys, STIFF } from "./network";

export interface Bank {
  readonly connection: string;
  readonly phases: string;
}

export const BANKS: Record<string, Bank> = {
  "ungrounded wye - delta": { connection: "Y-D", phases: "ABC" },
  "grounded wye - delta": { connection: "Yg-D", phases: "ABC" },
  "leading open wye - open delta (units on A and B)": { connection: "openY-openD", phases: "AB" },
  "lagging open wye - open delta (units on A and C)": { connection: "openY-openD", phases: "AC" },
};

/** The document's bus is at 7200 V to ground exactly. */
export const KV_LL = 7.2 * Math.sqrt(3);

export const lighting = (phases: string, [kva, powerFactor]: readonly number[]): SavedKeys => ({
  kind: "load",
  at: "n4",
  phases,
  kw: kva! * powerFactor!,
  kvar: kva! * Math.sqrt(1 - powerFactor! ** 2),
  model: "PQ",
  connection: phases.length === 2 ? "delta" : "wye",
});

export const PAIRS = ["AB", "BC", "AC"] as const;

export function elementsOf({ connection, phases }: Bank, motorVa: readonly Complex[]): Elements {
  const { an, bn, ab } = feeder.loads.lighting_kVA_pf_lagging;
  const motor = PAIRS.map((pair, index) => [
    `m${pair}`,
    {
      kind: "load",
      at: "n4",
      phases: pair,
      connection: "delta",
      model: "PQ",
      kw: motorVa[index]![0] / 1000,
      kvar: motorVa[index]![1] / 1000,
    },
  ]);
  const primary = feeder.primary_line.primitive_Z_ohm_per_mile_abcn;
  const secondary = feeder.secondary_line.primitive_Z_ohm_per_mile_abcn;
  return {
    s: { kind: "source", at: "n1", phases: "ABC", kvLL: KV_LL, ...STIFF },
    l12: lineOf("n1", "n2", "ABC", 5 * 5280, primary, true),
    t: {
      kind: "transformer",
      connection,
      from: "n2",
      to: "n3",
      phases,
      kva: 25 * phases.length,
      primaryKv: KV_LL,
      secondaryV: 240,
      rPercent: 1,
      xPercent: 1,
      excitingPercent: 0,
      midTap: "ab",
      neutral: false,
    },
    l34: lineOf("n3", "n4", "ABC", 100, secondary, true),
    lan: lighting("A", an),
    lbn: lighting("B", bn),
    lab: lighting("AB", ab),
    ...(Object.fromEntries(motor) as Elements),
  };
}
