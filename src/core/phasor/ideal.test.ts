/** Ideal devices in loops, stiff sources and loads on dead conductors: where equations could contradict or cancel. */
import { describe, expect, test } from "vitest";
import { complex } from "../terms";
import { type Elements, reading, SOLID_OHMS, solved } from "../../../tests/published/network";

const KV = 12.47;
const source = { kind: "source", at: "p0", phases: "ABC", kvLL: KV };
const load = { kind: "load", at: "p1", phases: "ABC", kw: 300 };
const magnitude = (elements: Elements, probe: string) => complex.magnitude(reading(solved(elements), probe));
const between = (kind: string, more: object = {}) => ({ kind, from: "p0", to: "p1", phases: "ABC", ...more });

describe("ideal devices beside each other", () => {
  test("share what flows as equal tiny resistances would", () => {
    const two = { s: source, ld: load, a: between("lead"), b: between("disconnect") };
    const through = magnitude({ s: source, ld: load, a: between("lead") }, "a@p0/A");
    expect(magnitude(two, "a@p0/A")).toBeCloseTo(through / 2, 6);
    expect(magnitude(two, "b@p0/A")).toBeCloseTo(through / 2, 6);
    // Two in a row beside one take a third, the one two thirds.
    const three = {
      ...two,
      b: { ...between("disconnect"), to: "p2" },
      c: { ...between("lead"), from: "p2" },
    };
    expect(magnitude(three, "a@p0/A")).toBeCloseTo((2 * through) / 3, 4);
    expect(magnitude(three, "c@p2/A")).toBeCloseTo(through / 3, 4);
  });

  test("a switch closed beside a regulator at neutral changes nothing; off neutral it is a dead short", () => {
    const bypassed = (tap: number): Elements => ({
      s: source,
      ld: load,
      rg: between("regulator", { taps: { A: tap, B: tap, C: tap } }),
      by: between("disconnect"),
    });
    const alone: Elements = { s: source, ld: load, by: between("disconnect") };
    expect(magnitude(bypassed(0), "p1/A")).toBeCloseTo(magnitude(alone, "p1/A"), 6);
    const network = solved(bypassed(16));
    // Around the loop 10 % of the volts drive current through 0.01 Ω and the source's 0.05 + j0.5 Ω seen through 0.1.
    const volts = complex.magnitude(reading(network, "p0/A"));
    const amps = complex.magnitude(reading(network, "by@p0/A"));
    expect(amps / ((0.1 * volts) / 0.01)).toBeCloseTo(1, 3);
    expect(amps).toBeGreaterThan(10_000);
  });
});

describe("many in parallel between the same two points", () => {
  const through = () => magnitude({ s: source, ld: load, a: between("disconnect") }, "a@p0/A");

  test("twenty thousand share what one carries", () => {
    const many = Object.fromEntries(
      Array.from({ length: 20_000 }, (_, nth) => [`d${nth}`, between("disconnect")]),
    );
    const network = solved({ s: source, ld: load, ...many });
    for (const id of ["d0", "d1", "d19999"])
      expect(complex.magnitude(reading(network, `${id}@p0/A`)) / (through() / 20_000)).toBeCloseTo(1, 6);
  });

  test("whichever of them is closed carries it, and one drawn the other way round its part of it", () => {
    for (const open of ["a", "b", "c"]) {
      const drawn: Record<string, Record<string, unknown>> = {
        a: between("disconnect"),
        b: { ...between("disconnect"), from: "p1", to: "p0" },
        c: between("cutout"),
      };
      drawn[open]!["open"] = "ABC";
      const network = solved({ s: source, ld: load, ...drawn });
      const into = (id: string) => reading(network, `${id}@p0/A`);
      expect(complex.magnitude(into(open))).toBe(0);
      const [one, other] = ["a", "b", "c"].filter((it) => it !== open).map(into);
      expect(complex.magnitude(one!)).toBeCloseTo(through() / 2, 6);
      expect(complex.magnitude(complex.subtract(one!, other!))).toBeCloseTo(0, 6);
    }
  });

  test("two switches beside a regulator off neutral share the short circuit", () => {
    const short = (switches: Elements) => ({
      s: source,
      ld: load,
      rg: between("regulator", { taps: { A: 16, B: 16, C: 16 } }),
      ...switches,
    });
    // Each is 0.01 Ω in the loop: two are half of it, so nearly twice the current of one flows, half of it in each.
    const [a, b] = [between("disconnect"), { ...between("disconnect"), from: "p1", to: "p0" }];
    const network = solved(short({ a, b }));
    const volts = complex.magnitude(reading(network, "p0/A"));
    for (const id of ["a", "b"])
      expect(complex.magnitude(reading(network, `${id}@p0/A`)) / ((0.1 * volts) / 0.01)).toBeCloseTo(1, 2);
  });
});

