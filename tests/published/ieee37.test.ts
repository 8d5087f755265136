/**
 * IEEE 37-node test feeder, three-wire delta: the two published nodes within 0.0001 pu, the whole recomputed profile
 * beside them, and Kersting's fault currents within 0.1 %.
 */
import { describe, expect, test } from "vitest";
import feeder from "../../shared/feeders/ieee37.json";
import { complex, type Complex } from "../../src/core/terms";
import { type Elements, expectReadings, type Phasor, reading, solved } from "./network";
import { KV, spansOf, loadFlow } from "./ieee37";

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
