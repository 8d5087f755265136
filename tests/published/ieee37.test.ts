/**
 * IEEE 37-node test feeder, three-wire delta: the two published nodes within 0.0001 pu, the whole recomputed profile
 * beside them, and Kersting's fault currents within 0.1 %.
 */
import { describe, expect, test } from "vitest";
import feeder from "../../shared/feeders/ieee37.json";
import { complex, type Complex } from "../../src/core/terms";
import {
  type Configuration,
  type Elements,
  expectReadings,
  type Phasor,
  reading,
  solved,
  spanOf,
  STIFF,
} from "./network";

const KV = 4.8;

function spansOf(head: string): Elements {
  return Object.fromEntries(
    feeder.segments_ft.map(([from, to, feet, name]) => {
      const { Z, B_diag } = feeder.line_configurations[name as keyof typeof feeder.line_configurations];
      const configuration: Configuration = { Z, B: [B_diag, 0, 0, B_diag, 0, B_diag] };
      const near = from === "799r" ? head : String(from);
      return [`${near}-${to}`, spanOf(near, String(to), "ABC", Number(feet), configuration)];
    }),
  ) as Elements;
}

const loads: Elements = Object.fromEntries(
  feeder.spot_loads_delta.map(({ node, branch, model, kW, kvar }) => [
    `ld${node}${branch}`,
    {
      kind: "load",
      at: node,
      phases: branch === "ca" ? "AC" : branch.toUpperCase(),
      connection: "delta",
      model,
      kw: kW,
      kvar,
    },
  ]),
) as Elements;

const { kVA, R_percent, X_percent } = feeder.transformer["XFM-1"];
const { taps } = feeder.regulator;

/**
 * The format's regulators stand between phase and neutral; the feeder's two stand in open delta, across AB and CB. Their
 * common point is phase B: at 799x a bond of 1 µΩ makes the loose neutral phase B, and phase B itself goes through at tap 0.
 */
const loadFlow: Elements = {
  // The document puts V_AB at 0°.
  s: { kind: "source", at: "799", phases: "ABC", kvLL: KV, angleDeg: -30, ...STIFF },
  l: { kind: "lead", from: "799", to: "799x", phases: "ABC", neutral: false },
  bond: { kind: "fault", at: "799x", phases: "B", to: "neutral", ohms: 1e-6 },
  rg: { kind: "regulator", from: "799x", to: "799r", phases: "ABC", taps: { A: taps.ab, C: taps.cb } },
  ...spansOf("799r"),
  xfm: {
    kind: "transformer",
    connection: "D-D",
    from: "709",
    to: "775",
    phases: "ABC",
    kva: kVA,
    primaryKv: 4.8,
    secondaryV: 480,
    rPercent: R_percent,
    xPercent: X_percent,
    excitingPercent: 0,
  },
  ...loads,
};

type Table = Readonly<Record<string, Readonly<Record<"ab" | "bc" | "ca", readonly number[]>>>>;

function lineToLine(table: Table): [probe: string, phasor: Phasor, baseVolts: number][] {
  return Object.entries(table).flatMap(([node, byPair]) =>
    Object.entries(byPair).map(([pair, [perUnit, degrees]]) => {
      const [plus, minus] = [...pair.toUpperCase()];
      const base = node === "775" ? 480 : 4800;
      return [`${node}/${plus}-${node}/${minus}`, [perUnit! * base, degrees!], base] as const;
    }),
  ) as [string, Phasor, number][];
}

describe("IEEE 37-node feeder", () => {
  test.each([
    ["the two published nodes", feeder.published_voltages_pu],
    ["the recomputed profile", feeder.recomputed_profile_pu],
  ])("%s", (_name, table) => {
    const network = solved(loadFlow);
    for (const [probe, [magnitude, degrees], base] of lineToLine(table as Table))
      expectReadings(
        network,
        { [probe]: [magnitude, degrees] },
        { relative: (0.0001 * base) / magnitude, degrees: 0.01 },
      );
  });

  test("three-phase fault currents, without an earth path", () => {
    const { source_impedance_230kV_ohm, amps_published } = feeder.short_circuit;
    const referred = (ohms: readonly number[]): Complex => complex.scale(ohms as never, (KV / 230) ** 2);
    const transformerOhms: Complex = [(0.02 * KV ** 2) / 2.5, (0.08 * KV ** 2) / 2.5];
    const ohms = complex.add(referred(source_impedance_230kV_ohm.Z1), transformerOhms);
    const base: Elements = {
      s: { kind: "source", at: "799", phases: "ABC", kvLL: KV, earthed: false, z1Ohms: ohms, z0Ohms: ohms },
      ...spansOf("799"),
    };
    const wrong = Object.entries(amps_published).flatMap(([node, published]) => {
      const fault = { kind: "fault", at: node, phases: "ABC", to: "phases", ohms: 1e-6 };
      const network = solved({ ...base, fault });
      return [..."ABC"].flatMap((letter, index) => {
        const amps = complex.magnitude(reading(network, `fault@${node}/${letter}`));
        return Math.abs(amps / published[index]! - 1) < 0.001
          ? []
          : [`${node} ${letter}: ${amps}, ${published[index]}`];
      });
    });
    expect(wrong).toEqual([]);
  });
});
