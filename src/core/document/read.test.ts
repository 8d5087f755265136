import { describe, expect, test } from "vitest";
import { DEVICES } from "../devices";
import { complete, isUnreadable, readDocument, type SavedElement, writeDocument } from ".";
import type { Migration } from "./migrate";
import { spell, spellProblem } from "../../../tests/support/words";

type Loose = Record<string, unknown>;
interface LooseFile extends Loose {
  system: { points: Record<string, Loose>; elements: Record<string, Loose> } & Loose;
  job: Loose & { steps: unknown[]; workPoints: Record<string, Loose> };
}

/** A small file that is right in every part; each case of the tables breaks one thing. */
const KINDS = Object.keys(DEVICES).join(", ");

const good = (): LooseFile => ({
  format: "stillhot",
  formatVersion: 1,
  title: "Willow tap",
  system: {
    frequencyHz: 60,
    points: { p1: { x: 0, y: 0 }, p2: { x: 200, y: 0 }, p3: { x: 400, y: 0 }, p4: { x: 400, y: 200 } },
    elements: {
      s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47 },
      sp1: { kind: "span", from: "p1", to: "p2", phases: "ABC" },
      c1: { kind: "cutout", from: "p2", to: "p3", phases: "A" },
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
      ld1: { kind: "load", at: "p4", phases: "12", kw: 5, connection: "delta" },
      x1: { kind: "nearby", span: "sp1", relation: "crossing", kvLL: 34.5 },
    },
  },
  job: {
    task: "change the cutout",
    workPoints: { w1: { at: "p3", conductors: "A" } },
    tools: ["clamp-stick"],
    permit: "none",
    steps: [
      { do: "open", element: "c1", phases: "A" },
      { do: "test", at: "p3", phases: "A" },
      { do: "ground", at: "p3", phases: "A", element: "g1" },
      { do: "work", at: "w1" },
      { do: "unground", element: "g1" },
    ],
  },
});

const withFile = (change: (file: LooseFile) => void): string => {
  const file = good();
  change(file);
  return JSON.stringify(file);
};

const problemsOf = (text: string, chain?: readonly Migration[]): string[] => {
  const read = readDocument(text, chain);
  return isUnreadable(read) ? read.problems.map(spellProblem) : [];
};

test("a right file has no problems and no warnings", () => {
  const read = readDocument(JSON.stringify(good()));
  expect(isUnreadable(read) ? read.problems.map(spellProblem) : read.warnings).toEqual([]);
});

