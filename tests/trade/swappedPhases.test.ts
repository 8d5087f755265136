import { expect, test } from "vitest";
import {
  assess,
  edits,
  english,
  isUnreadable,
  lookFirst,
  readDocument,
  sceneOf,
  type StillhotDocument,
  type WorkPointId,
} from "../../src/core";

/** Nothing couples into a conductor that is open, so that it is dead. */
const ALONE = { bMicroSPerKm: [0, 1, 2, 3].map(() => [0, 0, 0, 0]) };

/** A source, single-pole switches of which some are open, and two spans; the work is on B at the end. */
function drawn({ open = "", first = {}, more = {} }: { open?: string; first?: object; more?: object } = {}) {
  const read = readDocument(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      title: "swapped phases",
      system: {
        points: { p1: {}, p2: {}, p3: {}, p4: { earthOhms: 1 } },
        elements: {
          s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47 },
          d1: { kind: "disconnect", from: "p1", to: "p2", phases: "ABC", open },
          sp1: { kind: "span", from: "p2", to: "p3", phases: "ABC", lengthM: 80, ...ALONE, ...first },
          sp2: { kind: "span", from: "p3", to: "p4", phases: "ABC", lengthM: 80, ...ALONE },
          ld1: { kind: "load", at: "p4", phases: "ABC", kw: 60, kvar: 20 },
          ...more,
        },
      },
      job: {
        task: "",
        workPoints: { w1: { at: "p4", conductors: "B" } },
        tools: [],
        permit: "none",
        steps: [],
      },
    }),
  );
  if (isUnreadable(read)) throw new Error(JSON.stringify(read.problems));
  return read.document;
}

const told = (document: StillhotDocument) => {
  const { conductors, workPoints } = assess(document);
  return {
    of: conductors as Record<string, { state: string; angleDeg: number; volts: number }>,
    work: Object.values(workPoints)[0]!,
  };
};

test("each phase goes on as the letter that it is drawn to be, with its own volts", () => {
  const { of } = told(drawn({ first: { toPhases: "BCA" } }));
  for (const [near, far] of ["AB", "BC", "CA"].map((it) => [...it] as [string, string]))
    expect(of[`p4/${far}`]!.angleDeg).toBeCloseTo(of[`p2/${near}`]!.angleDeg, 0);
});

test("a switch that is open on one phase leaves dead what that phase goes on as", () => {
  const { of, work } = told(drawn({ open: "A", first: { toPhases: "BCA" } }));
  expect(["A", "B", "C"].map((it) => of[`p4/${it}`]!.state === "energized")).toEqual([true, false, true]);
  expect(of["p4/B"]!.volts).toBeLessThan(2500);
  expect(work.threats.find(({ strength }) => strength === 1)!.upsets[0]).toMatchObject({
    element: "d1",
    phase: "A",
  });
});

/** Whatever opens, its phases rolled: what is A before it is B behind it. */
const ROLLED = [
  "clamp",
  "cutout",
  "disconnect",
  "recloser",
  "breaker",
  "sectionalizer",
  "elbow",
  "meter",
  "main",
];
const rolled = (kind: string, keys: object = {}) =>
  drawn({ first: { kind, toPhases: "BCA", lengthM: undefined, bMicroSPerKm: undefined, ...keys } });

test.each(ROLLED)("each phase of a %s goes on as the letter that it is drawn to be", (kind) => {
  const { of } = told(rolled(kind));
  for (const [near, far] of ["AB", "BC", "CA"].map((it) => [...it] as [string, string])) {
    expect(of[`p4/${far}`]!.angleDeg).toBeCloseTo(of[`p2/${near}`]!.angleDeg, 0);
    expect(of[`p4/${far}`]!.state).toBe("energized");
  }
});

test.each(["clamp", "cutout", "disconnect", "elbow"])(
  "a %s that is open on A leaves dead the B that this goes on as, and closing it makes that live",
  (kind) => {
    const { of, work } = told(rolled(kind, { open: "A" }));
    expect(["A", "B", "C"].map((it) => of[`p4/${it}`]!.state === "energized")).toEqual([true, false, true]);
    expect(of["p4/B"]!.volts).toBeLessThan(2500);
    expect(work.threats.find(({ strength }) => strength === 1)!.upsets[0]).toMatchObject({
      element: "sp1",
      phase: "A",
    });
  },
);

