import { expect, test } from "vitest";
import { checkRule, draw, parseSteps, playAll, TAP } from "../../../../tests/support/jobNotation";
import { spell } from "../../../../tests/support/words";

checkRule(
  "pick-up-order",
  "common practice: the clamp goes on with the cutout open, and the cutout picks up the load",
  TAP,
  [
    ["the clamp makes the load", "lift k1; attach k1", "danger k1"],
    ["the cutout is open", "open c1; lift k1; attach k1", ""],
    ["then the cutout picks it up", "open c1; lift k1; attach k1; close c1", ""],
    ["no load, and the inrush of a bank", "pull m1; lift k1; attach k1", "danger k1"],
    ["onto a dead line", "lift k1; attach k1", "", "s1 source sub ABC kvLL=12.47 on=false"],
  ],
);

checkRule(
  "pick-up-order",
  "common practice, no source: a meter's jaws are contacts and no switch; the main is open when it goes in",
  `${TAP}
  m1 meter p6-h1 12 open=12
  mn main  h1-h2 12
  ld1 load h2 12 connection=delta kw=8 customers=3
  h2 point kind=service
`,
  [
    ["the meter makes the load", "replace m1 method gloves gloveClass 00", "danger m1"],
    ["the main picks it up", "open mn; replace m1 method gloves gloveClass 00", ""],
    ["onto a dead service", "open c2 A; replace m1", ""],
    [
      "a house whose main nobody drew is told to have it off",
      "replace m1 method gloves gloveClass 00",
      "note m1",
      "mn none\n ld1 load h1 12 connection=delta kw=8 customers=3",
    ],
    [
      "nothing on in the house",
      "replace m1 method gloves gloveClass 00",
      "",
      "mn none\n ld1 load h1 12 connection=delta kw=0 customers=3",
    ],
  ],
);

checkRule(
  "pick-up-order",
  "common practice, no source: a connector that is made up in the hand is no switch either",
  `${TAP}
  lx lead p6-p7 12 cut=1
  m1 meter p7-h1 12
  mn main  h1-h2 12
  ld1 load h2 12 connection=wye kw=8 customers=3
  h2 point kind=service
`,
  [
    ["the leg is remade with the house on it", "join lx 1 method gloves gloveClass 00", "danger lx"],
    ["the main is open", "open mn; join lx 1 method gloves gloveClass 00", ""],
    ["on a dead service", "open c2 A; join lx 1", ""],
    [
      "a house whose main nobody drew is told to have it off",
      "join lx 1 method gloves gloveClass 00",
      "note lx",
      "mn none\nld1 load h1 12 connection=wye kw=8 customers=3",
    ],
    [
      "a path beside it carries the load already",
      "join lx 1 method gloves gloveClass 00",
      "",
      "ly lead p6-p7 12",
    ],
    [
      "a jumper at line voltage",
      "join j1 A method sticks",
      "danger j1",
      "sp1 none\nsp0 span p3-p33 A lengthM=60\nj1 lead p33-p4 A cut=A",
    ],
    [
      "a jumper that energizes a transformer with nothing on it",
      "open mn; join j1 A method sticks",
      "danger j1",
      "sp1 none\nsp0 span p3-p33 A lengthM=60\nj1 lead p33-p4 A cut=A",
    ],
    [
      "a jumper with the transformer's cutout open beyond it",
      "open c2 A; join j1 A method sticks",
      "",
      "sp1 none\nsp0 span p3-p33 A lengthM=60\nj1 lead p33-p4 A cut=A",
    ],
  ],
);

checkRule(
  "pick-up-order",
  "common practice, no source: a transformer is energized from its own side before its legs meet a live street",
  `${TAP}
  t1 transformer p5-p8 A connection=single kva=25 primaryKv=7.2 secondaryV=240
  j1 lead        p8-p6 12 cut=12
  x2 cutout      p4-p9 A fuse=K10
  t2 transformer p9-p6 A connection=single kva=25 primaryKv=7.2 secondaryV=240
`,
  [
    ["its cutout is open", "open c2 A; join j1 12 method gloves gloveClass 0", "danger j1"],
    ["its cutout was closed first", "join j1 12 method gloves gloveClass 0", ""],
    ["the street is dead too", "open c2 A; open x2 A; join j1 12", ""],
    // Nothing is energized backwards by it: the house is all it makes.
    [
      "a transformer that feeds the house by its legs",
      "join j1 12 method gloves gloveClass 0",
      "note j1",
      "x2 none\nt2 none",
    ],
  ],
);

checkRule(
  "pick-up-order",
  "common practice, no source: a blade that nothing rates for load goes in before what is made to pick it up",
  `
  s1  source      sub   ABC kvLL=12.47
  d1  disconnect  sub-p1 ABC
  r1  recloser    p1-p2 ABC
  sp  span        p2-p3 ABC lengthM=400
  by  disconnect  p1-p2 ABC open=ABC
  ld  load        p3    ABC connection=wye kw=200
`,
  [
    ["the blade last", "open r1; open d1; close r1; close d1", "note d1"],
    ["the recloser last", "open r1; open d1; close d1; close r1", ""],
    [
      "rated for load",
      "open r1; open d1; close r1; close d1",
      "",
      "d1 disconnect sub-p1 ABC loadBreakAmps=600",
    ],
    ["one pole of it", "open r1; open d1; close r1; close d1 A", "note d1"],
    ["a path beside it carries the load already", "close by", ""],
    ["charging current of the line alone", "open r1; open d1; close r1; close d1", "", "ld none"],
    [
      "a line that nothing feeds",
      "open r1; open d1; close r1; close d1",
      "",
      "s1 source sub ABC kvLL=12.47 on=false",
    ],
    [
      "a regulator, of which no drawing says what its switches make",
      "open r1; open d1; close r1; close d1",
      "",
      "d1 regulator sub-p1 ABC",
    ],
    [
      "a dead-break elbow",
      "open r1; open e1; close r1; close e1",
      "danger e1",
      "d1 none\n e1 elbow sub-p1 ABC loadBreakAmps=0",
    ],
  ],
);

test("a bank that its legs energize is told with the volts behind its own open cutout", () => {
  // The legs of 208 V beside it give nine tenths on phase C; A and B of the bank stand at the line's 7.2 kV.
  const played = playAll(
    draw(`
      s1 source      p0    ABC kvLL=12.47
      x1 cutout      p0-p1 ABC fuse=K40 open=C
      t1 transformer p1-q1 ABC connection=Yg-Yg kva=75 primaryKv=12.47 secondaryV=208
      j1 lead        q1-q  C   cut=C
      x2 cutout      p0-p2 C   fuse=K40
      t2 transformer p2-q  C   connection=single secondary=two-wire kva=25 primaryKv=7.2 secondaryV=108
      w1 work        p1    C
    `),
    parseSteps("join j1 C method gloves gloveClass 0", []),
  );
  const told = played.at(-1)!.findings.find(({ rule }) => rule === "pick-up-order")!;
  const volts = Number(/([\d.]+) V/.exec(spell(told.message).replace(/[\s,](?=\d{3})/g, ""))?.[1]);
  expect(volts).toBeGreaterThan(6400);
  expect(volts).toBeLessThan(6600);
});
