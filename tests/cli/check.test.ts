import { expect, test } from "vitest";
import { drawing, files, groundedTap, line, openedTap, tap } from "./line";

const file = files({
  "live.json": tap(),
  "opened.json": openedTap(),
  "grounded.json": groundedTap(),
  "drawing.json": drawing(),
  "empty.json": { format: "stillhot", formatVersion: 1, system: { points: {}, elements: {} } },
  "newer.json": tap({}, { weather: "rain" }),
  "bad.json": tap({ c1: { kind: "cutout", phases: "A", from: "p9", to: "p2" } }),
  "hostile.json": tap({
    c1: { kind: "cutout", phases: "A", from: "p1", to: "p2", label: "\u001b[2J\u202e\nGROUNDED" },
  }),
});

const json = async (...names: string[]) => {
  const { code, out, err } = await line(["check", ...names.map(file), "--json"]);
  return {
    code,
    err,
    answers: out
      .trimEnd()
      .split("\n")
      .filter(Boolean)
      .map((it) => JSON.parse(it)),
  };
};

/** [file, exit code, verdict of w1, its margin, rules of the findings] */
test.each([
  ["live.json", 1, "live", 0, ["equipotential"]],
  ["opened.json", 1, "could-go-live", 1, ["equipotential"]],
  ["grounded.json", 0, "grounded", 1, []],
  ["drawing.json", 0, undefined, undefined, []],
  ["empty.json", 0, undefined, undefined, []],
  ["newer.json", 1, "live", 0, ["unknown-key", "equipotential"]],
])("C2 check --json %s: exit code %i, %s, margin %s", async (name, code, verdict, margin, rules) => {
  const { answers, ...got } = await json(name);
  const [answer] = answers;
  expect(got).toEqual({ code, err: "" });
  expect(answers).toHaveLength(1);
  expect(Object.keys(answer).slice(0, 2)).toEqual(["file", "ok"]);
  expect(answer.file).toBe(file(name));
  expect(answer.ok).toBe(code === 0);
  expect(answer.workPoints.w1?.verdict).toBe(verdict);
  expect(answer.workPoints.w1?.margin).toBe(margin);
  const worth = answer.findings.filter((it: { severity: string }) => it.severity !== "note");
  expect(worth.map((it: { rule: string }) => it.rule)).toEqual(rules);
});

test("the JSON has the keys of the published format", async () => {
  const [answer] = (await json("opened.json")).answers;
  expect(Object.keys(answer)).toEqual([
    "file",
    "ok",
    "structures",
    "conductors",
    "elements",
    "workPoints",
    "findings",
  ]);
  expect(answer.structures["p1"]).toMatchObject({
    points: expect.arrayContaining(["p1"]),
    state: "energized",
  });
  expect(answer.conductors["p1/A"]).toMatchObject({ state: "energized", sources: ["s1"] });
  expect(answer.conductors["p1/A"].volts).toBeCloseTo(7199.6, 0);
  expect(Object.keys(answer.conductors["p1/A"])).toEqual(
    expect.arrayContaining(["state", "volts", "voltsLoadsOff", "angleDeg", "sources"]),
  );
  expect(answer.elements.ld1).toEqual({ amps: expect.any(Object), angleDeg: expect.any(Object) });
  const [threat] = answer.workPoints.w1.threats;
  expect(threat).toMatchObject({
    conductor: "A",
    source: "s1",
    strength: 1,
    upsets: [{ kind: "close", element: "c1", phase: "A" }],
    path: ["s1", "c1"],
  });
  for (const key of [
    "volts",
    "exposureVolts",
    "exposureToEarthVolts",
    "bodyMilliamps",
    "groundAmps",
    "clearingLimitVolts",
  ])
    expect(threat[key], key).toEqual(expect.any(Number));
  expect(answer.findings[0]).toEqual({
    rule: "equipotential",
    severity: "warning",
    where: "w1",
    message: expect.any(String),
    help: expect.any(String),
    citation: expect.any(String),
  });
});