test("that a switch which is drawn to swap phases does not is looked for, and found live", () => {
  const found = lookFirst(rolled("disconnect", { open: "A" }), "w1" as WorkPointId).entries;
  expect(found).toContainEqual(
    expect.objectContaining({
      verdict: "live",
      doubt: expect.objectContaining({
        doubt: "swapped-phases",
        where: "sp1",
        instead: { set: { sp1: { toPhases: null } } },
      }),
    }),
  );
});

test("a switch that is put on other phases keeps its swap", () => {
  const turned = edits.changePhase("sp1", 1)(rolled("disconnect", { toPhases: "BAC" }));
  expect(turned).toMatchObject({
    after: { system: { elements: { sp1: { phases: "ABC", toPhases: "ACB" } } } },
  });
});

test("where one phase alone is open, that two of them are swapped along the line is looked for, and found live", () => {
  const swapped = looked("B").filter(({ doubt }) => doubt.doubt === "swapped-phases");
  expect(swapped.map(({ verdict, doubt }) => [verdict, doubt.where, doubt.phases])).toEqual([
    ["live", "sp2", "AB"],
    ["live", "sp1", "AB"],
  ]);
  expect(swapped.map(({ doubt }) => Object.values(doubt.instead.set!))).toEqual([
    [{ toPhases: "BAC" }],
    [{ toPhases: "BAC" }],
  ]);
  expect(looked("ABC").map(({ doubt }) => doubt.doubt)).not.toContain("swapped-phases");
});

const looked = (open: string) => lookFirst(drawn({ open }), "w1" as WorkPointId).entries;

test("a tie closed onto a line whose phases are rolled is a fault, and onto one that is drawn straight none", () => {
  const tie = { tie: { kind: "disconnect", from: "p1", to: "p4", phases: "ABC" } };
  const amps = (first: object) => {
    const elements = assess(drawn({ first, more: tie })).elements as unknown as Record<
      string,
      { amps: Record<string, number> }
    >;
    return elements["tie"]!.amps["A"]!;
  };
  expect(amps({})).toBeLessThan(10);
  expect(amps({ toPhases: "BCA" })).toBeGreaterThan(1000);
});

test("a line that is put on other phases keeps its swap", () => {
  const turned = edits.changePhase("sp1", 1)(drawn({ first: { toPhases: "BAC" } }));
  expect(turned).toMatchObject({
    after: { system: { elements: { sp1: { phases: "ABC", toPhases: "ACB" } } } },
  });
});

test.each([
  ["span", {}],
  ["disconnect", { kind: "disconnect", lengthM: undefined, bMicroSPerKm: undefined }],
  ["breaker", { kind: "breaker", lengthM: undefined, bMicroSPerKm: undefined }],
])("a %s that swaps phases says so on the drawing, and has what is dead behind it dead", (_, first) => {
  const places = { p1: 0, p2: 200, p3: 500, p4: 800 };
  const document = drawn({ open: "A", first: { ...first, toPhases: "BCA" } });
  const placed = edits.placePoints(
    Object.fromEntries(Object.entries(places).map(([id, x]) => [id, { x, y: 0 }])),
  )(document);
  if ("refused" in placed) throw new Error(placed.refused.key);
  for (const it of [document, placed.after]) {
    const scene = sceneOf(it, assess(it), { catalogue: english });
    const piece = scene.pieces.find(({ owner }) => owner.of === "element" && owner.id === "sp1")!;
    expect(piece.notes.map(({ text }) => text)).toContain("ABC→BCA");
    // A comes to it dead and leaves it as B; the B that comes to it live leaves it as C.
    const strands = piece.shapes.flatMap((shape) => (shape.shape === "strand" ? [shape] : []));
    const live = (letter: string) =>
      strands.filter((at) => at.letter === letter).map(({ look }) => look === "energized");
    expect(new Set(live("C"))).toEqual(new Set([true]));
    expect(live("A")).toContain(false);
    expect(live("B")).toContain(false);
    expect(live("B")).toContain(true);
  }
});
