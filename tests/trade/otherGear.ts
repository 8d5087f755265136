import { type EverydayJob, PERMIT, RELEASE } from "./everydayJob";

/** Ten with other gear and other ways of going about it: new wire, cable ends, rolled phases, a set on wheels, a trial section by section. */
export const OTHER_GEAR_JOBS: readonly EverydayJob[] = [
  {
    job: "string a new span under a live crossing circuit",
    practice:
      "The line that it starts from is made dead and grounded where the wire is made up. The other circuit's reclosing is held, since the new wire may jump up into it. " +
      "Once it hangs its far end is tested and gets its own set before hands go on it there.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p1  ABC  lengthM=900
      ldm   load         p1      ABC  kw=200 customers=40
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
      sp1   span         p2-p3   ABC  lengthM=60
      ld3   load         p3      ABC  kw=40 customers=9
      nsp   span         p3-p4   ABC  lengthM=80 planned=true
      x1    nearby       span=nsp relation=crossing kvLL=34.5 spacingM=3
      c4    cutout       p4-p5   A    fuse=K10 open=A planned=true
      t4    transformer  p5-p6   A    connection=single kva=25 primaryKv=7.2 secondaryV=240 planned=true
      w1    work         p3      ABC  does=nsp
      w2    work         p4      ABC  does=c4,t4`,
    order: `
      ${PERMIT}; ask; barricade p3; barricade p4
      open sw1; block sw1; tag sw1
      check-detector; test p3 ABC; check-detector
      ground p3 ABC cable 4/0 as g1
      work w1
      check-detector; test p4 ABC; check-detector
      ground p4 ABC cable 4/0 as g2
      work w2
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      unblock sw1; untag sw1; close sw1
      stand-clear; close c4 A
      test p6 12 expect live`,
    mistakes: [
      ["the line that it starts from has no tag", "- tag sw1 | - untag sw1", "danger tag-each @ test p3 ABC"],
      ["people at the far pole's base", "- barricade p4", "warning step-touch @ work w2"],
      [
        "the far end's cable under No. 2",
        "ground p4 ABC cable 4/0 as g2 => ground p4 ABC cable 4 as g2",
        "danger ground-rating @ ground p4 ABC cable 4 as g2",
      ],
      [
        "no set at the far end, hands on it",
        "- ground p4 ABC cable 4/0 as g2 | - unground g2 first phase",
        "warning equipotential @ work w2",
      ],
      ["the far set left hanging", "- unground g2 first phase", "danger grounds-left @ close sw1"],
    ],
  },
  {
    job: "renew the cable ends on a riser pole, the pads fed from the other riser meanwhile",
    practice:
      "Volts and phase are read at the open elbow before the loop is closed; then the first pad's elbow comes off, and the cutout opens on bare cable. The cutout's top stays " +
      "live beside the hands: covered. Tested and grounded at both ends of the cable, since it ends in hands at one.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1000
      c1    cutout       p1-p2   C    fuse=K40
      la1   arrester     p2      C
      cb1   span         p2-a1   C    construction=cable lengthM=150
      ea1   elbow        a1-a    C
      ta    transformer  a-sa    C    connection=single kva=50 primaryKv=7.2 secondaryV=240
      lda   load         sa      12   connection=delta kw=12 customers=6
      ea2   elbow        a-a2    C
      cb2   span         a2-b1   C    construction=cable lengthM=120
      eb1   elbow        b1-b    C
      eb2   elbow        b-b2    C    open=C normallyOpen=true
      tb    transformer  b-sb    C    connection=single kva=50 primaryKv=7.2 secondaryV=240
      ldb   load         sb      12   connection=delta kw=10 customers=5
      cb3   span         b2-p8   C    construction=cable lengthM=180
      m7    span         p1-p7   ABC  lengthM=300
      c8    cutout       p7-p8   C    fuse=K40
      a1    point        kind=pad
      a     point        kind=pad
      a2    point        kind=pad
      sa    point        kind=pad
      b1    point        kind=pad
      b     point        kind=pad
      b2    point        kind=pad
      sb    point        kind=pad
      w1    work         p2      C    does=cb1`,
    order: `
      ${PERMIT}; barricade p2
      test b C expect live; test b2 C expect live; close eb2 C
      open ea1 C; tag ea1
      open c1 C with load-break-tool; tag c1
      cover p1
      check-detector; test p2 C; test a1 C; check-detector
      ground p2 C cable 2/0 as g1; ground a1 C cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover p1
      ${RELEASE}
      untag c1; stand-clear; close c1 C
      test a1 C expect live; test a C expect live; untag ea1; close ea1 C
      open eb2 C`,
    mistakes: [
      [
        "the pad's elbow stays on: the other riser feeds the cable from its far end",
        "open ea1 C; tag ea1 => note | test a1 C expect live; test a C expect live; untag ea1; close ea1 C => note",
        "danger ground-on-live @ ground p2 C cable 2/0 as g1",
      ],
      [
        "the cutout's live top not covered",
        "- cover p1 | - uncover p1",
        "danger approach-distance @ work w1",
      ],
      [
        "the loop closed without a look at volts and phase",
        "test b C expect live; test b2 C expect live; close eb2 C => close eb2 C",
        "warning phase-check @ close eb2 C",
      ],
      ["no tag at the pad", "- tag ea1 | - untag ea1", "danger tag-each @ test p2 C"],
      ["the pad end's set left on", "- unground g2 first phase", "danger grounds-left @ close c1 C"],
    ],
  },
  {
    job: "a new tie between two feeders is found rolled, and put right before it is ever closed",
    practice:
      "Phasing across the open tie shows two phases swapped. The piece up to the tie is made dead: its switch and the tie open, blocked and tagged. The jumpers come off and go " +
      "on straight, so both their sides have a set. Phased again afterwards; the tie stays open.",
    drawing: `
      s1    source       sub1    ABC  kvLL=12.47
      m1    span         sub1-p1 ABC  lengthM=1000
      ld1   load         p1      ABC  kw=400 customers=60
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
      sp1   span         p2-p3   ABC  lengthM=90
      jr    lead         p3-p4   ABC  toPhases=BAC leave=gone
      jn    lead         p3-p4   ABC  planned=true
      sp2   span         p4-p5   ABC  lengthM=90
      tie   disconnect   p5-p6   ABC  gang=true loadBreakAmps=600 open=ABC normallyOpen=true
      m2    span         p6-sub2 ABC  lengthM=900
      ld2   load         p6      ABC  kw=300 customers=50
      s2    source       sub2    ABC  kvLL=12.47
      w1    work         p3      ABC  does=jr,jn`,
    order: `
      ${PERMIT}; barricade p3
      test p6 ABC expect live; test p5 ABC expect live
      open sw1; block sw1; tag sw1
      block tie; tag tie
      check-detector; test p3 ABC; test p4 ABC; check-detector
      ground p3 ABC cable 4/0 as g1; ground p4 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      unblock tie; untag tie
      unblock sw1; untag sw1; close sw1
      test p5 ABC expect live; test p6 ABC expect live`,
    mistakes: [
      [
        "closed as it was found",
        "open sw1; block sw1; tag sw1 => close tie; open tie; open sw1; block sw1; tag sw1",
        "danger phase-check @ close tie",
      ],
      ["the open tie has no tag", "- tag tie | - untag tie", "danger tag-each @ test p3 ABC"],
      [
        "the jumpers' far side not grounded",
        "- ground p4 ABC cable 4/0 as g2 | - unground g2 first phase",
        "danger work-not-safe @ work w1",
      ],
      ["a set left on", "- unground g1 first phase", "danger grounds-left @ close sw1"],
      [
        "closed right after, and nobody phased it again",
        "test p5 ABC expect live; test p6 ABC expect live => close tie",
        "warning phase-check @ close tie",
      ],
    ],
  },
  {
    job: "the crew's own set on wheels feeds a village while the line ahead of it is mended",
    practice:
      "It is a supply of the utility's that nothing keeps in step: the village is cut off first, blocked and tagged, and only then does the set pick it up. Back the same way, " +
      "with a break: the set comes off before the line comes on.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p1  ABC  lengthM=1500
      ldm   load         p1      ABC  kw=300 customers=50
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
      sp1   span         p2-p3   ABC  lengthM=300
      sp2   span         p3-p4   ABC  lengthM=300
      sw2   disconnect   p4-p5   ABC  gang=true loadBreakAmps=600
      sp3   span         p5-p6   ABC  lengthM=100
      ld6   load         p6      ABC  kw=120 customers=35
      swg   disconnect   p6-p7   ABC  gang=true loadBreakAmps=600 open=ABC normallyOpen=true
      gm    source       p7      ABC  kvLL=12.47 z1Ohms=[2,40] on=false inStep=false
      w1    work         p3      ABC`,
    order: `
      ${PERMIT}; barricade p3
      open sw2; block sw2; tag sw2
      start gm; close swg
      test p6 ABC expect live
      open sw1; block sw1; tag sw1
      check-detector; test p3 ABC; check-detector
      ground p3 ABC cable 4/0 as g1
      work w1
      all-clear; unground g1 first phase
      ${RELEASE}
      unblock sw1; untag sw1; close sw1
      open swg; stop gm
      unblock sw2; untag sw2; close sw2
      test p6 ABC expect live`,
    mistakes: [
      [
        "the set put on before the village is cut off",
        "open sw2; block sw2; tag sw2; start gm; close swg => start gm; close swg; open sw2; block sw2; tag sw2",
        "danger phase-check @ close swg",
      ],
      ["no tag between the set and the work", "- tag sw2 | - untag sw2", "danger tag-each @ test p3 ABC"],
      [
        "the line put back while the set still feeds",
        "open swg; stop gm; unblock sw2; untag sw2; close sw2 => unblock sw2; untag sw2; close sw2; open swg; stop gm",
        "danger phase-check @ close sw2",
      ],
      ["the village left dark", "- close sw2", "warning left-behind @ end"],
      [
        "no ground, since both switches are open",
        "- ground p3 ABC cable 4/0 as g1 | - unground g1 first phase",
        "danger work-not-safe @ work w1",
      ],
    ],
  },
  {
    job: "close an open delta with a third unit",
    practice:
      "The shop's main opens first and is locked. Two poles open, the third hangs open already, tagged; their tops are covered. Both sides tested and grounded. All three poles close with nothing on the bank; " +
      "volts are read, then the main.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1800
      c1    cutout       p1-p2   ABC  fuse=K15 open=C
      t1    transformer  p2-p3   AB   connection=openY-openD kva=50 primaryKv=12.47 secondaryV=240 leave=gone
      t2    transformer  p2-p3   ABC  connection=Y-D kva=75 primaryKv=12.47 secondaryV=240 neutral=false planned=true
      m1    meter        p3-h1   ABC
      mn    main         h1-h2   ABC
      ld1   load         h2      ABC  connection=delta kw=30 customers=1
      h1    point        kind=service
      h2    point        kind=service
      w1    work         p2      ABC  does=t1,t2`,
    order: `
      brief; barricade p2
      open mn; block mn; tag mn
      open c1 A with load-break-tool; open c1 B with load-break-tool; tag c1
      cover p1
      check-detector; test p2 ABC; test p3 ABC; check-detector
      ground p2 ABC cable 2/0 as g1; ground p3 ABC cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover p1
      all-clear; confirm
      untag c1; stand-clear; close c1 A; stand-clear; close c1 B; stand-clear; close c1 C
      test p3 ABC expect live
      unblock mn; untag mn; close mn`,
    mistakes: [
      ["the new pole forgotten", "stand-clear; close c1 C => note", "danger phase-missing @ close mn"],
      ["the live tops not covered", "- cover p1 | - uncover p1", "danger approach-distance @ work w1"],
      [
        "the low side not held, and the main not locked",
        "- ground p3 ABC cable 2/0 as g2 | - unground g2 first phase | - block mn | - unblock mn",
        "danger secondary-backfeed @ work w1",
      ],
      ["the low side's set left on", "- unground g2 first phase", "danger grounds-left @ close c1 A"],
      ["no tag on the cutouts", "- tag c1 | - untag c1", "danger tag-each @ test p2 ABC"],
    ],
  },
  {
    job: "change the insulator of one phase with hot sticks, the line live",
    practice:
      "Reclosing is held and tagged, two people, sticks alone touch the wire. The hold goes back when everybody is off the pole.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p0  ABC  lengthM=700
      rc    recloser     p0-p1   ABC
      sp1   span         p1-p2   ABC  lengthM=60
      sp2   span         p2-p3   ABC  lengthM=60
      ld3   load         p3      ABC  kw=350 customers=75
      w1    work         p2      B`,
    order: `
      ${PERMIT}; block rc; tag rc; inspect p2; barricade p2
      work w1 with hot-stick method sticks
      all-clear; confirm
      release-permit
      untag rc; unblock rc`,
    mistakes: [
      [
        "reclosing not held",
        "block rc; tag rc => note | untag rc; unblock rc => note",
        "warning hands-on-live @ work w1 with hot-stick method sticks",
      ],
      ["alone", "+ job people=1", "warning hands-on-live @ work w1 with hot-stick method sticks"],
      [
        "a hand on the wire to steady it",
        "work w1 with hot-stick method sticks => work w1",
        "danger work-not-safe @ work w1",
      ],
      [
        "reclosing put back while the sticks are on",
        "work w1 with hot-stick method sticks => work w1 with hot-stick method sticks; unblock rc; block rc",
        "danger release-order @ unblock rc",
      ],
      [
        "another crew's hold tag taken off with ours",
        "+ rc recloser p0-p1 ABC tagged=true taggedBy=Crew_2 blocked=true",
        "danger others-tag @ unblock rc",
      ],
    ],
  },
  {
    job: "a recloser has locked out and the patrol finds nothing: tried section by section",
    practice:
      "The whole line is looked at first. Then the switches open, and one section after the other is tried from the station outward, by the operator's order.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p0  ABC  lengthM=500
      rc    recloser     p0-p1   ABC  open=ABC
      m1    span         p1-p2   ABC  lengthM=900
      ld2   load         p2      ABC  kw=300 customers=70
      sw1   disconnect   p2-p3   ABC  gang=true loadBreakAmps=600
      m2    span         p3-p4   ABC  lengthM=700
      ld4   load         p4      ABC  kw=150 customers=40
      sw2   disconnect   p4-p5   ABC  gang=true loadBreakAmps=600
      m3    span         p5-p6   ABC  lengthM=800
      ld6   load         p6      ABC  kw=120 customers=30`,
    order: `
      ${PERMIT}; inspect p2; inspect p4; inspect p6
      open sw2; open sw1
      close rc
      close sw1
      close sw2
      test p6 ABC expect live
      release-permit`,
    mistakes: [
      [
        "a wire lies in the field behind the last switch, and nobody walked that far",
        "+ m3 span p5-p6 ABC lengthM=800 parted=A",
        "danger onto-fault @ close sw2",
      ],
      [
        "the branch still lies on the second section",
        "+ f4 fault p4 AB to=phases",
        "danger onto-fault @ close sw1",
      ],
      [
        "another crew works behind the last switch",
        "+ sw2 disconnect p4-p5 ABC gang=true loadBreakAmps=600 open=ABC tagged=true taggedBy=Crew_7",
        "danger others-tag @ close sw2",
      ],
      [
        "a set hangs on the last section since the last job",
        "+ g9 ground p6 ABC cable=4/0",
        "danger grounds-left @ close sw2",
      ],
      [
        "closed again with nobody having walked the line",
        "inspect p2; inspect p4; inspect p6 => note",
        "warning cause-first @ close rc",
      ],
      [
        "the last section forgotten",
        "close sw2; test p6 ABC expect live => note",
        "warning left-behind @ end",
      ],
    ],
  },
  {
    job: "take a feeder's breaker out at the station, its feeder on the neighbour",
    practice:
      "Both sides of the tie are read, then it closes: nobody is out. The breaker opens, then its disconnects, which carry nothing, blocked and tagged. What stays live in the bay is " +
      "covered. Back: disconnects first on the open breaker, both its sides read, then the breaker, then the tie opens.",
    drawing: `
      s1    source       bus     ABC  kvLL=12.47
      d11   disconnect   bus-a1  ABC  gang=true
      b1    breaker      a1-a2   ABC
      d12   disconnect   a2-f1   ABC  gang=true
      m1    span         f1-p1   ABC  lengthM=1500
      ld1   load         p1      ABC  kw=300 customers=120
      b2    breaker      bus-f2  ABC
      m2    span         f2-p2   ABC  lengthM=1500
      ld2   load         p2      ABC  kw=250 customers=100
      tie   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600 open=ABC normallyOpen=true
      bus   point        kind=station
      a1    point        kind=station
      a2    point        kind=station
      f1    point        kind=station
      f2    point        kind=station
      w1    work         a1      ABC  does=b1`,
    order: `
      ${PERMIT}; barricade a1
      test p1 ABC expect live; test p2 ABC expect live; close tie
      open b1; block b1
      open d12; block d12; tag d12
      open d11; block d11; tag d11
      cover bus; cover f1; cover f2
      check-detector; test a1 ABC; test a2 ABC; check-detector
      ground a1 ABC cable 4/0 as g1; ground a2 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover bus; uncover f1; uncover f2
      ${RELEASE}
      unblock d11; untag d11; close d11
      unblock d12; untag d12; close d12
      test a1 ABC expect live; test a2 ABC expect live
      unblock b1; close b1
      open tie`,
    mistakes: [
      [
        "the disconnect opened with the feeder on it",
        "test p1 ABC expect live; test p2 ABC expect live; close tie => note | open b1; block b1 => block b1 | open tie => note",
        "danger load-break @ open d12",
      ],
      [
        "the disconnect closes the parallel instead of the breaker",
        "unblock d12; untag d12; close d12 => unblock b1; close b1; unblock d12; untag d12; close d12 | test a1 ABC expect live; test a2 ABC expect live; unblock b1; close b1 => note",
        "warning phase-check @ close d12",
      ],
      ["no tag toward the line", "- tag d12 | - untag d12", "danger tag-each @ test a1 ABC"],
      [
        "the bus beside the hands not covered",
        "- cover bus | - uncover bus",
        "danger approach-distance @ work w1",
      ],
      ["a set left on the breaker", "- unground g1 first phase", "danger grounds-left @ close d11"],
    ],
  },
  {
    job: "renew a secondary span that ends beside a street light's live wires, the primary live above",
    practice:
      "The light hangs on another transformer, and its wires end at the same rack: they stay live and are covered. The houses' cutout opens and is tagged. Both ends of the span are " +
      "tested and grounded, since houses could feed it.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1200
      c1    cutout       p1-q1   A    fuse=K10
      t1    transformer  q1-r1   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      v1    span         r1-a2   12   construction=secondary lengthM=40
      ma    meter        a2-ha   12   count=2
      lda   load         ha      12   connection=delta kw=8 customers=2
      sp    span         p1-p2   ABC  lengthM=40
      c2    cutout       p2-q2   B    fuse=K10
      t2    transformer  q2-r2   B    connection=single kva=10 primaryKv=7.2 secondaryV=240
      ls    load         r2      1    kw=0.3
      lx    lead         a2-r2   12   cut=12
      ha    point        kind=service
      job   leave={"lx":"open"}
      w1    work         a2      12   does=v1`,
    order: `
      brief; barricade a2
      open c1 A with load-break-tool; tag c1
      cover r2
      check-detector; test r1 12; test a2 12; check-detector
      ground r1 12 cable 2/0 as g1; ground a2 12 cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover r2
      all-clear; confirm
      untag c1; stand-clear; close c1 A
      test a2 12 expect live`,
    mistakes: [
      [
        "somebody has tied the light's wires in at the rack",
        "+ lx lead a2-r2 12",
        "danger ground-on-live @ ground r1 12 cable 2/0 as g1",
      ],
      [
        "grounded at the transformer alone",
        "- ground a2 12 cable 2/0 as g2 | - unground g2 first phase",
        "danger work-not-safe @ work w1",
      ],
      [
        "a house is on its machine",
        "+ gx generator ha 12 kva=8 volts=240 on=true",
        "danger ground-on-live @ ground r1 12 cable 2/0 as g1",
      ],
      [
        "the houses' end not tested",
        "- test a2 12",
        "danger test-before-ground @ ground a2 12 cable 2/0 as g2",
      ],
      ["a set left on", "- unground g2 first phase", "danger grounds-left @ close c1 A"],
    ],
  },
  {
    job: "change one of the two regulators of a two-phase tap, with nobody out",
    practice:
      "That one alone is run to neutral and blocked, bypassed, and cut out by its own disconnects; the other goes on regulating. Everything of the other phase on the pole is covered.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p0  ABC  lengthM=2500
      tp    span         p0-p1   AB   lengthM=300
      dsa   disconnect   p1-p2   A
      rga   regulator    p2-p3   A    taps={"A":4}
      dla   disconnect   p3-p4   A
      bya   disconnect   p1-p4   A    open=A normallyOpen=true
      dsb   disconnect   p1-q2   B
      rgb   regulator    q2-q3   B    taps={"B":6}
      dlb   disconnect   q3-p4   B
      byb   disconnect   p1-p4   B    open=B normallyOpen=true
      sp2   span         p4-p5   AB   lengthM=1500
      ld5   load         p5      AB   kw=90 customers=38
      w1    work         q2      B    does=rgb`,
    order: `
      ${PERMIT}; barricade q2
      set-position rgb to neutral; block rgb
      close byb B
      open dlb B; tag dlb; block dlb
      open dsb B; tag dsb; block dsb
      cover p1; cover p4; cover p2; cover p3
      check-detector; test q2 B; test q3 B; check-detector
      ground q2 B cable 4/0 as g1; ground q3 B cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover p1; uncover p4; uncover p2; uncover p3
      ${RELEASE}
      unblock dsb; untag dsb; close dsb B
      unblock dlb; untag dlb; close dlb B
      open byb B
      unblock rgb`,
    mistakes: [
      [
        "the other one run to neutral, this one bypassed",
        "set-position rgb to neutral; block rgb => set-position rga to neutral; block rga | unblock rgb => unblock rga",
        "danger regulator-neutral @ close byb B",
      ],
      [
        "the other phase beside it not covered",
        "- cover p2 | - uncover p2",
        "danger approach-distance @ work w1",
      ],
      [
        "the bypass opened before the new one carries the load",
        "unblock dlb; untag dlb; close dlb B; open byb B => open byb B; unblock dlb; untag dlb; close dlb B",
        "danger load-break @ open byb B",
      ],
      ["a set left on its load side", "- unground g2 first phase", "danger grounds-left @ close dsb B"],
      ["no tag on the load side", "- tag dlb | - untag dlb", "danger tag-each @ test q2 B"],
    ],
  },
];
