import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { amended, isUnreadable, readDocument, type System } from "../document";
import { buildCircuit } from "./buildCircuit";
import { carriedOver } from "./carryOver";

const demos = readdirSync("shared/demos").filter((it) => it.endsWith(".stillhot.json"));

function drawn(name: string): System {
  const read = readDocument(readFileSync(`shared/demos/${name}`, "utf8"));
  if (isUnreadable(read)) throw new Error(`${name} does not read`);
  return read.document.system;
}

/** All that a circuit says, but who it is. */
const told = ({ structure: _structure, values: _values, ...rest }: ReturnType<typeof buildCircuit>) => rest;

describe("S9 a circuit that was carried over is the one that the drawing alone gives", () => {
  test.each(demos)("%s: a rod of other ohms, by itself and beside what is open", (name) => {
    const system = drawn(name);
    const before = buildCircuit(system);
    const rods = Object.entries(system.points).filter(([, { earthOhms }]) => earthOhms !== undefined);
    expect(before.pointIds.length).toBeGreaterThan(0);
    for (const [id, { earthOhms }] of rods) {
      const changed = amended(system, [{ set: { [id]: { earthOhms: 3 * (earthOhms as number) } } }]);
      const carried = carriedOver(before, changed)!;
      expect(told(carried)).toEqual(told(buildCircuit(changed)));
      expect(carried.structure).toBe(before.structure);
      expect(carried.values).not.toBe(before.values);
    }
  });

  test.each(demos)("%s: with a rod more, a rod less, or a point more it is built anew", (name) => {
    const system = drawn(name);
    const before = buildCircuit(system);
    const [id, point] = Object.entries(system.points)[0]!;
    const other = point.earthOhms === undefined ? { earthOhms: 25 } : { earthOhms: null };
    expect(carriedOver(before, amended(system, [{ set: { [id]: other } }]))).toBeUndefined();
    expect(carriedOver(before, amended(system, [{ add: { points: { zz1: {} } } }]))).toBeUndefined();
  });
});
