import { type EverydayJob, PERMIT, RELEASE } from "./everydayJob";

/** What a crew meets once a year: devices that stand in few lines, and jobs that begin where other people left off. */
export const RARE_JOBS: readonly EverydayJob[] = [
  {
    job: "change a capacitor bank that a remote switch and cutouts stand ahead of",
    practice:
      "The switch, which is made for it, breaks the bank's current and is blocked; then the cutouts open on nothing, a gap that " +
      "can be seen, and are tagged. Five minutes, test, short. Back: cutouts first on the open switch, then the switch.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      ld1   load         p1      ABC  kw=700 kvar=400 customers=110
      q1    span         p1-p5   ABC  lengthM=35
      c5    cutout       p5-p6   ABC  fuse=K40
      swc   disconnect   p6-p7   ABC  gang=true loadBreakAmps=200 remote=true
      q2    span         p7-p8   ABC  lengthM=30
      cap1  capacitor    p8      ABC  kvar=600 kvLL=12.47 connection=wye
      w1    work         p8      ABC  does=cap1`,
    order: `
      ${PERMIT}; barricade p8
      open swc; block swc; tag swc
      open c5 ABC with extending-stick; tag c5
      wait 300
      check-detector; test p8 ABC; check-detector
      ground p8 ABC cable 2/0 as g1
      work w1
      all-clear; unground g1 first phase
      ${RELEASE}
      untag c5; stand-clear; close c5 ABC
      unblock swc; untag swc; close swc`,
    mistakes: [
      [
        "the remote switch is all that holds it, and is not blocked",
        "- block swc | - unblock swc | open c5 ABC with extending-stick; tag c5 => note | untag c5; stand-clear; close c5 ABC => note",
        "danger automatic-device @ test p8 ABC",
      ],
      [
        "the switch closed again right after it opened",
        "open swc; block swc; tag swc => open swc; close swc; open swc; block swc; tag swc",
        "danger capacitor-discharge @ close swc",
      ],
      [
        "a minute is taken for enough",
        "wait 300 => wait 60",
        "danger capacitor-discharge @ ground p8 ABC cable 2/0 as g1",
      ],
      [
        "the cutouts opened with a bare stick while the switch is closed",
        "open swc; block swc; tag swc; open c5 ABC with extending-stick; tag c5 => open c5 ABC with extending-stick; tag c5; open swc; block swc; tag swc",
        "danger load-break @ open c5 ABC with extending-stick",
      ],
      [
        "one phase shorted, all three touched",
        "ground p8 ABC cable 2/0 as g1 => ground p8 A cable 2/0 as g1",
        "danger work-not-safe @ work w1",
      ],
    ],
  },
  {
    job: "change a regulator that is stuck off neutral",
    practice:
      "It cannot be bypassed as it stands. The recloser ahead drops the load; its disconnects then open on nothing, the bypass " +
      "closes dead, and the recloser gives everybody supply while the work goes on. The new one is run to neutral and blocked " +
      "before it comes beside the bypass.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p0  ABC  lengthM=1500
      br1   recloser     p0-p01  ABC
      q1    span         p01-p1  ABC  lengthM=300
      ds    disconnect   p1-p2   ABC
      r1    regulator    p2-p3   ABC  taps={"A":9,"B":9,"C":8} condition=seized
      dl    disconnect   p3-p4   ABC
      by    disconnect   p1-p4   ABC  open=ABC normallyOpen=true
      sp1   span         p4-p5   ABC  lengthM=1200
      ld1   load         p5      ABC  kw=800 customers=120
      w1    work         p2      ABC  does=r1`,
    order: `
      ${PERMIT}; barricade p2
      open br1
      open dl ABC; tag dl; block dl
      open ds ABC; tag ds; block ds
      close by ABC
      close br1
      cover p1; cover p4
      check-detector; test p2 ABC; test p3 ABC; check-detector
      ground p2 ABC cable 4/0 as g1; ground p3 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover p1; uncover p4
      set-position r1 to neutral; block r1
      ${RELEASE}
      unblock ds; untag ds; close ds ABC
      unblock dl; untag dl; close dl ABC
      open by ABC
      unblock r1`,
    mistakes: [
      [
        "bypassed as it stands",
        "open br1; open dl ABC; tag dl; block dl; open ds ABC; tag ds; block ds; close by ABC; close br1 => close by ABC; open dl ABC; tag dl; block dl; open ds ABC; tag ds; block ds",
        "danger regulator-neutral @ close by ABC",
      ],
      [
        "its disconnect opened with the load on it",
        "open br1; open dl ABC => open dl ABC; open br1",
        "danger load-break @ open dl ABC",
      ],
      [
        "the new one put beside the bypass off neutral",
        "- set-position r1 to neutral",
        "danger regulator-neutral @ close dl ABC",
      ],
      [
        "the bypass opened before the regulator takes the load",
        "unblock dl; untag dl; close dl ABC; open by ABC => open by ABC; unblock dl; untag dl; close dl ABC",
        "danger load-break @ open by ABC",
      ],
      ["a set left on its load side", "- unground g2 first phase", "danger grounds-left @ close ds ABC"],
    ],
  },
  {
    job: "renew a burned jumper at a dead-end pole, the far part on the other station meanwhile",
    practice:
      "It is held before anybody climbs. Both switches open, the far part comes back by the tie, break before make. The jumper " +
      "comes off, so both sides of it have their own ground.",
    drawing: `
      s1    source       sub1    ABC  kvLL=12.47
      m1    span         sub1-p1 ABC  lengthM=1000
      ld1   load         p1      ABC  kw=200 customers=50
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
      sp1   span         p2-p3   ABC  lengthM=80
      j1    lead         p3-p4   ABC  condition=burned
      sp2   span         p4-p5   ABC  lengthM=80
      sw2   disconnect   p5-p6   ABC  gang=true loadBreakAmps=600
      m2    span         p6-p7   ABC  lengthM=900
      ld2   load         p7      ABC  kw=150 customers=35
      tie   disconnect   p7-p8   ABC  gang=true loadBreakAmps=600 open=ABC normallyOpen=true
      m3    span         p8-sub2 ABC  lengthM=1500
      s2    source       sub2    ABC  kvLL=12.47
      w1    work         p3      ABC  does=j1`,
    order: `
      ${PERMIT}; secure j1; barricade p3
      open sw1; block sw1; tag sw1
      open sw2; block sw2; tag sw2
      close tie
      check-detector; test p3 ABC; test p4 ABC; check-detector
      ground p3 ABC cable 4/0 as g1; ground p4 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      unblock sw1; untag sw1; close sw1
      open tie
      unblock sw2; untag sw2; close sw2`,
    mistakes: [
      [
        "the jumper cut with the line's load on it",
        "open sw1; block sw1; tag sw1 => cut j1 ABC with lead-cutters method sticks; open sw1; block sw1; tag sw1",
        "danger load-break @ cut j1 ABC with lead-cutters method sticks",
      ],
      ["nobody held it first", "- secure j1", "danger loose-hardware @ ground p3 ABC cable 4/0 as g1"],
      [
        "grounded on one side of a jumper that comes off",
        "- ground p4 ABC cable 4/0 as g2 | - unground g2 first phase",
        "danger work-not-safe @ work w1",
      ],
      [
        "fed from the other station while the far switch is still closed",
        "open sw2; block sw2; tag sw2; close tie => close tie; open sw2; block sw2; tag sw2",
        "danger not-repaired @ close tie",
      ],
      ["no tag toward the other station", "- tag sw2 | - untag sw2", "danger tag-each @ test p3 ABC"],
    ],
  },
  {
    job: "change a service pole between a transformer and a house",
    practice:
      "The house's main drops its load, the cutout opens, the meter comes out. The secondary is tested and grounded at the " +
      "bushings, where the neighbour's service hangs as well, and at the pole. The new spans are up before the meter goes back.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p2   A    fuse=K10
      t1    transformer  p2-p3   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      sv1   span         p3-p4   12   construction=secondary lengthM=30 leave=gone
      sv2   span         p4-h0   12   construction=secondary lengthM=25 leave=gone
      nv1   span         p3-p40  12   construction=secondary lengthM=31 planned=true
      nv2   span         p40-h0  12   construction=secondary lengthM=26 planned=true
      m1    meter        h0-h1   12
      mn1   main         h1-h2   12
      ld1   load         h2      12   connection=delta kw=5 customers=1
      m2    meter        p3-k1   12
      ld2   load         k1      12   connection=delta kw=4 customers=1
      h0    point        kind=service
      h1    point        kind=service
      h2    point        kind=service
      k1    point        kind=service
      w1    work         p4      12   does=sv1,sv2,nv1,nv2`,
    order: `
      brief; barricade p4
      open mn1; open c1 A with load-break-tool; tag c1
      pull m1; tag m1
      check-detector; test p3 12; test p4 12; check-detector
      ground p3 12 cable 2/0 as g1; ground p4 12 cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      all-clear; confirm
      untag c1; stand-clear; close c1 A
      test h0 12 expect live
      untag m1; replace m1 method gloves gloveClass 0; close mn1`,
    mistakes: [
      [
        "no ground on the secondary, and the neighbour's meter in",
        "- ground p3 12 cable 2/0 as g1 | - ground p4 12 cable 2/0 as g2 | - unground g2 first phase | - unground g1 first phase",
        "danger work-not-safe @ work w1",
      ],
      [
        "the meter pulled with the house on it",
        "open mn1; open c1 A with load-break-tool; tag c1; pull m1; tag m1 => pull m1; tag m1; open mn1; open c1 A with load-break-tool; tag c1",
        "danger load-break @ pull m1",
      ],
      ["not tested at the pole", "- test p4 12", "danger test-before-ground @ ground p4 12 cable 2/0 as g2"],
      [
        "the neutral cut with the house on it",
        "barricade p4 => barricade p4; cut sv1 N method gloves gloveClass 0",
        "danger open-neutral @ cut sv1 N method gloves gloveClass 0",
      ],
      ["a set left at the bushings", "- unground g1 first phase", "danger grounds-left @ close c1 A"],
    ],
  },
  {
    job: "change a street-light transformer",
    practice:
      "Lamps feed nothing back, so a ground on the primary is enough. The cutout's top stays live beside the hands and is covered. " +
      "Its volts are read when it is back.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p2   B    fuse=K6
      t1    transformer  p2-p3   B    connection=single kva=10 primaryKv=7.2 secondaryV=240 secondary=two-wire
      sv    span         p3-p4   B    construction=secondary lengthM=120
      ld1   load         p4      B    kw=3
      w1    work         p2      B    does=t1`,
    order: `
      brief; barricade p2
      open c1 B with load-break-tool; tag c1
      cover p1
      check-detector; test p2 B; test p3 B; check-detector
      ground p2 B cable 2/0 as g1
      work w1
      all-clear; unground g1 first phase
      uncover p1
      all-clear; confirm
      untag c1; stand-clear; close c1 B
      test p3 B expect live`,
    mistakes: [
      ["the cutout's top not covered", "- cover p1 | - uncover p1", "danger approach-distance @ work w1"],
      ["no tag", "- tag c1 | - untag c1", "danger tag-each @ test p2 B"],
      ["not tested", "- test p2 B", "danger test-before-ground @ ground p2 B cable 2/0 as g1"],
      [
        "the detector not proven again",
        "test p3 B; check-detector => test p3 B",
        "warning detector-check @ ground p2 B cable 2/0 as g1",
      ],
      ["closed onto its own ground", "- unground g1 first phase", "danger grounds-left @ close c1 B"],
    ],
  },
  {
    job: "a failed elbow in a pad of a half-loop",
    practice:
      "What is changed hangs in the pad, so the isolation lies beyond it: the riser on one side, the next pad's elbow on the " +
      "other. Then the next pad is fed from the other riser before the repair. The houses of this pad could feed it: its " +
      "low side is grounded too.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1000
      c1    cutout       p1-p2   A    fuse=K40 blown=A
      cb1   span         p2-a1   A    construction=cable lengthM=150
      ea1   elbow        a1-a    A    condition=burned
      f1    fault        a1      A
      ea2   elbow        a-a2    A
      ta    transformer  a-sa    A    connection=single kva=50 primaryKv=7.2 secondaryV=240
      lda   load         sa      12   connection=delta kw=10 customers=5
      cb2   span         a2-b1   A    construction=cable lengthM=120
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
      w1    work         a1      A    does=ea1,f1`,
    order: `
      ${PERMIT}; secure ea1; inspect a1; barricade a
      remove-barrel c1 A; tag c1
      open eb1 A; tag eb1
      close eb2 A
      check-detector; test a1 A; test a A; test sa 12; check-detector
      ground a1 A cable 2/0 as g1; ground a A cable 2/0 as g3; ground sa 12 cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g3 first phase; unground g1 first phase
      ${RELEASE}
      untag c1; refuse c1 A; replace-barrel c1 A; stand-clear; close c1 A
      open eb2 A; untag eb1; close eb1 A`,
    mistakes: [
      [
        "the link renewed and tried",
        "remove-barrel c1 A; tag c1 => refuse c1 A; close c1 A; remove-barrel c1 A; tag c1",
        "danger onto-fault @ close c1 A",
      ],
      [
        "fed from the other end before the next pad is parted from it",
        "open eb1 A; tag eb1; close eb2 A => close eb2 A; open eb1 A; tag eb1",
        "danger onto-fault @ close eb2 A",
      ],
      [
        "the other elbow of the same pad parked, with the other riser behind it",
        "open eb1 A; tag eb1 => open ea2 A; tag ea2 | open eb2 A; untag eb1; close eb1 A => open eb2 A; untag ea2; close ea2 A",
        "danger approach-distance @ work w1",
      ],
      [
        "the low side not grounded, with houses on it",
        "- ground sa 12 cable 2/0 as g2 | - unground g2 first phase",
        "danger secondary-backfeed @ work w1",
      ],
      ["a set left on the cable", "- unground g1 first phase", "danger grounds-left @ close c1 A"],
    ],
  },
  {
    job: "renew a link of a floating four-wire bank while the shop runs on its own machine",
    practice:
      "The shop's main opens, so that whatever its transfer switch does nothing meets. Look for the cause; the other poles open, " +
      "the link is renewed, all three close with nothing on the bank; volts are read, and the main closes last. The machine " +
      "is the customer's.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2500
      c1    cutout       p1-p2   ABC  fuse=K8 blown=B
      t1    transformer  p2-p3   ABC  connection=Y-D kva=75 primaryKv=12.47 secondaryV=240 midTap=ab neutral=false
      m1    meter        p3-h1   ABC
      mn    main         h1-h2   ABC
      tx    transfer     h2-h3-hg ABC position=generator
      gx    generator    hg      ABC  kva=60 volts=240 on=true
      ld    load         h3      ABC  connection=delta kw=25 kvar=12 customers=1
      h1    point        kind=service
      h2    point        kind=service
      h3    point        kind=service
      hg    point        kind=service`,
    order: `
      ${PERMIT}; inspect p2; inspect p3
      open mn; block mn; tag mn
      open c1 A with load-break-tool; open c1 C with load-break-tool; tag c1
      remove-barrel c1 B; refuse c1 B; replace-barrel c1 B
      ${RELEASE}
      untag c1
      stand-clear; close c1 A; stand-clear; close c1 B; stand-clear; close c1 C
      test p3 ABC expect live
      unblock mn; untag mn; close mn`,
    mistakes: [
      [
        "the main left in, and the transfer switch bridged",
        "open mn; block mn; tag mn => note | unblock mn; untag mn; close mn => note | + tx transfer h2-h3-hg ABC position=generator bridged=true",
        "danger phase-check @ close c1 A",
      ],
      ["the third pole forgotten", "- close c1 C", "danger phase-missing @ end"],
      ["the cause not looked for", "- inspect p2 | - inspect p3", "warning cause-first @ close c1 B"],
      [
        "the crew stops the shop's machine and starts it again",
        "test p3 ABC expect live => stop gx; test p3 ABC expect live; start gx",
        "danger customers-machine @ start gx",
      ],
      [
        "the main closed while one pole is still open, and the shop on the utility",
        "+ tx transfer h2-h3-hg ABC position=utility | + gx generator hg ABC kva=60 volts=240 | stand-clear; close c1 C; test p3 ABC expect live; unblock mn; untag mn; close mn => test p3 ABC expect live; unblock mn; untag mn; close mn; stand-clear; close c1 C",
        "danger phase-missing @ close mn",
      ],
    ],
  },
  {
    job: "a service drop is down in a garden, and the house is on its generator",
    practice:
      "Guarded before anything else. The house's machine stands at its end of the wire: the customer stops it, its main opens and " +
      "the meter comes out. The cutout opens for the transformer's end. Both ends tested and grounded, then spliced, the neutral too.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p2   A    fuse=K10
      t1    transformer  p2-p3   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      m2    meter        p3-k1   12
      ld2   load         k1      12   connection=delta kw=4 customers=1
      sv    span         p3-h0   12   construction=secondary lengthM=30 parted=12N
      m1    meter        h0-h1   12
      mn1   main         h1-h2   12
      ld1   load         h2      12   connection=delta kw=2 customers=1
      gx    generator    h2      12   kva=7 volts=240 on=true
      h0    point        kind=service
      h1    point        kind=service
      h2    point        kind=service
      k1    point        kind=service
      w1    work         h0      12N  does=sv`,
    order: `
      brief; barricade h0; barricade p3
      request-permit; receive-permit; confirm
      stop gx; open mn1; block mn1; tag mn1
      open c1 A with load-break-tool; tag c1
      pull m1; tag m1
      check-detector; test p3 12N; test h0 12N; check-detector
      ground p3 12 cable 2/0 as g1; ground h0 12 cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      untag c1; stand-clear; close c1 A
      test h0 12 expect live
      untag m1; replace m1 method gloves gloveClass 0
      unblock mn1; untag mn1; close mn1`,
    mistakes: [
      ["nobody keeps the children off it", "- barricade h0 | - barricade p3", "danger guard-first @ stop gx"],
      [
        "the house's machine not looked for",
        "stop gx; open mn1; block mn1; tag mn1 => note | - pull m1 | - tag m1 | untag m1; replace m1 method gloves gloveClass 0; unblock mn1; untag mn1; close mn1 => note",
        "danger ground-on-live @ ground h0 12 cable 2/0 as g2",
      ],
      [
        "grounded on the transformer's side alone",
        "- ground h0 12 cable 2/0 as g2 | - unground g2 first phase",
        "danger work-not-safe @ work w1",
      ],
      [
        "the wire taken in the hands while the transformer feeds it",
        "open c1 A with load-break-tool; tag c1 => note | untag c1; stand-clear; close c1 A => note",
        "danger ground-on-live @ ground p3 12 cable 2/0 as g1",
      ],
      [
        "the house's machine started again by the crew",
        "unblock mn1; untag mn1; close mn1 => unblock mn1; untag mn1; close mn1; start gx",
        "danger customers-machine @ start gx",
      ],
    ],
  },
  {
    job: "take a job over from the shift before, with its tags, its ground set and its permit",
    practice:
      "Each thing is handed over by its owner: permit, tag, set. The new crew tests for itself and puts its own set where it works. At " +
      "the end all of it is its own to take off.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1500
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600 open=ABC tagged=true blocked=true taggedBy=Crew_1
      sp1   span         p2-p3   ABC  lengthM=150
      gz    ground       p2      ABC  cable=4/0 by=Crew_1
      sp2   span         p3-p4   ABC  lengthM=150
      ld4   load         p4      ABC  kw=90 customers=25
      w1    work         p3      ABC
      job   crew=Crew_2 permit=held permitHolder=Crew_1`,
    order: `
      brief; barricade p3
      hand-over permit=true to Crew_2; hand-over sw1 to Crew_2; hand-over gz to Crew_2
      check-detector; test p3 ABC; check-detector
      ground p3 ABC cable 4/0 as g1
      work w1
      all-clear; unground g1 first phase; unground gz first phase
      all-clear; confirm; release-permit
      unblock sw1; untag sw1; close sw1`,
    mistakes: [
      ["their tag never handed over", "- hand-over sw1 to Crew_2", "danger others-tag @ untag sw1"],
      [
        "their set never handed over",
        "- hand-over gz to Crew_2",
        "danger others-tag @ unground gz first phase",
      ],
      [
        "the permit never handed over",
        "- hand-over permit=true to Crew_2",
        "danger others-tag @ release-permit",
      ],
      [
        "the set of the shift before forgotten",
        "- unground gz first phase",
        "danger grounds-left @ close sw1",
      ],
      [
        "closed before the permit is released",
        "all-clear; confirm; release-permit; unblock sw1; untag sw1; close sw1 => all-clear; confirm; unblock sw1; untag sw1; close sw1; release-permit",
        "danger permit-release @ close sw1",
      ],
    ],
  },
  {
    job: "change insulators on a line that a 69 kV circuit runs above",
    practice:
      "The circuit above induces volts on the dead line: the set goes on where the work is, and the test after it reads dead. The " +
      "pole's base is kept clear, since a contact would lift it; the cable carries what the other circuit would drive.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=800
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
      sp1   span         p2-p3   ABC  lengthM=300
      sp2   span         p3-p4   ABC  lengthM=300
      ld1   load         p4      ABC  kw=120 customers=30
      x1    nearby       span=sp1 relation=underbuild kvLL=69 spacingM=3 amps=150
      w1    work         p3      ABC`,
    order: `
      ${PERMIT}; ask; barricade p3
      open sw1; block sw1; tag sw1
      check-detector; test p3 ABC; check-detector
      ground p3 ABC cable 4/0 as g1
      check-detector; test p3 ABC; check-detector
      work w1
      all-clear; unground g1 first phase
      ${RELEASE}
      unblock sw1; untag sw1; close sw1`,
    mistakes: [
      [
        "grounded at the switch, not where the work is",
        "ground p3 ABC cable 4/0 as g1 => test p2 ABC; ground p2 ABC cable 4/0 as g1",
        "warning equipotential @ work w1",
      ],
      [
        "an induced line taken for dead",
        "- ground p3 ABC cable 4/0 as g1 | - unground g1 first phase",
        "danger work-not-safe @ work w1",
      ],
      [
        "a set under No. 2",
        "ground p3 ABC cable 4/0 as g1 => ground p3 ABC cable 4 as g1",
        "danger ground-rating @ ground p3 ABC cable 4 as g1",
      ],
      [
        "the neutral end taken off first",
        "unground g1 first phase => unground g1 first neutral",
        "danger ground-order @ unground g1 first neutral",
      ],
      ["people beside the pole", "- barricade p3", "warning step-touch @ work w1"],
    ],
  },
  {
    job: "change a transformer between two phases of a three-wire line",
    practice:
      "It hangs between two phases: either one alone keeps the whole winding at line voltage. Both poles open and are tagged, their " +
      "tops are covered; the line has no neutral, so the set goes to earth. The low side is grounded, since houses hang on it.",
    drawing: `
      s1    source       sub     ABC  kvLL=4.8 earthed=false
      main  span         sub-p1  ABC  lengthM=1500 neutral=false
      c1    cutout       p1-p2   AB   fuse=K15 neutral=false
      t1    transformer  p2-p3   AB   connection=single kva=25 primaryKv=4.8 secondaryV=240 neutral=false
      m1    meter        p3-h1   12
      ld1   load         h1      12   connection=delta kw=8 customers=2
      h1    point        kind=service
      w1    work         p2      AB   does=t1`,
    order: `
      brief; barricade p2
      open c1 A with load-break-tool; open c1 B with load-break-tool; tag c1
      cover p1
      check-detector; test p2 AB; test p3 12; check-detector
      ground p2 AB to earth cable 2/0 as g1; ground p3 12 cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover p1
      all-clear; confirm
      untag c1; stand-clear; close c1 A; stand-clear; close c1 B
      test p3 12 expect live`,
    mistakes: [
      [
        "one of the two poles taken for enough",
        "- open c1 B with load-break-tool",
        "danger ground-on-live @ ground p2 AB to earth cable 2/0 as g1",
      ],
      [
        "one phase tested, two grounded",
        "test p2 AB => test p2 A",
        "danger test-before-ground @ ground p2 AB to earth cable 2/0 as g1",
      ],
      ["the live tops not covered", "- cover p1 | - uncover p1", "danger approach-distance @ work w1"],
      [
        "the low side not grounded",
        "- ground p3 12 cable 2/0 as g2 | - unground g2 first phase",
        "danger secondary-backfeed @ work w1",
      ],
      ["closed onto its own ground", "- unground g1 first phase", "danger grounds-left @ close c1 B"],
    ],
  },
  {
    job: "two workplaces in one isolated section, with another station behind the tie at its end",
    practice:
      "One isolation for both, one row of tags; each place has its own set. The tie is open already, and is tagged and blocked all " +
      "the same, since the other station stands behind it. Nobody closes before both places are clear.",
    drawing: `
      s1    source       sub1    ABC  kvLL=12.47
      m1    span         sub1-p1 ABC  lengthM=1000
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
      sp1   span         p2-p3   ABC  lengthM=150
      sp2   span         p3-p4   ABC  lengthM=150
      la4   arrester     p4      ABC  condition=cracked
      sp3   span         p4-p5   ABC  lengthM=150
      ld3   load         p5      ABC  kw=60 customers=18
      tie   disconnect   p5-p6   ABC  gang=true loadBreakAmps=600 open=ABC normallyOpen=true
      m2    span         p6-sub2 ABC  lengthM=1500
      s2    source       sub2    ABC  kvLL=12.47
      w1    work         p3      ABC
      w2    work         p4      ABC  does=la4`,
    order: `
      ${PERMIT}; secure la4; barricade p3; barricade p4
      open sw1; block sw1; tag sw1
      block tie; tag tie
      check-detector; test p3 ABC; test p4 ABC; check-detector
      ground p3 ABC cable 4/0 as g1; ground p4 ABC cable 4/0 as g2
      work w1
      work w2
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      unblock tie; untag tie
      unblock sw1; untag sw1; close sw1`,
    mistakes: [
      [
        "the open tie has no tag",
        "block tie; tag tie => note | unblock tie; untag tie => note",
        "danger tag-each @ test p3 ABC",
      ],
      [
        "one of the two places has no set of its own",
        "- ground p4 ABC cable 4/0 as g2 | - unground g2 first phase",
        "warning equipotential @ work w2",
      ],
      [
        "a set off while the others are still at work",
        "all-clear; unground g2 first phase => unground g2 first phase; all-clear",
        "danger clear-before-ungrounding @ unground g2 first phase",
      ],
      [
        "the tie taken back while people are on the line",
        "work w2 => work w2; unblock tie; untag tie; block tie; tag tie",
        "danger release-order @ untag tie",
      ],
      [
        "the tie is remote, tagged, and not blocked",
        "block tie; tag tie => tag tie | unblock tie; untag tie => untag tie | + tie disconnect p5-p6 ABC gang=true loadBreakAmps=600 open=ABC normallyOpen=true remote=true",
        "danger automatic-device @ test p3 ABC",
      ],
    ],
  },
  {
    job: "cut a burning house off at the pole",
    practice:
      "Nobody gets to the meter. The cutout drops the load, since cutters break none, the neighbour with it; the service is cut in " +
      "gloves, legs first, the neutral last; then the neighbour has supply again. The service stays off.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p2   C    fuse=K10
      t1    transformer  p2-p3   C    connection=single kva=25 primaryKv=7.2 secondaryV=240
      m2    meter        p3-k1   12
      ld2   load         k1      12   connection=delta kw=4 customers=1
      l1    lead         p3-p31  12
      sv    span         p31-h0  12   construction=secondary lengthM=30
      m1    meter        h0-h1   12
      ld1   load         h1      12   connection=wye kw=6 customers=1
      h0    point        kind=service
      h1    point        kind=service
      k1    point        kind=service
      job   leave={"l1":"open"}`,
    order: `
      brief; barricade h0
      open c1 C with load-break-tool; tag c1
      check-detector; test p3 12; check-detector
      cut l1 12 with lead-cutters method gloves gloveClass 0
      cut l1 N with lead-cutters method gloves gloveClass 0
      all-clear; confirm
      untag c1; stand-clear; close c1 C
      test p3 12 expect live`,
    mistakes: [
      [
        "cut with the house's load on it",
        "open c1 C with load-break-tool; tag c1; check-detector; test p3 12; check-detector => note | untag c1; stand-clear; close c1 C => note",
        "danger load-break @ cut l1 12 with lead-cutters method gloves gloveClass 0",
      ],
      [
        "the neutral cut first on a live service",
        "barricade h0 => barricade h0; cut l1 N with lead-cutters method gloves gloveClass 0 | open c1 C with load-break-tool; tag c1; check-detector; test p3 12; check-detector => note | untag c1; stand-clear; close c1 C => note | cut l1 12 with lead-cutters method gloves gloveClass 0; cut l1 N with lead-cutters method gloves gloveClass 0 => cut l1 12 with lead-cutters method gloves gloveClass 0",
        "danger open-neutral @ cut l1 N with lead-cutters method gloves gloveClass 0",
      ],
      [
        "cut live with bare hands",
        "open c1 C with load-break-tool; tag c1; check-detector; test p3 12; check-detector => note | untag c1; stand-clear; close c1 C => note | cut l1 12 with lead-cutters method gloves gloveClass 0 => cut l1 12 with lead-cutters",
        "danger hands-on-live @ cut l1 12 with lead-cutters",
      ],
      ["not stood clear", "- stand-clear", "warning stand-clear @ close c1 C"],
      ["the neighbour left dark", "- close c1 C", "warning left-behind @ end"],
    ],
  },
];
