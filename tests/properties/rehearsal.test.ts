/** Laws of the rehearsal, on random drawings and random steps: most of them foolish. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { isUnreadable, readDocument, type Step, type StillhotDocument } from "../../src/core/document";
import { STEP_VERBS } from "../../src/core/steps";
import {
  beginJob,
  type JobState,
  play,
  type PlayedStep,
  rehearsalJson,
  rehearse,
} from "../../src/core/procedure";
import { drawFrom, randomDocument } from "../support/randomSystems";
import { spell } from "../support/words";
import { english } from "../../src/core";

const seeds = fc.integer({ min: 1, max: 1_000_000_000 });
const RUNS = { numRuns: 40, seed: 1 };

function documentOf(seed: number): StillhotDocument {
  const read = readDocument(JSON.stringify(randomDocument(seed, { parts: 8 })));
  if (isUnreadable(read)) throw new Error(JSON.stringify(read.problems));
  return read.document;
}

/** Steps that name things of the drawing, mostly such as their verb is about. */
function randomSteps(document: StillhotDocument, seed: number, count: number): Step[] {
  const draw = drawFrom(seed);
  const elements = Object.keys(document.system.elements);
  const points = Object.keys(document.system.points);
  const workPoints = Object.keys((document.job?.["workPoints"] ?? {}) as object);
  return Array.from({ length: count }, () => {
    const verb = draw.oneOf(STEP_VERBS);
    const step: Record<string, unknown> = { do: verb, element: draw.oneOf(elements), at: draw.oneOf(points) };
    if (verb === "work") step["at"] = draw.oneOf(workPoints);
    if (verb === "ground") delete step["element"];
    if (verb === "wait") step["seconds"] = draw.between(0, 400);
    if (verb === "set-position") step["to"] = draw.oneOf(["utility", "generator", "off"]);
    else if (verb === "ground") step["to"] = draw.oneOf(["neutral", "earth", "both"]);
    if (draw.chance(0.3)) step["with"] = draw.oneOf(["load-break-tool", "clamp-stick"]);
    if (draw.chance(0.3)) step["first"] = draw.oneOf(["neutral", "phase"]);
    if (draw.chance(0.3)) step["cable"] = draw.oneOf(["2", "2/0", "4/0", "6"]);
    return step as unknown as Step;
  });
}

const playAll = (document: StillhotDocument, steps: readonly Step[]): PlayedStep[] => {
  const played: PlayedStep[] = [];
  let state: JobState = beginJob(document);
  for (const step of steps) {
    const next = play(state, step);
    played.push(next);
    state = next.state;
  }
  return played;
};

test("P8 any step is played, said in whole sentences, and its numbers are numbers", () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const document = documentOf(seed);
      for (const { findings, consequence } of playAll(document, randomSteps(document, seed, 25))) {
        expect(consequence.amps).toBeGreaterThanOrEqual(0);
        expect(consequence.volts).toBeGreaterThanOrEqual(0);
        const said = findings.flatMap(({ message, help }) =>
          help === undefined ? [message] : [message, help],
        );
        for (const message of [consequence.text, ...said])
          expect(spell(message)).not.toMatch(/[{}]|undefined|NaN|\[object/);
      }
    }),
    RUNS,
  );
});

test("P9 the same steps give the same answer, and every state before stays as it was", () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const document = documentOf(seed);
      const before = JSON.stringify(document);
      const steps = randomSteps(document, seed, 15);
      const withSteps = (job: typeof document.job) => ({
        ...document,
        job: { ...job, steps: steps as never },
      });
      const once = rehearse(withSteps(document.job));
      const frozen = once.steps.map(({ state }) => JSON.stringify(state.document));
      const fresh = documentOf(seed);
      const twice = rehearse({ ...fresh, job: { ...fresh.job, steps: steps as never } });
      expect(rehearsalJson(twice, english)).toEqual(rehearsalJson(once, english));
      expect(once.steps.map(({ state }) => JSON.stringify(state.document))).toEqual(frozen);
      expect(JSON.stringify(document)).toBe(before);
    }),
    RUNS,
  );
});

test("P10 what is done and undone leaves the drawing exactly as it was found", () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const document = documentOf(seed);
      const draw = drawFrom(seed);
      const closed = Object.entries(document.system.elements).filter(
        ([, it]) =>
          (it.kind === "cutout" || it.kind === "disconnect") &&
          it["open"] === undefined &&
          it["blown"] === undefined &&
          it["removed"] === undefined &&
          it["blocked"] !== true &&
          it["tagged"] !== true,
      );
      if (closed.length === 0) return;
      const ids = closed.map(([id]) => id).filter(() => draw.chance(0.7));
      const step = (verb: string, element: string) => ({ do: verb, element }) as Step;
      const there = ids.flatMap((id) => [step("open", id), step("tag", id), step("block", id)]);
      const back = ids
        .toReversed()
        .flatMap((id) => [step("untag", id), step("unblock", id), step("close", id)]);
      const end = playAll(document, [...there, ...back]).at(-1)?.state ?? beginJob(document);
      expect(end.document).toBe(document);
    }),
    RUNS,
  );
});