describe("text that is not JSON of this format", () => {
  const nested = (levels: number) => "[".repeat(levels) + "]".repeat(levels);
  test.each<[what: string, text: string, problem: string]>([
    ["nothing", "", "the file is empty"],
    ["spaces", " \n ", "the file is empty"],
    [
      "a truncated file",
      '{\n  "format": "still',
      "the file ends at line 2, column 19, where the closing quote of a text was expected",
    ],
    [
      "a file cut between members",
      '{"format": "stillhot",',
      "the file ends at line 1, column 23, where a key in double quotes was expected",
    ],
    [
      "a comma too many",
      '{"format": "stillhot",}',
      "line 1, column 23: found }, expected a key in double quotes",
    ],
    ["a comment", "// a drawing\n{}", "line 1, column 1: found /, expected a value"],
    ["single quotes", "{'format': 1}", "line 1, column 2: found ', expected a key in double quotes"],
    ["NaN", '{"x": NaN}', "line 1, column 7: found NaN, expected a value"],
    ["Infinity", '{"x": -Infinity}', "line 1, column 7: found -Infinity, expected a number"],
    [
      "a number too large",
      '{"system": {"x": 1e999}}',
      "system.x: line 1, column 18: found 1e999, expected a number that a computer can hold",
    ],
    ["a leading zero", '{"x": 012}', "line 1, column 8: found 12, expected a comma or }"],
    ["two values", "{} {}", "line 1, column 4: found {, expected the end of the file"],
    [
      "a line break in a text",
      '{"title": "a\nb"}',
      "title: line 1, column 13: a line break or control letter inside a text; write \\n",
    ],
    [
      "a backslash",
      '{"title": "\\q"}',
      "title: line 1, column 15: a backslash that JSON does not know inside this text",
    ],
    [
      "half a letter",
      '{"title": "\\ud83d"}',
      "title: line 1, column 19: half of a letter (a surrogate on its own) in a text",
    ],
    [
      "half a letter, raw",
      '{"title": "\ud83d"}',
      "title: line 1, column 14: half of a letter (a surrogate on its own) in a text",
    ],
    [
      "deep nesting",
      nested(100),
      "[0][0][0][0][0][0][0][0]…: line 1, column 51: more than 50 levels of objects and lists within each other",
    ],
    [
      "very deep nesting",
      "[".repeat(2_000_000),
      "[0][0][0][0][0][0][0][0]…: line 1, column 51: more than 50 levels of objects and lists within each other",
    ],
    [
      "deep objects",
      '{"a":'.repeat(1e5),
      "a.a.a.a.a.a.a.a…: line 1, column 251: more than 50 levels of objects and lists within each other",
    ],
    ["a prototype key", '{"__proto__": {"a": 1}}', "__proto__: the name __proto__ is not allowed as a key"],
    [
      "a prototype key within",
      '{"scenario": [{"constructor": 1}]}',
      "scenario[0].constructor: the name constructor is not allowed as a key",
    ],
    [
      "a prototype key in disguise",
      '{"\\u005f_proto__": 1}',
      "__proto__: the name __proto__ is not allowed as a key",
    ],
    [
      "a key twice",
      '{"format": "stillhot",\n"format": "x"}',
      "format: stands twice; the second one is at line 2, column 9",
    ],
    ["a list", "[]", 'expected a Stillhot file: an object with "format": "stillhot"'],
    ["null", "null", 'expected a Stillhot file: an object with "format": "stillhot"'],
    [
      "another format",
      '{"format": "other"}',
      'format: found "other", expected "stillhot": this is not a Stillhot file',
    ],
    ["no format", "{}", 'format: expected "stillhot": this is not a Stillhot file'],
    ["no version", '{"format": "stillhot"}', "formatVersion: expected a whole number from 1 to 1"],
    [
      "half a version",
      '{"format": "stillhot", "formatVersion": 1.5}',
      "formatVersion: found 1.5, expected a whole number from 1 to 1",
    ],
    [
      "a version as text",
      '{"format": "stillhot", "formatVersion": "1"}',
      'formatVersion: found "1", expected a whole number from 1 to 1',
    ],
    [
      "a newer version",
      '{"format": "stillhot", "formatVersion": 7}',
      "formatVersion: the file is of format version 7 and this program reads up to 1: it needs a newer Stillhot",
    ],
    [
      "too many letters",
      `"${"x".repeat(20_000_001)}"`,
      "the file has 20000003 letters; 20000000 is the most that is read",
    ],
  ])("%s", (_what, text, problem) => {
    const read = readDocument(text);
    const problems = isUnreadable(read) ? read.problems : [];
    expect(problems.map(spellProblem)).toEqual([problem]);
  });
});

