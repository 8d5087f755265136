import { describe, expect, test } from "vitest";
import { draws } from "../../../tests/support/draws";
import { randomDocument } from "../../../tests/support/randomSystems";
import { readDocument, settingsOf, type StillhotDocument } from "../document";
import { circuitOf, nodeName, REACH, reachOf, standingOf } from "../network";
import { afterUpsets, assess, assessWithoutWork, upsetsOf } from ".";

const drawings: StillhotDocument[] = Array.from({ length: draws(200) }, (_, seed) =>
  readDocument(JSON.stringify(randomDocument(seed + 5000, { parts: 14 }))),
).flatMap((read) => ("document" in read ? [read.document] : []));

describe("H laws of states", () => {
  test("H1 what a utility source reaches directly or forward is never called isolated, grounded or induced", () => {
    for (const document of drawings) {
      const circuit = circuitOf(document.system);
      const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: false });
      const { conductors } = assess(document);
      circuit.conductorIds.forEach((id, node) => {
        if ((how[node]! & REACH.forward) !== 0)
          expect(["energized", "faulted"], id).toContain(conductors[id]!.state);
      });
    }
  });

  test("H2 whatever stands at the hazard volts, and is no tied neutral, is called live", () => {
    for (const document of drawings) {
      const { conductors } = assess(document);
      const limit = settingsOf(document).hazardVolts;
      for (const [id, { state, volts, voltsLoadsOff }] of Object.entries(conductors))
        if (Math.max(volts, voltsLoadsOff) >= limit && state !== "neutral")
          expect(["energized", "backfed", "induced", "faulted"], id).toContain(state);
    }
  });

  test("H3 closing a device never takes a conductor from what a source reaches, unless it ties its neutral to earth", () => {
    for (const document of drawings) {
      const before = circuitOf(document.system);
      const reachBefore = reachOf(before, standingOf(before), { groundsLifted: true });
      for (const upset of upsetsOf(document.system, settingsOf(document))) {
        const after = circuitOf(afterUpsets(document.system, [upset]));
        const reachAfter = reachOf(after, standingOf(after), { groundsLifted: true });
        if (reachAfter.tied.some((it, node) => it !== reachBefore.tied[node])) continue;
        reachBefore.how.forEach((how, node) => {
          if (how !== 0)
            expect(reachAfter.how[node], `${upset.element} ${nodeName(before, node)}`).not.toBe(0);
        });
      }
    }
  });

  test("H4 the margin of a live work point is 0, and no verdict is grounded while a threat of strength 0 to 2 is over the limit", () => {
    for (const document of drawings) {
      const limit = settingsOf(document).exposureLimitVolts;
      for (const { verdict, margin, threats } of Object.values(assess(document).workPoints)) {
        if (verdict === "live") expect(margin).toBe(0);
        if (verdict === "grounded")
          expect(threats.filter((it) => it.strength <= 2 && it.exposureVolts >= limit)).toEqual([]);
      }
    }
  });

  test("S9 a circuit carried over an edit solves to the same volts as one built anew", () => {
    for (const document of drawings.slice(0, draws(80))) {
      const upsets = upsetsOf(document.system, settingsOf(document)).slice(0, 6);
      for (const upset of upsets) {
        circuitOf(document.system);
        const system = afterUpsets(document.system, [upset]);
        const anew = { ...system, points: { ...system.points } };
        const carried = assessWithoutWork({ ...document, system });
        const built = assessWithoutWork({ ...document, system: anew });
        for (const [id, { state, volts }] of Object.entries(built.conductors)) {
          const other = carried.conductors[id as keyof typeof carried.conductors]!;
          expect(other.state, `${upset.element} ${id}`).toBe(state);
          expect(Math.abs(other.volts - volts), `${upset.element} ${id}`).toBeLessThanOrEqual(
            1e-6 + 1e-6 * volts,
          );
        }
      }
    }
  });
});
