/** Reach, neutrals, nominal volts and how supplies run, against a second implementation that knows only the format's page. */
import { describe, expect, test } from "vitest";
import { casesOf, nodesOf } from "../../../tests/secondOpinion/cases";
import { reachOf as plainReach } from "../../../tests/secondOpinion/hazard";
import { nastyDocument } from "../../../tests/secondOpinion/nasty";
import { driversIn, nominalOf, runsOf, tiedNeutrals as plainTied } from "../../../tests/secondOpinion/plain";
import { draws } from "../../../tests/support/draws";
import { randomDocument } from "../../../tests/support/randomSystems";
import {
  groupsAsDrawn,
  nodeName,
  pathTo,
  REACH,
  reachOf,
  running,
  RUNS,
  sourceOf,
  standingOf,
  tiedNeutrals,
  UTILITY,
} from ".";

const cases = casesOf([
  ...Array.from(
    { length: draws(120) },
    (_, seed) => [`random ${seed}`, randomDocument(seed + 300, { parts: 12 })] as const,
  ),
  ...Array.from(
    { length: draws(120) },
    (_, seed) => [`nasty ${seed}`, nastyDocument(seed + 700, 9)] as const,
  ),
]);

describe("a second implementation finds the same", () => {
  test("neutrals that are tied to earth", () => {
    let tied = 0;
    for (const it of cases) {
      const mine = plainTied(it.plain);
      const found = tiedNeutrals(it.circuit, standingOf(it.circuit));
      for (const [id, node] of nodesOf(it)) expect(found[node] === 1, `${it.name} ${id}`).toBe(mine.has(id));
      for (let node = it.circuit.conductorCount; node < it.circuit.nodeCount; node++)
        expect(found[node], `${it.name} ${nodeName(it.circuit, node)}`).toBe(0);
      tied += mine.size;
    }
    expect(tied).toBeGreaterThan(draws(200));
  });

  test("conductors that a utility source reaches forward, and all that any source reaches, source by source", () => {
    let backfed = 0;
    for (const it of cases) {
      const { circuit, name } = it;
      const mine = plainReach(it.plain);
      const standing = standingOf(circuit);
      const all = reachOf(circuit, standing, { groundsLifted: false });
      for (const [id, node] of nodesOf(it)) {
        expect((all.how[node]! & REACH.forward) !== 0, `${name} ${id} forward`).toBe(mine.fed.has(id));
        expect(all.how[node] !== REACH.none, `${name} ${id}`).toBe(mine.any.get(id)!.size > 0);
        if (all.how[node] === REACH.backfeed) backfed++;
      }
      circuit.emfs.forEach(({ element }) => {
        const from = circuit.elementIds[element]!;
        const { how } = reachOf(circuit, standing, { groundsLifted: false, onlyFrom: element });
        for (const [id, node] of nodesOf(it))
          expect(how[node] !== 0, `${name} ${id} from ${from}`).toBe(mine.any.get(id)!.has(from));
      });
    }
    expect(backfed).toBeGreaterThan(draws(100));
  });

  test("with temporary grounds lifted, what is reached is what is reached without them", () => {
    let lifted = 0;
    for (const it of cases) {
      const grounds = Object.entries(it.plain.elements).filter(([, { kind }]) => kind === "ground");
      const bare = Object.fromEntries(
        Object.entries(it.plain.elements).filter(([, { kind }]) => kind !== "ground"),
      );
      const mine = plainReach({ ...it.plain, elements: bare });
      const { how } = reachOf(it.circuit, standingOf(it.circuit), { groundsLifted: true });
      for (const [id, node] of nodesOf(it))
        expect(how[node] !== 0, `${it.name} ${id}`).toBe((mine.any.get(id)?.size ?? 0) > 0);
      lifted += grounds.length;
    }
    expect(lifted).toBeGreaterThan(draws(20));
  });

  test("nominal volts", () => {
    // Where two voltages meet at one point, as in what is drawn to be wrong, either may be meant.
    for (const it of cases.filter(({ name }) => name.startsWith("random"))) {
      const mine = nominalOf(it.plain);
      for (const [id, node] of nodesOf(it)) {
        if (id.endsWith("/N")) continue;
        const found = it.circuit.nominalVolts[node]!;
        // A letter that nothing touches has the volts of its point, which the device looks up.
        if (found === 0) continue;
        expect(found / mine.get(id.slice(0, id.indexOf("/")))!, `${it.name} ${id}`).toBeCloseTo(1, 9);
      }
    }
  });

  test("how each supply runs", () => {
    const seen = new Set<number>();
    for (const { name, plain, circuit } of cases) {
      const mine = runsOf(plain);
      const found = running(circuit);
      circuit.emfs.forEach(({ element, part }, emf) => {
        if (part.role === "contact") return;
        const id = circuit.elementIds[element]!;
        const wanted = { holding: RUNS.holding, following: RUNS.following, not: RUNS.not }[
          mine.get(id) ?? "not"
        ];
        expect(found[emf], `${name} ${id}`).toBe(wanted);
        seen.add(wanted);
      });
    }
    expect(seen.size).toBe(3);
  });

  test("which sources keep step with each other", () => {
    let alone = 0;
    for (const { name, plain, circuit } of cases) {
      const { ofEmf, all } = groupsAsDrawn(circuit);
      const members = new Map(all.map((it) => [it, [] as string[]]));
      for (const [emf, group] of ofEmf)
        members.get(group)!.push(circuit.elementIds[circuit.emfs[emf]!.element]!);
      for (const [group, list] of members) if (list.length === 0) list.push(circuit.elementIds[group]!);
      const told = [...members].map(
        ([group, list]) => `${group === UTILITY ? "utility" : "alone"} ${list.join()}`,
      );
      const [mine, utility] = [driversIn(plain), new Set(driversIn(plain)[0])];
      const isSystem = (list: readonly string[]) =>
        list.every((it) => utility.has(it)) &&
        list.some((it) => plain.elements[it]?.kind === "source" && plain.elements[it]["inStep"] !== false);
      // A circuit that only crosses drives nothing before it touches.
      const driving = mine.filter(([id]) => plain.elements[id!]!["relation"] !== "crossing");
      const wanted = driving.map((list) => {
        const own = list.filter((it) => plain.elements[it] !== undefined);
        const inOrder = circuit.elementIds.filter((it) => own.includes(it));
        return `${isSystem(own) ? "utility" : "alone"} ${inOrder.join()}`;
      });
      expect(told.toSorted(), name).toEqual(wanted.toSorted());
      alone += told.filter((it) => it.startsWith("alone")).length;
    }
    expect(alone).toBeGreaterThan(draws(30));
  });
});

