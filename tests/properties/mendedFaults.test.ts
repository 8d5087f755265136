import { expect, test } from "vitest";
import {
  assess,
  readDocument,
  type StillhotDocument,
  type Threat,
  type WorkPointReport,
} from "../../src/core";
import { BADNESS, threatKey } from "../../src/core/hazard";
import { drawFrom, randomDocument } from "../support/randomSystems";
import { draws } from "../support/draws";

type File = ReturnType<typeof randomDocument>;
type Saved = Record<string, unknown>;

/** A random drawing with a few faults at and around the work, which its own work and the crew beside take away. */
function fileOf(seed: number): { readonly file: File; readonly faults: readonly string[] } {
  const file = randomDocument(seed, { parts: 6 });
  const draw = drawFrom(seed ^ 0x2f6e2b1);
  const { elements } = file.system;
  const { at, conductors } = file.job.workPoints.w1;
  if (seed % 3 !== 0)
    for (const it of Object.values(elements))
      if (["cutout", "disconnect", "clamp", "elbow"].includes(String(it["kind"]))) it["open"] = it["phases"];
  const ends = Object.values(elements).filter(
    (it) => it["kind"] === "span" || it["kind"] === "cutout" || it["kind"] === "disconnect",
  );
  const faults = Array.from({ length: draw.between(1, 3) }, (_, nth) => {
    const there: Saved =
      draw.chance(0.6) || ends.length === 0 ? { to: at, phases: conductors } : draw.oneOf(ends);
    const phases = String(there["phases"]);
    const isBetween = phases.length > 1 && draw.chance(0.5);
    elements[`ff${nth}`] = draw.chance(0.2)
      ? { kind: "arrester", at: there["to"], phases, failed: phases }
      : {
          kind: "fault",
          at: there["to"],
          phases: isBetween ? phases : draw.oneOf([...phases]),
          to: isBetween ? "phases" : "earth",
          ohms: draw.oneOf([0.01, 0.01, 0.5, 10, 40]),
        };
    return `ff${nth}`;
  });
  if (draw.chance(0.3))
    elements["own"] = { kind: "ground", at, phases: conductors, cable: "4/0", to: "earth" };
  const own = faults.filter(() => draw.chance(0.6));
  const workPoints = {
    w1: { ...file.job.workPoints.w1, does: own },
    w2: { at: "p1", conductors: "A", does: faults.filter((it) => !own.includes(it)) },
  };
  const steps = [
    { do: "check-detector", done: true },
    { do: "test", at, phases: conductors, done: true },
  ];
  return { file: { ...file, job: { ...file.job, workPoints, steps } } as unknown as File, faults };
}

const read = (file: File): StillhotDocument | undefined => {
  const answer = readDocument(JSON.stringify(file));
  return "document" in answer ? answer.document : undefined;
};

/** The file with these faults mended, and a job that mends nothing more. */
function mended(file: File, gone: readonly string[]): File {
  const copy = structuredClone(file) as unknown as {
    system: { elements: Record<string, Saved> };
    job: { workPoints: Record<string, Saved> };
  };
  for (const id of gone)
    if (copy.system.elements[id]!["kind"] === "fault") delete copy.system.elements[id];
    else copy.system.elements[id]!["failed"] = "";
  delete copy.job.workPoints["w2"];
  delete copy.job.workPoints["w1"]!["does"];
  return copy as unknown as File;
}

const choicesOf = (ids: readonly string[]): string[][] =>
  ids.reduce<string[][]>((some, id) => [...some, ...some.map((it) => [...it, id])], [[]]);

function told(file: File): { readonly report: WorkPointReport; readonly rules: ReadonlySet<string> } {
  const { workPoints, findings } = assess(read(file)!);
  return {
    report: workPoints["w1" as never]!,
    rules: new Set(findings.filter(({ where }) => where === "w1").map(({ rule }) => rule)),
  };
}

const FELT = ["volts", "exposureVolts", "exposureToEarthVolts", "bodyMilliamps", "groundAmps"] as const;

/** What the one report tells less of than the other; a set of upsets within one that is told may stand for it. */
function calmer(all: WorkPointReport, one: WorkPointReport): string[] {
  const known = new Map(all.threats.map((it) => [threatKey(it), it]));
  const isWithin = (a: Threat, b: Threat) =>
    a.upsets.every((it) =>
      b.upsets.some(
        (other) => it.element === other.element && it.kind === other.kind && it.phase === other.phase,
      ),
    );
  return one.threats.flatMap((threat) => {
    const same = known.get(threatKey(threat));
    if (same === undefined)
      return all.threats.some((it) => isWithin(it, threat)) ? [] : [`${threatKey(threat)} is not told`];
    return FELT.filter((it) => !(same[it] >= threat[it] * (1 - 1e-6) - 1e-3)).map(
      (it) => `${threatKey(threat)}: ${it} ${same[it]} and not ${threat[it]}`,
    );
  });
}

test("H25 no work point stands better than with any of the faults gone that works of the job take away", () => {
  /** how often the drawing as it is would have told less */
  let worse = 0;
  let asked = 0;
  for (let seed = 7300; seed < 7300 + draws(36); seed++) {
    const { file, faults } = fileOf(seed);
    if (read(file) === undefined) continue;
    const { report, rules } = told(file);
    const asDrawn = told(mended(file, []));
    asked++;
    for (const gone of choicesOf(faults)) {
      const without = told(mended(file, gone));
      const name = `${file.title} without ${gone.join()}`;
      expect(BADNESS[report.verdict], name).toBeGreaterThanOrEqual(BADNESS[without.report.verdict]);
      expect(report.margin ?? Infinity, name).toBeLessThanOrEqual(without.report.margin ?? Infinity);
      expect(calmer(report, without.report), name).toEqual([]);
      // What may lift the pole is told of a grounded line alone.
      const missing = [...without.rules].filter(
        (it) => !rules.has(it) && (it !== "step-touch" || report.verdict === "grounded"),
      );
      expect(missing, name).toEqual([]);
      if (calmer(asDrawn.report, without.report).length > 0) worse++;
    }
  }
  expect(asked).toBeGreaterThan(draws(24));
  expect(worse).toBeGreaterThan(draws(18));
});