describe("stiff and thin", () => {
  test.each([1e-3, 1e-6, 1e-9])("a source behind %d Ω", (ohms) => {
    const stiff = { ...source, z1Ohms: [ohms, 0], z0Ohms: [ohms, 0] };
    const network = solved({ s: stiff, l: between("lead"), ld: load });
    expect(complex.magnitude(reading(network, "p1/A"))).toBeCloseTo((KV * 1000) / Math.sqrt(3), 1);
    expect(complex.magnitude(reading(network, "s@p0/A"))).toBeCloseTo(300 / KV / Math.sqrt(3), 3);
  });

  test("a span and a transformer without impedance, and one that is nothing but mutual", () => {
    const volts = (KV * 1000) / Math.sqrt(3);
    const spanOf = (phases: string, z: number[][][]) => ({
      s: source,
      l: { ...between("span", { zOhmsPerKm: z, neutral: false }), phases },
    });
    expect(magnitude(spanOf("A", [[[0, 0]]]), "p1/A")).toBeCloseTo(volts, 1);
    const one = [1, 1];
    const mutual = spanOf("AB", [
      [one, one],
      [one, one],
    ]);
    expect(magnitude(mutual, "p1/A")).toBeCloseTo(volts, 1);
    const unit = {
      kind: "transformer",
      connection: "single",
      from: "p0",
      to: "p1",
      phases: "A",
      kva: 25,
      primaryKv: 7.2,
      secondaryV: 240,
      rPercent: 0,
      xPercent: 0,
    };
    expect(magnitude({ s: source, t: unit }, "p1/1-p1/2")).toBeCloseTo((volts * 240) / 7200, 2);
  });

  test("earthed neutrals far from the source that is met first", () => {
    // The generator stands first in the file, so that the source is a leaf of the order of elimination.
    const network = solved({
      g: { kind: "generator", at: "p3", phases: "A", kva: 5, volts: 480, on: true },
      s: source,
      a: between("lead"),
      b: { ...between("lead"), from: "p1", to: "p2" },
      t: {
        kind: "transformer",
        connection: "Yg-Yg",
        from: "p2",
        to: "p3",
        phases: "ABC",
        kva: 75,
        primaryKv: KV,
        secondaryV: 480,
      },
    });
    expect(complex.magnitude(reading(network, "p3/N"))).toBeLessThan(1e-3);
    expect(complex.magnitude(reading(network, "p2/A"))).toBeCloseTo((KV * 1000) / Math.sqrt(3), -2);
  });
});

describe("loads of constant power where there are no volts to speak of", () => {
  test("settle on a dead conductor that is only coupled", () => {
    const network = solved(
      {
        s: source,
        l: { kind: "span", from: "p0", to: "p1", phases: "ABC", lengthM: 2000 },
        c: { kind: "cutout", from: "p0", to: "p2", phases: "B", open: "B" },
        m: { kind: "span", from: "p2", to: "p3", phases: "B", lengthM: 2000 },
        n: { kind: "nearby", span: "m", relation: "parallel", kvLL: KV, spacingM: 2 },
        dead: { kind: "load", at: "p3", phases: "B", kw: 20, model: "PQ" },
        live: { kind: "load", at: "p1", phases: "ABC", kw: 300, model: "PQ" },
      },
      { p0: SOLID_OHMS },
    );
    // Below 0.7 of rated volts the load is 0.49 of its rated ohms; the live one still draws its power.
    const rated = (KV * 1000) / Math.sqrt(3);
    const [volts, amps] = ["p3/B-p3/N", "dead@p3/B"].map((it) => complex.magnitude(reading(network, it)));
    expect(volts! / amps!).toBeCloseTo((0.49 * rated ** 2) / 20_000, 1);
    const power = [..."ABC"].reduce(
      (sum, letter) =>
        sum +
        complex.times(
          reading(network, `p1/${letter}-p1/N`),
          complex.conjugate(reading(network, `live@p1/${letter}`)),
        )[0],
      0,
    );
    expect(power / 300_000).toBeCloseTo(1, 6);
  });
});
