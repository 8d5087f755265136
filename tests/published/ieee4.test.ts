/**
 * IEEE 4-node test feeder, all 16 cases: 0.05 % on volts, 0.1 % on amperes, 0.1°.
 * Where the document prints no currents (floating wye – delta), the figures recomputed beside it stand in.
 */
import { describe, test } from "vitest";
import ieee4 from "../../shared/feeders/ieee4.json";
import {
  type Elements,
  expectReadings,
  lineOf,
  paired,
  type Phasor,
  SOLID_OHMS,
  solved,
  STIFF,
} from "./network";

const CONNECTIONS: Record<string, string> = {
  "delta - delta": "D-D",
  "delta - grounded wye": "D-Yg",
  "ungrounded wye - delta": "Y-D",
  "grounded wye - delta": "Yg-D",
  "grounded wye - grounded wye": "Yg-Yg",
};

type Feeder = (typeof ieee4.cases)[number];

const isStepUp = ({ direction }: Feeder) => direction.startsWith("step-up");

function feederOf(it: Feeder): Elements {
  const line = (name: string) =>
    name === "four_wire" ? ieee4.line.four_wire_Z_ohm_per_mile : ieee4.line.three_wire_Z_ohm_per_mile;
  const power = it.load === "balanced" ? ieee4.loads.balanced_kW_kvar : ieee4.loads.unbalanced_kW_kvar;
  const isDelta = it.load_connection === "delta";
  const loads = (isDelta ? ["AB", "BC", "AC"] : ["A", "B", "C"]).map((phases, index) => [
    `ld${index}`,
    {
      kind: "load",
      at: "n4",
      phases,
      kw: power[index]![0],
      kvar: power[index]![1],
      model: "PQ",
      connection: isDelta ? "delta" : "wye",
    },
  ]);
  return {
    s: { kind: "source", at: "n1", phases: "ABC", kvLL: 12.47, ...STIFF },
    l12: lineOf("n1", "n2", "ABC", ieee4.lengths_ft["1-2"], line(it.line_1_2)),
    t: {
      kind: "transformer",
      connection: CONNECTIONS[it.connection],
      from: "n2",
      to: "n3",
      phases: "ABC",
      kva: 6000,
      primaryKv: 12.47,
      secondaryV: isStepUp(it) ? 24900 : 4160,
      rPercent: 1,
      xPercent: 6,
      excitingPercent: 0,
    },
    l34: lineOf("n3", "n4", "ABC", ieee4.lengths_ft["3-4"], line(it.line_3_4)),
    ...(Object.fromEntries(loads) as Elements),
  };
}

const probesAt = (point: string, kind: string): string[] =>
  kind.startsWith("line-to-line")
    ? [`${point}/A-${point}/B`, `${point}/B-${point}/C`, `${point}/C-${point}/A`]
    : [`${point}/A`, `${point}/B`, `${point}/C`];

const ampsInto = (line: string, point: string) => ["A", "B", "C"].map((it) => `${line}@${point}/${it}`);

describe("IEEE 4-node feeder", () => {
  test.each(ieee4.cases.map((it) => [it.direction, it.load, it.connection, it] as const))(
    "%s, %s, %s",
    (_direction, _load, _connection, it) => {
      const network = solved(feederOf(it), { n2: SOLID_OHMS, n3: SOLID_OHMS, n4: SOLID_OHMS });
      const { V2, V3, V4 } = it.published;
      const { I12, I34 } = { ...it.recomputed, ...it.published };
      const wanted: [string, Phasor][] = [
        ...paired(probesAt("n2", it.voltage_kind.V2), V2),
        ...paired(probesAt("n3", it.voltage_kind.V3), V3),
        ...paired(probesAt("n4", it.voltage_kind.V4), V4),
        ...paired(ampsInto("l12", "n1"), I12),
        ...paired(ampsInto("l34", "n3"), I34),
      ];
      expectReadings(network, Object.fromEntries(wanted), (probe) => ({
        relative: probe.includes("@") ? 0.001 : 0.0005,
        degrees: 0.1,
      }));
    },
  );

  test("grounded wye - delta, which the document leaves out, as recomputed beside it", () => {
    const floating = ieee4.cases.find(
      (it) => !isStepUp(it) && it.load === "unbalanced" && it.connection === "ungrounded wye - delta",
    )!;
    const { V2_line_to_ground, V4_line_to_line, I12 } = ieee4.extra_recomputed_grounded_wye_delta;
    const network = solved(feederOf({ ...floating, connection: "grounded wye - delta" }), {
      n2: SOLID_OHMS,
    });
    const wanted = [
      ...paired(probesAt("n2", "line-to-ground"), V2_line_to_ground),
      ...paired(probesAt("n4", "line-to-line"), V4_line_to_line),
      ...paired(ampsInto("l12", "n1"), I12),
    ];
    expectReadings(network, Object.fromEntries(wanted), { relative: 0.0005, degrees: 0.02 });
  });
});
