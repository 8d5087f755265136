/** Volts, amperes, angles, fault and body currents, against a second implementation that knows only the format's page. */
import { describe, expect, test } from "vitest";
import { casesOf, nodesOf } from "../../../tests/secondOpinion/cases";
import { solvePlain } from "../../../tests/secondOpinion/electrical";
import { look, worstDrawn } from "../../../tests/secondOpinion/hazard";
import { nastyDocument } from "../../../tests/secondOpinion/nasty";
import { driversIn, nominalOf, type Plain, without } from "../../../tests/secondOpinion/plain";
import { draws } from "../../../tests/support/draws";
import { randomDocument } from "../../../tests/support/randomSystems";
import { EARTH } from "../network";
import { complex, type PointId } from "../terms";
import {
  ampsAtPoint,
  ampsThrough,
  AS_DRAWN,
  elementAmps,
  faultAmpsAt,
  solutionOf,
  voltsAt,
  worstAt,
} from ".";

/** Of two numbers: a part in a thousand, or for what floats between thousands of volts a hundredth [V, A]. */
const near = (a: number, b: number) =>
  Math.abs(a - b) <= Math.max(0.01, 1e-3 * Math.max(Math.abs(a), Math.abs(b)));

function expectNear(found: number, wanted: number, what: string): void {
  expect(near(found, wanted), `${what}: ${found}, a second implementation says ${wanted}`).toBe(true);
}

/** So many drawings in which what drives them does not keep step. */
function notInStep(count: number, from: number): unknown[] {
  const found: unknown[] = [];
  for (let seed = from; found.length < count; seed++) {
    const document = nastyDocument(seed, 7);
    if (driversIn(document.system).length > 1) found.push(document);
  }
  return found;
}

const cases = casesOf([
  ...Array.from(
    { length: draws(24) },
    (_, seed) => [`random ${seed}`, randomDocument(seed + 900, { parts: 8 })] as const,
  ),
  ...Array.from(
    { length: draws(16) },
    (_, seed) =>
      [
        `loads of every model ${seed}`,
        randomDocument(seed + 1900, { parts: 8, nonlinearLoads: true }),
      ] as const,
  ),
  ...Array.from(
    { length: draws(20) },
    (_, seed) => [`nasty ${seed}`, nastyDocument(seed + 2900, 7)] as const,
  ),
  ...notInStep(14, 3900).map((document, turn) => [`not in step ${turn}`, document] as const),
]).map((it) => ({ ...it, nominal: nominalOf(it.plain) }));

const sizeOf = (it: readonly [number, number]) => Math.hypot(it[0], it[1]);