describe("files that say something impossible", () => {
  const element = (id: string, key: string, value: unknown) => (file: LooseFile) =>
    void (file.system.elements[id]![key] = value);
  const add = (id: string, record: Loose) => (file: LooseFile) => void (file.system.elements[id] = record);
  const step = (record: unknown) => (file: LooseFile) => void (file.job.steps = [record]);
  const job = (key: string, value: unknown) => (file: LooseFile) => void (file.job[key] = value);
  const settings = (value: unknown) => (file: LooseFile) => void (file["settings"] = value);

  test.each<[change: (file: LooseFile) => void, problem: string]>([
    [(it) => delete (it as Loose)["system"], "system: is missing"],
    [(it) => delete (it.system as Loose)["points"], "system.points: is missing"],
    [
      (it) => void (it.system["elements"] = [] as never),
      "system.elements: found a list of 0, expected an object",
    ],
    [(it) => void (it.system["frequencyHz"] = 55), "system.frequencyHz: found 55, expected one of 50, 60"],
    [(it) => void (it["title"] = 3), "title: found 3, expected text of at most 2000 letters"],
    [(it) => void (it["notes"] = ["a"]), "notes: found a list of 1, expected text of at most 100000 letters"],
    [
      (it) => void (it.system.points["-p"] = {}),
      "system.points.-p: an id is 1 to 40 letters, digits, _ and -, and does not start with -",
    ],
    [
      (it) => void (it.system.points["a b"] = {}),
      'system.points["a b"]: an id is 1 to 40 letters, digits, _ and -, and does not start with -',
    ],
    [(it) => void (it.system.points["p9"] = 4 as never), "system.points.p9: found 4, expected an object"],
    [
      (it) => void (it.system.points["p1"]!["x"] = "0"),
      'system.points.p1.x: found "0", expected a number, -10000000 or more, at most 10000000',
    ],
    [
      (it) => void (it.system.points["p1"]!["kind"] = "tower"),
      'system.points.p1.kind: found "tower", expected one of pole, pad, station, service',
    ],
    [
      (it) => void (it.system.points["p1"]!["earthOhms"] = 0),
      "system.points.p1.earthOhms: found 0, expected a number Ω, more than 0, at most 1000000000",
    ],
    [
      (it) => void (it.system.points["p1"]!["label"] = "x".repeat(10_000_000)),
      `system.points.p1.label: found "${"x".repeat(36)}…, expected text of at most 2000 letters`,
    ],
    [element("c1", "kind", "fuse"), `system.elements.c1.kind: found "fuse", expected one of ${KINDS}`],
    [
      element("c1", "kind", "toString"),
      `system.elements.c1.kind: found "toString", expected one of ${KINDS}`,
    ],
    [element("c1", "kind", undefined), "system.elements.c1.kind: is missing"],
    [element("c1", "from", undefined), "system.elements.c1.from: is missing"],
    [
      element("c1", "from", "p9"),
      'system.elements.c1.from: found "p9", expected the id of a point of this file',
    ],
    [
      element("c1", "from", "toString"),
      'system.elements.c1.from: found "toString", expected the id of a point of this file',
    ],
    [
      element("c1", "from", 4),
      "system.elements.c1.from: found 4, expected an id of 1 to 40 letters, digits, _ and -",
    ],
    [
      element("c1", "to", "p2"),
      "system.elements.c1.to: found p2 at both to and from, expected two different points",
    ],
    [element("c1", "phases", undefined), "system.elements.c1.phases: is missing"],
    [
      element("c1", "phases", ""),
      'system.elements.c1.phases: found "", expected letters out of ABC or out of 12, in that order, each once',
    ],
    [
      element("sp1", "phases", "BAC"),
      'system.elements.sp1.phases: found "BAC", expected letters out of ABC or out of 12, in that order, each once',
    ],
    [
      element("sp1", "phases", "A1"),
      'system.elements.sp1.phases: found "A1", expected letters out of ABC or out of 12, in that order, each once',
    ],
    [
      element("c1", "open", "B"),
      'system.elements.c1.open: found "B", expected letters out of the element\'s own phases (A), or true for all of them',
    ],
    [
      element("c1", "open", 1),
      "system.elements.c1.open: found 1, expected letters out of the element's own phases (A), or true for all of them",
    ],
    [element("c1", "tagged", "yes"), 'system.elements.c1.tagged: found "yes", expected true or false'],
    [
      element("c1", "fuse", { type: "K" }),
      "system.elements.c1.fuse.amps: found null, expected a number A, more than 0, at most 1000",
    ],
    [element("s1", "kvLL", undefined), "system.elements.s1.kvLL: is missing"],
    [
      element("s1", "kvLL", -1),
      "system.elements.s1.kvLL: found -1, expected a number kV, more than 0, at most 1000",
    ],
    [
      element("s1", "z1Ohms", [0, 0]),
      "system.elements.s1.z1Ohms: found a list of 2, expected an impedance [r, x] in ohms, r not negative and not both zero",
    ],
    [
      element("sp1", "lengthM", null),
      "system.elements.sp1.lengthM: found null, expected a number m, more than 0, at most 1000000",
    ],
    [
      element("sp1", "conductor", "9 string"),
      'system.elements.sp1.conductor: found "9 string", expected a code of the conductor table (4 6/1 ACSR, 2 6/1 ACSR, 1/0 ACSR, 2/0 ACSR, 4/0 ACSR, 336.4 30/7 ACSR, 336.4 26/7 ACSR, 477 30/7 ACSR, 6 Cu, 4 Cu, 2 Cu, 1/0 Cu, 4/0 Cu, 1/0 Al)',
    ],
    [
      element("sp1", "zOhmsPerKm", [[[1, 1]]]),
      "system.elements.sp1.zOhmsPerKm: the matrix needs 4 rows and columns: the phases, then the neutral if there is one",
    ],
    [
      element("t1", "connection", "Y-Z"),
      'system.elements.t1.connection: found "Y-Z", expected one of single, Yg-Yg, Y-D, Yg-D, D-Yg, D-D, openY-openD, Yg-Y, Y-Y',
    ],
    [
      element("t1", "connection", "Yg-D"),
      "system.elements.t1.phases: a Yg-D transformer needs 3 primary phases, found A",
    ],
    [
      add("d1", { kind: "disconnect", from: "p1", to: "p2", phases: "ABC", gang: true, open: "A" }),
      "system.elements.d1.open: is a gang device open on A only; a gang device is open on all of ABC or on none",
    ],
    [
      add("v1", { kind: "transfer", from: "p1", alt: "p1", to: "p2", phases: "A" }),
      "system.elements.v1.alt: found p1 at both alt and from, expected two different points",
    ],
    [
      element("x1", "span", "c1"),
      'system.elements.x1.span: found "c1", expected the id of a span of this file',
    ],
    [
      element("x1", "span", "sp9"),
      'system.elements.x1.span: found "sp9", expected the id of a span of this file',
    ],
    [element("x1", "relation", "parallel"), "system.elements.x1.spacingM: is missing"],
    [element("ld1", "at", "p3"), "system.elements.ld1.phases: asks for 1 at p3, which has A N"],
    [
      (it) => void ((it.system.points["p9"] = {}), (it.system.elements["ld1"]!["at"] = "p9")),
      "system.elements.ld1.phases: asks for 1 at p9, which has no conductors",
    ],
    [
      add("f1", { kind: "fault", at: "p3", phases: "B" }),
      "system.elements.f1.phases: asks for B at p3, which has A N",
    ],
    [
      (it) => {
        it.system.elements["sp1"]!["neutral"] = false;
        it.system.elements["c1"]!["neutral"] = false;
        it.system.elements["g1"] = { kind: "ground", at: "p2", phases: "A" };
      },
      "system.elements.g1.to: asks for N at p2, which has A B C",
    ],
    [job("task", 4), "job.task: found 4, expected text of at most 2000 letters"],
    [job("permit", "yes"), 'job.permit: found "yes", expected one of none, requested, held, released'],
    [job("tools", "stick"), 'job.tools: found "stick", expected a list'],
    [job("tools", ["stick", 4]), "job.tools[1]: found 4, expected text of at most 100 letters"],
    [job("steps", {}), "job.steps: found an object, expected a list"],
    [job("workPoints", []), "job.workPoints: found a list of 0, expected an object"],
    [
      (it) => void (it.job.workPoints["w1"]!["at"] = "p9"),
      'job.workPoints.w1.at: found "p9", expected the id of a point of this file',
    ],
    [
      (it) => void (it.job.workPoints["w1"]!["conductors"] = "B"),
      "job.workPoints.w1.conductors: asks for B at p3, which has A N",
    ],
    [
      (it) => void (it.job.workPoints["w1"]!["conductors"] = ""),
      'job.workPoints.w1.conductors: found "", expected letters of the conductors at p3 (AN), each once',
    ],
    [
      (it) => void (it.job.workPoints["w1"]!["conductors"] = "AA"),
      'job.workPoints.w1.conductors: found "AA", expected letters of the conductors at p3 (AN), each once',
    ],
    [(it) => void delete it.job.workPoints["w1"]!["conductors"], "job.workPoints.w1.conductors: is missing"],
    [step("open"), 'job.steps[0]: found "open", expected an object'],
    [step({}), "job.steps[0].do: is missing"],
    [step({ do: "open" }), "job.steps[0].element: is missing: a step open needs element"],
    [
      step({ do: "open", element: "c9" }),
      'job.steps[0].element: found "c9", expected the id of an element of this file, or of a ground set that an earlier step puts on',
    ],
    [
      step({ do: "open", element: "c1", phases: "B" }),
      'job.steps[0].phases: found "B", expected letters out of the element\'s own phases (A), or true for all of them',
    ],
    [step({ do: "test", at: "w1" }), 'job.steps[0].at: found "w1", expected the id of a point of this file'],
    [step({ do: "test", at: "p3", phases: "C" }), "job.steps[0].phases: asks for C at p3, which has A N"],
    [
      step({ do: "work", at: "p3" }),
      'job.steps[0].at: found "p3", expected the id of a work point of this job',
    ],
    [
      step({ do: "unground", element: "g1" }),
      'job.steps[0].element: found "g1", expected the id of an element of this file, or of a ground set that an earlier step puts on',
    ],
    [
      step({ do: "ground", at: "p3", element: "c1" }),
      'job.steps[0].element: found "c1", expected the id of a ground set: c1 is another kind of element',
    ],
    [
      step({ do: "ground", at: "p3", to: "rod" }),
      'job.steps[0].to: found "rod", expected one of neutral, earth, both',
    ],
    [
      step({ do: "ground", at: "p3", cable: "9/0" }),
      'job.steps[0].cable: found "9/0", expected one of 2, 1/0, 2/0, 3/0, 4/0, 250, 350, 8, 6, 4',
    ],
    [step({ do: "wait" }), "job.steps[0].seconds: is missing: a step wait needs seconds"],
    [
      step({ do: "wait", seconds: -1 }),
      "job.steps[0].seconds: found -1, expected a number s, 0 or more, at most 1000000",
    ],
    [
      step({ do: "set-position", element: "c1", to: "up" }),
      'job.steps[0].to: found "up", expected one of utility, generator, off',
    ],
    [
      step({ do: "set-position", element: "c1" }),
      "job.steps[0].to: is missing: a step set-position needs element, to or position",
    ],
    [
      (it) => void it.job.steps.splice(2, 0, { do: "ground", at: "p3" }),
      "job.steps[3].element: a ground set g1 is on already",
    ],
    [(it) => void (it["scenario"] = "hard"), 'scenario: found "hard", expected an object'],
    [settings([]), "settings: found a list of 0, expected an object"],
    [
      settings({ hazardVolts: 0 }),
      "settings.hazardVolts: found 0, expected a number V, more than 0, at most 120",
    ],
    [
      settings({ assumedGeneratorKva: 1e-300 }),
      "settings.assumedGeneratorKva: found 1e-300, expected a number kVA, 1 or more, at most 1000000",
    ],
    [
      settings({ reasons: { hazardVolts: 3 } }),
      "settings.reasons.hazardVolts: found 3, expected text of at most 2000 letters",
    ],
    [settings({ assumeGenerators: "no" }), 'settings.assumeGenerators: found "no", expected true or false'],
    [settings({ rules: { "load-break": { off: true } } }), "settings.rules.load-break.reason: is missing"],
    [
      settings({ rules: { "load-break": { off: true, reason: " " } } }),
      'settings.rules.load-break.reason: found " ", expected a reason in words why the rule is off',
    ],
    [
      settings({ rules: { "load-break": false } }),
      "settings.rules.load-break: found false, expected an object",
    ],
  ])("%#", (change, problem) => {
    expect(problemsOf(withFile(change))).toEqual([problem]);
  });

  test("one page of problems, however many there are", () => {
    const text = withFile((it) => {
      for (let n = 0; n < 500; n++) it.system.elements[`b${n}`] = { kind: "cutout", from: "p1" };
    });
    expect(problemsOf(text).length).toBe(20);
  });
});

