/**
 * IEEE 4-node test feeder, all 16 cases: 0.05 % on volts, 0.1 % on amperes, 0.1°.
 * Where the document prints no currents (floating wye – delta), the figures recomputed beside it stand in.
 */
import { describe, test } from "vitest";
import ieee4 from "../../shared/feeders/ieee4.json";
import { expectReadings, paired, type Phasor, SOLID_OHMS, solved } from "./network";
import { isStepUp, feederOf } from "./ieee4";

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
