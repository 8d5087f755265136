import { expect, test } from "vitest";
import { STEP_VERBS } from "../steps";
import { jobOf, readDocument, type Step, type StillhotDocument } from "../document";
import { planDocument } from "../procedure";
import { inARow, say } from "../terms";
import { briefingOf } from "./briefing";
import { sheetHtml } from "./sheetHtml";
import { stepSeen, stepSentence } from "../procedure";
import { demoDrawings } from "../../../tests/support/demoDrawings";
import { draw } from "../../../tests/support/jobNotation";
import { sampled } from "../../../tests/support/long";
import { english, french, spell } from "../../../tests/support/words";

const demos = new Map(demoDrawings().map(([name, it]) => [name.replace(".stillhot.json", ""), it]));
const demo = (id: string): StillhotDocument => demos.get(id)!;
/** A demo with its planned order, worked out once: what was found of it is remembered for that very drawing. */
const plannedDemos = new Map<string, StillhotDocument>();
function planned(id: string): StillhotDocument {
  const known = plannedDemos.get(id) ?? planDocument(demo(id));
  plannedDemos.set(id, known);
  return known;
}
const DEMOS = [...demos.keys()];
const changed = (document: StillhotDocument, change: object): StillhotDocument => ({
  ...document,
  ...change,
});

