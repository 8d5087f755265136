/** How fast a network is solved, beside a circuit simulator's run of the same network, and how that grows. */
import { expect, test } from "vitest";
import type { StillhotDocument } from "../../src/core";
import { circuitOf } from "../../src/core/network";
import { solutionOf, voltsAt } from "../../src/core/phasor";
import { type Drawing, type Element, netlistOf } from "../simulator/netlist";
import { chance } from "../simulator/randomSystem";
import { simulate } from "../simulator/simulate";
import { report } from "../support/measure";

const KV = 12.47;

/** A radial three-phase feeder with its neutral: each point hangs from one of the last few, every third has a load. */
function feeder(pointCount: number): Drawing {
  const { whole, round } = chance(pointCount);
  const points: Record<string, { earthOhms?: number }> = { p0: {} };
  const elements: Record<string, Element> = { s: { kind: "source", at: "p0", phases: "ABC", kvLL: KV } };
  for (let k = 1; k < pointCount; k++) {
    points[`p${k}`] = k % 4 === 0 ? { earthOhms: 25 } : {};
    const from = `p${Math.max(0, k - whole(1, 8))}`;
    elements[`l${k}`] = { kind: "span", from, to: `p${k}`, phases: "ABC", lengthM: round(30, 60) };
    if (k % 3 === 0)
      elements[`d${k}`] = {
        kind: "load",
        at: `p${k}`,
        phases: "ABC",
        kw: (3000 / pointCount) * 3,
        kvar: 600 / pointCount,
      };
  }
  return { frequencyHz: 60, points, elements };
}

/** A drawing as if it had just been read: nothing of it is remembered from a solve before. */
const fresh = (drawing: Drawing): StillhotDocument["system"] => JSON.parse(JSON.stringify(drawing)) as never;

/** Milliseconds of the whole way from documents, none of them met before, to volts. */
function solvingMilliseconds(systems: readonly StillhotDocument["system"][]): number {
  const start = performance.now();
  for (const system of systems) solutionOf(circuitOf(system));
  return performance.now() - start;
}

test("from document to volts, 1000 points of four conductors, against a circuit simulator", async () => {
  const drawing = feeder(1000);
  const solution = solutionOf(circuitOf(fresh(drawing)));
  // Of several runs the least: the one that nothing else on the machine disturbed.
  const runs = Array.from({ length: 25 }, () => solvingMilliseconds([fresh(drawing)]));
  const milliseconds = Math.min(...runs);
  const { lines, nodeOf } = netlistOf(drawing, {
    prefix: "b",
    nominalVolts: () => KV * 1000,
    volts: undefined,
  });
  await simulate(["R1 a 0 1", "I1 0 a DC 0 AC 1 0"], 60); // the simulator's own start is not counted
  let simulator = Infinity;
  let simulated: Awaited<ReturnType<typeof simulate>> | undefined;
  for (let run = 0; run < 3; run++) {
    const start = performance.now();
    simulated = await simulate(lines, 60);
    simulator = Math.min(simulator, performance.now() - start);
  }
  for (const [conductor, node] of nodeOf) {
    const [re, im] = node === "0" ? [0, 0] : simulated!.get(node)!;
    const [ownRe, ownIm] = voltsAt(solution, solution.nodal.circuit.nodeOf.get(conductor as never)!);
    expect(Math.hypot(re - ownRe, im - ownIm), conductor).toBeLessThan(1);
  }
  report("milliseconds from document to volts, 1000 points", milliseconds, "shown only");
  report("milliseconds of the simulator's run", simulator, "shown only");
  report("simulator's run against a whole solve, 1000 points", simulator / milliseconds, "at least 100");
  expect(simulator / milliseconds).toBeGreaterThan(100);
});

test("growth from 1000 to 10 000 points", () => {
  // Ten small ones in a row against one large: as much to clear away after the one as after the other.
  const [small, large] = [feeder(1000), feeder(10_000)];
  let [ten, one] = [Infinity, Infinity];
  for (let round = 0; round < 8; round++) {
    ten = Math.min(ten, solvingMilliseconds(Array.from({ length: 10 }, () => fresh(small))));
    one = Math.min(one, solvingMilliseconds([fresh(large)]));
  }
  report("milliseconds from document to volts, 10 000 points", one, "shown only");
  report("10 000 points against 1000", (10 * one) / ten, "under 12");
  expect((10 * one) / ten).toBeLessThan(12);
});
