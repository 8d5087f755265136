import { expect, test } from "vitest";
import { BANKED, draw, parseSteps, playAll, TAP } from "../../../../tests/support/jobNotation";
import { spell } from "../../../../tests/support/words";
import { isHarm, isHit } from "./consequence";

/** 12.47 kV between phases, to the neutral [V]. */
const TO_NEUTRAL = 12470 / Math.sqrt(3);

const BANK = `
  s1 source     sub    ABC kvLL=12.47
  d1 disconnect sub-p1 ABC gang=true
  sp1 span      p1-p2  ABC lengthM=300
  cb capacitor  p2     ABC kvar=300 kvLL=12.47
  w1 work       p2     A
`;
const TWO_SOURCES = `
  s1 source     a   ABC kvLL=12.47 z1Ohms=[0,1] z0Ohms=[0,1]
  sp1 span      a-c ABC lengthM=1
  sp2 span      b-d ABC lengthM=1
  t1 disconnect c-d ABC gang=true open=ABC
`;
/** A tap behind three ohms, whose cutout holds a blade that no fault melts. */
const STIFF_TAP = `
  ${TAP}
  s1   source sub    ABC kvLL=12.47 z1Ohms=[0,3] z0Ohms=[0,3]
  main span   sub-p1 ABC lengthM=1
  c1   cutout p2-p3  A   fuse=solid
`;
/** Two supplies behind an ohm each: what stands between them drives itself through two. */
const apart = (degrees: number) =>
  `${TWO_SOURCES}\ns2 source b ABC kvLL=12.47 z1Ohms=[0,1] z0Ohms=[0,1] angleDeg=${degrees}`;
/** 300 kvar at 7.2 kV to the neutral: C = Q/ωV², which holds ½CV² [J]. */
const joulesOf300kvar = (volts: number) =>
  (0.5 * 300_000 * volts ** 2) / (2 * Math.PI * 60 * TO_NEUTRAL ** 2);
/** After a minute of the five in which its resistor brings it from the crest to 50 V (IEEE Std 18). */
const AFTER_A_MINUTE = 50 * ((Math.SQRT2 * TO_NEUTRAL) / 50) ** 0.8;

/** A line behind three ohms of which phase A lies on the ground at its first pole. */
const PARTED = `
  s1  source     a   ABC kvLL=12.47 z1Ohms=[0,3] z0Ohms=[0,3]
  sp1 span       a-b ABC lengthM=10 parted=A
  d1  disconnect b-c ABC gang=true
  w1  work       b   A   does=sp1
`;

interface Wanted {
  readonly kind: "arc" | "fault" | "shock" | "none";
  readonly amps: number;
  readonly volts: number;
  readonly text: RegExp;
}

