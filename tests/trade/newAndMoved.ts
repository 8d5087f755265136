import { type EverydayJob, PERMIT, RELEASE } from "./everydayJob";

/** Ten in which something new comes, something old goes, or load is moved from one supply to another. */
export const NEW_AND_MOVED_JOBS: readonly EverydayJob[] = [
  {
    job: "change a house's meter, one person alone",
    practice:
      "Volts are read before anything is touched. The main drops the load, the meter comes out in gloves: its upper jaws stay live, " +
      "the lower ones are tested, since the house may have a machine. Volts again below the new meter, then the main.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p2   B    fuse=K10
      t1    transformer  p2-p3   B    connection=single kva=25 primaryKv=7.2 secondaryV=240
      sv    span         p3-h0   12   construction=secondary lengthM=30
      m1    meter        h0-h1   12
      mn1   main         h1-h2   12
      ld1   load         h2      12   connection=wye kw=6 customers=1
      h0    point        kind=service
      h1    point        kind=service
      h2    point        kind=service
      job   people=1`,
    order: `
      brief; test h0 12 expect live
      open mn1
      pull m1 method gloves gloveClass 0
      check-detector; test h1 12; check-detector
      replace m1 method gloves gloveClass 0
      test h1 12 expect live
      close mn1`,
    mistakes: [
      [
        "pulled with the house's load on it",
        "- open mn1 | - close mn1",
        "danger load-break @ pull m1 method gloves gloveClass 0",
      ],
      [
        "put back with bare hands",
        "replace m1 method gloves gloveClass 0 => replace m1",
        "danger hands-on-live @ replace m1",
      ],
      [
        "the meter picks up the house",
        "replace m1 method gloves gloveClass 0 => close mn1; replace m1 method gloves gloveClass 0 | test h1 12 expect live; close mn1 => test h1 12 expect live",
        "danger pick-up-order @ replace m1 method gloves gloveClass 0",
      ],
      [
        "the house has run on its own machine meanwhile, and its main is closed onto the line",
        "+ gx generator h2 12 kva=7 volts=240 on=true",
        "danger phase-check @ close mn1",
      ],
      ["the house left off", "- close mn1", "warning left-behind @ end"],
    ],
  },
  {
    job: "hand the far half of a feeder over to a station that is not in step, with a break",
    practice:
      "The two can never stand in parallel. The switch drops the half, the tie picks it up at once; volts are read before and after. The operator " +
      "leads it. It stays so for a week.",
    drawing: `
      s1    source       sub1    ABC  kvLL=12.47
      m0    span         sub1-p0 ABC  lengthM=1200
      ld0   load         p0      ABC  kw=300 customers=40
      sw1   disconnect   p0-p1   ABC  gang=true loadBreakAmps=600
      m1    span         p1-p2   ABC  lengthM=900
      ld2   load         p2      ABC  kw=400 customers=60
      tie   disconnect   p2-p3   ABC  gang=true loadBreakAmps=600 open=ABC normallyOpen=true
      m2    span         p3-sub2 ABC  lengthM=1800
      s2    source       sub2    ABC  kvLL=12.47 inStep=false
      job   leave={"sw1":"open","tie":"closed"}`,
    order: `
      ${PERMIT}; inspect p2; test p3 ABC expect live
      open sw1
      close tie
      test p2 ABC expect live
      release-permit`,
    mistakes: [
      [
        "closed before it was opened, as in a loop",
        "open sw1; close tie => close tie; open sw1",
        "danger phase-check @ close tie",
      ],
      [
        "the switch breaks no load",
        "+ sw1 disconnect p0-p1 ABC gang=true loadBreakAmps=0",
        "danger load-break @ open sw1",
      ],
      [
        "another crew's tag hangs on the tie",
        "+ tie disconnect p2-p3 ABC gang=true loadBreakAmps=600 open=ABC normallyOpen=true tagged=true taggedBy=Crew_2",
        "danger others-tag @ close tie",
      ],
      [
        "sixty customers left between the two",
        "close tie; test p2 ABC expect live => note",
        "warning left-behind @ end",
      ],
      [
        "switched without the operator's order",
        "request-permit; receive-permit; confirm => note | release-permit => note",
        "danger permit-first @ open sw1",
      ],
    ],
  },
  {
    job: "put a new gang switch into a line",
    practice:
      "The line is dead beyond the switch ahead; tested and grounded on both sides of the place, since the jumpers come out and for a while nothing " +
      "joins the two. Then all sets off, permit back, and the switch ahead closes.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p1  ABC  lengthM=1500
      ldm   load         p1      ABC  kw=300 customers=50
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
      sp1   span         p2-p3   ABC  lengthM=90
      j3    lead         p3-p4   ABC  leave=gone
      nsw   disconnect   p3-p4   ABC  gang=true loadBreakAmps=600 planned=true
      sp2   span         p4-p5   ABC  lengthM=90
      ld5   load         p5      ABC  kw=90 customers=20
      w1    work         p3      ABC  does=j3,nsw`,
    order: `
      ${PERMIT}; barricade p3
      open sw1; block sw1; tag sw1
      check-detector; test p3 ABC; test p4 ABC; check-detector
      ground p3 ABC cable 4/0 as g1; ground p4 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      unblock sw1; untag sw1; close sw1`,
    mistakes: [
      [
        "grounded toward the station alone",
        "- ground p4 ABC cable 4/0 as g2 | - unground g2 first phase",
        "danger work-not-safe @ work w1",
      ],
      ["no tag on the switch ahead", "- tag sw1 | - untag sw1", "danger tag-each @ test p3 ABC"],
      [
        "grounded without a test",
        "- test p3 ABC | - test p4 ABC",
        "danger test-before-ground @ ground p3 ABC cable 4/0 as g1",
      ],
      [
        "the far set forgotten, hidden by the new switch",
        "- unground g2 first phase",
        "danger grounds-left @ close sw1",
      ],
      [
        "a set taken off while they still bolt the switch up",
        "all-clear; unground g2 first phase => unground g2 first phase; all-clear",
        "danger clear-before-ungrounding @ unground g2 first phase",
      ],
    ],
  },
  {
    job: "hang a service for a new house, the transformer live",
    practice:
      "The drop hangs, its meter is not in, the main is open. At the house it is tested: builders have machines. Made up at the pole in gloves, the neutral " +
      "first. Volts at the socket before the meter, below the meter before the main.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p2   A    fuse=K10
      t1    transformer  p2-p3   A    connection=single kva=37.5 primaryKv=7.2 secondaryV=240
      m2    meter        p3-k1   12
      ld2   load         k1      12   connection=delta kw=4 customers=1
      l1    lead         p3-p31  12   cut=12N
      sv    span         p31-h0  12   construction=secondary lengthM=28
      m1    meter        h0-h1   12   open=true
      mn1   main         h1-h2   12   open=true
      ld1   load         h2      12   connection=wye kw=6 customers=1
      h0    point        kind=service
      h1    point        kind=service
      h2    point        kind=service
      k1    point        kind=service`,
    order: `
      brief; barricade p3
      check-detector; test p31 12N; check-detector
      join l1 N method gloves gloveClass 0
      join l1 12 method gloves gloveClass 0
      test h0 12 expect live
      replace m1 method gloves gloveClass 0
      test h1 12 expect live
      close mn1`,
    mistakes: [
      [
        "the legs before the neutral, with the house on",
        "join l1 N method gloves gloveClass 0; join l1 12 method gloves gloveClass 0 => join l1 12 method gloves gloveClass 0; join l1 N method gloves gloveClass 0 | replace m1 method gloves gloveClass 0 => note | close mn1 => note | + m1 meter h0-h1 12 | + mn1 main h1-h2 12",
        "danger open-neutral @ join l1 12 method gloves gloveClass 0",
      ],
      [
        "made up with bare hands",
        "join l1 12 method gloves gloveClass 0 => join l1 12",
        "danger hands-on-live @ join l1 12",
      ],
      [
        "the connectors pick up the house",
        "replace m1 method gloves gloveClass 0 => note | close mn1 => note | + m1 meter h0-h1 12 | + mn1 main h1-h2 12",
        "danger pick-up-order @ join l1 12 method gloves gloveClass 0",
      ],
      [
        "the builders' machine stands on it, and the crew goes on",
        "replace m1 method gloves gloveClass 0 => note | close mn1 => note | + m1 meter h0-h1 12 | + mn1 main h1-h2 12 | + gx generator h2 12 kva=7 volts=240 on=true",
        "danger test-live @ join l1 N method gloves gloveClass 0",
      ],
      [
        "a nail through the drop",
        "+ f9 fault h0 12 to=phases",
        "danger onto-fault @ join l1 12 method gloves gloveClass 0",
      ],
    ],
  },
  {
    job: "take the transformer of an abandoned farm down for good",
    practice:
      "The meter is out since long. The cutout opens, then the clamp comes off the line and is secured; what stays live above is covered. " +
      "Tested on every side, grounded on both sides of the cutout; clamp, cutout and transformer come down.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p0  ABC  lengthM=2000
      k1    clamp        p0-p1   A    leave=gone
      c1    cutout       p1-p2   A    fuse=K10 leave=gone
      t1    transformer  p2-p3   A    connection=single kva=25 primaryKv=7.2 secondaryV=240 leave=gone
      m1    meter        p3-h1   12   open=true
      h1    point        kind=service
      job   leave={"m1":"open"}
      w1    work         p1      A    does=k1,c1,t1`,
    order: `
      brief; barricade p1
      open c1 A with load-break-tool; tag c1
      lift k1 A with clamp-stick; block k1; tag k1
      cover p0
      check-detector; test p1 A; test p2 A; test p3 12; check-detector
      ground p1 A cable 2/0 as g1; ground p2 A cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover p0
      all-clear; confirm`,
    mistakes: [
      [
        "somebody lives there, and the clamp is lifted under load",
        "- open c1 A with load-break-tool | + m1 meter p3-h1 12 | + ld1 load h1 12 connection=delta kw=15 customers=1",
        "danger load-break @ lift k1 A with clamp-stick",
      ],
      [
        "not grounded at all",
        "ground p1 A cable 2/0 as g1; ground p2 A cable 2/0 as g2 => note | unground g2 first phase; unground g1 first phase => note",
        "danger work-not-safe @ work w1",
      ],
      ["no tag on the clamp", "- tag k1", "danger tag-each @ test p1 A"],
      ["the live line above not covered", "- cover p0 | - uncover p0", "danger approach-distance @ work w1"],
      [
        "a squatter's machine runs on the old meter",
        "+ m1 meter p3-h1 12 | + gx generator h1 12 kva=7 volts=240 on=true",
        "danger ground-on-live @ ground p2 A cable 2/0 as g2",
      ],
    ],
  },
  {
    job: "change insulators on a line that a solar farm feeds",
    practice:
      "The farm is a supply like the station. It is stopped by its owner, its switch opened, blocked and tagged, and only then the line's own switch. " +
      "Afterwards it has the line's volts before it comes back, and starts by itself.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p1  ABC  lengthM=1500
      ldm   load         p1      ABC  kw=500 customers=60
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
      sp1   span         p2-p3   ABC  lengthM=90
      sp2   span         p3-p4   ABC  lengthM=90
      ld4   load         p4      ABC  kw=60 customers=12
      swf   disconnect   p4-p5   ABC  gang=true loadBreakAmps=600
      tf    transformer  p5-p6   ABC  connection=D-Yg kva=500 primaryKv=12.47 secondaryV=480
      gf    generator    p6      ABC  kva=400 volts=480 on=true interface=inverter
      w1    work         p3      ABC`,
    order: `
      ${PERMIT}; barricade p3
      stop gf; open swf; block swf; tag swf
      open sw1; block sw1; tag sw1
      check-detector; test p3 ABC; check-detector
      ground p3 ABC cable 4/0 as g1
      work w1
      all-clear; unground g1 first phase
      ${RELEASE}
      unblock sw1; untag sw1; close sw1
      test p4 ABC expect live
      unblock swf; untag swf; close swf`,
    mistakes: [
      [
        "the farm taken for a customer like any other",
        "stop gf; open swf; block swf; tag swf => note | unblock swf; untag swf; close swf => note",
        "danger ground-on-live @ ground p3 ABC cable 4/0 as g1",
      ],
      [
        "stopped, and not cut off",
        "open swf; block swf; tag swf => note | unblock swf; untag swf; close swf => note",
        "danger tag-each @ test p3 ABC",
      ],
      ["its switch has no tag", "- tag swf | - untag swf", "danger tag-each @ test p3 ABC"],
      [
        "its switch is worked from afar, and not blocked",
        "- block swf | - unblock swf | + swf disconnect p4-p5 ABC gang=true loadBreakAmps=600 remote=true",
        "danger automatic-device @ test p3 ABC",
      ],
      ["the crew starts it again", "close swf => close swf; start gf", "danger customers-machine @ start gf"],
    ],
  },
  {
    job: "move a house from one transformer's secondary to the next one's",
    practice:
      "The two stand on different phases and can never be joined. The main drops the house, the meter comes out; the legs are cut off the one in gloves and " +
      "made up on the other, both rows of wires sharing their neutral. Volts before the meter goes back.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p2   A    fuse=K10
      t1    transformer  p2-p3   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      v1    span         p3-q1   12   construction=secondary lengthM=40
      c2    cutout       p1-p4   B    fuse=K15
      t2    transformer  p4-p5   B    connection=single kva=50 primaryKv=7.2 secondaryV=240
      v2    span         p5-q2   12   construction=secondary lengthM=40
      m2    meter        p5-k1   12
      ld2   load         k1      12   connection=delta kw=8 customers=2
      la    lead         q1-q    12
      lb    lead         q2-q    12   cut=12
      sv    span         q-h0    12   construction=secondary lengthM=25
      m1    meter        h0-h1   12
      mn1   main         h1-h2   12
      ld1   load         h2      12   connection=wye kw=6 customers=1
      h0    point        kind=service
      h1    point        kind=service
      h2    point        kind=service
      k1    point        kind=service
      job   leave={"la":"open","lb":"closed"}`,
    order: `
      brief; barricade q
      open mn1; pull m1 method gloves gloveClass 0; tag m1
      cut la 12 with lead-cutters method gloves gloveClass 0
      check-detector; test q 12; check-detector
      join lb 12 method gloves gloveClass 0
      test h0 12 expect live
      untag m1; replace m1 method gloves gloveClass 0
      close mn1`,
    mistakes: [
      [
        "made up on the new one before it is off the old one",
        "cut la 12 with lead-cutters method gloves gloveClass 0; check-detector; test q 12; check-detector; join lb 12 method gloves gloveClass 0 => join lb 12 method gloves gloveClass 0; cut la 12 with lead-cutters method gloves gloveClass 0",
        "danger phase-check @ join lb 12 method gloves gloveClass 0",
      ],
      [
        "cut with the house's load on it",
        "open mn1; pull m1 method gloves gloveClass 0; tag m1 => note | untag m1; replace m1 method gloves gloveClass 0; close mn1 => note",
        "danger load-break @ cut la 12 with lead-cutters method gloves gloveClass 0",
      ],
      [
        "made up with bare hands",
        "join lb 12 method gloves gloveClass 0 => join lb 12",
        "danger hands-on-live @ join lb 12",
      ],
      [
        "the meter picks up the house",
        "untag m1; replace m1 method gloves gloveClass 0; close mn1 => close mn1; untag m1; replace m1 method gloves gloveClass 0",
        "danger pick-up-order @ replace m1 method gloves gloveClass 0",
      ],
      [
        "the house has run on its own machine meanwhile",
        "+ gx generator h2 12 kva=7 volts=240 on=true",
        "danger phase-check @ close mn1",
      ],
    ],
  },
  {
    job: "put a new pad into a cable of a half-loop",
    practice:
      "Volts and phase are read at the open elbow, the loop closes, and the piece of cable comes out at both ends: nobody is out. Tested and grounded at both ends; in the " +
      "hole the cable is proven and then cut, and its two ends go into the new pad. Back to normal with nobody out either.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1000
      c1    cutout       p1-p2   C    fuse=K40
      cb1   span         p2-a1   C    construction=cable lengthM=150
      ea1   elbow        a1-a    C
      ea2   elbow        a-a2    C
      ta    transformer  a-sa    C    connection=single kva=50 primaryKv=7.2 secondaryV=240
      lda   load         sa      12   connection=delta kw=10 customers=5
      cb2   span         a2-j1   C    construction=cable lengthM=60
      j     span         j1-j2   C    construction=cable lengthM=2 leave=gone
      en1   elbow        j1-n    C    planned=true
      en2   elbow        n-j2    C    planned=true
      tn    transformer  n-sn    C    connection=single kva=50 primaryKv=7.2 secondaryV=240 planned=true
      cb3   span         j2-b1   C    construction=cable lengthM=70
      eb1   elbow        b1-b    C
      eb2   elbow        b-b2    C    open=C normallyOpen=true
      tb    transformer  b-sb    C    connection=single kva=50 primaryKv=7.2 secondaryV=240
      ldb   load         sb      12   connection=delta kw=10 customers=6
      cb4   span         b2-p8   C    construction=cable lengthM=200
      c8    cutout       p1-p8   C    fuse=K40
      a1    point        kind=pad
      a     point        kind=pad
      a2    point        kind=pad
      sa    point        kind=pad
      j1    point        kind=pad
      j2    point        kind=pad
      n     point        kind=pad
      sn    point        kind=pad
      b1    point        kind=pad
      b     point        kind=pad
      b2    point        kind=pad
      sb    point        kind=pad
      w1    work         j1      C    does=j,en1,en2,tn`,
    order: `
      ${PERMIT}; barricade j1
      test b C expect live; test b2 C expect live; close eb2 C
      open eb1 C; tag eb1
      open ea2 C; tag ea2
      check-detector; test a2 C; test b1 C; check-detector
      ground a2 C cable 2/0 as g1; ground b1 C cable 2/0 as g2
      test j1 C with spike
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      untag ea2; close ea2 C
      test sn 12 expect live
      test b1 C expect live; test b C expect live; untag eb1; close eb1 C
      open eb2 C`,
    mistakes: [
      [
        "the loop closed without a look at phase and volts",
        "test b C expect live; test b2 C expect live; close eb2 C => close eb2 C",
        "warning phase-check @ close eb2 C",
      ],
      ["cut on the word of the map", "- test j1 C with spike", "danger work-not-safe @ work w1"],
      ["no tag at the far end", "- tag eb1 | - untag eb1", "danger tag-each @ test a2 C"],
      ["the far end's set left on", "- unground g2 first phase", "danger grounds-left @ close ea2 C"],
      [
        "grounded at one end, though the cable is cut in two",
        "- ground b1 C cable 2/0 as g2 | - unground g2 first phase",
        "danger work-not-safe @ work w1",
      ],
    ],
  },
  {
    job: "change a step-down bank between two line voltages",
    practice:
      "The cutouts drop the village, then the switch on the low side cuts the old line off with all its houses. Both sides tested and grounded, the live tops covered. The " +
      "new bank's volts are read before the switch puts the village onto it.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p1  ABC  lengthM=1500
      ldm   load         p1      ABC  kw=300 customers=40
      c1    cutout       p1-p2   ABC  fuse=K65
      tr    transformer  p2-p3   ABC  connection=Yg-Yg kva=500 primaryKv=12.47 secondaryV=4160
      sw3   disconnect   p3-p4   ABC  gang=true loadBreakAmps=600
      sp1   span         p4-p5   ABC  lengthM=800
      ld5   load         p5      ABC  kw=120 customers=30
      c5    cutout       p5-p6   A    fuse=K25
      t5    transformer  p6-p7   A    connection=single kva=25 primaryKv=2.4 secondaryV=240
      m5    meter        p7-h5   12
      ld6   load         h5      12   connection=delta kw=8 customers=4
      h5    point        kind=service
      w1    work         p2      ABC  does=tr`,
    order: `
      ${PERMIT}; barricade p2
      open c1 A with load-break-tool; open c1 B with load-break-tool; open c1 C with load-break-tool; tag c1
      open sw3; block sw3; tag sw3
      cover p1
      check-detector; test p2 ABC; test p3 ABC; check-detector
      ground p2 ABC cable 4/0 as g1; ground p3 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover p1
      ${RELEASE}
      untag c1; stand-clear; close c1 A; stand-clear; close c1 B; stand-clear; close c1 C
      test p3 ABC expect live
      unblock sw3; untag sw3; close sw3`,
    mistakes: [
      [
        "the low side not grounded",
        "- ground p3 ABC cable 4/0 as g2 | - unground g2 first phase",
        "danger work-not-safe @ work w1",
      ],
      ["the live tops not covered", "- cover p1 | - uncover p1", "danger approach-distance @ work w1"],
      [
        "the load broken with a bare stick",
        "open c1 A with load-break-tool => open c1 A with extending-stick | + ld5 load p5 ABC kw=400 customers=30",
        "danger load-break @ open c1 A with extending-stick",
      ],
      ["the third pole forgotten", "stand-clear; close c1 C => note", "danger phase-missing @ close sw3"],
      ["the low side's set left on", "- unground g2 first phase", "danger grounds-left @ close c1 A"],
    ],
  },
  {
    job: "a gang switch hangs open and will not close: jumpers around it",
    practice:
      "It is not forced. The recloser drops the rest for a minute, so that the jumpers pick nothing up: made up with sticks, dead end first. " +
      "Then the recloser picks all of it up. The switch stays open until it is changed.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p0  ABC  lengthM=900
      rc    recloser     p0-p1   ABC
      ldm   load         p1      ABC  kw=200 customers=30
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600 open=ABC condition=seized
      jb    lead         p1-p2   ABC  cut=ABC
      sp2   span         p2-p3   ABC  lengthM=90
      ld3   load         p3      ABC  kw=200 customers=45
      c4    cutout       p3-p4   ABC  fuse=K12
      t4    transformer  p4-p5   ABC  connection=D-Yg kva=150 primaryKv=12.47 secondaryV=480
      m4    meter        p5-h4   ABC
      ld4   load         h4      ABC  connection=wye kw=60 customers=1
      h4    point        kind=service
      job   leave={"sw1":"open","jb":"closed"}`,
    order: `
      ${PERMIT}; inspect p1; secure sw1; barricade p1
      open rc; block rc; tag rc
      join jb A with hot-stick method sticks at p2
      join jb B with hot-stick method sticks at p2
      join jb C with hot-stick method sticks at p2
      ${RELEASE}
      unblock rc; untag rc; close rc
      test p3 ABC expect live`,
    mistakes: [
      [
        "the jumper picks up all that hangs beyond",
        "open rc; block rc; tag rc => block rc | unblock rc; untag rc; close rc => unblock rc",
        "danger pick-up-order @ join jb A with hot-stick method sticks at p2",
      ],
      [
        "the third jumper forgotten",
        "- join jb C with hot-stick method sticks at p2",
        "danger phase-missing @ close rc",
      ],
      [
        "the jumper taken in bare hands, on a line that was neither tested nor grounded",
        "join jb B with hot-stick method sticks at p2 => join jb B at p2",
        "danger hands-on-live @ join jb B at p2",
      ],
      [
        "the seized switch forced",
        "open rc; block rc; tag rc => close sw1; open rc; block rc; tag rc",
        "warning step-not-possible @ close sw1",
      ],
      ["somebody's set on the line beyond", "+ g9 ground p3 ABC cable=4/0", "danger grounds-left @ close rc"],
    ],
  },
];
