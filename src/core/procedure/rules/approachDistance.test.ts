import { expect, test } from "vitest";
import { checkRule, playedOn } from "../../../../tests/support/jobNotation";
import { french, spell } from "../../../../tests/support/words";

checkRule(
  "approach-distance",
  "1910.269(l)(3)(iii): nobody inside the minimum approach distance unless insulated, or the part is; glove class by 1910.137",
  `
  s1  source     sub    ABC kvLL=12.47
  d1  disconnect sub-p1 ABC
  sp1 span       p1-p2  ABC lengthM=60
  w1  work       p1     A
`,
  [
    ["two phases beside the work stay energized", "open d1 A; work w1", "warning w1, warning sub, note w1"],
    ["covered", "open d1 A; cover p1; cover sub; work w1", ""],
    ["covered by the thing that carries them", "open d1 A; cover sp1; cover d1; work w1", ""],
    [
      "all dead here, the other end of the open switch is not",
      "open d1 ABC; work w1",
      "warning sub, note w1",
    ],
    ["and is covered", "open d1 ABC; cover sub; work w1", ""],
    [
      "all dead here, another point of the pole is not",
      "open d1 ABC; work w1",
      "note w1",
      "d1 disconnect sub-p0 ABC\nl0 lead p0-p1 ABC",
    ],
    [
      "a lifted clamp leaves no gap of its own",
      "open k1 ABC; work w1",
      "note w1",
      "d1 none\nk1 clamp sub-p1 ABC",
    ],
    [
      "one phase grounded, the two beside it not",
      "open d1 ABC; cover sub; ground p1 A; work w1",
      "warning w1",
    ],
    ["all three grounded", "open d1 ABC; cover sub; ground p1 ABC; work w1", ""],
    [
      "those beside it grounded through the switch's other end only",
      "open d1 ABC; cover sub; ground p2 BC; ground p1 A; work w1",
      "",
    ],
    ["those beside it under cover", "open d1 ABC; cover sub; cover sp1; ground p1 A; work w1", ""],
    [
      "the cover comes off over people on the line",
      "open d1 A; cover p1; ground p1 A; work w1; uncover p1",
      "warning w1",
    ],
    [
      "a phase beside them is closed",
      "open d1 ABC; cover sub; ground p1 A; work w1; close d1 B",
      "warning w1",
    ],
    [
      "it is closed when everybody is clear",
      "open d1 ABC; cover sub; ground p1 A; work w1; all-clear; close d1 B",
      "",
    ],
    ["hot-stick work has its own distance", "open d1 A; work w1 with extending-stick", ""],
    [
      "a neighbour too near",
      "open d1 ABC; cover sub; ground p1 ABC; work w1",
      "warning n1",
      "n1 nearby span=sp1 relation=underbuild kvLL=12.47 spacingM=0.5",
    ],
    [
      "a neighbour far enough",
      "open d1 ABC; cover sub; ground p1 ABC; work w1",
      "",
      "n1 nearby span=sp1 relation=underbuild kvLL=12.47 spacingM=2",
    ],
    [
      "a neighbour under cover",
      "open d1 ABC; cover sub; ground p1 ABC; cover n1; work w1",
      "",
      "n1 nearby span=sp1 relation=underbuild kvLL=12.47 spacingM=0.5",
    ],
  ],
);

checkRule(
  "approach-distance",
  "common practice, no source: work on a device takes in all its terminals, and what hangs within arm's reach of them",
  `
  s1 source sub ABC kvLL=12.47
  main span sub-p1 ABC lengthM=2000
  c1 cutout p1-p2 A
  t1 transformer p2-p3 A connection=single kva=25 primaryKv=7.2 secondaryV=240
  sp1 span p2-p4 A
  w1 work p2 A does=c1
`,
  [
    ["the cutout's top live beside the hands", "open c1 A; work w1", "danger p1"],
    ["covered", "open c1 A; cover p1; work w1", ""],
    ["with a stick", "open c1 A; work w1 with hot-stick", ""],
    [
      "a lead is changed at the cutout's lower terminal, and the top is live across its gap",
      "open c1 A; work w1",
      "warning p1, note w1",
      "l1 lead p2-p9 A\nw1 work p2 A does=l1",
    ],
    ["covered", "open c1 A; cover p1; work w1", "", "l1 lead p2-p9 A\nw1 work p2 A does=l1"],
    [
      "a cable's ends are made up at the cutout's lower terminal: hands come to all that hangs beside them",
      "open c1 A; work w1",
      "danger p1",
      "cb1 span p2-p9 A construction=cable\nw1 work p2 A does=cb1",
    ],
    [
      "an overhead wire is dead-ended there",
      "open c1 A; work w1",
      "warning p1, note w1",
      "w1 work p2 A does=sp1",
    ],
    [
      "what the very work hangs beside a grounded phase was not there to be grounded",
      "open c1 A; cover p1; ground p2 A; work w1",
      "",
      "nb span p2-p9 B planned=true\nw1 work p2 A does=nb",
    ],
    [
      "what hung there before was",
      "open c1 A; cover p1; ground p2 A; work w1",
      "warning w1",
      "nb span p2-p9 B\nw1 work p2 A",
    ],
    [
      "a lead's length farther there is a distance to keep",
      "open c1 A; work w1",
      "note w1",
      "l1 lead p2-p9 A\nw1 work p9 A does=l1",
    ],
  ],
);

