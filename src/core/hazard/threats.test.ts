import { describe, expect, test } from "vitest";
import type { Question } from "./types";
import { isUnreadable, jobOf, readDocument, settingsOf, type StillhotDocument } from "../document";
import { assess } from "./assess";
import { leastMargin } from "./margin";
import { leastStepTouch, threatsByBruteForce, threatsTo } from "./threats";

function read(elements: Record<string, object>, points: readonly string[], at: string): StillhotDocument {
  const file = readDocument(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      system: { points: Object.fromEntries(points.map((id, nth) => [id, { x: 100 * nth, y: 0 }])), elements },
      job: { workPoints: { w1: { at, conductors: "A" } } },
    }),
  );
  if (isUnreadable(file)) throw new Error(JSON.stringify(file.problems));
  return file.document;
}

const questionOf = (document: StillhotDocument): Question => ({
  system: document.system,
  settings: settingsOf(document),
  workPoint: Object.values(jobOf(document).workPoints)[0]!,
});

const names = (threats: readonly { readonly upsets: readonly { readonly element: string }[] }[]): string[] =>
  threats.map(({ upsets }) => upsets.map(({ element }) => element).join("+"));

/** A source, so many disconnects one after the other of which some are open, and the work at the end. */
function chain(devices: number, open: readonly number[]): StillhotDocument {
  const points = Array.from({ length: devices + 1 }, (_, nth) => `p${nth}`);
  const elements: Record<string, object> = { s1: { kind: "source", at: "p0", phases: "ABC", kvLL: 12.47 } };
  for (let nth = 1; nth <= devices; nth++)
    elements[`d${nth}`] = {
      kind: "disconnect",
      from: points[nth - 1],
      to: points[nth],
      phases: "ABC",
      gang: true,
      ...(open.includes(nth) ? { open: "ABC" } : {}),
    };
  return read(elements, points, points.at(-1)!);
}

describe("H5 no threat up to strength 3 is missed, however many things stand open", () => {
  test("three open disconnects in a line of hundreds are one threat, and four are none", () => {
    const open = [100, 200, 300];
    expect(names(assess(chain(400, open)).workPoints["w1" as never]!.threats)).toEqual(["d100+d200+d300"]);
    const four = assess(chain(400, [...open, 350])).workPoints["w1" as never]!;
    expect(four.threats).toEqual([]);
    expect(four.margin).toBe(null);
    expect(four).not.toHaveProperty("threatsCompleteTo");
  });

  test("hundreds of open disconnects take no more than those near the work", () => {
    const document = chain(
      3000,
      Array.from({ length: 430 }, (_, nth) => 3 + 6 * nth),
    );
    const { threats, completeTo } = threatsTo(questionOf(document));
    expect(threats).toEqual([]);
    expect(completeTo).toBe(3);
  });

  test("open switches that only close a loop are in no threat", () => {
    const around = {
      s1: { kind: "source", at: "p0", phases: "A", kvLL: 12.47 },
      c1: { kind: "cutout", from: "p0", to: "p2", phases: "A", open: "A" },
      l1: { kind: "disconnect", from: "p0", to: "p1", phases: "A" },
      l2: { kind: "disconnect", from: "p0", to: "p1", phases: "A", open: "A" },
      c2: { kind: "cutout", from: "p1", to: "p2", phases: "A", open: "A" },
    };
    const document = read(around, ["p0", "p1", "p2"], "p2");
    const question = questionOf(document);
    const plain = names(threatsByBruteForce(question));
    expect(plain).toEqual(["c1", "c2"]);
    expect(names(threatsTo(question, { mostSetsOneByOne: 0 }).threats)).toEqual(plain);
  });
});

describe("a search that cannot ask every set says so, and nothing then looks safer than it may be", () => {
  const document = chain(60, [10, 20, 30]);
  const question = questionOf(document);

  test("it still tells the sets by which a source reaches", () => {
    const short = threatsTo(question, { mostSetsOneByOne: 0, mostWork: 0 });
    expect(short.completeTo).toBe(1);
    expect(names(short.threats)).toEqual(["d10+d20+d30"]);
    expect(leastMargin(short)).toBe(2);
  });

  test("what it asked counts as work, so that whoever asks again and again comes to an end", () => {
    const workOf = (count: number) => threatsTo(questionOf(sideBySide(count)), { mostSetsOneByOne: 0 }).work;
    // Twice as many switches make eight times as many sets of three.
    expect(workOf(12)).toBeGreaterThan(4 * workOf(6));
  });

  test("step and touch are not known then, which is not none", () => {
    expect(leastStepTouch(question)).toBe("none");
    expect(leastStepTouch(question, 0)).toBe("not-known");
  });

  test("[threats, complete to, margin]", () => {
    for (const [strengths, completeTo, margin] of [
      [[], 3, null],
      [[], 2, 3],
      [[], 1, 2],
      [[1, 3], 2, 1],
      [[3], 1, 2],
    ] as const)
      expect(leastMargin({ threats: strengths.map((strength) => ({ strength })) as never, completeTo })).toBe(
        margin,
      );
  });
});

/** So many open switches between a source and the work. */
const sideBySide = (count: number) =>
  read(
    {
      s1: { kind: "source", at: "p0", phases: "ABC", kvLL: 12.47 },
      ...Object.fromEntries(
        Array.from({ length: count }, (_, n) => [
          `d${n}`,
          { kind: "disconnect", from: "p0", to: "p1", phases: "ABC", open: "ABC" },
        ]),
      ),
    },
    ["p0", "p1"],
    "p1",
  );