// Amperes and volts worked out by hand from what is drawn; the lines and transformers between take a few percent.
const cases: readonly (readonly [why: string, drawing: string, steps: string, wanted: Wanted])[] = [
  [
    "8 kW at 7.2 kV is broken by an open gap",
    TAP,
    "open c1",
    {
      kind: "none",
      amps: 8 / 7.2,
      volts: TO_NEUTRAL,
      text: /^cutout at pole with tap clamp breaks 1\.11 A by an open gap/,
    },
  ],
  [
    "the same where a gap may break nothing",
    `${TAP}\nset openWithoutLoadBreakAmps=0`,
    "open c1",
    {
      kind: "arc",
      amps: 8 / 7.2,
      volts: TO_NEUTRAL,
      text: /^1\.11 A is drawn out .* A, which may break 0 A; 7200 V/,
    },
  ],
  [
    "as much as it may break is no arc",
    `${TAP}\nset openWithoutLoadBreakAmps=1.2`,
    "open c1",
    { kind: "none", amps: 8 / 7.2, volts: TO_NEUTRAL, text: /which has no rating|may break/ },
  ],
  [
    "opened with nothing through it",
    TAP,
    "open c1 A with load-break-tool; open c2",
    {
      kind: "none",
      amps: 0,
      volts: 0,
      text: /^cutout at pole with transformer opens with no current through it$/,
    },
  ],
  [
    // Half of the 83 A of the house come by each of two like transformers; all of it through one is 0.4 of its amperes,
    // which drop 0.4 of its 2.2 % of 120 V.
    "what goes another way is told with its amperes, and nothing is broken",
    BANKED,
    "cut j1 12 method gloves gloveClass 0",
    {
      kind: "none",
      amps: 0,
      volts: 1.06,
      text: /^lead .* opens with 4\d(\.\d)? A through it, which goes another way/,
    },
  ],
  [
    "half a percent of 50 kVA on a leg of 120 V goes out by itself",
    BANKED,
    "open x1 B with load-break-tool; cut j1 12 method gloves gloveClass 0",
    { kind: "none", amps: 0, volts: 119, text: /^lead .* opens with 1\.04 A through it: at 120 V/ },
  ],
  [
    "a leg is called one",
    `${BANKED}\nx2 cutout p0-p2 B open=B`,
    "cut j1 12 method gloves gloveClass 0",
    {
      kind: "arc",
      amps: 82,
      volts: 119,
      text: /A is drawn out as an arc at lead .* leg 1, which may break 0\.5 A/,
    },
  ],
  [
    // A bank of two units holds B backwards from A, and a failed arrester at it: the fault is what is closed onto.
    "a phase that comes back through a bank and is held down by a failed arrester: the fault alone is told",
    `
      s1 source      sub   ABC kvLL=12.47 z1Ohms=[0,3] z0Ohms=[0,3]
      c1 cutout      sub-p1 AB fuse=K30 open=B
      la arrester    p1    AB  failed=B
      bk transformer p1-p2 AB  connection=openY-openD kva=50 primaryKv=12.47 secondaryV=240
      ld load        p2    ABC connection=delta kw=18
    `,
    "close c1 B",
    { kind: "fault", amps: 2400, volts: TO_NEUTRAL, text: /^cutout .* closes onto arrester/ },
  ],
  [
    "a ground set that a machine feeds already: what is closed onto it is told",
    `${STIFF_TAP}\ng9 generator p5 A kva=20 volts=12470 on=true\nc2 cutout p4-p5 A fuse=K10`,
    "open c1; ground p3 A as g1; close c1",
    { kind: "fault", amps: 2400, volts: TO_NEUTRAL, text: /^cutout .* closes onto ground set/ },
  ],
  [
    "a clamp lifted under load",
    TAP,
    "lift k1 with clamp-stick",
    {
      kind: "arc",
      amps: 8 / 7.2,
      volts: TO_NEUTRAL,
      text: /^1\.11 A is drawn out as an arc at tap clamp A, which may break 0\.5 A/,
    },
  ],
  [
    "a clamp put on with load beyond it",
    TAP,
    "open c1; lift k1; close c1; attach k1",
    {
      kind: "arc",
      amps: 8 / 7.2,
      volts: TO_NEUTRAL,
      text: /^the jaw of tap clamp makes 1\.11 A with 7200 V across the gap/,
    },
  ],
  [
    "with no more than a clamp may break",
    `${TAP}\nset clampBreakAmps=1.2`,
    "open c1; lift k1; close c1; attach k1",
    { kind: "none", amps: 8 / 7.2, volts: 0, text: /^tap clamp closes and carries 1\.11 A$/ },
  ],
  [
    "a cutout that makes the load is made for it",
    TAP,
    "open c1; close c1",
    {
      kind: "none",
      amps: 8 / 7.2,
      volts: 0,
      text: /^cutout at pole with tap clamp closes and carries 1\.11 A$/,
    },
  ],
  [
    "a clamp put on with nothing beyond it",
    TAP,
    "open c1; lift k1; attach k1",
    { kind: "none", amps: 0, volts: 0, text: /^tap clamp closes with no current through it$/ },
  ],
  [
    "a test of what is live",
    TAP,
    "check-detector; test p3 A",
    { kind: "none", amps: 0, volts: TO_NEUTRAL, text: /phase A shows voltage: 7198 V$/ },
  ],
  [
    "a test of what is dead",
    TAP,
    "open c1; check-detector; test p3 A",
    { kind: "none", amps: 0, volts: 0, text: /phase A shows no voltage$/ },
  ],
  [
    "a note",
    TAP,
    "note",
    { kind: "none", amps: 0, volts: 0, text: /^nothing happens that anyone could see$/ },
  ],
  [
    "what cannot be done",
    TAP,
    "close c1",
    { kind: "none", amps: 0, volts: 0, text: /^cutout at pole with tap clamp is closed already/ },
  ],
  [
    "hands on a live line: a thousand ohms of body",
    TAP,
    "work w1",
    {
      kind: "shock",
      amps: TO_NEUTRAL / 1000,
      volts: TO_NEUTRAL,
      text: /at 7200 V: 7200 mA through 1000 Ω of body/,
    },
  ],
  [
    "five hundred ohms of body",
    `${TAP}\nset bodyOhms=500`,
    "work w1",
    {
      kind: "shock",
      amps: TO_NEUTRAL / 500,
      volts: TO_NEUTRAL,
      text: /14399 mA through 500 Ω of body|14400 mA/,
    },
  ],
  [
    "worked with sticks",
    TAP,
    "work w1 method=sticks",
    { kind: "none", amps: 0, volts: 0, text: /^nothing happens/ },
  ],
  [
    "a line that comes alive under the hands",
    `${TAP}\nw1 work p4 A`,
    "open c1; work w1; close c1",
    {
      kind: "shock",
      amps: TO_NEUTRAL / 1000,
      volts: TO_NEUTRAL,
      text: /^hands are on pole with transformer, line at 7200 V/,
    },
  ],
  [
    "one that comes alive once they are gone",
    `${TAP}\nw1 work p4 A`,
    "open c1; work w1; all-clear; close c1",
    { kind: "none", amps: 8 / 7.2, volts: 0, text: /closes and carries 1\.11 A$/ },
  ],
  [
    "a service cut by bare hands",
    TAP,
    "pull m1",
    { kind: "shock", amps: 0.12, volts: 120, text: /^hands are on .* legs 1 2 at 121 V: 121 mA/ },
  ],
  [
    "a bank of capacitors grounded after a minute",
    BANK,
    "open d1; wait 60; ground p2 ABC",
    {
      kind: "arc",
      amps: 0,
      volts: AFTER_A_MINUTE,
      text: new RegExp(
        `^capacitor still holds ${AFTER_A_MINUTE.toFixed(0)} V and lets go ${joulesOf300kvar(AFTER_A_MINUTE).toFixed(1)} J`,
      ),
    },
  ],
  [
    "hands on it after a minute",
    BANK,
    "open d1; wait 60; work w1",
    {
      kind: "shock",
      amps: AFTER_A_MINUTE / 1000,
      volts: AFTER_A_MINUTE,
      text: /^capacitor still holds 3516 V/,
    },
  ],
  [
    "hands on it after five minutes, with nothing that shorted it",
    BANK,
    "open d1; wait 300; work w1",
    { kind: "shock", amps: 0.05, volts: 50, text: /^capacitor still holds 50 V and lets go 0\.0192 J/ },
  ],
  [
    "hands on it after an hour",
    BANK,
    "open d1; wait 3600; work w1",
    { kind: "none", amps: 0, volts: 0, text: /^nothing happens/ },
  ],
  [
    "grounded after five minutes",
    BANK,
    "open d1; wait 300; ground p2 ABC",
    { kind: "none", amps: 0, volts: 0, text: /^nothing happens/ },
  ],
  [
    "shorted by the set at its pole, whatever other sets stand elsewhere",
    `${BANK}\nd2 disconnect p2-p9 ABC gang=true`,
    "open d1; open d2; wait 300; ground p9 ABC; ground p2 ABC; work w1",
    { kind: "none", amps: 0, volts: 0, text: /^nothing happens/ },
  ],
  [
    "a set elsewhere shorts nothing of it",
    `${BANK}\nd2 disconnect p2-p9 ABC gang=true`,
    "open d1; open d2; wait 300; ground p9 ABC; work w1",
    { kind: "shock", amps: 0.05, volts: 50, text: /^capacitor still holds 50 V/ },
  ],
  [
    "a set at its pole shorts nothing behind its own open switch",
    BANK,
    "open cb; open d1; wait 300; ground p2 ABC as g1; unground g1; close cb; work w1",
    { kind: "shock", amps: 0.05, volts: 50, text: /^capacitor still holds 50 V/ },
  ],
  [
    "a detector on it after a minute, where a work point is called as its pole is",
    `${BANK}\np2 work p2 A`,
    "open d1; wait 60; check-detector; test p2 A",
    { kind: "none", amps: 0, volts: 0, text: /phase A shows no voltage$/ },
  ],
  [
    "worked with sticks after a minute",
    BANK,
    "open d1; wait 60; work w1 method=sticks",
    { kind: "none", amps: 0, volts: 0, text: /^nothing happens/ },
  ],
  [
    "the larger charge of two is told",
    `${BANK}\nc2 capacitor p2 ABC kvar=900 kvLL=24.94`,
    "open d1; wait 60; ground p2 ABC",
    {
      kind: "arc",
      amps: 0,
      volts: 50 * ((Math.SQRT2 * 24940) / Math.sqrt(3) / 50) ** 0.8,
      text: /^1st capacitor at pole with capacitor still holds 6122 V and lets go 216 J/,
    },
  ],
  [
    "a ground put onto the live line, of a source of three ohms",
    `${STIFF_TAP}\nc1 cutout p2-p3 A fuse=K25`,
    "ground p3 A",
    {
      kind: "fault",
      amps: TO_NEUTRAL / 3,
      volts: TO_NEUTRAL,
      text: /^the ground goes onto .* phase A at 7199 V: 2399 A flows .* 25K link .* melts within half a cycle$/,
    },
  ],
  [
    "a ground put onto two voltages: the higher one is told",
    "s1 source a A kvLL=12.47 z1Ohms=[0,3] z0Ohms=[0,3]\ns2 source a B kvLL=4.16 z1Ohms=[0,3] z0Ohms=[0,3]",
    "ground a AB",
    { kind: "fault", amps: TO_NEUTRAL / 3, volts: TO_NEUTRAL, text: /^the ground goes onto .* at 7200 V/ },
  ],
  [
    "a ground taken off while a solid blade feeds it",
    STIFF_TAP,
    "open c1; ground p3 A as g1; close c1; unground g1",
    {
      kind: "arc",
      amps: TO_NEUTRAL / 3,
      volts: TO_NEUTRAL,
      text: /^the ground comes off pole with tap clamp, below the cutout, phase A with 2399 A in it: .* 7199 V stands/,
    },
  ],
  [
    "closed onto 7.2 kV through a hundred ohms",
    `${TAP}\nf1 fault p5 A ohms=100`,
    "open c2; close c2",
    {
      kind: "fault",
      amps: 71,
      volts: TO_NEUTRAL,
      text: /^cutout at pole with transformer closes onto fault at pole with transformer: 7\d(\.\d)? A flows; the 10K link/,
    },
  ],
  [
    "closed onto the crew's own ground",
    STIFF_TAP,
    "open c1; ground p3 A; close c1",
    {
      kind: "fault",
      amps: TO_NEUTRAL / 3,
      volts: TO_NEUTRAL,
      text: /^cutout at pole with tap clamp closes onto ground set at pole with tap clamp: 2399 A flows; no link/,
    },
  ],
  [
    "a ground taken off a dead line",
    TAP,
    "open c1; ground p3 A as g1; unground g1",
    { kind: "none", amps: 0, volts: 0, text: /^nothing happens/ },
  ],
  [
    "what hangs beside the fault is no fault",
    `${TAP}\nf1 fault p5 A ohms=100\nlx load p5 A connection=wye kw=1`,
    "open c2; close c2",
    { kind: "fault", amps: 71, volts: TO_NEUTRAL, text: /closes onto fault at pole with transformer: 7\d/ },
  ],
  [
    "one pole of three closed onto a set on all three",
    `s1 source a ABC kvLL=12.47 z1Ohms=[0,3] z0Ohms=[0,3]\nd1 disconnect a-b ABC open=ABC\ng1 ground b ABC`,
    "close d1 A",
    {
      kind: "fault",
      amps: TO_NEUTRAL / 3,
      volts: TO_NEUTRAL,
      text: /^disconnect at pole without a number closes onto ground set/,
    },
  ],
  [
    "a clamp lifted with exciting current alone",
    `${TAP}\nld1 none\nm1 none`,
    "lift k1",
    {
      kind: "none",
      amps: 0.0162,
      volts: TO_NEUTRAL,
      text: /breaks 0\.0162 A by a clamp, which may break 0\.5 A$/,
    },
  ],
  [
    "what cannot be done puts no hands on anything",
    TAP,
    "pull m1 with rubber-gloves; pull m1",
    { kind: "none", amps: 0, volts: 0, text: /^meter from .* is open already on 12$/ },
  ],
  [
    "a service at 121 V where the company calls less than 150 V no shock",
    `${TAP}\nset exposureLimitVolts=150`,
    "pull m1",
    { kind: "arc", amps: 33, volts: 120, text: /^33\.2 A is drawn out as an arc/ },
  ],
  [
    "nothing is drawn out of a dead line, even by what may break nothing",
    `${TAP}\nset openWithoutLoadBreakAmps=0`,
    "lift k1 with clamp-stick; open c1",
    { kind: "none", amps: 0, volts: 0, text: /^cutout .* opens with no current through it$/ },
  ],
  [
    "the charge of sixty metres of line is nothing that anybody could see, even by what may break nothing",
    `${TAP}\nset openWithoutLoadBreakAmps=0`,
    "open c2 A with load-break-tool; open c1",
    { kind: "none", amps: 0, volts: 0, text: /^cutout .* opens with no current through it$/ },
  ],
  [
    "two faults beyond it: what closes carries both",
    `${STIFF_TAP}\nf1 fault p5 A ohms=100\nf2 fault p5 A ohms=100`,
    "open c2; close c2",
    {
      kind: "fault",
      amps: TO_NEUTRAL / Math.hypot(50, 3),
      volts: TO_NEUTRAL,
      text: /closes onto 1st fault .*; 2nd fault .*: 14\d A flows/,
    },
  ],
  [
    "a ground set that the step leaves on is not told as taken off",
    STIFF_TAP,
    "open c1; ground p3 A as g1; close c1; tag g1",
    { kind: "none", amps: 0, volts: 0, text: /^nothing happens/ },
  ],
  [
    "a parted phase that is spliced, with sticks, onto the crew's own ground",
    PARTED,
    "open d1; ground b A as g1; work w1 method=sticks",
    {
      kind: "fault",
      amps: TO_NEUTRAL / 3,
      volts: TO_NEUTRAL,
      text: /^span .* closes onto ground set .*: 2\d{3} A flows; no link/,
    },
  ],
  [
    "the same onto a fault beyond it",
    `${PARTED}\nf1 fault c A`,
    "work w1 method=sticks",
    {
      kind: "fault",
      amps: TO_NEUTRAL / 3,
      volts: TO_NEUTRAL,
      text: /^span .* closes onto fault .*: 2\d{3} A flows/,
    },
  ],
  [
    "one that is spliced before anything feeds it",
    `${PARTED}\ns1 source a ABC kvLL=12.47 on=false`,
    "open d1; ground b A as g1; work w1 method=sticks",
    { kind: "none", amps: 0, volts: 0, text: /^nothing happens/ },
  ],
  ["a tag", TAP, "open c1; tag c1", { kind: "none", amps: 0, volts: 0, text: /^nothing happens/ }],
  [
    "a splice, with sticks, between two phases of a third of a turn: 2 · 7200 V · sin 60° over 3 Ω + 3 Ω",
    `
    s1  source a   A kvLL=12.47 z1Ohms=[0,3] z0Ohms=[0,3]
    sp1 span   a-b A lengthM=1 parted=A
    s2  source b   A kvLL=12.47 z1Ohms=[0,3] z0Ohms=[0,3] angleDeg=-120
    w1  work   a   A does=sp1
  `,
    "work w1 method=sticks",
    {
      kind: "fault",
      amps: (TO_NEUTRAL * Math.sin(Math.PI / 3)) / 3,
      volts: 2 * TO_NEUTRAL * Math.sin(Math.PI / 3),
      text: /^span .* joins two supplies 120° and 12470 V apart: 20\d\d A flows/,
    },
  ],
  [
    "two supplies 30° apart: 2 · 7200 V · sin 15°",
    apart(30),
    "close t1",
    {
      kind: "fault",
      amps: TO_NEUTRAL * Math.sin(Math.PI / 12),
      volts: 2 * TO_NEUTRAL * Math.sin(Math.PI / 12),
      text: /^disconnect joins two supplies 30° and 3727 V apart: 1862 A flows/,
    },
  ],
  [
    "15° apart they are joined",
    apart(15),
    "close t1",
    {
      kind: "none",
      amps: TO_NEUTRAL * Math.sin(Math.PI / 24),
      volts: 0,
      text: /^disconnect closes and carries 939 A$/,
    },
  ],
];

