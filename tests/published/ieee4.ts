/** The IEEE 4-node feeder in the file's own format, one case after the other, for its checks and its picture. */
import ieee4 from "../../shared/feeders/ieee4.json";
import { type Elements, lineOf, STIFF } from "./network";

const CONNECTIONS: Record<string, string> = {
  "delta - delta": "D-D",
  "delta - grounded wye": "D-Yg",
  "ungrounded wye - delta": "Y-D",
  "grounded wye - delta": "Yg-D",
  "grounded wye - grounded wye": "Yg-Yg",
};

export type Feeder = (typeof ieee4.cases)[number];

export const isStepUp = ({ direction }: Feeder) => direction.startsWith("step-up");

export function feederOf(it: Feeder): Elements {
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
