import { applyPatches } from "immer";
import { describe, expect, test } from "vitest";
import { isRefusal, type JsonObject } from "../../terms";
import {
  type Change,
  type Edit,
  edits,
  isUnreadable,
  readDocument,
  type StillhotDocument,
  writeDocument,
} from "..";
import { spell, spellProblem } from "../../../../tests/support/words";

/** A tap with a span, switches of each sort, a transformer, a customer, and a job on it. */
const FILE = {
  format: "stillhot",
  formatVersion: 1,
  title: "Willow tap",
  system: {
    frequencyHz: 60,
    points: {
      p1: {},
      p2: { x: 200 },
      p3: { x: 400, label: "Pole 3" },
      p4: { x: 400, y: 200 },
      p5: { x: 400, y: 320 },
      p6: {},
    },
    elements: {
      s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47 },
      sp1: { kind: "span", from: "p1", to: "p2", phases: "ABC" },
      d1: { kind: "disconnect", from: "p2", to: "p6", phases: "ABC", gang: true },
      c1: { kind: "cutout", from: "p2", to: "p3", phases: "AB", label: "tap cutout" },
      t1: {
        kind: "transformer",
        from: "p3",
        to: "p4",
        phases: "A",
        connection: "single",
        kva: 25,
        primaryKv: 7.2,
        secondaryV: 240,
      },
      m1: { kind: "meter", from: "p4", to: "p5", phases: "12" },
      ld1: { kind: "load", at: "p5", phases: "12", connection: "delta", kw: 4, customers: 1 },
      n1: { kind: "nearby", span: "sp1", relation: "crossing", kvLL: 34.5 },
    },
  },
  job: {
    task: "change the cutout",
    workPoints: { w1: { at: "p3", conductors: "A" } },
    steps: [
      { do: "open", element: "c1" },
      { do: "test", at: "p3", phases: "A" },
      { do: "ground", at: "p3", phases: "A" },
      { do: "work", at: "w1" },
      { do: "unground", element: "g1" },
    ],
  },
};

const read = (text: string): StillhotDocument => {
  const file = readDocument(text);
  if (isUnreadable(file)) throw new Error(file.problems.map(spellProblem).join("\n"));
  return file.document;
};
const start = read(JSON.stringify(FILE));
type Records = Record<string, JsonObject | undefined>;
const elementsOf = ({ system }: StillhotDocument) => system.elements as unknown as Records;
const pointsOf = ({ system }: StillhotDocument) => system.points as unknown as Records;

/** Carries an edit out and holds it to the laws of every edit. */
function done(edit: Edit, before = start): Change {
  const outcome = edit(before);
  if (isRefusal(outcome)) throw new Error(spell(outcome.refused));
  const { after, forward, inverse } = outcome;
  const text = writeDocument(after);
  expect(writeDocument(applyPatches(after, [...inverse]))).toBe(writeDocument(before)); // E1
  expect(writeDocument(applyPatches(before, [...forward]))).toBe(text);
  expect(read(text)).toEqual(after);
  return outcome;
}

const refused = (edit: Edit, before = start): string => {
  const outcome = edit(before);
  return isRefusal(outcome) ? spell(outcome.refused) : "done";
};

const after = (...several: readonly Edit[]): StillhotDocument =>
  several.reduce((before, edit) => done(edit, before).after, start);

