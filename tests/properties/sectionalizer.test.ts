import { describe, expect, test } from "vitest";
import { draw } from "../support/jobNotation";
import { assess } from "../../src/core/hazard";
import { settingsOf } from "../../src/core/document";
import { plan, planDocument, rehearse } from "../../src/core/procedure";

const LINE = `
  s1  source         sub     ABC  kvLL=12.47
  r1  recloser       sub-p1  ABC  visibleGap=true
  sp  span           p1-p2   ABC  lengthM=800
  z1  sectionalizer  p2-p3   ABC
  ld  load           p4      ABC  kw=90
  sq  span           p3-p4   ABC  lengthM=400
  w1  work           p4      ABC
`;
const upsetsOf = (changes: string): string[] =>
  assess(draw(`${LINE}\n${changes}`)).workPoints["w1" as never]!.threats.flatMap(({ upsets, strength }) =>
    upsets.map(({ kind, element }) => `${kind} ${element} ${strength}`),
  );
const unique = (items: string[]): string[] => [...new Set(items)];

describe("A sectionalizer opens by itself and closes by another's hand", () => {
  test.each([
    ["open: somebody closes it", "open=true", "close z1 1"],
    ["tagged", "open=true tagged=true", "close z1 2"],
    ["tagged and blocked", "open=true tagged=true blocked=true", "close z1 3"],
    ["remote control closes it whatever its tag", "open=true remote=true tagged=true", "reclose z1 1"],
  ])("%s", (_what, keys, upset) => {
    expect(unique(upsetsOf(`z1 sectionalizer p2-p3 ABC ${keys}`))).toEqual([upset]);
  });
});

test("it passes load current when it is closed, and none when it has opened", () => {
  const through = (changes: string) =>
    assess(draw(`${LINE}\n${changes}`)).elements["z1" as never]!.amps["A"]!;
  // 90 kW on three phases at 7.2 kV: 90 000 / 3 / 7 200 = 4.17 A a phase.
  expect(through("")).toBeCloseTo(4.17, 1);
  expect(through("z1 sectionalizer p2-p3 ABC open=true")).toBe(0);
});

test("a line whose only switch is one is planned: what opens can be operated", () => {
  const document = draw(
    LINE.replace("r1  recloser", "r1  lead").replace("visibleGap=true", "") +
      "z1 sectionalizer p2-p3 ABC loadBreakAmps=400 visibleGap=true",
  );
  const planned = plan(document);
  expect(planned.steps.filter(({ element }) => element === "z1").map((it) => it.do)).toEqual([
    "open",
    "tag",
    "untag",
    "close",
  ]);
  expect(planned.ok).toBe(true);
  expect(rehearse(planDocument(document)).ok).toBe(true);
});

test("without a rating it breaks no more than the company's limit for a bare switch", () => {
  const breaking = (keys: string) =>
    rehearse(draw(`${LINE}\nld load p4 ABC kw=400\nz1 sectionalizer p2-p3 ABC ${keys}`, "brief; open z1"))
      .steps.flatMap(({ findings }) => findings)
      .filter(({ rule }) => rule === "load-break")
      .map(({ severity }) => severity);
  expect(settingsOf(draw(LINE)).openWithoutLoadBreakAmps).toBe(10);
  expect(breaking("")).toEqual(["danger"]);
  expect(breaking("loadBreakAmps=400")).toEqual([]);
});
