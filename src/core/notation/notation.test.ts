import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { randomDocument } from "../../../tests/support/randomSystems";
import { pointName, readDocument, type StillhotDocument, writeDocument } from "../document";
import { fromNotation } from "./from";
import { toNotation } from "./to";
import { spell } from "../../../tests/support/words";
import { draws } from "../../../tests/support/draws";

const read = (text: string): StillhotDocument => {
  const file = readDocument(text);
  if (!("document" in file))
    throw new Error(file.problems.map((it) => `${it.path} ${spell(it.message)}`).join());
  return file.document;
};

/** Reads a text that must be right. */
const made = (text: string, base?: StillhotDocument): StillhotDocument => {
  const result = fromNotation(text, base);
  if ("problems" in result)
    throw new Error(result.problems.map((it) => `${it.line}: ${spell(it.message)}`).join("\n"));
  return result.document;
};

const problems = (text: string): string[] => {
  const result = fromNotation(text);
  return "problems" in result ? result.problems.map((it) => `${it.line}: ${spell(it.message)}`) : [];
};

/** L1: there and back gives the same file; with the drawing it came from also what it has no words for. */
function checkRoundTrip(document: StillhotDocument) {
  const { text, unsaid } = toNotation(document);
  expect(writeDocument(made(text, document))).toBe(writeDocument(document));
  const alone = made(text);
  expect(toNotation(alone).text).toBe(text);
  if (unsaid.length === 0) expect(writeDocument(alone)).toBe(writeDocument(document));
}

const library = ["shared/demos", "shared/scenarios"].flatMap((folder) =>
  readdirSync(folder)
    .filter((it) => it.endsWith(".stillhot.json"))
    .map((it) => `${folder}/${it}`),
);

describe("L1 the notation and the drawing say the same", () => {
  test.each(library)("%s", (path) => checkRoundTrip(read(readFileSync(path, "utf8"))));

  test("random systems", () => {
    for (let seed = 1; seed <= draws(250); seed++)
      checkRoundTrip(read(JSON.stringify(randomDocument(seed, { parts: 24 }))));
  });

  test("labels, values and keys of every shape", () => {
    const odd = [
      "",
      " ",
      "A",
      "ABC",
      "seen",
      "true",
      "1",
      "1e3",
      "10K",
      "a b",
      '"',
      "\\",
      "=",
      "{",
      "]",
      "@1,2",
      "-- x",
      "é\u2028",
      "\n",
      "title x",
      "😀",
    ];
    const points: Record<string, unknown> = {};
    const elements: Record<string, unknown> = {};
    odd.forEach((word, k) => {
      points[`p${k}`] = { label: word, x: k / 3, y: -1e-7, note: word, list: [word, { [word]: word }] };
      if (k > 0)
        elements[`n${k}`] = {
          kind: "span",
          from: `p${k}`,
          to: `p${k - 1}`,
          phases: "A",
          label: word,
          conductor: "",
          seen: true,
          flag: true,
          no: false,
          nil: null,
        };
    });
    elements["c1"] = {
      kind: "cutout",
      from: "p0",
      to: "p3",
      phases: "A",
      fuse: { type: "K", amps: 12.5 },
      open: true,
    };
    elements["c2"] = { kind: "cutout", from: "p3", to: "p0", phases: "A", fuse: "solid", open: "A" };
    elements["s1"] = { kind: "source", at: "p5", phases: "ABC", kvLL: 12.47, z1Ohms: [0.1, 1] };
    for (const title of odd)
      checkRoundTrip(
        read(JSON.stringify({ format: "stillhot", formatVersion: 1, title, system: { points, elements } })),
      );
  });

  test("a line of 3 000 spans is read without deep nesting", () => {
    const text = ["p0 pole @0,0", "  s1 source ABC kvLL=12.47"];
    for (let k = 1; k <= 3000; k++) text.push(`n${k} span ABC`, `p${k} pole @${k},0`);
    const document = made(text.join("\n"));
    expect(Object.keys(document.system.elements)).toHaveLength(3001);
    checkRoundTrip(document);
  });
});

test("a tap as a person writes it", () => {
  const document = made(`
    title Mill tap
    -- the pole at the mill
    p1 station "Fernhill" @0,0
      s1 source ABC kvLL=12.47
    sp1 span ABC lengthM=80
    p2 pole "Pole 30" @120,0 earthOhms=25
      c1 cutout C "T1 cutout" fuse=10K
      p3 pole @120,60
        w1 work C "top of the cutout"
      t1 transformer C connection=single kva=25 primaryKv=7.2 secondaryV=240 told
      p4 service @120,120
        m1 meter 12
        p5 service @120,180
          ld1 load 12 kw=4 customers=1
    tie1 disconnect ABC open normallyOpen to=p1
  `);
  expect(document.system.elements["tie1" as never]).toMatchObject({ from: "p2", to: "p1", open: true });
  expect(document.system.elements["t1" as never]).toMatchObject({ from: "p3", to: "p4", evidence: "told" });
  expect(document.system.elements["ld1" as never]).toMatchObject({ at: "p5" });
  expect(document.job).toEqual({
    workPoints: { w1: { at: "p3", conductors: "C", label: "top of the cutout" } },
  });
  checkRoundTrip(document);
});

