import { describe, expect, test } from "vitest";
import { assess, isUnreadable, readDocument } from "../../src/core";

const LINE_KM = 2;
const [R, X] = [0.4 * LINE_KM, 0.3 * LINE_KM];
const KV = 12.47;

/** A stiff source, a switch, a line of known ohms, and a machine at its end; the work is at the machine's pole. */
function told(machine: object, { open = "", more = {} }: { open?: string; more?: object } = {}) {
  const own = (i: number, j: number) => (i === j && i < 3 ? [0.4, 0.3] : i === j ? [0.001, 0.001] : [0, 0]);
  const read = readDocument(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      title: "machine at a set output",
      system: {
        points: { p1: {}, p2: {}, p3: { earthOhms: 1 } },
        elements: {
          s1: { kind: "source", at: "p1", phases: "ABC", kvLL: KV, z1Ohms: [0, 1e-6], z0Ohms: [0, 1e-6] },
          d1: { kind: "disconnect", from: "p1", to: "p2", phases: "ABC", open },
          sp1: {
            kind: "span",
            from: "p2",
            to: "p3",
            phases: "ABC",
            lengthM: 1000 * LINE_KM,
            zOhmsPerKm: [0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((j) => own(i, j))),
            bMicroSPerKm: [0, 1, 2, 3].map(() => [0, 0, 0, 0]),
          },
          gen1: { kind: "generator", at: "p3", phases: "ABC", kva: 2000, volts: 12470, on: true, ...machine },
          ...more,
        },
      },
      job: {
        task: "",
        workPoints: { w1: { at: "p3", conductors: "A" } },
        tools: [],
        permit: "none",
        steps: [],
      },
    }),
  );
  if (isUnreadable(read)) throw new Error(JSON.stringify(read.problems));
  const { conductors, workPoints } = assess(read.document);
  return {
    conductors: conductors as Record<string, { volts: number; state: string }>,
    work: Object.values(workPoints)[0]!,
  };
}

const SOLAR = { interface: "inverter", outputKw: 1500, outputKvar: -300 };

describe("a machine at a set output", () => {
  /**
   * Volts at the end of a line that P and Q are fed in at, by phase: V⁴ − (V₁² + 2(RP + XQ)) V² + (R² + X²)(P² + Q²) = 0, the
   * two-bus load flow of any textbook.
   */
  test.each([
    [1500, -300],
    [-1500, 0],
    [600, 400],
  ])(
    "lifts or lowers the end of its line as the load flow of two buses has it: %d kW, %d kvar",
    (kw, kvar) => {
      const { conductors } = told({ outputKw: kw, outputKvar: kvar });
      const [v1, p, q] = [(KV * 1000) / Math.sqrt(3), (kw * 1000) / 3, (kvar * 1000) / 3];
      const half = (v1 * v1) / 2 + R * p + X * q;
      const volts = Math.sqrt(half + Math.sqrt(half * half - (R * R + X * X) * (p * p + q * q)));
      for (const letter of "ABC") expect(conductors[`p3/${letter}`]!.volts).toBeCloseTo(volts, 1);
    },
  );

  test("stops where the grid is gone, and that it fails to is one thing that goes wrong", () => {
    const { conductors, work } = told(SOLAR, { open: "ABC" });
    expect(conductors["p3/A"]).toMatchObject({ state: "isolated" });
    expect(work.verdict).toBe("could-go-live");
    const island = work.threats.filter(({ upsets }) => upsets.every(({ kind }) => kind === "start"));
    expect(island.map(({ strength }) => strength)).toEqual([1]);
    expect(island[0]!.volts).toBeGreaterThan(7000);
  });

  test("stops on all phases where one is lost, since nothing holds that one", () => {
    const { conductors } = told(SOLAR, { open: "A" });
    expect(conductors["p3/A"]!.state).toBe("isolated");
    expect(conductors["p3/B"]!.volts).toBeCloseTo((KV * 1000) / Math.sqrt(3), 0);
  });

  test("carries on where it is made to: the line behind the open switch is live, and so is all that follows it", () => {
    const carriesOn = { ...SOLAR, withoutGrid: "carries-on" };
    const { conductors, work } = told(carriesOn, { open: "ABC" });
    expect(conductors["p2/A"]!.state).toBe("backfed");
    expect(work.verdict).toBe("live");
    const also = {
      gen2: {
        kind: "generator",
        at: "p2",
        phases: "ABC",
        kva: 900,
        volts: 12470,
        on: true,
        outputKw: 0,
        outputKvar: 600,
      },
    };
    const follows = told(carriesOn, { open: "ABC", more: also });
    expect(follows.conductors["p2/A"]!.volts).toBeGreaterThan(1.001 * conductors["p2/A"]!.volts);
  });

  test("that is off can start, and then does not stop", () => {
    const { work } = told({ ...SOLAR, on: false }, { open: "ABC" });
    expect(work.verdict).toBe("could-go-live");
  });

  test("with the grid there, nothing more can start", () => {
    const { work } = told(SOLAR);
    expect(work.verdict).toBe("live");
    expect(work.threats.map(({ upsets }) => upsets.length)).toEqual([0]);
  });
});
