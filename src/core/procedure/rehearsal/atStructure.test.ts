import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { draw, parseSteps, playAll, TAP } from "../../../../tests/support/jobNotation";
import { spellProblem } from "../../../../tests/support/words";
import { isUnreadable, readDocument, type Step, type System } from "../../document";
import type { PointId } from "../../terms";

/** The demo of one transformer's tap, with steps. */
function poleTwelve(steps: readonly object[]) {
  const { job, ...file } = JSON.parse(readFileSync("shared/demos/transformer-tap.stillhot.json", "utf8")) as {
    job: object;
  };
  return readDocument(JSON.stringify({ ...file, job: { ...job, steps } }));
}

function read(...given: Parameters<typeof poleTwelve>) {
  const answer = poleTwelve(...given);
  if (isUnreadable(answer)) throw new Error(answer.problems.map(spellProblem).join("\n"));
  return answer.document;
}

describe("a structure as the place of a step", () => {
  test.each(["barricade", "inspect"])("%s takes it", (verb) => {
    const played = playAll(read([{ do: verb, at: "s12" }]), parseSteps(`${verb} s12`, ["s12"]));
    expect(played.at(-1)!.findings).toEqual([]);
  });

  test.each([
    ["test", "s12"],
    ["barricade", "s13"],
    ["inspect", "s13"],
  ])("%s does not take %s", (verb, at) => {
    const answer = poleTwelve([{ do: verb, at }]);
    expect(isUnreadable(answer) && answer.problems.map(({ path }) => path)).toEqual(["job.steps[0].at"]);
  });

  // Format: "a barricade holds for its whole structure". Step and touch potentials: 29 CFR 1910.269 Appendix C.
  test.each([
    ["its structure", "s12", "note"],
    ["its own point", "p2", "note"],
    ["another point on it", "p1", "note"],
    ["another pole", "p4", "warning"],
  ])("people are kept clear of a work place by a barricade at %s", (_where, at, severity) => {
    const document = draw(`${TAP}
      p1 point earthOhms=200
      k1 clamp p1-p2 A`);
    const { points } = document.system;
    const system = {
      ...document.system,
      structures: { s12: { label: "Pole 12", kind: "pole" } },
      points: {
        ...points,
        p1: { ...points["p1" as PointId], on: "s12" },
        p2: { ...points["p2" as PointId], on: "s12" },
      },
    } as unknown as System;
    const steps =
      "open c1 with load-break-tool; tag c1; block c1; lift k1; tag k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0";
    const played = playAll({ ...document, system }, [
      ...parseSteps(steps, ["p2"]),
      { do: "barricade", at } as Step,
      ...parseSteps("work w1", []),
    ]);
    const { findings } = played.at(-1)!;
    expect(findings.filter(({ rule }) => rule === "step-touch").map((it) => it.severity)).toEqual([severity]);
  });
});