/** The page as a person reads it. */
const textOf = (html: string): string =>
  html
    .replace(/<style>.*?<\/style>/gs, "")
    .replace(/<svg.*?<\/svg>/gs, "")
    .replace(/<[^>]*>/g, " ")
    .replace(/&quot;|&#39;/g, "'")
    .replace(/\s+/g, " ");

const PARTS = [
  "As drawn, now",
  "Hazards",
  "Work procedures",
  "Special precautions",
  "Energy-source controls",
  "Protective equipment",
  "Not seen by anybody",
  "Steps to the work",
  "Crew",
  "A sketch is not the pole.",
];

test.each(sampled(DEMOS, 3))("%s: every part stands on the sheet, in order, with no gap left open", (id) => {
  const text = textOf(sheetHtml(planned(id), { catalogue: english }));
  const places = PARTS.map((it) => text.indexOf(it));
  expect(places).toEqual([...places].sort((a, b) => a - b));
  expect(places).not.toContain(-1);
  expect(text).not.toMatch(/.{20}(?:\{\w+\}|undefined|NaN|Infinity|\[object|\bsafe\b).{0,20}/i);
});

test("B1 the page needs nothing else: no script, no link, no picture or font from elsewhere", () => {
  const html = sheetHtml(demo("quarry-lane"), { catalogue: english });
  expect(html).not.toMatch(
    /<script|<link|<img|@import|@font-face|url\(|\bon\w+=|https?:\/\/(?!www\.w3\.org\/2000\/svg)/i,
  );
});

test("B1 labels, reasons and tasks are text, never markup", () => {
  const evil = `<img src=x onerror="alert(1)">&"'`;
  const document = demo("quarry-lane");
  const { system, job } = document as unknown as {
    system: { elements: Record<string, object>; points: Record<string, object> };
    job: object;
  };
  const hostile = changed(document, {
    title: evil,
    system: {
      ...system,
      elements: { ...system.elements, c1: { ...system.elements["c1"], label: evil } },
      points: { ...system.points, p1b: { ...system.points["p1b"], label: evil } },
    },
    job: { ...job, task: evil, workPoints: { w1: { at: "p1b", conductors: "A", label: evil } } },
    settings: { rules: { "load-break": { off: true, reason: evil } } },
  });
  const html = sheetHtml(hostile, { catalogue: english, fingerprint: evil, drawnAt: evil });
  expect(html).not.toContain("<img");
  expect(html).toContain("&lt;img src=x onerror=&quot;alert(1)&quot;&gt;&amp;&quot;&#39;");
});

test("the verdict is told as drawn and as it stands when work begins", () => {
  const [work] = briefingOf(demo("quarry-lane")).works;
  expect(work).toMatchObject({
    asDrawn: { verdict: "live" },
    atWork: { n: 16, report: { verdict: "grounded" } },
  });
  const [unplanned] = briefingOf(demo("transformer-tap")).works;
  expect(unplanned).toMatchObject({ asDrawn: { verdict: "live" }, atWork: undefined });
});

test("B2 each way to go live has its control, and one without says so", () => {
  const { works } = briefingOf(demo("quarry-lane"));
  const controls = works[0]!.ways.map(({ control }) => spell(control));
  expect(controls).toContain("tag and block on Pole Q1, tap clamp and the grounds");
  const bare = briefingOf(demo("transformer-tap")).works[0]!.ways;
  expect(bare.map(({ control, isOpen }) => [spell(control), isOpen])).toEqual([
    ["NO CONTROL on this drawing", true],
  ]);
});

// ANSI C84.1, range A at medium voltage: 97.5 to 105 % of 7200 V.
test.each([
  ["en", english, "By the map 7018 to 7561 V; felt:"],
  ["fr", french, "Selon le plan 7018 à 7561 V ; ressenti :"],
])("each way to go live carries what the map's numbers allow of it (%s)", (_, catalogue, wanted) => {
  const document = draw(`
    s1  source p1    ABC kvLL=12.47 z1Ohms=[0,0.9] z0Ohms=[0,0.9]
    c1  cutout p1-p2 A   open=A
    g1  ground p2    A   cable=4/0
    w1  work   p2    A
  `);
  const told = textOf(sheetHtml(document, { catalogue }));
  expect(told).toContain(wanted);
  const seen = {
    ...document,
    system: {
      ...document.system,
      elements: Object.fromEntries(
        Object.entries(document.system.elements).map(([id, it]) => [id, { ...it, evidence: "seen" }]),
      ),
    },
  };
  expect(textOf(sheetHtml(seen as StillhotDocument, { catalogue }))).not.toContain(wanted.slice(0, 20));
});

test("generators that nobody drew are one way, with whose they could be", () => {
  const ways = briefingOf(planned("transformer-tap")).works[0]!.ways;
  const told = ways.map(({ sentences }) => spell(sentences[0]!));
  expect(told.filter((it) => it.includes("a generator that nobody drew"))).toEqual([
    expect.stringMatching(
      /^If a generator that nobody drew starts at 1 Alder Court, house at 1 or 3 Alder Court, house at 3, that generator feeds B at up to \d+ V\.$/,
    ),
  ]);
});

test("people stop before operating, feeding the rest, testing, grounding, hands on and energizing, once for each run of them", () => {
  const { steps, restoring } = briefingOf(planned("quarry-lane"));
  expect([...steps, ...restoring].flatMap(({ hold }) => hold ?? [])).toEqual([
    "operate",
    "energize",
    "test",
    "ground",
    "work",
    // the clamp, and, once the tie is open again, the cutout
    "energize",
    "energize",
  ]);
  expect(steps.at(-1)!.hold).toBe("work");
});

test("what the rules still find stands on the sheet, and so do limits and rules that are not the usual ones", () => {
  const document = demo("quarry-lane");
  const { job } = document as unknown as { job: { steps: Step[] } };
  const spoiled = changed(document, {
    job: { ...job, steps: job.steps.filter(({ do: verb }) => verb !== "check-detector") },
    settings: {
      exposureLimitVolts: 30,
      singleCrew: true,
      reasons: { singleCrew: "a crew of two" },
      rules: { "customers-out": { off: true, reason: "told by radio" } },
    },
  });
  const text = textOf(sheetHtml(spoiled, { catalogue: english }));
  expect(text).toMatch(
    /What the rules still find in this order (danger|warning), step \d+: the detector is not proven/,
  );
  expect(text).toContain("Exposure limit: 30 V (usual 50 V), because ______");
  expect(text).toMatch(/may leave out .*: On \(usual Off\), because: a crew of two/);
  expect(text).toContain("Who loses supply is said (customers-out): told by radio");
  expect(textOf(sheetHtml(document, { catalogue: english }))).not.toContain("What the rules still find");
});

test("a file without steps, without a work point, or without anything still has its sheet", () => {
  const empty = readDocument('{"format":"stillhot","formatVersion":1,"system":{"points":{},"elements":{}}}');
  if (!("document" in empty)) throw new Error("not read");
  const text = textOf(sheetHtml(empty.document, { catalogue: english }));
  expect(text).toContain("No work point is marked on this drawing.");
  expect(text).toContain("NO ORDER OF STEPS is in this file.");
  expect(text).toContain("Drawing without a title");
});

test.each(STEP_VERBS)("the step %s is an act and what is seen of it", (verb) => {
  const document = demo("quarry-lane");
  const step = {
    do: verb,
    element: "c1",
    at: verb === "work" ? "w1" : "p1b",
    phases: "A",
    with: "own tool",
    to: "neutral",
    position: "off",
    seconds: 5,
    text: "words",
  } as Step;
  for (const it of [
    stepSentence(document, step),
    stepSentence(document, { do: verb } as Step),
    stepSeen(document, step),
  ])
    expect(spell(it)).not.toMatch(/[{}]|undefined/);
});

test("each column of the steps has its heading, over both columns of the page, spoken once", () => {
  const headings = (options: object) => {
    const html = sheetHtml(planned("quarry-lane"), { catalogue: english, ...options });
    const [, heads = ""] = /<div class="heads">(.*?)<\/div><\/div>/s.exec(html) ?? [];
    return heads.split('aria-hidden="true"').map(textOf);
  };
  const columns = /No\..*Do, and say what you see.*Time.*Init\./s;
  const [spoken, silent, ...more] = headings({});
  expect([spoken, silent].every((it) => columns.test(it ?? ""))).toBe(true);
  expect(more).toEqual([]);
  expect(headings({ largePrint: true })).toHaveLength(1);
});

test("large print is one column in larger letters", () => {
  const usual = sheetHtml(demo("quarry-lane"), { catalogue: english });
  const large = sheetHtml(demo("quarry-lane"), { catalogue: english, largePrint: true });
  expect(usual).toContain("font: 10pt/");
  expect(large).toContain("font: 13.5pt/");
  expect(large).toContain(".flow { columns: 1;");
});

test.each(DEMOS)("the letters and lines of %s keep their size however much it holds", (id) => {
  const html = sheetHtml(demo(id), { catalogue: english });
  const svg =
    /<figure><svg [^>]*viewBox="[-\d.]+ [-\d.]+ ([\d.]+) ([\d.]+)" width="([\d.]+)" height="([\d.]+)"/.exec(
      html,
    )!;
  const [width, height, shownWidth, shownHeight] = svg.slice(1).map(Number) as [
    number,
    number,
    number,
    number,
  ];
  expect([shownWidth, shownHeight]).toEqual([width, height]);
  expect(width).toBeLessThanOrEqual(630);
  expect(height).toBeLessThanOrEqual(390);
});

test.each([
  [1, "0"],
  [2, "0 or 1"],
  [5, "0, 1, 2, 3 or 4"],
])("a row of %i things is one sentence", (count, expected) => {
  const row = inARow(
    Array.from({ length: count }, (_, text) => say("say.text", { text })),
    "row.or",
  );
  expect(spell(row)).toBe(expected);
});

test("a row of a hundred thousand things is spelled", () => {
  const tool = say("say.text", { text: "rope" });
  expect(spell(inARow(Array.from({ length: 100_000 }, () => tool)))).toMatch(
    /^(rope, ){99998}rope and rope$/,
  );
});

test("a label that turns the writing around turns no sentence of the sheet and no text of the drawing", () => {
  const tap = demo("transformer-tap");
  const points = Object.fromEntries(
    Object.entries(tap.system.points).map(([id, it]) => [id, { ...it, label: "\u202edelbaf\u2066" }]),
  );
  const html = sheetHtml(changed(tap, { title: "\u202et", system: { ...tap.system, points } }), {
    catalogue: english,
  });
  expect(html).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/);
  expect(textOf(html)).toContain("\\u202edelbaf\\u2066");
});

test("a drawing of thousands of placed points is lines alone from afar, those that look alike one path", () => {
  const spans = Array.from({ length: 1200 }, (_, k) => k);
  const points = Object.fromEntries([...spans, 1200].map((k) => [`p${k}`, { x: 100 * k, y: 0 }]));
  const lines = spans.map((k) => [
    `l${k}`,
    {
      kind: k === 600 ? "disconnect" : "span",
      phases: "A",
      from: `p${k}`,
      to: `p${k + 1}`,
      ...(k === 600 ? { open: "A" } : {}),
    },
  ]);
  const system = { frequencyHz: 60, points, elements: Object.fromEntries(lines) };
  const read = readDocument(JSON.stringify({ format: "stillhot", formatVersion: 1, title: "long", system }));
  if (!("document" in read)) throw new Error("does not read");
  const [svg] = /<figure><svg.*?<\/svg>/s.exec(sheetHtml(read.document, { catalogue: english }))!;
  expect(svg.match(/<(?:path|polyline|polygon|rect|circle|text) /g)!.length).toBeLessThan(20);
  expect(svg).toMatch(/<path d="M[^"]*M/);
  // What is open is told from afar too, and is all that is written there.
  expect(svg.match(/<text /g)).toHaveLength(1);
});

test("a permit that the order asks for, since what it opens feeds a line, is not denied by the sheet", () => {
  const planned = planDocument(
    draw(`
      s1 source sub ABC kvLL=12.47
      m0 span sub-p0 ABC lengthM=1500
      c1 cutout p0-p1 A fuse=K40
      q1 span p1-p2 A lengthM=120
      x2 cutout p2-p3 A fuse=K10
      t2 transformer p3-p4 A connection=single kva=25 primaryKv=7.2 secondaryV=240
      q2 span p2-p5 A lengthM=90
      x5 cutout p5-p6 A fuse=K10
      t5 transformer p6-p7 A connection=single kva=25 primaryKv=7.2 secondaryV=240
      w1 work p5 A`),
  );
  expect(jobOf(planned).steps.map((it) => it.do)).toContain("request-permit");
  const text = textOf(sheetHtml(planned, { catalogue: english }));
  expect(text).not.toContain("Nothing on this drawing asks for a permit");
  expect(text).toContain("A permit is asked for: the section has 2 transformers");
});