describe("files that are read", () => {
  const drawing = (points: Loose, elements: Loose): string =>
    JSON.stringify({ format: "stillhot", formatVersion: 1, title: "", system: { points, elements } });
  const transformer = (from: string, to: string) => ({
    kind: "transformer",
    from,
    to,
    phases: "ABC",
    connection: "D-D",
    kva: 75,
    primaryKv: 12.47,
    secondaryV: 12470,
  });

  test.each([
    ["an empty system", drawing({}, {})],
    ["a single point", drawing({ p1: {} }, {})],
    [
      "transformers in a cycle",
      drawing({ p1: {}, p2: {} }, { t1: transformer("p1", "p2"), t2: transformer("p2", "p1") }),
    ],
    [
      "ids that objects carry as methods",
      drawing(
        { toString: {}, valueOf: {} },
        { hasOwnProperty: { kind: "lead", from: "toString", to: "valueOf", phases: "A" } },
      ),
    ],
    ["a byte order mark", `\ufeff${JSON.stringify(good())}`],
    ["all phases open as true", withFile((it) => void (it.system.elements["c1"]!["open"] = true))],
    ["a test of every phase at a point", withFile((it) => void (it.job.steps = [{ do: "test", at: "p2" }]))],
    [
      "a ground put on twice, off in between",
      withFile((it) => void it.job.steps.push({ do: "ground", at: "p3", phases: "A", element: "g1" })),
    ],
    [
      "a ground set that is drawn already",
      withFile((it) => void (it.system.elements["g1"] = { kind: "ground", at: "p3", phases: "A" })),
    ],
  ])("%s", (_what, text) => {
    expect(problemsOf(text)).toEqual([]);
  });

  test("markup in a label is text and nothing else", () => {
    const label = '<img src=x onerror="alert(1)"> & {gap} \u202e';
    const read = readDocument(withFile((it) => void (it.system.points["p1"]!["label"] = label)));
    if (isUnreadable(read)) throw new Error("it is a label");
    expect((read.document.system.points as Record<string, Loose>)["p1"]!["label"]).toBe(label);
  });

  test("the frequency and the title are always there", () => {
    const read = readDocument('{"format":"stillhot","formatVersion":1,"system":{"points":{},"elements":{}}}');
    if (isUnreadable(read)) throw new Error(read.problems.map(spellProblem).join());
    expect(read.document.system.frequencyHz).toBe(60);
    expect(read.document.title).toBe("");
  });

  test("unknown keys are kept, and named once in one warning", () => {
    const text = withFile((it) => {
      it["colour"] = "red";
      it.system.points["p1"]!["height"] = 12;
      it.job["truck"] = {};
      (it.job.steps[0] as Loose)["why"] = "because";
    });
    const read = readDocument(text);
    if (isUnreadable(read)) throw new Error(read.problems.map(spellProblem).join());
    expect(read.warnings.map((it) => [it.rule, it.severity, spell(it.message)])).toEqual([
      [
        "unknown-key",
        "warning",
        "keys that this program does not know, kept as they are: system.points.p1.height, " +
          "job.truck, job.steps[0].why, colour",
      ],
    ]);
    expect(JSON.parse(writeDocument(read.document))).toEqual(JSON.parse(text));
  });
});

