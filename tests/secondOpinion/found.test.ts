/** What the second implementation found, each on the smallest drawing that shows it. */
import { expect, test } from "vitest";
import { isUnreadable, readDocument, type Settings, settingsOf, type WorkPoint } from "../../src/core";
import { threatsByBruteForce, threatsTo } from "../../src/core/hazard";
import { nameOf } from "./hazard";

test("a neutral that is joined again ends what came through it, and what it leaves induced is a threat of its own", () => {
  const read = readDocument(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      title: "a cut neutral",
      system: {
        points: { p1: {}, p2: {}, p3: {}, p4: {} },
        elements: {
          s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47 },
          le: { kind: "lead", from: "p1", to: "p2", phases: "ABC", cut: "BCN" },
          sp: { kind: "span", from: "p2", to: "p3", phases: "ABC", lengthM: 2400 },
          t1: {
            kind: "transformer",
            from: "p3",
            to: "p4",
            phases: "ABC",
            connection: "Yg-Yg",
            kva: 75,
            primaryKv: 12.47,
            secondaryV: 480,
            excitingPercent: 0,
          },
          g1: { kind: "ground", at: "p3", phases: "ABC", to: "earth", cable: "2/0" },
        },
      },
      job: { workPoints: { w1: { at: "p2", conductors: "BC" } } },
    }),
  );
  if (isUnreadable(read)) throw new Error(JSON.stringify(read.problems));
  const { document } = read;
  const settings: Settings = settingsOf(document);
  const workPoint = { at: "p2", conductors: "BC" } as WorkPoint;
  const fast = threatsTo(document.system, settings, workPoint).map(nameOf);
  expect(fast).toEqual(threatsByBruteForce(document.system, settings, workPoint).map(nameOf));
  expect(fast).toContain("B by rejoin:le.N");
});
