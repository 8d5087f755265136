import { expect, test } from "vitest";
import { draws } from "../../../tests/support/draws";
import { randomDocument } from "../../../tests/support/randomSystems";
import type { StillhotDocument } from "../document";
import { circuitOf, EARTH } from "../network";
import { Carrier, type Factor, type SparseVector } from "./ldlt";
import { solutionOf } from "./solve";

const apart = (a: readonly number[], b: readonly number[]): number =>
  Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!);

/** What rounding may leave of sums in which terms as large as the largest inverse pivot cancel [Ω]. */
const roundingIn = ({ inverseRe, inverseIm }: Factor): number =>
  1e-15 * inverseRe.reduce((most, re, k) => Math.max(most, Math.hypot(re, inverseIm[k]!)), 0);

test("vectors walked up together give what each gives carried by itself, but for last digits", () => {
  const off: string[] = [];
  let asked = 0;
  for (let seed = 1; seed <= draws(40); seed++) {
    const { system } = randomDocument(seed, { parts: 12 }) as unknown as StillhotDocument;
    const circuit = circuitOf(system);
    for (const loads of [true, false]) {
      const { factor, nodal } = solutionOf(circuit, { loads, grounds: true, faults: true });
      const carrier = new Carrier(factor);
      for (const { legs, star } of circuit.emfs) {
        const vectors = legs.map((leg): SparseVector =>
          [[leg, 1, 0] as const, [star, -1, 0.5] as const].flatMap(([node, re, im]) =>
            node === EARTH ? [] : [[nodal.placeOf[node]!, re, im] as const],
          ),
        );
        const among = carrier.among(vectors)!;
        const carried = vectors.map((it) => carrier.carry(it));
        const own = carried.map((it) => Math.hypot(...carrier.between(it, it)));
        carried.forEach((one, a) =>
          carried.forEach((other, b) => {
            asked++;
            const at = 2 * (a * vectors.length + b);
            const expected = carrier.between(one, other);
            const allowed = 1e-9 * (own[a]! + own[b]!) + roundingIn(factor);
            if (!(apart([among[at]!, among[at + 1]!], expected) <= allowed))
              off.push(`${seed} ${loads} ${legs.join()}: ${among.join()} for ${expected.join()}`);
          }),
        );
      }
    }
  }
  expect(off).toEqual([]);
  expect(asked).toBeGreaterThan(10);
});

test("entries on several paths are none of its questions, and leave nothing behind", () => {
  const { system } = randomDocument(1, { parts: 14 }) as unknown as StillhotDocument;
  const { factor } = solutionOf(circuitOf(system));
  const { parent } = factor.symbolic;
  const isAbove = (of: number, at: number): boolean => at !== -1 && (at === of || isAbove(of, parent[at]!));
  const other = [...parent.keys()].find((it) => !isAbove(it, 0) && !isAbove(0, it))!;
  const carrier = new Carrier(factor);
  const alone = [...carrier.among([[[0, 1, 0]]])!];
  expect(
    carrier.among([
      [
        [0, 1, 0],
        [other, -1, 0],
      ],
    ]),
  ).toBeUndefined();
  expect([...carrier.among([[[0, 1, 0]]])!]).toEqual(alone);
});