checkRule(
  "approach-distance",
  "common practice, no source: in an enclosure nothing is out of reach; a parked elbow leaves a live bushing bare, a closed one is dead-front (IEEE 386, from memory)",
  `
  s1 source sub ABC kvLL=12.47
  main span sub-a B construction=cable lengthM=500
  e1 elbow a-b B
  e2 elbow b-c B
  t1 transformer b-sb B connection=single kva=25 primaryKv=7.2 secondaryV=240
  sp1 span c-d B construction=cable lengthM=150
  a point kind=pad
  b point kind=pad
  c point kind=pad
  sb point kind=pad
  d point kind=pad
  w1 work c B
`,
  [
    ["the bushing beside the cable end bare", "open e2 B; ground c B; work w1", "danger b, note w1, note w1"],
    ["the bushing covered", "open e2 B; cover b; ground c B; work w1", "note w1, note w1"],
    ["with a stick", "open e2 B; ground c B; work w1 with hot-stick", ""],
    ["isolated one elbow farther back", "open e1 B; open e2 B; cover a; ground c B; work w1", ""],
    ["its incoming bushing is the bare one then", "open e1 B; ground c B; work w1", "danger a"],
    [
      "the cable that leaves the pad is changed: what is behind a closed elbow is not bare",
      "open e2 B; cover b; ground c B; work w1",
      "note w1",
      "w1 work c B does=sp1",
    ],
    [
      "and the bare bushing is",
      "open e2 B; ground c B; work w1",
      "danger b, note w1",
      "w1 work c B does=sp1",
    ],
    [
      "a live-front switch is bare though it is closed",
      "open e2 B; cover b; ground c B; work w1",
      "danger a, note w1",
      "e1 disconnect a-b B",
    ],
    [
      "on a pole there is room, and a distance to keep",
      "open e2 B; ground c B; work w1",
      "note w1, note w1",
      "a point kind=pole\nb point kind=pole\nc point kind=pole\nsb point kind=pole",
    ],
  ],
);

checkRule(
  "approach-distance",
  "1910.269(l)(3)(iii): a neutral that nothing holds to earth counts as energized beside the work, save where the set there ties it to its rod",
  `
  s1  source      sub    ABC kvLL=4.8 earthed=false
  m0  span        sub-p0 ABC lengthM=900 neutral=false
  d1  disconnect  p0-p1  ABC neutral=false
  sp1 span        p1-p2  ABC lengthM=60
  p1  point       earthOhms=none
  p2  point       earthOhms=none
  w1  work        p2     ABC
`,
  [
    ["the set goes to a rod alone", "open d1; ground p2 ABC to earth; work w1", "warning w1"],
    ["the set ties it to its rod", "open d1; ground p2 ABC to both; work w1", ""],
    ["the set stands elsewhere", "open d1; ground p1 ABC to both; work w1", "warning w1"],
    [
      "the set is not bonded to the pole",
      "work w1",
      "warning w1",
      "d1 disconnect p0-p1 ABC neutral=false open=ABC\n g9 ground p2 ABC to=both poleBond=false",
    ],
  ],
);

// The table gives low volts no distance: to keep "no contact at all away" is no sentence.
test("what stays live beside the work is told with a distance where there is one to keep", () => {
  const played = playedOn(
    `
    s1  source      sub    ABC kvLL=12.47
    sp0 span        sub-p1 B   lengthM=60
    c1  cutout      p1-p2  B   fuse=K10
    t1  transformer p2-q1  B   connection=single kva=25 primaryKv=7.2 secondaryV=240
    j1  lead        q1-q2  12
    c3  cutout      p1-p4  B   fuse=K10
    t2  transformer p4-q2  B   connection=single kva=25 primaryKv=7.2 secondaryV=240
    w1  work        p2     B
    `,
    "cut j1 12; open c1 B; ground p2 B; work w1",
  );
  const told = played.at(-1)!.findings.filter(({ rule }) => rule === "approach-distance");
  const [line, low] = [told.find(({ message }) => spell(message).includes("7200 V")), told.at(-1)];
  expect(spell(line!.message)).toMatch(/ keep 0\.65 m away/);
  expect(spell(low!.message)).toMatch(/240 V; .*avoid all contact$/);
  expect(spell(low!.message, french)).toMatch(/240.V.*évitez tout contact$/);
});