describe("what each edit does to an element", () => {
  test.each<[label: string, edit: Edit, id: string, keys: JsonObject]>([
    ["Open tap cutout, AB", edits.open("c1"), "c1", { open: "AB" }],
    ["Open tap cutout, B", edits.open("c1", "B"), "c1", { open: "B" }],
    ["Open disconnect at Pole 3, ABC", edits.open("d1", "A"), "d1", { open: "ABC" }],
    ["Open span from pole without a number to Pole 3, BN", edits.open("sp1", "NB"), "sp1", { parted: "BN" }],
    ["Open meter at Pole 3, 12", edits.open("m1"), "m1", { open: "12" }],
    ["Tag tap cutout", edits.tag("c1"), "c1", { tagged: true }],
    ["Block tap cutout", edits.block("c1"), "c1", { blocked: true }],
    ["Turn source at pole without a number off", edits.turnOff("s1"), "s1", { on: false }],
    [
      "Change tap cutout",
      edits.setElementKeys("c1", { fuse: { type: "K", amps: 15 } }),
      "c1",
      { fuse: { type: "K", amps: 15 } },
    ],
    [
      "Change tap cutout",
      edits.setElementKeys("c1", { label: undefined, removed: "A" }),
      "c1",
      { label: undefined, removed: "A" },
    ],
    [
      "Join meter at Pole 3 to Pole 3, below the disconnect",
      edits.reconnect("m1", "from", "p6"),
      "m1",
      { from: "p6" },
    ],
    [
      "Add cutout",
      edits.addElement("cutout", { from: "p2", to: "p6" }),
      "c2",
      { kind: "cutout", phases: "ABC", from: "p2", to: "p6" },
    ],
    [
      "Add transformer",
      edits.addElement("transformer", { from: "p2", to: "p6" }, { phases: "B" }),
      "t2",
      { kind: "transformer", kva: 25 },
    ],
    [
      "Add ground set",
      edits.addGround("p3", { cable: "2/0" }),
      "g1",
      { kind: "ground", at: "p3", phases: "AB", cable: "2/0" },
    ],
    [
      "Add span at Pole 3, below the disconnect",
      edits.growFrom("p6", "span", { x: 300, y: 300 }),
      "sp2",
      { from: "p6", to: "p7", phases: "ABC" },
    ],
  ])("%s", (label, edit, id, keys) => {
    const change = done(edit);
    expect(spell(change.label)).toBe(label);
    expect(elementsOf(change.after)[id]).toMatchObject(
      Object.fromEntries(Object.entries(keys).filter(([, it]) => it !== undefined)),
    );
    for (const [key, value] of Object.entries(keys))
      if (value === undefined) expect(elementsOf(change.after)[id]).not.toHaveProperty(key);
  });
});

test.each<[why: string, edit: Edit]>([
  ["there is no element c9 in this drawing", edits.open("c9")],
  ["there is no element toString in this drawing", edits.tag("toString")],
  ["tap cutout has no C; its phases are AB", edits.open("c1", "C")],
  ["tap cutout is already closed", edits.close("c1")],
  ["transformer at Pole 3 is nothing that opens", edits.open("t1")],
  ["load at Pole 3 has nothing called tagged", edits.tag("ld1")],
  ["tap cutout has no tag", edits.untag("c1")],
  ["source at pole without a number is on already", edits.turnOn("s1")],
  ["there is no transfer switch c1 in this drawing", edits.setPosition("c1", "off")],
  ["there is no point p9 in this drawing", edits.addElement("lead", { from: "p1", to: "p9" })],
  ["there is no point p9 in this drawing", edits.movePoints(["p1", "p9"], { x: 1, y: 1 })],
  ["nothing would change", edits.movePoints(["p1"], { x: 0, y: 0 })],
  ["nothing would change", edits.setTitle("Willow tap")],
  ["nothing would change", edits.setJob({ task: "change the cutout" })],
  ["nothing would change", edits.setNotes("")],
  ["there is no key colour to set here", edits.setElementKeys("c1", { colour: "red" })],
  ["there is no key unknownKva to set here", edits.setElementKeys("ld1", { unknownKva: 500 })],
  ["there is no key kind to set here", edits.setElementKeys("c1", { kind: "lead" })],
  [
    "there is no key __proto__ to set here",
    edits.setPointKeys("p1", JSON.parse('{"__proto__": 1}') as JsonObject),
  ],
  [
    "a number that is not finite, or a text that cannot be written, cannot stand in a drawing",
    edits.setPointKeys("p1", { x: Infinity }),
  ],
  [
    "a number that is not finite, or a text that cannot be written, cannot stand in a drawing",
    edits.setTitle("\ud800"),
  ],
  [
    'title: found "' + "x".repeat(36) + "…, expected text of at most 2000 letters",
    edits.setTitle("x".repeat(2001)),
  ],
  [
    "system.elements.c1.to: found p2 at both to and from, expected two different points",
    edits.reconnect("c1", "to", "p2"),
  ],
  ["meter at Pole 3 has no end at", edits.reconnect("m1", "at", "p2")],
  [
    "system.elements.ld1.phases: asks for 1 at p5, which has no conductors",
    edits.reconnect("m1", "to", "p6"),
  ],
  [
    "system.elements.ld1.phases: asks for 1 at p5, which has no conductors",
    edits.removeThings({ elements: ["m1"] }),
  ],
  ["there is no p9 in this drawing", edits.removeThings({ points: ["p9"] })],
  [
    "job.workPoints.w2.conductors: asks for C at p3, which has A B N",
    edits.addWorkPoint("p3", { conductors: "C" }),
  ],
  [
    'job.steps[0].element: found "c9", expected the id of an element of this file, or of a ground set that an earlier step puts on',
    edits.setSteps([{ do: "open", element: "c9" as never }]),
  ],
  [
    "settings.bodyOhms: found -1, expected a number Ω, more than 0, at most 1000000000",
    edits.setLimit("bodyOhms", -1, "a study"),
  ],
  ["A limit changes only with a reason.", edits.setLimit("hazardVolts", 30, "  ")],
  ["there is no key rules to set here", edits.setLimit("rules", 1, "all")],
  [
    'settings.rules.load-break.reason: found "", expected a reason in words why the rule is off',
    edits.setRule("load-break", ""),
  ],
  [
    "another thing is called POLE-3 already: said over the radio, one is taken for the other",
    edits.setPointKeys("p1", { label: "POLE-3" }),
  ],
  [
    "another thing is called Tap cutout already: said over the radio, one is taken for the other",
    edits.setElementKeys("d1", { label: "Tap cutout" }),
  ],
])("refused: %s", (why, edit) => {
  expect(refused(edit)).toBe(why);
});

