import { describe, expect, test } from "vitest";
import { isRefusal, type JsonObject } from "../../terms";
import {
  type Edit,
  completePoint,
  conductorsOf,
  edits,
  emptyHistory,
  isUnreadable,
  readDocument,
  remember,
  type StillhotDocument,
  undo,
  writeDocument,
} from "..";

const file = (points: object, elements: object, title = "t"): StillhotDocument => {
  const read = readDocument(
    JSON.stringify({ format: "stillhot", formatVersion: 1, title, system: { points, elements } }),
  );
  if (isUnreadable(read)) throw new Error(JSON.stringify(read.problems));
  return read.document;
};
const span = (from: string, to: string, phases = "ABC") => ({ kind: "span", from, to, phases });
const SOURCE = { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47 };

/** A line with a tap on B: cutout, transformer, meter and house. */
const line = file(
  {
    p1: { kind: "station" },
    p2: { x: 120, label: "Pole 2" },
    p3: { x: 120, y: 80, evidence: "seen", pinned: true },
    p4: { x: 120, y: 160, label: "Bank" },
    p5: { x: 120, y: 240, kind: "service" },
  },
  {
    s1: SOURCE,
    sp1: span("p1", "p2"),
    c1: { kind: "cutout", from: "p2", to: "p3", phases: "B", open: "B", label: "Cutout 1", evidence: "seen" },
    t1: {
      kind: "transformer",
      from: "p3",
      to: "p4",
      phases: "B",
      connection: "single",
      kva: 25,
      primaryKv: 7.2,
      secondaryV: 240,
    },
    m1: { kind: "meter", from: "p4", to: "p5", phases: "12" },
    ld1: { kind: "load", at: "p5", phases: "12", kw: 3, customers: 1, label: "House 1" },
  },
);
const TAP = { elements: ["c1", "t1", "m1", "ld1"] };
/** Another drawing, to put it into. */
const other = file({ p1: {}, p9: { x: 500, y: 60, label: "Pole 9" } }, { s1: SOURCE, sp1: span("p1", "p9") });

function stamp(things: edits.Things, from = line, join?: string): edits.Stamp {
  const made = edits.stampOf(from, things, "My tap", join);
  if (isRefusal(made)) throw new Error(made.refused.key);
  return made;
}
const refusal = (outcome: object): string => (isRefusal(outcome) ? outcome.refused.key : "none");
function placed(edit: Edit, before: StillhotDocument) {
  const change = edit(before);
  if (isRefusal(change)) throw new Error(JSON.stringify(change.refused));
  return change;
}
const elements = ({ system }: StillhotDocument) => system.elements as unknown as Record<string, JsonObject>;
const points = ({ system }: StillhotDocument) => system.points as unknown as Record<string, JsonObject>;

describe("a stamp", () => {
  test("is what was selected, and joins by its end nearest the source", () => {
    const { join, piece } = stamp(TAP);
    expect(join).toBe("p2");
    expect(Object.keys(piece.points)).toEqual(["p2", "p3", "p4", "p5"]);
    expect(Object.keys(piece.elements)).toEqual(["c1", "ld1", "m1", "t1"]);
    expect(edits.stampPhases(stamp(TAP))).toBe("B");
  });

  test("takes neither what was seen nor what was pinned with it", () => {
    expect(JSON.stringify(stamp(TAP).piece)).not.toMatch(/evidence|pinned/);
  });

  test("has the point of a one-ended element with it, and no circuit beside a span that stays behind", () => {
    const beside = file(
      { p1: {}, p2: { x: 100 }, p3: { x: 200 } },
      {
        s1: SOURCE,
        sp1: span("p1", "p2"),
        sp2: span("p2", "p3"),
        n1: { kind: "nearby", span: "sp1", relation: "crossing", kvLL: 34.5 },
        n2: { kind: "nearby", span: "sp2", relation: "crossing", kvLL: 34.5 },
      },
    );
    expect(Object.keys(stamp({ elements: ["sp2", "n1", "n2"] }, beside).piece.elements)).toEqual([
      "n2",
      "sp2",
    ]);
  });

  test("can join by another of its points", () => {
    expect(stamp({ elements: ["t1", "m1"] }, line, "p4").join).toBe("p4");
    expect(edits.stampPhases(stamp({ elements: ["t1", "m1"] }, line, "p4"))).toBe("12");
  });

  test.each<[string, edits.Things, string | undefined, string]>([
    ["nothing is selected", {}, undefined, "stamp.nothing"],
    ["it is what lies between two points", { points: ["p2", "p3"] }, undefined, "none"],
    ["it is one point alone", { points: ["p4"] }, undefined, "stamp.nothing"],
    ["it is what hangs at a point alone", { elements: ["ld1"] }, undefined, "stamp.nothing"],
    ["it is in pieces", { elements: ["sp1", "m1"] }, undefined, "stamp.apart"],
    ["the point to join by is elsewhere", { elements: ["c1"] }, "p5", "stamp.noJoin"],
  ])("when %s", (_, things, join, key) => {
    expect(refusal(edits.stampOf(line, things, "x", join))).toBe(key);
  });

  test("is refused where on its own it could not be read", () => {
    const grounded = edits.addGround("p2", { phases: "ABC" })(line);
    if (isRefusal(grounded)) throw new Error("a ground can stand at the pole");
    expect(refusal(edits.stampOf(grounded.after, { elements: ["c1", "g1"] }, "x"))).toBe("stamp.alone");
  });
});