test.each(cases)("%s", (_why, drawing, steps, wanted) => {
  const { consequence } = playAll(draw(drawing), parseSteps(steps, [])).at(-1)!;
  const { kind, amps, volts, text } = consequence;
  expect(spell(text)).toMatch(wanted.text);
  expect(kind).toBe(wanted.kind);
  expect(amps).toBeGreaterThanOrEqual(0.98 * wanted.amps);
  expect(amps).toBeLessThanOrEqual(1.02 * wanted.amps);
  expect(Math.abs(volts - wanted.volts)).toBeLessThanOrEqual(0.02 * wanted.volts + 0.1);
});

test.each([
  ["a ground set", TAP, "open c1; ground p3 A as g1; close c1", /ground set/i, /fault (on|at)/i],
  [
    "a fault",
    `${TAP}\nc1 cutout p2-p3 A fuse=solid open=A\nf1 fault p3 A`,
    "close c1",
    /fault/i,
    /ground set/i,
  ],
])("what is closed onto %s says so by its name", (_why, drawing, steps, told, not) => {
  const { consequence } = playAll(draw(drawing), parseSteps(steps, [])).at(-1)!;
  expect(consequence.kind).toBe("fault");
  expect(spell(consequence.text)).toMatch(told);
  expect(spell(consequence.text)).not.toMatch(not);
});