test("closing a cutout closes whatever holds it open, and leaves the record as it was", () => {
  const opened = after(edits.open("c1", "A"), edits.setElementKeys("c1", { blown: "B" }));
  expect(elementsOf(done(edits.close("c1"), opened).after)["c1"]).toEqual(elementsOf(start)["c1"]);
});

test("fewer phases leave fewer to be open", () => {
  const narrow = after(edits.open("d1"), edits.setElementKeys("d1", { phases: "AB" }));
  expect(elementsOf(narrow)["d1"]).toMatchObject({ phases: "AB", open: "AB" });
});

test("points move together, on the grid, and by no minus nothing", () => {
  const moved = done(edits.movePoints(["p2", "p3"], { x: 13, y: -4 }, 20)).after;
  expect(pointsOf(moved)["p2"]).toEqual({ x: 220, y: 0 });
  expect(pointsOf(moved)["p3"]).toEqual({ x: 420, y: 0, label: "Pole 3" });
});

test("a point takes its elements with it, and the job no longer names what is gone", () => {
  const { after: left, also, label } = done(edits.removeThings({ points: ["p3", "p4", "p5"] }));
  expect(Object.keys(elementsOf(left))).toEqual(["s1", "sp1", "d1", "n1"]);
  expect(left.job).toEqual({ task: "change the cutout", workPoints: {}, steps: [] });
  expect(spell(label)).toBe("Remove things: 7");
  expect((also ?? []).map((it) => spell(it))).toEqual([
    "the work point w1 went with it",
    "steps that named what is gone were taken out: 5",
  ]);
});

test("a span takes the circuits beside it with it", () => {
  const grown = done(edits.growFrom("p6", "span", { x: 1 })).after;
  const beside = done(edits.addElement("nearby", {}, { span: "sp2" }), grown).after;
  expect(Object.keys(elementsOf(done(edits.removeThings({ elements: ["sp2"] }), beside).after))).toEqual(
    Object.keys(FILE.system.elements),
  );
});

test("a work point goes with the steps that work at it", () => {
  const { after: left } = done(edits.removeThings({ workPoints: ["w1"] }));
  expect((left.job!["steps"] as unknown[]).length).toBe(4);
});

test("what is copied is pasted under free ids, joined as it was", () => {
  const { made, after: pasted } = done(edits.duplicate({ points: ["p3", "p4", "p5"] }, { x: 200, y: 0 }));
  expect(made).toEqual(["p7", "p8", "p9", "ld2", "m2", "t2"]);
  expect(elementsOf(pasted)["t2"]).toMatchObject({ from: "p7", to: "p8" });
  expect(elementsOf(pasted)["ld2"]).toMatchObject({ at: "p9" });
  expect(pointsOf(pasted)["p7"]).toEqual({ x: 600, y: 0, label: "Pole 4" });
});

