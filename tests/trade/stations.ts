import { type EverydayJob, PERMIT, RELEASE } from "./everydayJob";

/** Cables, switches, regulators, reclosers and capacitors. */
export const DEVICE_JOBS: readonly EverydayJob[] = [
  {
    job: "a faulted cable in a half-loop",
    practice:
      "Both ends of the bad cable are parked first, dead; then the pad beyond it is fed from the other riser, and the blown link " +
      "renewed, so that everybody has supply before the repair. The cable is tested and grounded at the end that is worked " +
      "on. Then back to the normal opening, one break before the next make.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1000
      c1    cutout       p1-p2   A    fuse=K40 blown=A
      cb1   span         p2-a1   A    construction=cable lengthM=150
      ea1   elbow        a1-a    A
      ea2   elbow        a-a2    A
      ta    transformer  a-sa    A    connection=single kva=50 primaryKv=7.2 secondaryV=240
      lda   load         sa      12   connection=delta kw=10 customers=5
      cb2   span         a2-b1   A    construction=cable lengthM=120
      f1    fault        a2      A
      eb1   elbow        b1-b    A
      eb2   elbow        b-b2    A    open=A normallyOpen=true
      tb    transformer  b-sb    A    connection=single kva=50 primaryKv=7.2 secondaryV=240
      ldb   load         sb      12   connection=delta kw=10 customers=6
      cb3   span         b2-p8   A    construction=cable lengthM=200
      c8    cutout       p1-p8   A    fuse=K40
      a1    point        kind=pad
      a     point        kind=pad
      a2    point        kind=pad
      sa    point        kind=pad
      b1    point        kind=pad
      b     point        kind=pad
      b2    point        kind=pad
      sb    point        kind=pad
      w1    work         a2      A    does=f1,cb2`,
    order: `
      ${PERMIT}; inspect a2; barricade a2
      open ea2 A; tag ea2
      open eb1 A; tag eb1
      close eb2 A
      refuse c1 A; stand-clear; close c1 A
      cover a
      check-detector; test a2 A; test b1 A; check-detector
      ground a2 A cable 2/0 as g1; ground b1 A cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      uncover a
      untag ea2; close ea2 A
      open eb2 A; untag eb1; close eb1 A`,
    mistakes: [
      [
        "the link renewed and closed onto the bad cable",
        "open ea2 A; tag ea2 => refuse c1 A; close c1 A; open ea2 A; tag ea2 | refuse c1 A; stand-clear; close c1 A; cover a => cover a",
        "danger onto-fault @ close c1 A",
      ],
      [
        "the bad cable fed from the other end",
        "open eb1 A; tag eb1; close eb2 A => close eb2 A; open eb1 A; tag eb1",
        "danger onto-fault @ close eb2 A",
      ],
      ["no test before the ground", "- test a2 A", "danger test-before-ground @ ground a2 A cable 2/0 as g1"],
      ["a ground left at the far end", "- unground g2 first phase", "danger grounds-left @ close ea2 A"],
      ["no tag at the far end", "- tag eb1 | - untag eb1", "danger tag-each @ test a2 A"],
    ],
  },
  {
    job: "take a regulator off, with nobody out",
    practice:
      "Run to neutral and blocked there, then bypassed: off neutral its series winding is a short through the bypass. Its two " +
      "disconnects open with the bypass closed: their gaps stand at no volts. What stays live above it is covered.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p0  ABC  lengthM=1000
      ds    disconnect   p0-p1   ABC
      r1    regulator    p1-p2   ABC  taps={"A":5,"B":3,"C":4}
      dl    disconnect   p2-p3   ABC
      by    disconnect   p0-p3   ABC  open=ABC normallyOpen=true
      sp1   span         p3-p4   ABC  lengthM=1000
      ld1   load         p4      ABC  kw=900 customers=200
      w1    work         p1      ABC  does=r1`,
    order: `
      ${PERMIT}; barricade p1
      set-position r1 to neutral; block r1
      close by A; close by B; close by C
      open dl ABC; tag dl; block dl
      open ds ABC; tag ds; block ds
      cover p0; cover p3
      check-detector; test p1 ABC; test p2 ABC; check-detector
      ground p1 ABC cable 4/0 as g1; ground p2 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover p0; uncover p3
      ${RELEASE}
      unblock ds; untag ds; close ds ABC
      unblock dl; untag dl; close dl ABC
      open by ABC
      unblock r1`,
    mistakes: [
      ["bypassed off neutral", "- set-position r1 to neutral", "danger regulator-neutral @ close by A"],
      ["not blocked at neutral", "- block r1 | - unblock r1", "warning regulator-neutral @ close by A"],
      [
        "its disconnect opened before the bypass is closed",
        "close by A; close by B; close by C => open dl ABC; close by A; close by B; close by C | open dl ABC; tag dl => tag dl",
        "danger load-break @ open dl ABC",
      ],
      [
        "the bypass opened before the load side is closed",
        "unblock dl; untag dl; close dl ABC; open by ABC => open by ABC; unblock dl; untag dl; close dl ABC",
        "danger load-break @ open by ABC",
      ],
      [
        "what stays live above it not covered",
        "- cover p0 | - cover p3 | - uncover p0 | - uncover p3",
        "danger approach-distance @ work w1",
      ],
    ],
  },
  {
    job: "change the tie switch between two feeders",
    practice:
      "Both of its terminals are live, so the isolation lies beyond it on both sides. The switch itself hangs between grounds " +
      "and needs no tag of its own.",
    drawing: `
      s1    source       sub1    ABC  kvLL=12.47
      m1    span         sub1-p4 ABC  lengthM=1000
      sw1   disconnect   p4-p5   ABC  gang=true loadBreakAmps=600
      q5    span         p5-p50  ABC  lengthM=40
      swt   disconnect   p50-p60 ABC  gang=true loadBreakAmps=600 open=ABC normallyOpen=true
      q6    span         p60-p6  ABC  lengthM=40
      sw2   disconnect   p6-p7   ABC  gang=true loadBreakAmps=600
      m2    span         p7-sub2 ABC  lengthM=1000
      s2    source       sub2    ABC  kvLL=12.47
      ld1   load         p4      ABC  kw=500 customers=60
      ld2   load         p7      ABC  kw=500 customers=50
      w1    work         p50     ABC  does=swt`,
    order: `
      ${PERMIT}; barricade p50
      open sw1; block sw1; tag sw1
      open sw2; block sw2; tag sw2
      check-detector; test p50 ABC; test p60 ABC; check-detector
      ground p50 ABC cable 4/0 as g1; ground p60 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      unblock sw1; untag sw1; close sw1
      unblock sw2; untag sw2; close sw2`,
    mistakes: [
      [
        "one terminal of the switch left live",
        "open sw2; block sw2; tag sw2 => note | test p50 ABC; test p60 ABC => test p50 ABC | - ground p60 ABC cable 4/0 as g2 | - unground g2 first phase | unblock sw2; untag sw2; close sw2 => note",
        "danger approach-distance @ work w1",
      ],
      [
        "tested on one side, grounded on both",
        "- test p60 ABC",
        "danger test-before-ground @ ground p60 ABC cable 4/0 as g2",
      ],
      [
        "the two feeders tied without phasing",
        "unblock sw2; untag sw2; close sw2 => unblock sw2; untag sw2; close sw2; close swt",
        "warning phase-check @ close swt",
      ],
      ["one side not tagged", "- tag sw1 | - untag sw1", "danger tag-each @ test p50 ABC"],
      [
        "switched without the permit",
        "request-permit; receive-permit; confirm => note | release-permit => note",
        "danger permit-first @ open sw1",
      ],
    ],
  },
  {
    job: "take a recloser out for its oil, with nobody out",
    practice:
      "The bypass is closed: both its ends are one conductor, which asks for no phasing. The recloser opens, then its " +
      "disconnects, which carry nothing. What stays live is covered. Back in the other order.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p0  ABC  lengthM=1000
      ds    disconnect   p0-p1   ABC  gang=true
      rc1   recloser     p1-p2   ABC
      dl    disconnect   p2-p3   ABC  gang=true
      by    disconnect   p0-p3   ABC  gang=true open=ABC normallyOpen=true
      sp1   span         p3-p4   ABC  lengthM=1000
      ld1   load         p4      ABC  kw=900 customers=200
      w1    work         p1      ABC  does=rc1`,
    order: `
      ${PERMIT}; barricade p1
      block rc1; close by
      unblock rc1; open rc1; block rc1
      open dl; tag dl; block dl
      open ds; tag ds; block ds
      cover p0; cover p3
      check-detector; test p1 ABC; test p2 ABC; check-detector
      ground p1 ABC cable 4/0 as g1; ground p2 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover p0; uncover p3
      ${RELEASE}
      unblock ds; untag ds; close ds
      unblock dl; untag dl; close dl
      unblock rc1; close rc1
      open by`,
    mistakes: [
      [
        "the bypass opened while the recloser is open",
        "unblock rc1; close rc1; open by => open by; unblock rc1; close rc1",
        "danger load-break @ open by",
      ],
      ["no tag on the load side", "- tag dl | - untag dl", "danger tag-each @ test p1 ABC"],
      [
        "what stays live not covered",
        "- cover p0 | - cover p3 | - uncover p0 | - uncover p3",
        "danger approach-distance @ work w1",
      ],
      ["the recloser's ground left on", "- unground g1 first phase", "danger grounds-left @ close ds"],
      [
        "work begins before it is grounded",
        "- ground p1 ABC cable 4/0 as g1 | - unground g1 first phase",
        "danger work-not-safe @ work w1",
      ],
    ],
  },
  {
    job: "change a unit of a capacitor bank behind its own cutouts",
    practice:
      "Opened with the load-break tool, tagged. Five minutes by the clock whatever resistors there are, then tested and shorted. " +
      "Once the work is done it is discharged, and may be closed.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      ld1   load         p1      ABC  kw=600 kvar=300 customers=90
      c5    cutout       p1-p5   ABC  fuse=K40
      q5    span         p5-p6   ABC  lengthM=30
      cap1  capacitor    p6      ABC  kvar=600 kvLL=12.47 connection=wye
      w1    work         p6      ABC  does=cap1`,
    order: `
      ${PERMIT}; barricade p6
      open c5 ABC with load-break-tool; tag c5
      wait 300
      check-detector; test p6 ABC; check-detector
      ground p6 ABC cable 2/0 as g1
      work w1
      all-clear; unground g1 first phase
      ${RELEASE}
      untag c5; stand-clear; close c5 A; stand-clear; close c5 B; stand-clear; close c5 C`,
    mistakes: [
      [
        "shorted right after it was opened",
        "- wait 300",
        "danger capacitor-discharge @ ground p6 ABC cable 2/0 as g1",
      ],
      [
        "closed again while it is charged",
        "tag c5; wait 300 => close c5 A; open c5 A with load-break-tool; tag c5; wait 300",
        "danger capacitor-discharge @ close c5 A",
      ],
      [
        "worked on without a short",
        "- ground p6 ABC cable 2/0 as g1 | - unground g1 first phase",
        "danger capacitor-discharge @ work w1",
      ],
      [
        "its current broken with a bare stick",
        "open c5 ABC with load-break-tool => open c5 ABC with extending-stick",
        "danger load-break @ open c5 ABC with extending-stick",
      ],
      ["no tag", "- tag c5 | - untag c5", "danger tag-each @ test p6 ABC"],
    ],
  },
];