test.each([
  ["an arc", "arc", true, false],
  ["a fault", "fault", true, true],
  ["a shock", "shock", true, true],
  ["what went well", "none", false, false],
] as const)("%s: whether it did harm, and whether it hit", (_why, kind, harms, hits) => {
  expect(isHarm({ kind })).toBe(harms);
  expect(isHit({ kind })).toBe(hits);
});

test("a step that was not played did no harm and hit nobody", () => {
  expect(isHarm(undefined)).toBe(false);
  expect(isHit(undefined)).toBe(false);
});

/** What the last of some steps brings about. */
const kindOf = (drawing: string, steps: string) =>
  playAll(draw(drawing), parseSteps(steps, [])).at(-1)!.consequence;

// A limit is the most that is allowed for what may break, and where a shock begins for what is felt (docs/format.md, settings).
test.each([
  ["the gap of a cutout", "openWithoutLoadBreakAmps", "open c1", "none"],
  ["a clamp that is lifted", "clampBreakAmps", "lift k1", "none"],
  ["a clamp that is put on", "clampBreakAmps", "open c1; lift k1; close c1; attach k1", "none"],
])("just what is allowed is no arc: %s", (_why, setting, steps, kind) => {
  const under = (limit: number) => kindOf(`${TAP}\nset ${setting}=${limit}`, steps);
  const { amps } = under(0);
  expect(amps).toBeGreaterThan(1);
  expect(under(amps).kind).toBe(kind);
  expect(under(0.999 * amps).kind).toBe("arc");
});

test.each([
  ["hands at work on a service", "work w1"],
  ["a service pulled by hand", "pull m1"],
])("just the limit of what may be felt is a shock: %s", (_why, steps) => {
  const under = (limit: number) =>
    kindOf(`${TAP}\nw1 work h1 12\nset exposureLimitVolts=${limit}`, steps).kind;
  const { volts } = kindOf(`${TAP}\nw1 work h1 12`, steps);
  expect(under(volts)).toBe("shock");
  expect(under(1.001 * volts)).not.toBe("shock");
});