describe("placing a stamp", () => {
  test("joins it to the point, under new ids and labels, and undoing it is one step", () => {
    const first = placed(edits.placeStamp(stamp(TAP), "p2", { phases: "ABC" }), line);
    expect(writeDocument(undo(remember(emptyHistory, first), first.after)!.document)).toBe(
      writeDocument(line),
    );
    expect(elements(first.after)["c2"]).toMatchObject({ from: "p2", to: "p6", label: "Cutout 2", open: "B" });
    expect(elements(first.after)["ld2"]).toMatchObject({ at: "p8", label: "House 2" });
    expect(points(first.after)["p7"]).toMatchObject({ label: "Bank 2" });
    expect(points(first.after)["p2"]).toEqual(points(line)["p2"]);
    expect(first.made).toEqual(["p6", "p7", "p8", "c2", "ld2", "m2", "t2"]);
  });

  test("works in another drawing, relative to the point there, and turned", () => {
    const { after } = placed(edits.placeStamp(stamp(TAP), "p9", { phases: "ABC", degrees: -90 }), other);
    const spots = Object.entries(points(after)).map(([id, it]) => {
      const { x, y } = completePoint(it);
      return [id, x, y];
    });
    expect(spots).toEqual([
      ["p1", 0, 0],
      ["p9", 500, 60],
      ["p3", 580, 60],
      ["p4", 660, 60],
      ["p5", 740, 60],
    ]);
  });

  test.each([
    ["ABC", "B", "B"],
    ["A", "A", "A"],
    ["C", "C", "C"],
    ["AC", "C", "C"],
  ])("on phases %s it goes onto %s, with what is open there", (phases, letter, open) => {
    const { after } = placed(edits.placeStamp(stamp(TAP), "p9", { phases }), other);
    expect(elements(after)["c1"]).toMatchObject({ phases: letter, open });
    expect(elements(after)["t1"]).toMatchObject({ phases: letter });
    expect(elements(after)["m1"]).toMatchObject({ phases: "12" });
    expect(conductorsOf(after.system).get("p3")).toEqual([letter, "N"]);
  });

  test("is refused where the phases are not there, and where the point is not", () => {
    const three = stamp({ elements: ["sp1"] });
    expect(refusal(edits.placeStamp(three, "p9", { phases: "AB" })(other))).toBe("stamp.unfit");
    expect(refusal(edits.placeStamp(three, "p9", { phases: "12" })(other))).toBe("stamp.unfit");
    expect(refusal(edits.placeStamp(three, "p77", { phases: "ABC" })(other))).toBe("edit.noPoint");
  });

  test("turns taps, a middle tap and matrices with their letters", () => {
    const z = [
      [
        [1, 1],
        [0.1, 0.2],
        [0.3, 0.4],
      ],
      [
        [0.1, 0.2],
        [2, 2],
        [0.5, 0.6],
      ],
      [
        [0.3, 0.4],
        [0.5, 0.6],
        [9, 9],
      ],
    ];
    const odd = file(
      { p1: {}, p2: { x: 100 }, p3: { x: 200 }, p4: { x: 300 } },
      {
        s1: SOURCE,
        sp1: { ...span("p1", "p2", "BC"), zOhmsPerKm: z },
        vr1: { kind: "regulator", from: "p2", to: "p3", phases: "BC", taps: { B: 3, C: -2 } },
        t1: {
          kind: "transformer",
          from: "p3",
          to: "p4",
          phases: "BC",
          connection: "openY-openD",
          kva: 50,
          primaryKv: 12.47,
          secondaryV: 240,
          midTap: "bc",
        },
      },
    );
    // BC goes onto CA: what was first is now second.
    const { after } = placed(
      edits.placeStamp(stamp({ elements: ["sp1", "vr1", "t1"] }, odd), "p9", { phases: "AC" }),
      other,
    );
    const all = elements(after);
    expect(all["vr1"]).toMatchObject({ phases: "AC", taps: { C: 3, A: -2 } });
    expect(all["t1"]).toMatchObject({ phases: "AC", midTap: "ca" });
    expect(all["sp2"]?.["zOhmsPerKm"]).toEqual([
      [z[1]![1], z[1]![0], z[1]![2]],
      [z[0]![1], z[0]![0], z[0]![2]],
      [z[2]![1], z[2]![0], z[2]![2]],
    ]);
  });
});

describe("a stamp that was kept", () => {
  const written = edits.writeStamp(stamp(TAP));

  test("reads back as itself", () => {
    expect(edits.readStamp(written)).toEqual(stamp(TAP));
  });

  test.each<[string, { join: unknown; text: unknown }]>([
    ["no text", { join: "p2", text: undefined }],
    ["no file", { ...written, text: "{}" }],
    ["a file that breaks off", { ...written, text: written.text.slice(0, -20) }],
    ["a point to join by that is not in it", { ...written, join: "__proto__" }],
    ["a point to join by that is no text", { ...written, join: ["p2"] }],
    ["a piece that hangs on nothing", { ...written, text: writeDocument(file({ p2: {}, p3: {} }, {})) }],
    [
      "an id with a treacherous name",
      { ...written, text: written.text.replace('"p3": {', '"__proto__": {') },
    ],
  ])("%s is refused", (_, kept) => {
    expect(refusal(edits.readStamp(kept))).toBe("stamp.unreadable");
  });
});
