import { type EverydayJob, PERMIT, RELEASE } from "./everydayJob";

/** Eight of an ordinary week on an overhead crew, on farms and at the edge of town. */
export const WEEKLY_JOBS: readonly EverydayJob[] = [
  {
    job: "change a rusted pole-top transformer while one of its houses makes power from its roof",
    practice:
      "The panels run at noon: they are shut off at their own switch, that house's main opens and its meter comes out in gloves, tagged. Then the cutout, whose top stays live at " +
      "14.4 kV beside the hands and is covered. Both sides tested and grounded, since the other two houses keep their meters. " +
      "Volts are read before the meter goes back in.",
    drawing: `
      s1    source       sub     ABC  kvLL=24.94
      m0    span         sub-p1  ABC  lengthM=4000
      c0    cutout       p1-p2   C    fuse=K40
      sp    span         p2-p3   C    lengthM=300
      c1    cutout       p3-p4   C    fuse=K6
      la1   arrester     p4      C
      t1    transformer  p4-p5   C    connection=single kva=25 primaryKv=14.4 secondaryV=240
      m1    meter        p5-h1   12   count=2
      ld1   load         h1      12   connection=delta kw=6 customers=2
      v1    span         p5-p6   12   construction=secondary lengthM=45
      m2    meter        p6-h2   12
      mn2   main         h2-h3   12
      ld2   load         h3      12   connection=wye kw=4 customers=1
      pv    generator    h3      12   kva=6 volts=240 interface=inverter on=true
      h1    point        kind=service
      h2    point        kind=service
      h3    point        kind=service
      w1    work         p4      C    does=t1`,
    order: `
      ${PERMIT}; barricade p4
      stop pv; open mn2; pull m2 method gloves gloveClass 0; tag m2
      open c1 C with load-break-tool; tag c1
      cover p3
      check-detector; test p4 C; test p5 12; check-detector
      ground p4 C cable 2/0 as g1; ground p5 12 cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover p3
      ${RELEASE}
      untag c1; stand-clear; close c1 C
      test p5 12 expect live
      untag m2; replace m2 method gloves gloveClass 0; close mn2`,
    mistakes: [
      [
        "the panels left on the secondary",
        "stop pv; open mn2; pull m2 method gloves gloveClass 0; tag m2 => note | untag m2; replace m2 method gloves gloveClass 0; close mn2 => note",
        "danger ground-on-live @ ground p4 C cable 2/0 as g1",
      ],
      ["the meter with the panels has no tag", "- tag m2 | - untag m2", "danger tag-each @ test p4 C"],
      [
        "the cutout's live top not covered",
        "- cover p3 | - uncover p3",
        "danger approach-distance @ work w1",
      ],
      [
        "the low side not held, two houses on it",
        "- ground p5 12 cable 2/0 as g2 | - unground g2 first phase",
        "danger secondary-backfeed @ work w1",
      ],
      [
        "one leg tested, both grounded",
        "test p5 12 => test p5 1",
        "danger test-before-ground @ ground p5 12 cable 2/0 as g2",
      ],
    ],
  },
  {
    job: "a crossarm has broken on a fused three-phase tap, with houses and a shop beyond",
    practice:
      "The shop's motors go off at its main, tagged, before the tap's cutouts open one by one. Tested and grounded at the pole with the arm, all " +
      "three. After the work the cutouts close one by one, the shop's three phases are read, and its main closes last.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p1  ABC  lengthM=2500
      ldm   load         p1      ABC  kw=400 customers=90
      c1    cutout       p1-p2   ABC  fuse=K40
      sp1   span         p2-p3   ABC  lengthM=70
      sp2   span         p3-p4   ABC  lengthM=70
      x4    cutout       p4-p5   A    fuse=K10
      t4    transformer  p5-p6   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      m4    meter        p6-h4   12   count=3
      ld4   load         h4      12   connection=delta kw=9 customers=3
      sp3   span         p4-p7   ABC  lengthM=90
      cb    cutout       p7-p8   ABC  fuse=K12
      tb    transformer  p8-p9   ABC  connection=Yg-Yg kva=75 primaryKv=12.47 secondaryV=208
      mb    meter        p9-k1   ABC
      mnb   main         k1-k2   ABC
      ldb   load         k2      ABC  connection=delta kw=30 kvar=15 customers=1
      h4    point        kind=service
      k1    point        kind=service
      k2    point        kind=service
      w1    work         p3      ABC`,
    order: `
      ${PERMIT}; barricade p3
      open mnb; block mnb; tag mnb
      open c1 A with load-break-tool; open c1 B with load-break-tool; open c1 C with load-break-tool; tag c1
      check-detector; test p3 ABC; check-detector
      ground p3 ABC cable 2/0 as g1
      work w1
      all-clear; unground g1 first phase
      ${RELEASE}
      untag c1; stand-clear; close c1 A; stand-clear; close c1 B; stand-clear; close c1 C
      test k1 ABC expect live
      unblock mnb; untag mnb; close mnb`,
    mistakes: [
      [
        "the shop put back with one cutout still open",
        "stand-clear; close c1 C => note",
        "danger phase-missing @ close mnb",
      ],
      [
        "one of the three cutouts forgotten",
        "- open c1 B with load-break-tool",
        "danger ground-on-live @ ground p3 ABC cable 2/0 as g1",
      ],
      [
        "the set hung a pole further on, where nobody works",
        "test p3 ABC => test p3 ABC; test p4 ABC | ground p3 ABC cable 2/0 as g1 => ground p4 ABC cable 2/0 as g1",
        "warning equipotential @ work w1",
      ],
      [
        "the shop runs on its own machine, its main left in",
        "open mnb; block mnb; tag mnb => note | unblock mnb; untag mnb; close mnb => note | + gx generator k2 ABC kva=40 volts=208 on=true",
        "danger ground-on-live @ ground p3 ABC cable 2/0 as g1",
      ],
      ["closed with the set still on", "- unground g1 first phase", "danger grounds-left @ close c1 A"],
    ],
  },
  {
    job: "change a cracked cutout of a transformer, dead, with the clamp above it lifted",
    practice:
      "A cracked cutout is not swung: it is held, and the houses' mains drop the load. The clamp then breaks exciting current alone. The live " +
      "stirrup is covered; both sides of the cutout and the low side tested and grounded. The new one hangs open while the clamp goes on, " +
      "and picks up the transformer.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p0  ABC  lengthM=3000
      ldm   load         p0      ABC  kw=200 customers=45
      k1    clamp        p0-p1   B
      c1    cutout       p1-p2   B    fuse=K8 condition=cracked
      t1    transformer  p2-p3   B    connection=single kva=15 primaryKv=7.2 secondaryV=240
      m1    meter        p3-h1   12
      mn1   main         h1-h2   12
      ld1   load         h2      12   connection=wye kw=5 customers=1
      m2    meter        p3-h3   12
      mn2   main         h3-h4   12
      ld2   load         h4      12   connection=wye kw=5 customers=1
      h1    point        kind=service
      h2    point        kind=service
      h3    point        kind=service
      h4    point        kind=service
      w1    work         p2      B    does=c1`,
    order: `
      brief; secure c1; barricade p1
      open mn1; tag mn1; open mn2; tag mn2
      lift k1 B with clamp-stick; block k1; tag k1
      cover p0
      check-detector; test p1 B; test p2 B; test p3 12; check-detector
      ground p1 B cable 2/0 as g1; ground p2 B cable 2/0 as g2; ground p3 12 cable 2/0 as g3
      work w1
      open c1 B with extending-stick
      all-clear; unground g3 first phase; unground g2 first phase; unground g1 first phase
      uncover p0
      all-clear; confirm
      unblock k1; untag k1; attach k1 B with clamp-stick
      stand-clear; close c1 B
      test p3 12 expect live
      untag mn1; close mn1; untag mn2; close mn2`,
    mistakes: [
      ["the cracked cutout not held", "- secure c1", "danger loose-hardware @ lift k1 B with clamp-stick"],
      [
        "the clamp breaks the houses' load",
        "open mn1; tag mn1; open mn2; tag mn2 => note | untag mn1; close mn1; untag mn2; close mn2 => note",
        "danger load-break @ lift k1 B with clamp-stick",
      ],
      ["the live stirrup not covered", "- cover p0 | - uncover p0", "danger approach-distance @ work w1"],
      ["the lifted clamp has no tag", "- tag k1 | - untag k1", "danger tag-each @ test p1 B"],
      [
        "the new cutout left closed: the clamp picks up the transformer",
        "- open c1 B with extending-stick | stand-clear; close c1 B => note",
        "danger pick-up-order @ attach k1 B with clamp-stick",
      ],
    ],
  },
  {
    job: "a tree lies on a single-phase tap whose recloser has locked out",
    practice:
      "Looked at and guarded. The recloser shows no gap: the blade ahead of it opens on nothing and is tagged, the recloser is blocked. " +
      "Tested and grounded where the saw goes. The blade closes on an open recloser, which picks up the tap.",
    drawing: `
      s1    source       sub     ABC  kvLL=24.94
      m0    span         sub-p1  ABC  lengthM=6000
      ldm   load         p1      ABC  kw=300 customers=85
      ds    disconnect   p1-p2   A
      rc    recloser     p2-p3   A    open=A
      sp1   span         p3-p4   A    lengthM=400
      f1    fault        p4      A    ohms=5
      sp2   span         p4-p5   A    lengthM=250
      c5    cutout       p5-p6   A    fuse=K6
      t5    transformer  p6-p7   A    connection=single kva=15 primaryKv=14.4 secondaryV=240
      m5    meter        p7-h5   12   count=2
      ld5   load         h5      12   connection=delta kw=5 customers=2
      sp3   span         p5-p8   A    lengthM=350
      c8    cutout       p8-p9   A    fuse=K6
      t8    transformer  p9-q9   A    connection=single kva=25 primaryKv=14.4 secondaryV=240
      m8    meter        q9-h8   12
      ld8   load         h8      12   connection=delta kw=7 customers=1
      h5    point        kind=service
      h8    point        kind=service
      w1    work         p4      A    does=f1`,
    order: `
      brief; inspect p4; barricade p4
      request-permit; receive-permit; confirm
      block rc; tag rc
      open ds A; tag ds
      check-detector; test p4 A; check-detector
      ground p4 A cable 2/0 as g1
      work w1
      all-clear; unground g1 first phase
      ${RELEASE}
      untag ds; close ds A
      untag rc; unblock rc; close rc`,
    mistakes: [
      [
        "the recloser tried once, to see whether it holds",
        "inspect p4 => close rc; inspect p4",
        "danger onto-fault @ close rc",
      ],
      [
        "the locked-out recloser taken for a switch that is open, and not blocked",
        "block rc; tag rc => tag rc | open ds A; tag ds => note | untag ds; close ds A => note | untag rc; unblock rc; close rc => untag rc; close rc",
        "danger automatic-device @ test p4 A",
      ],
      [
        "the barn at the end runs on its machine",
        "+ gx generator h8 12 kva=12 volts=240 on=true",
        "danger ground-on-live @ ground p4 A cable 2/0 as g1",
      ],
      [
        "the saw goes in before the set is on",
        "- ground p4 A cable 2/0 as g1 | - unground g1 first phase",
        "danger work-not-safe @ work w1",
      ],
      ["the recloser left locked out", "- close rc", "warning left-behind @ end"],
    ],
  },
  {
    job: "lights go bright and dim in two houses: the neutral's connector has burned off at the transformer",
    practice:
      "Their things are burning: the mains go off first. Then the cutout, so that the neutral is made up dead, in gloves all the same, after legs " +
      "and neutral were tested and the legs grounded at the bushings. Volts are read before the mains close.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p1  ABC  lengthM=1500
      c1    cutout       p1-p2   A    fuse=K10
      t1    transformer  p2-p3   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      lx    lead         p3-p4   12   cut=N
      m1    meter        p4-h1   12
      mn1   main         h1-h2   12
      ld1   load         h2      12   connection=wye kw=5 customers=1
      v1    span         p4-p5   12   construction=secondary lengthM=40
      m2    meter        p5-h3   12
      mn2   main         h3-h4   12
      ld2   load         h4      12   connection=wye kw=4 customers=1
      ldx   load         h4      1    connection=wye kw=2
      p4    point        earthOhms=500
      p5    point        earthOhms=500
      h1    point        kind=service earthOhms=100
      h2    point        kind=service earthOhms=100
      h3    point        kind=service earthOhms=100
      h4    point        kind=service earthOhms=100`,
    order: `
      brief; inspect p3
      open mn1; open mn2
      open c1 A with load-break-tool; tag c1
      check-detector; test p3 12; test p4 12N; check-detector
      ground p3 12 cable 2/0 as g1
      join lx N method gloves gloveClass 0
      all-clear; unground g1 first phase
      all-clear; confirm
      untag c1; stand-clear; close c1 A
      test p4 12 expect live
      close mn1; close mn2`,
    mistakes: [
      [
        "made up with bare hands, the houses and the transformer on",
        "open mn1; open mn2 => note | open c1 A with load-break-tool; tag c1 => note | ground p3 12 cable 2/0 as g1; join lx N method gloves gloveClass 0 => join lx N | all-clear; unground g1 first phase => note | untag c1; stand-clear; close c1 A => note | close mn1; close mn2 => note",
        "danger hands-on-live @ join lx N",
      ],
      [
        "a house runs on its machine, its main left in",
        "- open mn2 | - close mn2 | + gx generator h4 12 kva=6 volts=240 on=true",
        "danger ground-on-live @ ground p3 12 cable 2/0 as g1",
      ],
      [
        "put back with the neutral still off",
        "- join lx N method gloves gloveClass 0",
        "danger open-neutral @ close mn2",
      ],
      [
        "grounded without a test",
        "check-detector; test p3 12; test p4 12N; check-detector => note",
        "danger test-before-ground @ ground p3 12 cable 2/0 as g1",
      ],
      ["closed with the legs shorted", "- unground g1 first phase", "danger grounds-left @ close c1 A"],
    ],
  },
  {
    job: "a phase is down in a dry field and still live: nothing has tripped",
    practice:
      "Guarded first. The blades nearby break no load, so the recloser drops it; the blades open dead, are blocked and tagged, and the " +
      "recloser gives everybody ahead of them their supply back. Tested and grounded on both sides of the break, spliced. The blades " +
      "close dead as well, and the recloser picks up the line.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      rc1   recloser     sub-p0  ABC
      m0    span         p0-p1   ABC  lengthM=2500
      ldm   load         p1      ABC  kw=250 customers=60
      ds    disconnect   p1-p2   ABC
      m1    span         p2-p3   ABC  lengthM=600
      m2    span         p3-p4   ABC  lengthM=70 parted=C
      f1    fault        p3      C    to=earth ohms=400
      m3    span         p4-p5   ABC  lengthM=500
      ld5   load         p5      ABC  kw=90 customers=25
      w1    work         p3      ABC  does=m2,f1`,
    order: `
      brief; barricade p3; barricade p4
      request-permit; receive-permit; confirm
      open rc1; block rc1
      open ds ABC; block ds; tag ds
      unblock rc1; close rc1
      check-detector; test p3 ABC; test p4 ABC; check-detector
      ground p3 ABC cable 4/0 as g1; ground p4 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      open rc1
      unblock ds; untag ds; close ds ABC
      close rc1`,
    mistakes: [
      ["nobody guards the wire", "- barricade p3 | - barricade p4", "danger guard-first @ open rc1"],
      [
        "the blades opened with the load on",
        "open rc1; block rc1 => note | unblock rc1; close rc1 => note",
        "danger load-break @ open ds ABC",
      ],
      [
        "the recloser closed again before the blades are open",
        "open ds ABC; block ds; tag ds => unblock rc1; close rc1; open rc1; block rc1; open ds ABC; block ds; tag ds",
        "danger onto-fault @ close rc1",
      ],
      [
        "grounded on the source's side of the break alone",
        "- ground p4 ABC cable 4/0 as g2 | - unground g2 first phase",
        "danger work-not-safe @ work w1",
      ],
      ["put back before it is spliced", "- work w1", "danger onto-fault @ close rc1"],
    ],
  },
  {
    job: "change the pad that a half-loop is open in",
    practice:
      "Both cables end in this pad, one of them live from the other riser: both are parked at the neighbours' pads and tagged, and so is the elbow that is parked here. Bushing, the " +
      "other cable and low side are tested and grounded. The loop stays open where it was; only this pad's houses are out.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p1  ABC  lengthM=900
      c1    cutout       p1-p2   B    fuse=K40
      cb1   span         p2-a1   B    construction=cable lengthM=120
      ea1   elbow        a1-a    B
      ea2   elbow        a-a2    B
      ta    transformer  a-sa    B    connection=single kva=50 primaryKv=7.2 secondaryV=240
      lda   load         sa      12   connection=delta kw=11 customers=6
      cb2   span         a2-b1   B    construction=cable lengthM=90
      eb1   elbow        b1-b    B
      eb2   elbow        b-b2    B    open=B normallyOpen=true
      tb    transformer  b-sb    B    connection=single kva=50 primaryKv=7.2 secondaryV=240
      ldb   load         sb      12   connection=delta kw=10 customers=5
      cb3   span         b2-d1   B    construction=cable lengthM=110
      ed1   elbow        d1-d    B
      ed2   elbow        d-d2    B
      td    transformer  d-sd    B    connection=single kva=50 primaryKv=7.2 secondaryV=240
      ldd   load         sd      12   connection=delta kw=9 customers=4
      cb4   span         d2-p8   B    construction=cable lengthM=200
      m9    span         p1-p9   ABC  lengthM=300
      c8    cutout       p9-p8   B    fuse=K40
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
      w1    work         b       B    does=tb`,
    order: `
      ${PERMIT}; barricade b; tag eb2
      open ea2 B; tag ea2
      open ed1 B; tag ed1
      check-detector; test b B; test b2 B; test sb 12; check-detector
      ground b B cable 2/0 as g1; ground b2 B cable 2/0 as g2; ground sb 12 cable 2/0 as g3
      work w1
      all-clear; unground g3 first phase; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      untag eb2; untag ed1; close ed1 B
      untag ea2; close ea2 B
      test sb 12 expect live`,
    mistakes: [
      [
        "the other riser's cable left live in the pad, since its elbow is parked",
        "open ed1 B; tag ed1 => note | - test b2 B | - ground b2 B cable 2/0 as g2 | - unground g2 first phase | untag ed1; close ed1 B => note",
        "danger approach-distance @ work w1",
      ],
      [
        "the same, and a set put onto it",
        "open ed1 B; tag ed1 => note | untag ed1; close ed1 B => note",
        "danger ground-on-live @ ground b2 B cable 2/0 as g2",
      ],
      ["no tag at the far pad", "- tag ed1 | - untag ed1", "danger tag-each @ test b B"],
      [
        "the low side not held, five houses on it",
        "- ground sb 12 cable 2/0 as g3 | - unground g3 first phase",
        "danger secondary-backfeed @ work w1",
      ],
      [
        "the loop closed on the way out, unread",
        "test sb 12 expect live => test sb 12 expect live; close eb2 B",
        "warning phase-check @ close eb2 B",
      ],
    ],
  },
  {
    job: "a pump house on an open-delta bank hums and will not start: one link is blown",
    practice:
      "Looked over for the squirrel. The pump goes off at its main before the link comes back, since it stood on one unit; the other unit may stay on. " +
      "Link renewed, stood clear, closed; all three legs are read before the main closes.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p1  ABC  lengthM=3500
      c1    cutout       p1-p2   BC   fuse=K8 blown=C
      t1    transformer  p2-p3   BC   connection=openY-openD kva=50 primaryKv=12.47 secondaryV=240 midTap=bc
      sv    span         p3-h0   ABC  construction=secondary lengthM=35
      m1    meter        h0-h1   ABC
      mn1   main         h1-h2   ABC
      ld1   load         h2      ABC  connection=delta kw=20 kvar=14 customers=1
      ld2   load         h2      BC   connection=wye kw=2
      h0    point        kind=service
      h1    point        kind=service
      h2    point        kind=service
      job   operator=none text=the_cutouts_are_in_sight`,
    order: `
      brief; inspect p2; inspect p3
      open mn1
      remove-barrel c1 C; refuse c1 C; replace-barrel c1 C
      stand-clear; close c1 C
      test h0 ABC expect live
      close mn1`,
    mistakes: [
      ["the pump left on", "- open mn1 | - close mn1", "warning single-phasing @ close c1 C"],
      ["nobody looked for the cause", "- inspect p2 | - inspect p3", "warning cause-first @ close c1 C"],
      [
        "the arrester beside it is what blew it",
        "+ la1 arrester p2 C failed=C",
        "danger onto-fault @ close c1 C",
      ],
      [
        "the dead-looking phase grounded with the pump on",
        "- open mn1 | - close mn1 | remove-barrel c1 C => check-detector; test p2 C; check-detector; ground p2 C cable 2/0 as g1; remove-barrel c1 C",
        "danger ground-on-live @ ground p2 C cable 2/0 as g1",
      ],
      ["the pump put back onto one unit", "- stand-clear | - close c1 C", "danger phase-missing @ close mn1"],
    ],
  },
];
