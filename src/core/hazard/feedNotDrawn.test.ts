import { describe, expect, test } from "vitest";
import { assessed, saidAt } from "../../../tests/support/drawn";

const SOURCE = { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47 };
const SPAN = { kind: "span", from: "p2", to: "p3", phases: "A", lengthM: 300 };
const CLAMP = { kind: "clamp", from: "p1", to: "p2", phases: "A" };
const TRANSFER = { kind: "transfer", from: "p4", to: "p2", phases: "A" };
const MACHINE = { kind: "generator", at: "p2", phases: "A", kva: 5, volts: 12470 };
const CROSSING = { kind: "nearby", span: "l2", relation: "crossing", kvLL: 12.47 };
const job = { workPoints: { w1: { at: "p3", conductors: "A" } } };

describe("H9 what no source could ever reach is not known to be dead", () => {
  const cases: readonly (readonly [
    name: string,
    elements: Record<string, object>,
    state: string,
    verdict: string,
  ])[] = [
    ["a clamp on the way, lifted", { c1: { ...CLAMP, open: "A" } }, "isolated", "could-go-live"],
    [
      "a span on the way, parted",
      { l1: { ...SPAN, from: "p1", to: "p2", parted: "A" } },
      "isolated",
      "could-go-live",
    ],
    ["a source that is off", { s2: { ...SOURCE, at: "p2", on: false } }, "isolated", "could-go-live"],
    [
      "a transfer switch joins all of its ends",
      { t1: { ...TRANSFER, alt: "p1" } },
      "isolated",
      "could-go-live",
    ],
    ["nothing on the way", {}, "unknown", "could-go-live"],
    ["a clamp of another phase", { c1: { ...CLAMP, phases: "B" } }, "unknown", "could-go-live"],
    ["a machine is no feed", { g1: MACHINE }, "unknown", "could-go-live"],
    ["a machine that runs is hot and no feed", { g1: { ...MACHINE, on: true } }, "backfed", "live"],
    ["a circuit that could touch is no feed", { n1: CROSSING }, "unknown", "could-go-live"],
    [
      "grounds do not make it known",
      { g1: { kind: "ground", at: "p2", phases: "A", to: "earth" } },
      "grounded",
      "could-go-live",
    ],
  ];
  test.each(cases)("%s", (_name, elements, state, verdict) => {
    const it = assessed({ elements: { s1: SOURCE, l2: SPAN, ...elements }, job });
    const isFed = state === "isolated";
    expect(it.conductors["p3/A"]!.state).toBe(state);
    expect(it.workPoints["w1"]!.verdict).toBe(verdict);
    expect(saidAt(it, "w1").includes("feed-not-drawn danger")).toBe(!isFed);
    if (!isFed) expect(it.workPoints["w1"]!.margin).toBe(0);
  });

  test("of a wire that is still to be put in nobody knows what it will be joined to: it is no better known", () => {
    const it = assessed({
      elements: { s1: SOURCE, c1: { ...CLAMP, planned: true }, l2: { ...SPAN, planned: true } },
      job,
    });
    expect(it.conductors["p3/A"]!.state).toBe("unknown");
    expect(saidAt(it, "w1")).toContain("feed-not-drawn danger");
    expect(it.workPoints["w1"]).toMatchObject({ verdict: "could-go-live", margin: 0 });
  });

  test("what couples into it at a dangerous voltage makes its work point live", () => {
    const n1 = { kind: "nearby", span: "l2", relation: "parallel", kvLL: 69, spacingM: 2, lengthM: 300 };
    const it = assessed({ elements: { s1: SOURCE, l2: { ...SPAN, neutral: false }, n1 }, job });
    expect(it.conductors["p3/A"]!.state).toBe("unknown");
    expect(it.conductors["p3/A"]!.volts).toBeGreaterThan(50);
    expect(it.workPoints["w1"]!.verdict).toBe("live");
    expect(it.workPoints["w1"]!.threats[0]).toMatchObject({ upsets: [], source: null, path: [] });
    expect(saidAt(it, "w1")).toContain("feed-not-drawn danger");
  });
});
