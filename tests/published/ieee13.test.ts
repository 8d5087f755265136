/** IEEE 13-node test feeder: profile within 0.0003 pu and 0.03°, currents within 0.1 %. */
import { describe, expect, test } from "vitest";
import feeder from "../../shared/feeders/ieee13.json";
import { complex } from "../../src/core/terms";
import {
  allEarthed,
  type Configuration,
  type Elements,
  expectReadings,
  loadsOf,
  phasesOf,
  type Phasor,
  profile,
  reading,
  solved,
  spanOf,
  STIFF,
} from "./network";

const configurations = feeder.line_configurations as unknown as Record<string, Configuration>;

/** The load along 632 – 671 stands two thirds at a quarter of the way and one third at the far end, as the file says. */
const QUARTER_FT = 500;

const spans: Elements = Object.fromEntries(
  feeder.segments_ft.flatMap(([from, to, feet, name]) => {
    const configuration = configurations[String(name)];
    if (configuration === undefined) return [];
    const span = (near: string, far: string, length: number) => [
      `${near}-${far}`,
      spanOf(near, far, phasesOf(configuration), length, configuration),
    ];
    const near = from === "650" ? "RG60" : String(from);
    return near === "632" && to === "671"
      ? [span("632", "quarter", QUARTER_FT), span("quarter", "671", Number(feet) - QUARTER_FT)]
      : [span(near, String(to), Number(feet))];
  }),
) as Elements;

function distributed(): Elements {
  const { a, b, c } = feeder.distributed_load.kW_kvar;
  const share = (node: string, part: number) => {
    const [ph1, ph2, ph3] = [a, b, c].map(([kw, kvar]) => [kw! * part, kvar! * part]);
    return loadsOf({ node, connection: "Y", model: "PQ", kW_kvar: { ph1: ph1!, ph2: ph2!, ph3: ph3! } });
  };
  const far = Object.fromEntries(Object.entries(share("671", 1 / 3)).map(([id, it]) => [`${id}-along`, it]));
  return { ...share("quarter", 2 / 3), ...far };
}

const capacitors: Elements = Object.fromEntries(
  Object.entries(feeder["capacitors_kvar_at_4.16kV"]).flatMap(([node, byLetter]) =>
    Object.entries(byLetter).map(([letter, kvar]) => [
      `cap${node}${letter}`,
      { kind: "capacitor", at: node, phases: letter.toUpperCase(), kvar, kvLL: 4.16 },
    ]),
  ),
) as Elements;

const { a, b, c } = feeder.regulator.taps_in_published_solution;
const elements: Elements = {
  s: { kind: "source", at: "650", phases: "ABC", kvLL: 4.16, ...STIFF },
  rg: {
    kind: "regulator",
    from: "650",
    to: "RG60",
    phases: "ABC",
    taps: { A: a, B: b, C: c },
    neutral: false,
  },
  ...spans,
  sw: { kind: "disconnect", from: "671", to: "692", phases: "ABC", neutral: false },
  xfm: {
    kind: "transformer",
    connection: "Yg-Yg",
    from: "633",
    to: "634",
    phases: "ABC",
    kva: feeder.transformer["XFM-1"].kVA,
    primaryKv: 4.16,
    secondaryV: 480,
    rPercent: feeder.transformer["XFM-1"].R_percent,
    xPercent: feeder.transformer["XFM-1"].X_percent,
    excitingPercent: 0,
    neutral: false,
  },
  ...Object.assign({}, ...feeder.spot_loads.map(loadsOf)),
  ...distributed(),
  ...capacitors,
};

describe("IEEE 13-node feeder", () => {
  const network = solved(elements, allEarthed(elements));
  const baseVolts = (node: string) => (node === "634" ? 480 : 4160) / Math.sqrt(3);

  test("the profile", () => {
    for (const [probe, [magnitude, degrees]] of profile(feeder.published_profile_pu, baseVolts))
      expectReadings(
        network,
        { [probe]: [magnitude, degrees] },
        { relative: (0.0003 * baseVolts(probe.slice(0, 3))) / magnitude, degrees: 0.03 },
      );
  });

  test("the currents of the regulator and of the switch", () => {
    const wanted = Object.entries(feeder.currents.published_from_memory).map(([name, phasor]) => {
      const letter = name.at(-1)!.toUpperCase();
      return [name.startsWith("650") ? `rg@650/${letter}` : `sw@671/${letter}`, phasor as unknown as Phasor];
    });
    expectReadings(network, Object.fromEntries(wanted), { relative: 0.001, degrees: 0.05 });
  });

  test("the power that the feeder takes in", () => {
    const power = [..."ABC"]
      .map((letter) =>
        complex.times(
          reading(network, `650/${letter}`),
          complex.conjugate(reading(network, `rg@650/${letter}`)),
        ),
      )
      .reduce(complex.add);
    const [kw, kvar] = feeder.system_input_kW_kvar.published_from_memory;
    expect(Math.abs(power[0] / 1000 / kw! - 1)).toBeLessThan(0.001);
    expect(Math.abs(power[1] / 1000 / kvar! - 1)).toBeLessThan(0.001);
  });
});