describe("a second implementation finds the same", () => {
  test("volts with loads and without, and the worst over angles that nothing fixes", () => {
    let worse = 0;
    for (const it of cases) {
      const { drawn, off, ...rest } = look(it.plain, it.nominal);
      const solution = solutionOf(it.circuit, AS_DRAWN);
      const unloaded = solutionOf(it.circuit, { ...AS_DRAWN, loads: false });
      expect(solution.settled, it.name).toBe(drawn.settled);
      for (const [id, node] of nodesOf(it)) {
        const volts = complex.magnitude(voltsAt(solution, node));
        expectNear(volts, sizeOf(drawn.volts.get(id)!), `${it.name} volts of ${id}`);
        expectNear(
          complex.magnitude(voltsAt(unloaded, node)),
          sizeOf(off.volts.get(id)!),
          `${it.name} ${id}, loads off`,
        );
        const worst = worstDrawn({ drawn, off, ...rest }, id);
        expectNear(worstAt(solution, node), worst, `${it.name} worst of ${id}`);
        if (worst > 1.01 * volts) worse++;
      }
    }
    expect(worse).toBeGreaterThan(draws(10));
  });

  test("amperes of every element, phase by phase", () => {
    let flowing = 0;
    for (const { name, plain, circuit, nominal } of cases) {
      const mine = solvePlain(plain, nominal, false);
      const amps = elementAmps(solutionOf(circuit, AS_DRAWN));
      circuit.elementIds.forEach((id, element) => {
        const record = circuit.system.elements[id] as { readonly from?: PointId; readonly at?: PointId };
        const point = circuit.pointIds.indexOf((record.from ?? record.at)!);
        for (const [letter, found] of Object.entries(ampsAtPoint(circuit, amps, element, point))) {
          const wanted = mine.amps.get(id)?.get(letter);
          // Ideal joins around a loop: the second implementation does not divide what they carry.
          if (wanted === undefined || Number.isNaN(wanted[0])) continue;
          expectNear(complex.magnitude(found), sizeOf(wanted), `${name} amperes of ${id} ${letter}`);
          if (sizeOf(wanted) > 0.1) flowing++;
        }
      });
    }
    expect(flowing).toBeGreaterThan(draws(200));
  });

  test("what flows through a body between a conductor and earth, or another conductor", () => {
    let shocked = 0;
    for (const it of cases) {
      const { drawn } = look(it.plain, it.nominal);
      const solution = solutionOf(it.circuit, AS_DRAWN);
      const nodes = nodesOf(it);
      nodes.forEach(([one, node], turn) => {
        if (turn % 3 !== 0) return;
        const [other, to] = turn % 2 === 0 ? (["", EARTH] as const) : nodes[(turn * 7) % nodes.length]!;
        const ohms = turn % 4 === 0 ? 1000 : 0.5;
        const elements = { ...it.plain.elements, body: { kind: "body", one, other, ohms } };
        const wanted =
          one === other
            ? 0
            : driversIn(it.plain).reduce((sum, ids) => {
                const { held, outputsHold } = drawn;
                const alone = { drives: (id: string) => ids.includes(id), held, outputsHold };
                const { amps } = solvePlain({ ...it.plain, elements }, it.nominal, false, alone);
                return sum + sizeOf(amps.get("body")?.get("body") ?? [0, 0]);
              }, 0);
        expectNear(ampsThrough(solution, node, to, ohms), wanted, `${it.name} ${one} to ${other || "earth"}`);
        if (wanted > 0.01) shocked++;
      });
    }
    expect(shocked).toBeGreaterThan(draws(100));
  });

  test("bolted faults: one phase to ground, two phases, three phases", () => {
    const seen = { threePhase: 0, phaseToPhase: 0, phaseToGround: 0 };
    for (const { name, plain, circuit, nominal } of cases) {
      const bare = without(plain, ({ kind }) => kind === "ground" || kind === "fault" || kind === "arrester");
      circuit.pointIds.forEach((point, turn) => {
        if (turn % 2 === 1) return;
        const has = (letter: string) =>
          (circuit.nodeOf as ReadonlyMap<string, number>).has(`${point}/${letter}`);
        const phases = [..."ABC12"].filter(has).map((letter) => `${point}/${letter}`);
        const ground = has("N") ? `${point}/N` : "";
        /** Largest amperes in bolted ways that close together. */
        const bolted = (...ways: readonly (readonly [string, string])[]) => {
          const bolts = ways.map(([one, other], k) => [`bolt${k}`, { kind: "body", one, other, ohms: 1e-7 }]);
          const elements = { ...bare.elements, ...(Object.fromEntries(bolts) as Plain["elements"]) };
          const { amps } = solvePlain({ ...bare, elements }, nominal, true);
          return Math.max(...ways.map((_, k) => sizeOf(amps.get(`bolt${k}`)!.get("body")!)));
        };
        const pairs = phases.flatMap((a, i) => phases.slice(i + 1).map((b) => [a, b] as const));
        const wanted = {
          ...(phases.length > 0 && { phaseToGround: Math.max(...phases.map((it) => bolted([it, ground]))) }),
          ...(pairs.length > 0 && { phaseToPhase: Math.max(...pairs.map((it) => bolted(it))) }),
          ...(phases.length > 2 && { threePhase: bolted(...phases.map((it) => [it, ground] as const)) }),
        };
        const found = faultAmpsAt(circuit, point);
        expect(Object.keys(found).sort(), `${name} ${point}`).toEqual(Object.keys(wanted).sort());
        for (const key of Object.keys(wanted) as (keyof typeof wanted)[]) {
          expectNear(found[key]!, wanted[key]!, `${name} ${point} ${key}`);
          if (wanted[key]! > 10) seen[key]++;
        }
      });
    }
    for (const [kind, count] of Object.entries(seen)) expect(count, kind).toBeGreaterThan(draws(30));
  });
});
