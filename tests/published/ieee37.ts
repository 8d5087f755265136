/** The IEEE 37-node feeder in the file's own format, for the checks of its profile and its faults, and for its picture. */
import feeder from "../../shared/feeders/ieee37.json";
import { type Configuration, type Elements, spanOf, STIFF } from "./network";

export const KV = 4.8;

export function spansOf(head: string): Elements {
  return Object.fromEntries(
    feeder.segments_ft.map(([from, to, feet, name]) => {
      const { Z, B_diag } = feeder.line_configurations[name as keyof typeof feeder.line_configurations];
      const configuration: Configuration = { Z, B: [B_diag, 0, 0, B_diag, 0, B_diag] };
      const near = from === "799r" ? head : String(from);
      return [`${near}-${to}`, spanOf(near, String(to), "ABC", Number(feet), configuration)];
    }),
  ) as Elements;
}

export const loads: Elements = Object.fromEntries(
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
export const loadFlow: Elements = {
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