test("one device is copied with the points it lies between, a load alone stays at its point", () => {
  expect(done(edits.duplicate({ elements: ["c1"] }, { x: 0, y: 100 })).made).toEqual(["p7", "p8", "c2"]);
  const loads = elementsOf(done(edits.duplicate({ elements: ["ld1"] }, { x: 0, y: 0 })).after);
  expect(loads["ld2"]).toMatchObject({ at: "p5" });
});

test("a whole file can be pasted into an empty one and is the same drawing", () => {
  const empty = read('{"format":"stillhot","formatVersion":1,"system":{"points":{},"elements":{}}}');
  const fragment = edits.readFragment(writeDocument(start));
  if (isRefusal(fragment)) throw new Error(spell(fragment.refused));
  const { system } = done(edits.paste(fragment), empty).after;
  expect(system.elements).toEqual(start.system.elements);
});

test.each([
  ["not JSON", "hello"],
  ["a list", "[]"],
  ["no elements", '{"points": {}}'],
  ["a record that is none", '{"points": {}, "elements": {"c1": 3}}'],
  ["a prototype key", '{"points": {}, "elements": {"__proto__": {}}}'],
])("the clipboard holds %s: refused", (_what, text) => {
  expect(isRefusal(edits.readFragment(text))).toBe(true);
});

test.each([
  ["an unknown kind", '{"elements": {"c1": {"kind": "wire"}}}', /^system\.elements\.c2\.kind: found "wire"/],
  ["a bad id", '{"elements": {"-": {"kind": "lead"}}}', /^system\.elements\.-: an id is 1 to 40 letters/],
  [
    "a dangling end",
    '{"elements": {"l1": {"kind": "lead", "from": "p1", "to": "p99", "phases": "A"}}}',
    /to: found "p99"/,
  ],
])("a fragment with %s is refused by the reader", (_what, text, why) => {
  const fragment = edits.readFragment(text);
  if (isRefusal(fragment)) throw new Error(spell(fragment.refused));
  expect(refused(edits.paste(fragment))).toMatch(why);
});

test("several several are one change, and one refusal refuses all", () => {
  const both = edits.together({ key: "edit.setJob" }, [edits.open("c1"), edits.tag("c1")]);
  expect(elementsOf(done(both).after)["c1"]).toMatchObject({ open: "AB", tagged: true });
  expect(refused(edits.together({ key: "edit.setJob" }, [edits.open("c1"), edits.open("c1")]))).toBe(
    "tap cutout is already open",
  );
});

test("words, job, limits, rules and frequency are set and taken away", () => {
  const set = after(
    edits.setTitle("Willow"),
    edits.setNotes("wet ground"),
    edits.setJob({ permit: "held", tools: ["clamp-stick"] }),
    edits.setLimit("hazardVolts", 30, " wet season "),
    edits.setLimit("singleCrew", true, "one crew"),
    edits.setRule("load-break", "trained crew"),
    edits.setFrequency(50),
    edits.setScenario({ minutes: 20 }),
    edits.setWorkPoint("w1", { label: "cutout", conductors: "AB" }),
  );
  expect(set).toMatchObject({
    title: "Willow",
    notes: "wet ground",
    job: { permit: "held", workPoints: { w1: { at: "p3", conductors: "AB", label: "cutout" } } },
    settings: {
      hazardVolts: 30,
      singleCrew: true,
      reasons: { hazardVolts: "wet season", singleCrew: "one crew" },
      rules: { "load-break": { off: true, reason: "trained crew" } },
    },
    scenario: { minutes: 20 },
    system: { frequencyHz: 50 },
  });
  const unset = [
    edits.setNotes(""),
    edits.setScenario(undefined),
    edits.setRule("load-break", undefined),
    edits.setLimit("singleCrew", false),
  ].reduce((before, edit) => done(edit, before).after, set);
  expect([unset.notes, unset.scenario, unset.settings]).toEqual([
    undefined,
    undefined,
    { hazardVolts: 30, reasons: { hazardVolts: "wet season" }, rules: {} },
  ]);
  const usual = done(edits.setLimit("hazardVolts", 50), unset).after;
  expect(usual.settings).toEqual({ rules: {} });
});
