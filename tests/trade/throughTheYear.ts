import { type EverydayJob, PERMIT, RELEASE } from "./everydayJob";

/** Ten more that every crew knows: half of them are switching alone, where nobody lays hands on the line at all. */
export const YEARS_JOBS: readonly EverydayJob[] = [
  {
    job: "cut a new three-phase tap in by jumpers, the line live",
    practice:
      "The tap's cutouts hang open, so that the jumpers make up nothing but themselves: sticks, reclosing held, the dead end first. " +
      "Then the cutouts energize the tap, the bank's own cutouts the bank; rotation and volts are read before the shop's main closes.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p0  ABC  lengthM=400
      rc    recloser     p0-p01  ABC
      m1    span         p01-p1  ABC  lengthM=1500
      ldm   load         p1      ABC  kw=400 customers=90
      j1    lead         p1-p2   ABC  cut=ABC
      c2    cutout       p2-p3   ABC  fuse=K40 open=ABC
      sp1   span         p3-p4   ABC  lengthM=90
      sp2   span         p4-p5   ABC  lengthM=90
      c5    cutout       p5-p6   ABC  fuse=K12 open=ABC
      t5    transformer  p6-p7   ABC  connection=Yg-Yg kva=150 primaryKv=12.47 secondaryV=208
      m5    meter        p7-h5   ABC
      mn5   main         h5-h6   ABC  open=ABC
      ld5   load         h6      ABC  connection=wye kw=40 customers=1
      h5    point        kind=service
      h6    point        kind=service`,
    order: `
      ${PERMIT}; inspect p3; barricade p1
      block rc
      join j1 A with hot-stick method sticks at p2
      join j1 B with hot-stick method sticks at p2
      join j1 C with hot-stick method sticks at p2
      ${RELEASE}
      unblock rc
      stand-clear; close c2 A; stand-clear; close c2 B; stand-clear; close c2 C
      stand-clear; close c5 A; stand-clear; close c5 B; stand-clear; close c5 C
      test p7 ABC expect live
      close mn5`,
    mistakes: [
      [
        "both rows of cutouts closed already, so that the jumper picks up the bank",
        "barricade p1 => barricade p1; close c2 ABC; close c5 ABC | stand-clear; close c2 A; stand-clear; close c2 B; stand-clear; close c2 C; stand-clear; close c5 A; stand-clear; close c5 B; stand-clear; close c5 C => note",
        "danger pick-up-order @ join j1 A with hot-stick method sticks at p2",
      ],
      [
        "made up with bare hands",
        "join j1 A with hot-stick method sticks at p2 => join j1 A method bare at p2",
        "danger hands-on-live @ join j1 A method bare at p2",
      ],
      [
        "reclosing not held",
        "- block rc | - unblock rc",
        "warning hands-on-live @ join j1 A with hot-stick method sticks at p2",
      ],
      [
        "the live end first, the other in the hand",
        "join j1 B with hot-stick method sticks at p2 => join j1 B with hot-stick method sticks at p1",
        "warning jumper-order @ join j1 B with hot-stick method sticks at p1",
      ],
      [
        "the builders' ground set still on the tap",
        "+ g9 ground p4 ABC cable=4/0",
        "danger grounds-left @ close c2 A",
      ],
    ],
  },
  {
    job: "put a regulator bank back into service that has been bypassed",
    practice:
      "Energized from its source side, run to neutral and blocked there, volts read on both sides of the load-side disconnect; " +
      "then that closes beside the bypass, the bypass opens at no volts, and the regulators are let go.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p0  ABC  lengthM=1200
      ds    disconnect   p0-p1   ABC  open=ABC
      r1    regulator    p1-p2   ABC  taps={"A":6,"B":4,"C":5}
      dl    disconnect   p2-p3   ABC  open=ABC
      by    disconnect   p0-p3   ABC  normallyOpen=true
      sp1   span         p3-p4   ABC  lengthM=1500
      ld1   load         p4      ABC  kw=800 customers=150`,
    order: `
      ${PERMIT}; inspect p1
      close ds ABC
      set-position r1 to neutral; block r1
      test p2 ABC expect live; test p3 ABC expect live
      close dl ABC
      open by ABC
      unblock r1
      release-permit`,
    mistakes: [
      [
        "put beside the bypass off neutral",
        "- set-position r1 to neutral",
        "danger regulator-neutral @ close dl ABC",
      ],
      [
        "the bypass opened before the regulators carry the load",
        "close dl ABC; open by ABC => open by ABC; close dl ABC",
        "danger load-break @ open by ABC",
      ],
      ["not blocked at neutral", "- block r1 | - unblock r1", "warning regulator-neutral @ close dl ABC"],
      ["the bypass left closed", "- open by ABC", "warning left-behind @ end"],
      [
        "the shop's ground set still on its load side",
        "+ g9 ground p2 ABC cable=4/0",
        "danger grounds-left @ close ds ABC",
      ],
    ],
  },
  {
    job: "change the bank of a clinic that has its own machine and an automatic transfer",
    practice:
      "As soon as the supply goes the machine starts by itself. The clinic's main is opened first, locked and tagged: from then on it runs on its own machine behind it. " +
      "Both sides of the bank are tested and grounded; the tops of the cutouts are covered. Volts and rotation before the main closes.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2500
      ldm   load         p1      ABC  kw=300 customers=70
      c1    cutout       p1-p2   ABC  fuse=K15
      t1    transformer  p2-p3   ABC  connection=Yg-Yg kva=225 primaryKv=12.47 secondaryV=480
      sv    span         p3-h0   ABC  construction=secondary lengthM=30
      mn    main         h0-h1   ABC
      tx    transfer     h1-h2-hg ABC position=utility
      gx    generator    hg      ABC  kva=200 volts=480
      ld    load         h2      ABC  connection=wye kw=110 customers=1 critical=true
      h0    point        kind=service
      h1    point        kind=service
      h2    point        kind=service
      hg    point        kind=service
      w1    work         p2      ABC  does=t1`,
    order: `
      ${PERMIT}; barricade p2
      open mn; block mn; tag mn
      open c1 A with load-break-tool; open c1 B with load-break-tool; open c1 C with load-break-tool; tag c1
      cover p1
      check-detector; test p2 ABC; test p3 ABC; check-detector
      ground p2 ABC cable 2/0 as g1; ground p3 ABC cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover p1
      ${RELEASE}
      untag c1; stand-clear; close c1 A; stand-clear; close c1 B; stand-clear; close c1 C
      test p3 ABC expect live
      unblock mn; untag mn; close mn`,
    mistakes: [
      [
        "the machine has started and the transfer has thrown, and nobody thinks of it",
        "open mn; block mn; tag mn => note | unblock mn; untag mn; close mn => note | + tx transfer h1-h2-hg ABC position=generator | + gx generator hg ABC kva=200 volts=480 on=true",
        "danger tag-each @ test p2 ABC",
      ],
      [
        "the machine runs, the transfer is bridged, the main stays closed",
        "open mn; block mn; tag mn => note | unblock mn; untag mn; close mn => note | + tx transfer h1-h2-hg ABC position=generator bridged=true | + gx generator hg ABC kva=200 volts=480 on=true",
        "danger ground-on-live @ ground p2 ABC cable 2/0 as g1",
      ],
      [
        "the low side not held, and the main not locked",
        "- ground p3 ABC cable 2/0 as g2 | - unground g2 first phase | - block mn | - unblock mn",
        "danger secondary-backfeed @ work w1",
      ],
      ["the live tops not covered", "- cover p1 | - uncover p1", "danger approach-distance @ work w1"],
      ["the third pole forgotten", "- close c1 C", "danger phase-missing @ close mn"],
    ],
  },
  {
    job: "one phase is down ahead of a mill's delta bank",
    practice:
      "The wire on the mill's side of the break is hot backwards through the bank. Guarded first; the switch opens all three, then the bank's cutouts. " +
      "Both sides of the break are tested and grounded, all phases. The mill's motors have run on two phases: its main opens, and closes last.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p0  ABC  lengthM=900
      rc    recloser     p0-p1   ABC
      ldm   load         p1      ABC  kw=300 customers=60
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
      sp1   span         p2-p3   ABC  lengthM=80 parted=B
      sp2   span         p3-p4   ABC  lengthM=80
      c4    cutout       p4-p5   ABC  fuse=K12
      t4    transformer  p5-p6   ABC  connection=D-D kva=150 primaryKv=12.47 secondaryV=480
      m4    meter        p6-h4   ABC
      mn4   main         h4-h5   ABC
      ld4   load         h5      ABC  connection=delta kw=60 kvar=30 customers=1
      h4    point        kind=service
      h5    point        kind=service
      w1    work         p3      ABC  does=sp1`,
    order: `
      brief; barricade p2; barricade p3
      request-permit; receive-permit; confirm
      open sw1; block sw1; tag sw1
      open mn4
      open c4 ABC with extending-stick; tag c4
      check-detector; test p2 ABC; test p3 ABC; check-detector
      ground p2 ABC cable 4/0 as g1; ground p3 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      untag c4; close c4 ABC
      unblock sw1; untag sw1; close sw1
      test p6 ABC expect live
      close mn4`,
    mistakes: [
      [
        "nobody keeps people off the wire",
        "- barricade p2 | - barricade p3",
        "danger guard-first @ open sw1",
      ],
      [
        "the broken wire's far side taken for dead",
        "open sw1; block sw1; tag sw1 => check-detector; test p3 B; check-detector; ground p3 B cable 4/0 as g9; open sw1; block sw1; tag sw1",
        "danger ground-on-live @ ground p3 B cable 4/0 as g9",
      ],
      [
        "grounded toward the station alone",
        "- ground p3 ABC cable 4/0 as g2 | - unground g2 first phase",
        "danger work-not-safe @ work w1",
      ],
      ["closed before the wire is up", "- work w1", "danger onto-fault @ close sw1"],
      [
        "the mill put onto two phases",
        "untag c4; close c4 ABC => untag c4; close c4 AC",
        "danger phase-missing @ close mn4",
      ],
    ],
  },
  {
    job: "renew a blown link of a capacitor bank",
    practice:
      "Look for the cause first. The two good ones open with the load-break tool, tagged; five minutes, test, short, since the unit behind " +
      "the blown link may hold its charge as well. The set comes off, the link is renewed, all three close.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2200
      ld1   load         p1      ABC  kw=700 kvar=350 customers=120
      c5    cutout       p1-p5   ABC  fuse=K25 blown=B
      q5    span         p5-p6   ABC  lengthM=30
      cap1  capacitor    p6      ABC  kvar=450 kvLL=12.47 connection=wye`,
    order: `
      ${PERMIT}; inspect p5; inspect p6
      open c5 AC with load-break-tool; tag c5
      wait 300
      check-detector; test p6 ABC; check-detector
      ground p6 ABC cable 2/0 as g1
      unground g1 first phase
      refuse c5 B
      ${RELEASE}
      untag c5; stand-clear; close c5 A; stand-clear; close c5 B; stand-clear; close c5 C`,
    mistakes: [
      ["nobody looked for the cause", "- inspect p5 | - inspect p6", "warning cause-first @ close c5 B"],
      ["shorted at once", "- wait 300", "danger capacitor-discharge @ ground p6 ABC cable 2/0 as g1"],
      [
        "closed again after a minute, never shorted",
        "wait 300 => wait 60 | ground p6 ABC cable 2/0 as g1; unground g1 first phase => note",
        "danger capacitor-discharge @ close c5 A",
      ],
      [
        "its current broken with a bare stick",
        "open c5 AC with load-break-tool => open c5 AC with extending-stick",
        "danger load-break @ open c5 AC with extending-stick",
      ],
      ["the old link closed again", "- refuse c5 B", "warning step-not-possible @ close c5 B"],
    ],
  },
  {
    job: "move a live line over to a new pole, in gloves",
    practice:
      "Nobody is out. Reclosing is held and tagged, the phases are covered, gloves suit the volts, a second person stands by. The hold is given back " +
      "when everybody is off the line.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p0  ABC  lengthM=900
      rc    recloser     p0-p1   ABC
      sp1   span         p1-p2   ABC  lengthM=60
      sp2   span         p2-p3   ABC  lengthM=60
      ld3   load         p3      ABC  kw=400 customers=85
      w1    work         p2      ABC`,
    order: `
      ${PERMIT}; block rc; tag rc; barricade p2
      cover p2
      work w1 method gloves-and-cover gloveClass 2
      all-clear; confirm
      uncover p2
      release-permit
      untag rc; unblock rc`,
    mistakes: [
      [
        "reclosing not held",
        "block rc; tag rc => note | untag rc; unblock rc => note",
        "warning hands-on-live @ work w1 method gloves-and-cover gloveClass 2",
      ],
      [
        "nothing covered",
        "- cover p2 | - uncover p2",
        "warning hands-on-live @ work w1 method gloves-and-cover gloveClass 2",
      ],
      [
        "gloves for 1 000 V",
        "work w1 method gloves-and-cover gloveClass 2 => work w1 method gloves-and-cover gloveClass 0",
        "danger hands-on-live @ work w1 method gloves-and-cover gloveClass 0",
      ],
      ["alone", "+ job people=1", "warning hands-on-live @ work w1 method gloves-and-cover gloveClass 2"],
      [
        "reclosing put back while hands are on the line",
        "work w1 method gloves-and-cover gloveClass 2 => work w1 method gloves-and-cover gloveClass 2; unblock rc; block rc",
        "danger release-order @ unblock rc",
      ],
    ],
  },
  {
    job: "turn the feed of a loop of three-phase pads round for a week, with nobody out",
    practice:
      "Both sides of the open elbows are tested for volts and phasing, then they close: for a moment both risers feed. The other elbows open, and the " +
      "loop is left so.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m0    span         sub-p1  ABC  lengthM=1000
      c1    cutout       p1-p2   ABC  fuse=K65
      cb1   span         p2-a1   ABC  construction=cable lengthM=200
      ea1   elbow        a1-a    ABC
      ta    transformer  a-sa    ABC  connection=Yg-Yg kva=150 primaryKv=12.47 secondaryV=208
      lda   load         sa      ABC  connection=wye kw=50 customers=3
      ea2   elbow        a-a2    ABC
      cb2   span         a2-b1   ABC  construction=cable lengthM=150
      eb1   elbow        b1-b    ABC
      tb    transformer  b-sb    ABC  connection=Yg-Yg kva=150 primaryKv=12.47 secondaryV=208
      ldb   load         sb      ABC  connection=wye kw=40 customers=2
      eb2   elbow        b-b2    ABC  open=ABC normallyOpen=true
      cb3   span         b2-p3   ABC  construction=cable lengthM=250
      m1    span         p1-p9   ABC  lengthM=400
      c9    cutout       p9-p3   ABC  fuse=K65
      a1    point        kind=pad
      a     point        kind=pad
      a2    point        kind=pad
      sa    point        kind=pad
      b1    point        kind=pad
      b     point        kind=pad
      b2    point        kind=pad
      sb    point        kind=pad
      job   leave={"eb2":"closed","ea2":"open"}`,
    order: `
      ${PERMIT}; inspect b; inspect a
      test b ABC expect live; test b2 ABC expect live
      close eb2 ABC
      open ea2 ABC
      release-permit`,
    mistakes: [
      [
        "not tested for phasing",
        "test b ABC expect live; test b2 ABC expect live => note",
        "warning phase-check @ close eb2 ABC",
      ],
      ["both risers left closed on the loop", "- open ea2 ABC", "warning left-behind @ end"],
      [
        "the third elbow forgotten, and the old feed taken away",
        "close eb2 ABC => close eb2 AB",
        "danger phase-missing @ open ea2 ABC",
      ],
      [
        "a dead-break elbow pulled with the pads' load on it",
        "close eb2 ABC; open ea2 ABC => open ea2 ABC; close eb2 ABC | + ea2 elbow a-a2 ABC loadBreakAmps=0",
        "danger load-break @ open ea2 ABC",
      ],
      [
        "switched without a permit",
        "request-permit; receive-permit; confirm => note | release-permit => note",
        "danger permit-first @ close eb2 ABC",
      ],
    ],
  },
  {
    job: "a larger service for one house, with its meter, while the neighbour stays on",
    practice:
      "The main drops the load, the meter comes out, the old drop is cut off at the pole in gloves, legs first, neutral last. The new one is hung " +
      "in gloves and made up neutral first. Volts are read at the meter before it goes back; the main closes last.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p2   A    fuse=K10
      t1    transformer  p2-p3   A    connection=single kva=37.5 primaryKv=7.2 secondaryV=240
      m2    meter        p3-k1   12
      ld2   load         k1      12   connection=delta kw=4 customers=1
      l1    lead         p3-p31  12
      sv    span         p31-h0  12   construction=secondary lengthM=28 leave=gone
      nv    span         p31-h0  12   construction=secondary lengthM=28 planned=true
      m1    meter        h0-h1   12
      mn1   main         h1-h2   12
      ld1   load         h2      12   connection=wye kw=6 customers=1
      h0    point        kind=service
      h1    point        kind=service
      h2    point        kind=service
      k1    point        kind=service
      w1    work         p31     12   does=sv,nv`,
    order: `
      brief; barricade p3; open mn1
      pull m1 method gloves gloveClass 0; tag m1
      cut l1 12 with lead-cutters method gloves gloveClass 0
      cut l1 N with lead-cutters method gloves gloveClass 0; tag l1
      check-detector; test p31 12N; check-detector
      work w1 method gloves gloveClass 0
      all-clear; confirm; untag l1
      join l1 N method gloves gloveClass 0
      join l1 12 method gloves gloveClass 0
      test h0 12 expect live
      untag m1; replace m1 method gloves gloveClass 0
      close mn1`,
    mistakes: [
      [
        "cut with the house's load on it",
        "- open mn1 | pull m1 method gloves gloveClass 0; tag m1 => note | untag m1; replace m1 method gloves gloveClass 0; close mn1 => note",
        "danger load-break @ cut l1 12 with lead-cutters method gloves gloveClass 0",
      ],
      [
        "the neutral cut first, the house on",
        "open mn1 => cut l1 N with lead-cutters method gloves gloveClass 0; open mn1 | cut l1 N with lead-cutters method gloves gloveClass 0; tag l1 => tag l1",
        "danger open-neutral @ cut l1 N with lead-cutters method gloves gloveClass 0",
      ],
      [
        "made up with bare hands",
        "join l1 12 method gloves gloveClass 0 => join l1 12",
        "danger hands-on-live @ join l1 12",
      ],
      [
        "the legs made up before the neutral, the house on",
        "- open mn1 | pull m1 method gloves gloveClass 0; tag m1 => note | untag m1; replace m1 method gloves gloveClass 0; close mn1 => note | join l1 N method gloves gloveClass 0; join l1 12 method gloves gloveClass 0 => join l1 12 method gloves gloveClass 0; join l1 N method gloves gloveClass 0",
        "danger open-neutral @ join l1 12 method gloves gloveClass 0",
      ],
      [
        "the meter picks up the house",
        "untag m1; replace m1 method gloves gloveClass 0; close mn1 => close mn1; untag m1; replace m1 method gloves gloveClass 0",
        "danger pick-up-order @ replace m1 method gloves gloveClass 0",
      ],
    ],
  },
  {
    job: "a tree has torn a secondary down, with two houses beyond and panels on one roof",
    practice:
      "Guarded, then the cutout. Both houses are cut off at their mains and their meters come out: panels or a machine could feed the wire on the " +
      "ground. Both ends tested and grounded; volts are read before anybody is put back.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1800
      c1    cutout       p1-p2   A    fuse=K10
      t1    transformer  p2-p3   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      ma    meter        p3-ha   12
      lda   load         ha      12   connection=delta kw=4 customers=1
      v1    span         p3-p4   12   construction=secondary lengthM=40 parted=12
      m1    meter        p4-h1   12
      mn1   main         h1-h2   12
      ld1   load         h2      12   connection=wye kw=4 customers=1
      m2    meter        p4-k1   12
      mn2   main         k1-k2   12
      ld2   load         k2      12   connection=wye kw=3 customers=1
      pv    generator    k2      12   kva=5 volts=240 interface=inverter
      ha    point        kind=service
      h1    point        kind=service
      h2    point        kind=service
      k1    point        kind=service
      k2    point        kind=service
      w1    work         p4      12   does=v1`,
    order: `
      brief; barricade p3; barricade p4
      request-permit; receive-permit; confirm
      open c1 A with load-break-tool; tag c1
      open mn1; pull m1; tag m1
      open mn2; pull m2; tag m2
      check-detector; test p3 12; test p4 12; check-detector
      ground p3 12 cable 2/0 as g1; ground p4 12 cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      untag c1; stand-clear; close c1 A
      test p4 12 expect live
      untag m1; replace m1 method gloves gloveClass 0; close mn1
      untag m2; replace m2 method gloves gloveClass 0; close mn2`,
    mistakes: [
      [
        "nobody keeps people off the wire",
        "- barricade p3 | - barricade p4",
        "danger guard-first @ open c1 A with load-break-tool",
      ],
      [
        "a house has a machine on a cord, and keeps its meter",
        "open mn1; pull m1; tag m1 => note | untag m1; replace m1 method gloves gloveClass 0; close mn1 => note | + gx generator h2 12 kva=6 volts=240 on=true",
        "danger ground-on-live @ ground p4 12 cable 2/0 as g2",
      ],
      [
        "grounded toward the transformer alone",
        "- ground p4 12 cable 2/0 as g2 | - unground g2 first phase",
        "danger work-not-safe @ work w1",
      ],
      [
        "the houses' end not tested",
        "- test p4 12",
        "danger test-before-ground @ ground p4 12 cable 2/0 as g2",
      ],
      ["closed before the legs are up", "- work w1", "danger onto-fault @ close c1 A"],
    ],
  },
  {
    job: "after a storm two crews hold a permit each on one line",
    practice:
      "The other crew's section begins at the far switch, which hangs open with its tag: it stays as it is. Ours is opened, tagged, tested and grounded on " +
      "both sides of the break. When it is whole, our own customers come back; theirs wait for them.",
    drawing: `
      s1    source       sub1    ABC  kvLL=12.47
      m0    span         sub1-p1 ABC  lengthM=1200
      ldm   load         p1      ABC  kw=250 customers=55
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
      sp1   span         p2-p3   ABC  lengthM=90 parted=A
      sp2   span         p3-p4   ABC  lengthM=90
      ld4   load         p4      ABC  kw=60 customers=16
      sw2   disconnect   p4-p5   ABC  gang=true loadBreakAmps=600 open=ABC tagged=true blocked=true taggedBy=Crew_2
      sp3   span         p5-p6   ABC  lengthM=200
      gz    ground       p5      ABC  cable=4/0 by=Crew_2
      ld6   load         p6      ABC  kw=50 customers=14
      sw3   disconnect   p6-p7   ABC  gang=true loadBreakAmps=600 open=ABC normallyOpen=true tagged=true blocked=true taggedBy=Crew_2
      m2    span         p7-sub2 ABC  lengthM=1500
      s2    source       sub2    ABC  kvLL=12.47
      w1    work         p3      ABC  does=sp1
      job   crew=Crew_4`,
    order: `
      brief; barricade p2; barricade p3
      request-permit; receive-permit; confirm
      open sw1; block sw1; tag sw1
      check-detector; test p2 ABC; test p3 ABC; check-detector
      ground p2 ABC cable 4/0 as g1; ground p3 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      unblock sw1; untag sw1; close sw1`,
    mistakes: [
      [
        "their switch closed, so that everybody has supply",
        "unblock sw1; untag sw1; close sw1 => unblock sw1; untag sw1; close sw1; unblock sw2; close sw2",
        "danger others-tag @ close sw2",
      ],
      [
        "their permit given back with ours",
        "receive-permit => receive-permit with Crew_4 | release-permit => release-permit with Crew_2",
        "danger others-tag @ release-permit with Crew_2",
      ],
      ["no tag of our own at our end", "- tag sw1 | - untag sw1", "danger tag-each @ test p2 ABC"],
      ["closed before the wire is up", "- work w1", "danger onto-fault @ close sw1"],
      [
        "their ground set taken off",
        "barricade p3 => barricade p3; unground gz first phase",
        "danger others-tag @ unground gz first phase",
      ],
    ],
  },
];