test("a key that only the program sets is an unknown key in a file: kept, named, and without effect", () => {
  const text = withFile((it) => {
    it.system.elements["ld1"]!["unknownKva"] = 500;
    it.system.elements["x1"]!["touching"] = true;
  });
  const read = readDocument(text);
  if (isUnreadable(read)) throw new Error(read.problems.map(spellProblem).join());
  expect(read.warnings.map((it) => [it.rule, it.where])).toEqual([
    ["unknown-key", "system.elements.ld1.unknownKva"],
  ]);
  expect(JSON.parse(writeDocument(read.document))).toEqual(JSON.parse(text));
  const elements = Object.values<SavedElement>(read.document.system.elements).map(complete);
  expect(elements.find((it) => it.kind === "load")?.unknownKva).toBe(0);
  expect(elements.find((it) => it.kind === "nearby")?.touching).toBe(false);
});

describe("older versions", () => {
  /** Invented: before version 2, points were called poles. */
  const polesToPoints: Migration = (older) => {
    const { poles, ...system } = older["system"] as Record<string, never>;
    return { ...older, system: { ...system, points: poles } };
  };
  const older = (version: number) =>
    JSON.stringify({
      format: "stillhot",
      formatVersion: version,
      title: "",
      system: { poles: { p1: {} }, elements: {} },
    });

  test("are brought up step by step, and say so", () => {
    const read = readDocument(older(1), [polesToPoints]);
    if (isUnreadable(read)) throw new Error(read.problems.map(spellProblem).join());
    expect(read.document.system.points).toEqual({ p1: {} });
    expect(read.document.formatVersion).toBe(2);
  });

  test("steps that a file does not need are left out", () => {
    expect(problemsOf(older(2), [polesToPoints])).toEqual(["system.points: is missing"]);
  });

  test("newer than the chain is refused", () => {
    expect(problemsOf(older(3), [polesToPoints])).toEqual([
      "formatVersion: the file is of format version 3 and this program reads up to 2: it needs a newer Stillhot",
    ]);
  });
});