describe("a structure heads the points on it", () => {
  const TAP = `title Mill tap
hertz 60

s30: pole "Pole 30" seen
p1 "main line" earthOhms=25
  s1 source ABC kvLL=12.47
  k1 clamp C "tap clamp" condition=burned
    p2
      w1 work C
c1 cutout C fuse=10K
p3 @120,60
  :
  m1 meter 12 on=s30
    p4 service
s30:
k2 clamp C
p5 pole
  v1: vault
  sp2 span C
    p6 pad
s7: "Pole 7, not yet on the line"
`;

  test("once, with its own words, and by its id where more of it follows", () => {
    const text = TAP.replace("m1 meter 12 on=s30", "ld9 lead C on=s30");
    const document = made(text);
    expect(document.system.structures).toEqual({
      s30: { kind: "pole", label: "Pole 30", evidence: "seen" },
      s7: { label: "Pole 7, not yet on the line" },
      v1: { kind: "vault" },
    });
    const on = Object.entries(document.system.points).map(([id, it]) => [id, it["on"]]);
    expect(Object.fromEntries(on)).toEqual({
      p1: "s30",
      p2: "s30",
      p3: "s30",
      p4: undefined,
      p5: "s30",
      p6: "v1",
    });
    checkRoundTrip(document);
  });

  test("a sideline's text is shorter than with the pole's name at each point", () => {
    for (const id of ["sideline-three-transformers", "sideline-far-end-tie", "quarry-lane"]) {
      const document = read(readFileSync(`shared/demos/${id}.stillhot.json`, "utf8"));
      const { structures, points, elements, ...system } = document.system;
      const spelt = Object.entries(points).map(([point, { on: _, ...record }]) => {
        const label = spell(pointName(document, point));
        return [point, { kind: "pole", ...record, label }];
      });
      const bare = Object.entries(elements).map(([element, { on: _, ...record }]) => [element, record]);
      const before = {
        ...document,
        system: { ...system, points: Object.fromEntries(spelt), elements: Object.fromEntries(bare) },
      } as StillhotDocument;
      expect(Object.keys(structures!).length).toBeGreaterThan(4);
      expect(toNotation(document).text.length).toBeLessThan(toNotation(before).text.length);
    }
  });

  test.each([
    ["s1: pole\ns1: pad", ["2: s1 stands twice"]],
    ["s 1: pole", ["1: 1: is no kind of point, structure or element"]],
    ["s1: tower", ["1: tower is no kind of"]],
    ["s1: span", ["1: span is no kind of"]],
    ["s1: on=s2\ns2:", ["1: system.structures.s1.on: a structure is on no other one"]],
    ["__proto__: pole", ["1: __proto__ is no id"]],
  ])("%j is answered with its line", (text, [start]) => {
    const [first = ""] = problems(text);
    expect(first.slice(0, start!.length)).toBe(start);
  });
});

test.each([
  ["s1 source ABC kvLL=12", ["1: s1 has no point above it"]],
  ["p1 pole\n  c1 cutout A", ["2: c1 has no far end: a point below it, or to=POINT"]],
  ["p1 pole\np1 pole", ["2: p1 stands twice"]],
  ['p1 pole "no end', ["1: a text or list that begins here has no end"]],
  ["p1 tower", ["1: tower is no kind of point, structure or element"]],
  ["p1 pole x=1 x=2", ["1: x=2 means nothing here, or stands twice"]],
  ["p 1 pole", ["1: 1 is no kind of point, structure or element"]],
  ["__proto__ pole", ["1: __proto__ is no id: 1 to 40 letters, digits, _ and -"]],
  ["p1 pole __proto__=1", ["1: __proto__=1 means nothing here, or stands twice"]],
  ["hertz 55\np1 pole", ["0: system.frequencyHz: found 55, expected one of 50, 60"]],
  ["p1 pole\n  c1 cutout A to=p9", [/^2: system\.elements\.c1\.to: /]],
  ["p1 pole\n  ld1 load A kw=x", [/^2: system\.elements\.ld1\.kw: /]],
])("%j is answered with its line", (text, wanted) => {
  const found = problems(text);
  expect(found.length).toBeGreaterThan(0);
  wanted.forEach((it, k) =>
    typeof it === "string" ? expect(found[k]).toBe(it) : expect(found[k]).toMatch(it),
  );
});

test("L2 what it has no words for is named, and stays when the text is read back into its drawing", () => {
  const document = read(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      title: "x",
      notes: "n",
      system: { points: { p1: { "odd key": 1 } }, elements: {} },
      job: { tools: ["cover"], steps: [{ do: "brief" }] },
      settings: { bodyOhms: 500 },
      later: true,
    }),
  );
  expect(toNotation(document).unsaid.map((it) => spell(it))).toEqual([
    "notes",
    "settings",
    "job.tools",
    "job.steps",
    "later",
    "p1: odd key",
  ]);
  checkRoundTrip(document);
});

test("any text is read or refused, never thrown at", () => {
  let seed = 7;
  const next = (below: number) => (seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0) % below;
  const words = [
    "p1",
    "p2",
    "pole",
    "span",
    "ABC",
    '"x',
    "{",
    "}",
    "to=p1",
    "open",
    "=",
    "@1,2",
    "@e,e",
    "\n",
    "  ",
    "nearby",
    "work",
    "title",
    "transfer",
    "alt=p2",
    "s1:",
    ":",
    "s2: vault",
  ];
  for (let k = 0; k < 3000; k++) {
    const text = Array.from({ length: next(30) }, () => words[next(words.length)]).join(" ");
    const result = fromNotation(text);
    if ("document" in result) checkRoundTrip(result.document);
  }
});
