import { type EverydayJob, PERMIT, RELEASE } from "./everydayJob";

/** Banks of transformers: what ties phases together, and what customers keep behind them. */
export const BANK_JOBS: readonly EverydayJob[] = [
  {
    job: "change a unit of an open-delta bank that a farm with a generator hangs on",
    practice:
      "A drawn generator asks for a permit. Both cutouts open under load with the load-break tool, the farm's meter pulled " +
      "once it carries nothing, everything tagged; both sides tested and grounded, since the farm's machine could feed the " +
      "bank backwards. The machine is the customer's: nobody of the crew starts it.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p2   AB   fuse=K15
      t1    transformer  p3-p4   AB   connection=openY-openD kva=50 primaryKv=12.47 secondaryV=240 midTap=ab
      sp1   span         p2-p3   AB   lengthM=60
      m1    meter        p4-h1   ABC
      ld1   load         h1      ABC  connection=delta kw=15 customers=1
      gx    generator    h1      ABC  kva=30 volts=240
      h1    point        kind=service
      w1    work         p3      AB   does=t1`,
    order: `
      ${PERMIT}; barricade p3
      open c1 A with load-break-tool; open c1 B with load-break-tool; tag c1
      pull m1; tag m1
      check-detector; test p3 AB; test p4 ABC; check-detector
      ground p3 AB cable 2/0 as g1; ground p4 ABC cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      untag m1; replace m1; untag c1
      stand-clear; close c1 A; stand-clear; close c1 B
      test h1 ABC expect live`,
    mistakes: [
      [
        "the secondary neither grounded nor cut off",
        "- pull m1 | - tag m1 | - untag m1 | - replace m1 | - ground p4 ABC cable 2/0 as g2 | - unground g2 first phase",
        "danger secondary-backfeed @ work w1",
      ],
      [
        "only one of the two poles opened",
        "- open c1 B with load-break-tool",
        "danger ground-on-live @ ground p3 AB cable 2/0 as g1",
      ],
      [
        "the farm's machine started by the crew",
        "test h1 ABC expect live => start gx",
        "danger customers-machine @ start gx",
      ],
      [
        "closed with the bank's primary still grounded",
        "- unground g1 first phase",
        "danger grounds-left @ close c1 A",
      ],
      [
        "the tag off before the permit is released",
        "- untag c1 | all-clear; unground g2 first phase => untag c1; all-clear; unground g2 first phase",
        "danger release-order @ untag c1",
      ],
    ],
  },
  {
    job: "a pump's floating wye-delta bank with one link blown by an arrester",
    practice:
      "The motor has been single-phasing: it goes off first, at its own main. Then the two whole poles, tag, test and ground " +
      "all three, since a floating bank gives each phase back to the others. The arrester is replaced, the link renewed, all " +
      "three poles closed with nothing on the bank, and only then the motor.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p2   ABC  fuse=K15 blown=B
      sp1   span         p2-p3   ABC  lengthM=50
      la1   arrester     p3      B    failed=B
      t1    transformer  p3-p4   ABC  connection=Y-D kva=75 primaryKv=12.47 secondaryV=480 neutral=false
      m1    meter        p4-h1   ABC
      mn1   main         h1-h2   ABC
      ld1   load         h2      ABC  connection=delta kw=40 customers=1
      h1    point        kind=service
      h2    point        kind=service
      w1    work         p3      ABC  does=la1`,
    order: `
      brief; barricade p3
      open mn1
      open c1 AC with load-break-tool; tag c1; tag mn1; block mn1
      secure la1
      check-detector; test p3 ABC; test p4 ABC; check-detector
      ground p3 ABC cable 2/0 as g1; ground p4 ABC to earth cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      all-clear; confirm
      refuse c1 B; untag c1
      stand-clear; close c1 A; stand-clear; close c1 B; stand-clear; close c1 C
      test p4 ABC expect live
      unblock mn1; untag mn1; close mn1`,
    mistakes: [
      [
        "a new link, and closed again, before anybody looked for the cause",
        "open mn1 => refuse c1 B; close c1 B; open mn1",
        "danger onto-fault @ close c1 B",
      ],
      [
        "the motor left on while the missing phase comes back",
        "- open mn1 | - tag mn1 | - block mn1 | - unblock mn1 | - untag mn1 | - close mn1",
        "warning single-phasing @ close c1 A",
      ],
      [
        "two poles closed and the third link left blown",
        "- refuse c1 B | - close c1 B",
        "danger phase-missing @ end",
      ],
      [
        "two phases tested, three grounded",
        "test p3 ABC => test p3 AC",
        "danger test-before-ground @ ground p3 ABC cable 2/0 as g1",
      ],
      [
        "the detector not proven",
        "check-detector; test p3 ABC => test p3 ABC",
        "danger detector-check @ test p3 ABC",
      ],
    ],
  },
  {
    job: "change one of two transformers that are banked on one secondary",
    practice:
      "The cutout opens under load: the other transformer carries on, so its gap stands at a few volts. Its secondary leads are " +
      "cut in gloves, since they are live from the other one, and with that nobody is out. Both sides tested and grounded. " +
      "Energized again by the cutout, its volts and phasing are tested before its leads are joined.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      sp1   span         p1-p5   A    lengthM=80
      c1    cutout       p1-p2   A    fuse=K10
      sq1   span         p2-p3   A    lengthM=30
      t1    transformer  p3-p4   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      l1    lead         p4-s4   12
      sv    span         s4-s7   12   construction=secondary lengthM=40
      c2    cutout       p5-p6   A    fuse=K10
      t2    transformer  p6-s7   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      m1    meter        s4-h1   12
      m2    meter        s7-h2   12
      ld1   load         h1      12   connection=delta kw=6 customers=2
      ld2   load         h2      12   connection=delta kw=6 customers=2
      h1    point        kind=service
      h2    point        kind=service
      w1    work         p3      A    does=t1`,
    order: `
      ${PERMIT}; barricade p3
      open c1 A with load-break-tool; tag c1
      ask; cut l1 12 with lead-cutters method gloves gloveClass 0; tag l1
      cover s4
      check-detector; test p3 A; test p4 12; check-detector
      ground p3 A cable 2/0 as g1; ground p4 12 cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      uncover s4
      untag c1; stand-clear; close c1 A
      test p4 12 expect live; test s4 12 expect live
      untag l1; join l1 12 method gloves gloveClass 0`,
    mistakes: [
      [
        "the secondary leads left joined: the other transformer feeds it backwards",
        "- cut l1 12 with lead-cutters method gloves gloveClass 0 | - tag l1 | - untag l1 | - join l1 12 method gloves gloveClass 0",
        "danger ground-on-live @ ground p3 A cable 2/0 as g1",
      ],
      [
        "live leads cut with bare hands",
        "cut l1 12 with lead-cutters method gloves gloveClass 0 => cut l1 12 with lead-cutters",
        "danger hands-on-live @ cut l1 12 with lead-cutters",
      ],
      [
        "joined in parallel without a test of phasing and volts",
        "- test p4 12 expect live | - test s4 12 expect live",
        "warning phase-check @ join l1 12 method gloves gloveClass 0",
      ],
      ["no tag on the cutout", "- tag c1 | - untag c1", "danger tag-each @ test p3 A"],
      [
        "closed onto the ground on the primary",
        "- unground g1 first phase",
        "danger grounds-left @ close c1 A",
      ],
    ],
  },
  {
    job: "change an ungrounded three-phase pad on a long cable",
    practice:
      "Single poles are not opened on an unloaded delta bank behind cable: it rings up. A gang switch ahead of the riser drops " +
      "the bank at once; then the riser's cutouts are opened dead and tagged, the customers' meter is pulled.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p0  ABC  lengthM=2000
      sw1   disconnect   p0-p1   ABC  gang=true loadBreakAmps=600
      sp0   span         p1-p2   ABC  lengthM=60
      c1    cutout       p2-p3   ABC  fuse=K25
      cb1   span         p3-d1   ABC  construction=cable lengthM=400
      t1    transformer  d1-d2   ABC  connection=D-Yg kva=300 primaryKv=12.47 secondaryV=480 neutral=false
      m1    meter        d2-h1   ABC
      ld1   load         h1      ABC  connection=wye kw=12 customers=1
      d1    point        kind=pad
      d2    point        kind=pad
      h1    point        kind=service
      w1    work         d1      ABC  does=t1`,
    order: `
      ${PERMIT}; barricade d1
      open sw1; tag sw1; block sw1
      open c1 ABC with extending-stick; tag c1
      pull m1; tag m1
      check-detector; test d1 ABC; test d2 ABC; check-detector
      ground d1 ABC cable 2/0 as g1; ground d2 ABC cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      untag c1; close c1 ABC
      untag m1; replace m1
      unblock sw1; untag sw1; close sw1
      test h1 ABC expect live`,
    mistakes: [
      [
        "the poles opened one by one with hardly any load on the bank",
        "open sw1; tag sw1; block sw1 => open c1 A with load-break-tool; open sw1; tag sw1; block sw1 | open c1 ABC with extending-stick => open c1 BC with extending-stick",
        "warning ferroresonance @ open c1 A with load-break-tool",
      ],
      [
        "switched before the permit",
        "open sw1; tag sw1; block sw1 => tag sw1; block sw1 | request-permit => open sw1; request-permit | + t9 transformer p2-x9 A connection=single kva=25 primaryKv=7.2 secondaryV=240",
        "danger permit-first @ open sw1",
      ],
      [
        "the meter left in and the low side not grounded",
        "- pull m1 | - tag m1 | - untag m1 | - replace m1 | - ground d2 ABC cable 2/0 as g2 | - unground g2 first phase",
        "danger secondary-backfeed @ work w1",
      ],
      [
        "the ground comes off while people are on the pad",
        "work w1 => work w1; unground g2 first phase | all-clear; unground g2 first phase => all-clear",
        "danger clear-before-ungrounding @ unground g2 first phase",
      ],
      [
        "grounded phase end first",
        "ground d1 ABC cable 2/0 as g1 => ground d1 ABC cable 2/0 first phase as g1",
        "danger ground-order @ ground d1 ABC cable 2/0 first phase as g1",
      ],
    ],
  },
  {
    job: "change a pad in the middle of a loop",
    practice:
      "The loop is closed first, after a test of both sides, so that nobody is out but this pad. The isolation lies beyond the " +
      "pad: the elbows at the far ends of both cables are parked, since an elbow parked in this very pad is a live end at " +
      "one's knee. Cables tested and grounded here, the low side too.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1000
      c1    cutout       p1-p2   A    fuse=K65
      cb1   span         p2-a1   A    construction=cable lengthM=100
      ea1   elbow        a1-a    A
      ea2   elbow        a-a2    A
      ta    transformer  a-sa    A    connection=single kva=50 primaryKv=7.2 secondaryV=240
      lda   load         sa      12   connection=delta kw=10 customers=5
      cb2   span         a2-b1   A    construction=cable lengthM=100
      eb1   elbow        b1-b    A
      eb2   elbow        b-b2    A
      tb    transformer  b-sb    A    connection=single kva=50 primaryKv=7.2 secondaryV=240
      ldb   load         sb      12   connection=delta kw=10 customers=6
      cb3   span         b2-d1   A    construction=cable lengthM=100
      ed1   elbow        d1-d    A
      ed2   elbow        d-d2    A    open=A normallyOpen=true
      td    transformer  d-sd    A    connection=single kva=50 primaryKv=7.2 secondaryV=240
      ldd   load         sd      12   connection=delta kw=10 customers=4
      cb4   span         d2-p8   A    construction=cable lengthM=100
      c8    cutout       p1-p8   A    fuse=K65
      a1    point        kind=pad
      a     point        kind=pad
      a2    point        kind=pad
      sa    point        kind=pad
      b1    point        kind=pad
      b     point        kind=pad
      b2    point        kind=pad
      sb    point        kind=pad
      d1    point        kind=pad
      d     point        kind=pad
      d2    point        kind=pad
      sd    point        kind=pad
      w1    work         b       A    does=tb`,
    order: `
      ${PERMIT}; barricade b
      test d A expect live; test d2 A expect live; close ed2 A
      open ea2 A; tag ea2
      open ed1 A; tag ed1
      check-detector; test b A; test sb 12; check-detector
      ground b A cable 2/0 as g1; ground sb 12 cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      untag ea2; close ea2 A; test sb 12 expect live
      untag ed1; test d1 A expect live; close ed1 A
      open ed2 A`,
    mistakes: [
      [
        "the elbows parked in the very pad that is changed",
        "open ea2 A; tag ea2 => open eb1 A; tag eb1 | open ed1 A; tag ed1 => open eb2 A; tag eb2",
        "danger approach-distance @ work w1",
      ],
      [
        "the loop closed without a test of phasing",
        "- test d A expect live | - test d2 A expect live",
        "warning phase-check @ close ed2 A",
      ],
      ["no tag at the far end", "- tag ed1 | - untag ed1", "danger tag-each @ test b A"],
      [
        "the low side not grounded, with houses on it",
        "- ground sb 12 cable 2/0 as g2 | - unground g2 first phase",
        "danger secondary-backfeed @ work w1",
      ],
      [
        "grounded before it was tested",
        "- test b A",
        "danger test-before-ground @ ground b A cable 2/0 as g1",
      ],
    ],
  },
];