test("C1 of several files a bad one goes to standard error, the others are answered, exit code 2", async () => {
  const { code, err, answers } = await json("live.json", "bad.json", "grounded.json");
  expect(code).toBe(2);
  expect(answers.map((it) => it.file)).toEqual([file("live.json"), file("grounded.json")]);
  expect(err).toBe(
    `${file("bad.json")}: not used, 1 problem\n  system.elements.c1.from: found "p9", expected the id of a point of this file\n`,
  );
});

test("a bad file alone leaves standard output empty", async () => {
  const { code, out } = await line(["check", file("bad.json")]);
  expect({ code, out }).toEqual({ code: 2, out: "" });
});

test("an opened tap, told to a person", async () => {
  const { code, out, err } = await line(["check", file("opened.json")]);
  expect({ code, err }).toEqual({ code: 1, err: "" });
  expect(out.replaceAll(file("opened.json"), "opened.json")).toMatchSnapshot();
});

test("a grounded tap, told to a person", async () => {
  const { code, out } = await line(["check", file("grounded.json")]);
  expect(code).toBe(0);
  expect(out.replaceAll(file("grounded.json"), "grounded.json")).toMatchSnapshot();
});

test("--all lists every conductor", async () => {
  const { out } = await line(["check", "--all", file("live.json")]);
  const told = ["above the Tap cutout, A", "above the Tap cutout, B", "below the Tap cutout, A"];
  for (const place of [...told, ...["1", "2", "N"].map((it) => `low side of the transformer, ${it}`)])
    expect(out).toContain(`  pole without a number, ${place} `);
});

test("C3 no text calls anything safe, and every text ends with the cautions", async () => {
  for (const name of ["live.json", "opened.json", "grounded.json", "drawing.json", "empty.json"]) {
    const { out } = await line(["check", "--all", file(name)]);
    expect(out).not.toMatch(/\bsafe/i);
    expect(out.trimEnd().split("\n").at(-1)).toMatch(/sketch is not the pole/i);
  }
});

test("C4 a label cannot move the cursor or write a verdict of its own", async () => {
  const { out } = await line(["check", "--all", file("hostile.json")]);
  // eslint-disable-next-line no-control-regex -- exactly these must not come through
  expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/);
  expect(out).not.toMatch(/^GROUNDED/m);
});

test("a test done without naming phases is of every phase, as in a rehearsal", async () => {
  const { job, ...rest } = groundedTap() as unknown as { job: { steps: { do: string; phases?: string }[] } };
  const steps = job.steps.map(({ phases: _, ...it }) => it);
  const { out } = await line([
    "check",
    "--json",
    files({ "a.json": { ...rest, job: { ...job, steps } } })("a.json"),
  ]);
  expect(JSON.parse(out).workPoints.w1.verdict).toBe("grounded");
  const elsewhere = steps.map((it) => (it.do === "test" ? { ...it, at: "p1" } : it));
  const other = files({ "b.json": { ...rest, job: { ...job, steps: elsewhere } } })("b.json");
  expect(JSON.parse((await line(["check", "--json", other])).out).workPoints.w1.verdict).toBe("isolated");
});

test("twenty thousand customers at one point are answered, and fill no memory", async () => {
  const loads = Object.fromEntries(
    Array.from({ length: 20_000 }, (_, k) => [
      `n${k}`,
      { kind: "load", phases: "12", at: "p3", kw: 1, customers: 1 },
    ]),
  );
  const many = files({ "many.json": tap(loads) })("many.json");
  const { code, out } = await line(["check", "--json", many]);
  expect({ code, verdict: JSON.parse(out).workPoints.w1.verdict }).toEqual({ code: 1, verdict: "live" });
});

