import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { randomDocument } from "../../../tests/support/randomSystems";
import { expectSame } from "../../../tests/support/same";
import {
  amended,
  besideOthers,
  edits,
  isUnreadable,
  objectionTo,
  perObject,
  readDocument,
  type StillhotDocument,
  type System,
} from "../document";
import { isRefusal, type JsonObject } from "../terms";
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
      expectSame(told(carried), told(buildCircuit(changed)));
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

/** Random drawings, and the demos for what none of them has. */
const DRAWINGS: readonly StillhotDocument[] = [
  ...Array.from({ length: 14 }, (_, seed) => JSON.stringify(randomDocument(seed, { parts: 10 }))),
  ...demos.map((it) => readFileSync(`shared/demos/${it}`, "utf8")),
].flatMap((text) => {
  const read = readDocument(text);
  return isUnreadable(read) ? [] : [read.document];
});

/** Keys that only say how a thing is called, where it comes from or where it is written. */
const NOTHING_TO_A_CIRCUIT = ["label", "evidence", "seen", "photos", "x", "y", "notes"];

interface Changed {
  readonly id: string;
  readonly key: string;
  readonly before: System;
  readonly after: System;
}

/** Every key that another thing of its kind has, put into the first thing of each kind of a drawing, one at a time. */
function* changes(): Generator<Changed> {
  const values = new Map<string, Map<string, unknown>>();
  for (const { system } of DRAWINGS)
    for (const record of Object.values(system.elements as Record<string, JsonObject>))
      for (const [key, value] of Object.entries(record)) {
        const some = values.get(`${String(record["kind"])} ${key}`) ?? new Map<string, unknown>();
        values.set(`${String(record["kind"])} ${key}`, some.set(JSON.stringify(value), value));
      }
  const told = new Set<string>();
  for (const document of DRAWINGS)
    for (const [id, record] of Object.entries(document.system.elements as Record<string, JsonObject>))
      for (const [name, some] of values) {
        const [kind, key = ""] = name.split(" ");
        if (kind !== record["kind"] || key === "kind") continue;
        const isEnd = ["from", "to", "at", "alt", "span"].includes(key);
        const twice = typeof record[key] === "number" ? [2 * record[key]] : [];
        const others = isEnd
          ? Object.keys(document.system.points).slice(0, 2)
          : [...twice, ...some.values(), null];
        for (const value of others.slice(0, 6)) {
          const what = `${name} ${JSON.stringify(record[key])} ${JSON.stringify(value)}`;
          if (told.has(what) || JSON.stringify(record[key]) === JSON.stringify(value)) continue;
          const after = amended(document.system, [{ set: { [id]: { [key]: value as never } } }]);
          if (objectionTo({ ...document, system: after }) !== undefined) continue;
          told.add(what);
          yield { id, key, before: document.system, after };
        }
      }
}

/** Which nodes each thing of a circuit joins. */
const layOf = ({ joins, stretches, units, branches, emfs }: ReturnType<typeof buildCircuit>) => ({
  joins: [joins.from, joins.to],
  stretches: stretches.map(({ part }) => [part.letters, part.lettersBeyond]),
  units: units.map(({ part }) =>
    [...part.primary, ...part.secondary].map(({ plus, minus }) => [plus, minus]),
  ),
  branches: branches.map(({ part }) => [part.role, part.from, part.to]),
  emfs: emfs.map(({ part }) => [part.legs.map(({ node }) => node), part.star]),
});

/** What is opened, shed or rated otherwise is never a reason to build anew. */
const QUICK = ["open", "blown", "removed", "on", "kw", "tagged"];

test("S9 whatever is changed of one thing, what is carried over is what the drawing alone gives", () => {
  let [carriedCount, quickCount] = [0, 0];
  const built = perObject(buildCircuit);
  for (const { id, key, before, after } of changes()) {
    const circuit = built(before);
    const carried = carriedOver(circuit, after);
    if (QUICK.includes(key)) {
      expect(carried, `${id} ${key}`).toBeDefined();
      quickCount++;
    }
    if (carried === undefined) {
      // What runs beside a span is looked at anew with it.
      if (NOTHING_TO_A_CIRCUIT.includes(key)) expect(besideOthers(before).length).toBeGreaterThan(0);
      continue;
    }
    expectSame(told(carried), told(buildCircuit(after)), `${id} ${key}`);
    // What was worked out of where things lie is kept for it; what was worked out of what they say, only where that is the same.
    expectSame(layOf(carried), layOf(circuit), `${id} ${key}`);
    const isSame = JSON.stringify(carried.parts) === JSON.stringify(circuit.parts);
    expect(carried.values === circuit.values, `${id} ${key}`).toBe(isSame);
    carriedCount++;
  }
  expect(carriedCount).toBeGreaterThan(100);
  expect(quickCount).toBeGreaterThan(20);
});

describe("S9 edits in a row", () => {
  test.each(demos)("%s: carried over from edit to edit, it is what the drawing alone gives", (name) => {
    const read = readDocument(readFileSync(`shared/demos/${name}`, "utf8"));
    let { document } = read as { document: StillhotDocument };
    const first = buildCircuit(document.system);
    let circuit = first;
    for (const [id, { kind }] of Object.entries(document.system.elements)) {
      if (kind !== "cutout" && kind !== "disconnect" && kind !== "elbow" && kind !== "clamp") continue;
      for (const edit of [edits.open(id), edits.close(id)]) {
        const change = edit(document);
        if (isRefusal(change)) continue;
        document = change.after;
        circuit = carriedOver(circuit, document.system)!;
        expectSame(told(circuit), told(buildCircuit(document.system)), id);
        expectSame(told(carriedOver(first, document.system)!), told(circuit), `${id} from the first`);
      }
    }
    expect(circuit).not.toBe(first);
  });

  test("of what is put in or taken out nothing is carried over", () => {
    const [document] = DRAWINGS.slice(-1) as [StillhotDocument];
    const before = buildCircuit(document.system);
    const [id] = Object.keys(document.system.elements);
    for (const edit of [edits.removeThings({ elements: [id!] }), edits.addPoint({ x: 900, y: 900 })]) {
      const change = edit(document);
      expect(isRefusal(change)).toBe(false);
      if (!isRefusal(change)) expect(carriedOver(before, change.after.system)).toBeUndefined();
    }
  });
});

// Conductors that come out on other nodes: none of it may be told by where things lay before.
test.each([
  ["phases swapped along a span", { sp1: { toPhases: "BAC" } }],
  ["a bank connected otherwise", { t1: { connection: "Yg-D" } }],
  ["a load between phases, not to neutral", { ld1: { connection: "delta" } }],
])("%s: the circuit is built anew", (_, set) => {
  const { system } = draw(`
    s1  source      p1    ABC kvLL=12.47
    sp1 span        p1-p2 ABC
    t1  transformer p2-p3 ABC connection=Yg-Yg kva=75 primaryKv=12.47 secondaryV=480
    ld1 load        p3    ABC kw=5 customers=1
    w1  work        p2    A
  `);
  const before = buildCircuit(system);
  const after = amended(system, [{ set }]);
  expect(layOf(buildCircuit(after))).not.toEqual(layOf(before));
  expect(carriedOver(before, after)).toBeUndefined();
});
