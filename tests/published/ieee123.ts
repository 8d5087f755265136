/** The IEEE 123-node feeder in the file's own format, for the checks of its profile, its faults and its switching. */
import feeder from "../../shared/feeders/ieee123.json";
import {
  type Configuration,
  type Elements,
  loadsOf,
  phasesOf,
  type SavedKeys,
  spanOf,
  STIFF,
  zeros,
} from "./network";

const configurations = feeder.line_configurations as unknown as Record<string, Configuration>;

/** Regulators at the first node of a segment, ahead of its line: their load side has a point of its own. */
const REGULATORS = [
  { id: "RG1", from: "150", phases: "ABC", taps: { A: 7, B: 7, C: 7 }, line: "" },
  { id: "RG2", from: "9", phases: "A", taps: { A: -1 }, line: "9-14" },
  { id: "RG3", from: "25", phases: "AC", taps: { A: 0, C: -1 }, line: "25-26" },
  { id: "RG4", from: "160", phases: "ABC", taps: { A: 8, B: 1, C: 5 }, line: "160-67" },
] as const;

/** A switch by its name in the document; 150-149 stands behind regulator 1, 61-610 ahead of the transformer. */
function switchBetween(from: string, to: string): readonly [near: string, far: string] {
  if (from === "150") return ["RG1", to];
  return to === "610" ? [from, "XF1"] : [from, to];
}

const reactance = (from: string, to: string, ohms: number): SavedKeys => ({
  kind: "span",
  from,
  to,
  phases: "ABC",
  neutral: false,
  lengthM: 1000,
  zOhmsPerKm: [0, 1, 2].map((row) => [0, 1, 2].map((column) => [0, row === column ? ohms : 0])),
  bMicroSPerKm: zeros(3),
});

export interface FeederOptions {
  /** switches that stand otherwise than normally, by name */
  readonly open?: readonly string[];
  readonly close?: readonly string[];
  /** spot loads and capacitors, and the regulators' taps; without them the regulators are neutral */
  readonly loaded?: boolean;
  readonly source?: object;
  /** reactance that a closed switch has in the published fault study; none elsewhere [Ω] */
  readonly switchOhms?: number;
}

export function feederElements({
  open = [],
  close = [],
  loaded = true,
  source = STIFF,
  switchOhms = 0,
}: FeederOptions = {}): Elements {
  const spans = feeder.segments_ft.map(([from, to, feet, name]): [string, SavedKeys] => {
    const configuration = configurations[String(name)]!;
    const regulator = REGULATORS.find(({ line }) => line === `${from}-${to}`);
    const near = regulator?.id ?? String(from);
    return [`${near}-${to}`, spanOf(near, String(to), phasesOf(configuration), Number(feet), configuration)];
  });
  const regulators = REGULATORS.map(({ id, from, phases, taps }): [string, SavedKeys] => [
    `${from}-${id}`,
    { kind: "regulator", from, to: id, phases, taps: loaded ? taps : {}, neutral: false },
  ]);
  const switches = feeder.switches.map(({ from, to, normal }): [string, SavedKeys] => {
    const name = `${from}-${to}`;
    const isOpen = normal === "open" ? !close.includes(name) : open.includes(name);
    const [near, far] = switchBetween(from, to);
    // Node 94 has phase A alone.
    const phases = name === "54-94" ? "A" : "ABC";
    if (!isOpen && switchOhms > 0) return [`sw${name}`, reactance(near, far, switchOhms)];
    return [
      `sw${name}`,
      {
        kind: "disconnect",
        from: near,
        to: far,
        phases,
        gang: true,
        neutral: false,
        ...(isOpen ? { open: true } : {}),
      },
    ];
  });
  const capacitors = Object.entries(feeder.capacitors_kvar).flatMap(([node, byLetter]) =>
    Object.entries(byLetter).map(([letter, kvar]): [string, SavedKeys] => [
      `cap${node}${letter}`,
      { kind: "capacitor", at: node, phases: letter.toUpperCase(), kvar, kvLL: 4.16 },
    ]),
  );
  const { kVA, R_percent, X_percent } = feeder.transformer["XFM-1"];
  return {
    s: { kind: "source", at: "150", phases: "ABC", kvLL: 4.16, ...source },
    ...Object.fromEntries(regulators),
    ...Object.fromEntries(switches),
    ...Object.fromEntries(spans),
    xfm: {
      kind: "transformer",
      connection: "D-D",
      from: "XF1",
      to: "610",
      phases: "ABC",
      kva: kVA,
      primaryKv: 4.16,
      secondaryV: 480,
      rPercent: R_percent,
      xPercent: X_percent,
      excitingPercent: 0,
    },
    ...(loaded
      ? {
          ...(Object.assign({}, ...feeder.spot_loads.map(loadsOf)) as Elements),
          ...Object.fromEntries(capacitors),
        }
      : {}),
  };
}