describe("the way to what is reached", () => {
  test("begins at the source and goes on from element to neighbouring element, to the conductor that was asked for", () => {
    let ways = 0;
    for (const { name, circuit } of cases) {
      const reach = reachOf(circuit, standingOf(circuit), { groundsLifted: false });
      const at = (id: (typeof circuit.elementIds)[number]) => {
        const element = circuit.system.elements[id]!;
        return Object.values(element).filter((it) => typeof it === "string" && it in circuit.system.points);
      };
      circuit.conductorIds.forEach((id, node) => {
        if (reach.how[node] === 0) return;
        const path = pathTo(circuit, reach, node);
        expect(path[0], `${name} ${id}`).toBe(circuit.elementIds[sourceOf(circuit, reach, node)]);
        path.slice(1).forEach((it, before) => expect(it, `${name} ${id}`).not.toBe(path[before]));
        // Where each element stands at a point of the one before, the way is unbroken; what crosses has no point of its own.
        path.slice(1).forEach((it, before) => {
          const [here, last] = [at(it), at(path[before]!)];
          if (here.length > 0 && last.length > 0)
            expect(
              here.some((point) => last.includes(point)),
              `${name} ${id}: ${path.join(" ")}`,
            ).toBe(true);
        });
        const end = at(path.at(-1)!);
        if (end.length > 0) expect(end, `${name} ${id}`).toContain(id.slice(0, id.indexOf("/")));
        ways++;
      });
    }
    expect(ways).toBeGreaterThan(draws(1000));
  });
});