test("a rule of no known id that is turned off is named, with the one that was meant", async () => {
  const off = (rules: object) => ({ ...openedTap(), settings: { rules } });
  const at = files({
    "near.json": off({ "brief-frist": { off: true, reason: "typed" } }),
    "far.json": off({ zzzzzzzz: { off: true, reason: "typed" }, "tag-each": { off: true, reason: "meant" } }),
  });
  for (const [name, where, words] of [
    ["near.json", "settings.rules.brief-frist", /no rule is called brief-frist.*did you mean brief-first\?/],
    [
      "far.json",
      "settings.rules.zzzzzzzz",
      /no rule is called zzzzzzzz, so turning it off turns nothing off$/,
    ],
  ] as const) {
    const { out, code } = await line(["validate", at(name), "--json"]);
    const { findings } = JSON.parse(out) as { findings: { rule: string; where: string; message: string }[] };
    expect(code).toBe(1);
    expect(findings).toEqual([expect.objectContaining({ rule: "unknown-rule", severity: "warning", where })]);
    expect(findings[0]!.message).toMatch(words);
  }
});

test("D17 what was seen longer ago than the company's rule lets it count is counted as not seen", async () => {
  const seen = (seenDays: number, seenOn: string) => {
    const drawn = tap();
    const { points, elements } = drawn.system;
    const structures = { pole1: { label: "Pole 1", evidence: "seen", seenOn } };
    const onIt = Object.fromEntries(Object.keys(points).map((id) => [id, { on: "pole1" }]));
    return { ...drawn, settings: { seenDays }, system: { structures, points: onIt, elements } };
  };
  const called = files({
    "long-ago.json": seen(30, "2001-01-01"),
    "always.json": seen(0, "2001-01-01"),
    "today.json": seen(30, new Date().toISOString().slice(0, 10)),
  });
  const { out, err } = await line([
    "check",
    ...["always.json", "today.json", "long-ago.json"].map(called),
    "--json",
  ]);
  expect(err).toBe("");
  const [always, today, longAgo] = out
    .trimEnd()
    .split("\n")
    .map((it) => JSON.parse(it).workPoints.w1.assumptions as number);
  expect([always, today]).toEqual([0, 0]);
  expect(longAgo).toBeGreaterThan(3);
});

test("of a live work point without an order, what to look at first is told by the order that would be proposed", async () => {
  const { out } = await line(["check", file("live.json")]);
  expect(out).toContain("Look first, before an order of steps such as the command plan would propose");
  const [answer] = (await json("live.json")).answers;
  expect(answer.workPoints.w1.lookFirst).toEqual([]);
  expect(answer.workPoints.w1.lookFirstProposed[0].doubt).toBe("second-transformer");
  expect(answer.workPoints.w1.lookFirstProposedAsked.singles).toBeGreaterThan(0);
});

test("each way to go live has the range of its volts where numbers from the map are off", async () => {
  for (const name of ["live.json", "opened.json", "grounded.json"]) {
    const [answer] = (await json(name)).answers;
    const { threats } = answer.workPoints.w1;
    expect(threats.length).toBeGreaterThan(0);
    for (const { volts, exposureVolts, range } of threats) {
      expect(range.volts.drawn).toBe(volts);
      expect(range.exposureVolts.drawn).toBe(exposureVolts);
      expect(range.volts.least).toBeLessThan(volts);
      expect(range.volts.most).toBeGreaterThan(volts);
    }
  }
});

test("of a point that is not live, and of which all was seen, nothing is said to depend on how it is taken out", async () => {
  const { points, elements } = openedTap().system;
  const seen = {
    ...openedTap(),
    system: {
      structures: { pole1: { label: "Pole 1", evidence: "seen" } },
      points: Object.fromEntries(Object.keys(points).map((id) => [id, { on: "pole1" }])),
      elements,
    },
  };
  const { out } = await line(["check", files({ "seen.json": seen })("seen.json")]);
  expect(out).toContain("COULD GO LIVE");
  expect(out).not.toContain("how the work point is taken out");
});
