import { type EverydayJob, PERMIT, RELEASE } from "./everydayJob";

/** What a crew is sent to in an ordinary month. */
export const ORDINARY_JOBS: readonly EverydayJob[] = [
  {
    job: "an arrester has failed on a riser pole, and a shop hangs on the cable",
    practice:
      "It may come apart: it is held before the pole is shaken. The shop has run on two phases, so its main opens first, and stays " +
      "blocked, since it may have a machine. Two poles still carry the bank and open; the tops of the cutouts stay live beside " +
      "the hands and are covered. Link renewed once the arrester is new; volts are read before the shop comes on.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1800
      c1    cutout       p1-p2   ABC  fuse=K40 blown=B
      la1   arrester     p2      ABC  failed=B
      cb    span         p2-d1   ABC  construction=cable lengthM=30
      e1    elbow        d1-d    ABC
      t1    transformer  d-ds    ABC  connection=Yg-Yg kva=150 primaryKv=12.47 secondaryV=208
      m1    meter        ds-h1   ABC
      mn1   main         h1-h2   ABC
      ld1   load         h2      ABC  connection=delta kw=60 customers=1
      d1    point        kind=pad
      d     point        kind=pad
      ds    point        kind=pad
      h1    point        kind=service
      h2    point        kind=service
      w1    work         p2      ABC  does=la1`,
    order: `
      brief; secure la1; barricade p2
      open mn1; block mn1; tag mn1
      open c1 AC with load-break-tool; tag c1
      cover p1
      check-detector; test p2 ABC; check-detector
      ground p2 ABC cable 2/0 as g1
      work w1
      all-clear; unground g1 first phase
      uncover p1
      all-clear; confirm
      refuse c1 B; untag c1
      stand-clear; close c1 A; stand-clear; close c1 B; stand-clear; close c1 C
      test ds ABC expect live
      unblock mn1; untag mn1; close mn1`,
    mistakes: [
      [
        "the link renewed and tried",
        "open mn1; block mn1; tag mn1 => refuse c1 B; close c1 B; open mn1; block mn1; tag mn1",
        "danger onto-fault @ close c1 B",
      ],
      ["the arrester not held", "- secure la1", "danger loose-hardware @ open c1 AC with load-break-tool"],
      ["the live tops not covered", "- cover p1 | - uncover p1", "danger approach-distance @ work w1"],
      [
        "the shop's motors left on",
        "open mn1; block mn1; tag mn1 => note | unblock mn1; untag mn1; close mn1 => note",
        "warning single-phasing @ close c1 A",
      ],
      ["closed onto its own set", "- unground g1 first phase", "danger grounds-left @ close c1 A"],
    ],
  },
  {
    job: "renew the link of one phase of a school's grounded bank",
    practice:
      "A bird lies below. Each phase of a grounded bank stands for itself, so the others stay on; but the school's motors give the " +
      "open phase back, and have run on two phases: the main opens first. Volts are read before it closes.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2200
      c1    cutout       p1-p2   ABC  fuse=K12 blown=B
      t1    transformer  p2-p3   ABC  connection=Yg-Yg kva=112.5 primaryKv=12.47 secondaryV=208
      m1    meter        p3-h1   ABC
      mn1   main         h1-h2   ABC
      ld1   load         h2      ABC  connection=wye kw=30 customers=1
      ldm   load         h2      ABC  connection=delta kw=15 kvar=10
      h1    point        kind=service
      h2    point        kind=service
      job   operator=none text=the_cutouts_are_in_sight`,
    order: `
      brief; inspect p2; inspect p3
      open mn1
      remove-barrel c1 B; refuse c1 B; replace-barrel c1 B
      stand-clear; close c1 B
      test p3 ABC expect live
      close mn1`,
    mistakes: [
      ["the motors left on", "- open mn1 | - close mn1", "warning single-phasing @ close c1 B"],
      ["nobody looked for the cause", "- inspect p2 | - inspect p3", "warning cause-first @ close c1 B"],
      [
        "the open phase taken for dead, the school on",
        "- open mn1 | - close mn1 | remove-barrel c1 B => check-detector; test p2 B; check-detector; ground p2 B cable 2/0 as g1; remove-barrel c1 B",
        "danger ground-on-live @ ground p2 B cable 2/0 as g1",
      ],
      [
        "the school put back onto two phases",
        "- stand-clear | - close c1 B",
        "danger phase-missing @ close mn1",
      ],
      ["not stood clear of the barrel", "- stand-clear", "warning stand-clear @ close c1 B"],
    ],
  },
  {
    job: "a pole top has burned at the dead end of a three-phase line, with a transformer on the pole",
    practice:
      "Houses hang on the pole's own transformer and could feed the line: its cutout opens once the line is dead, and is tagged. " +
      "All three phases are tested and grounded right there.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m1    span         sub-p1  ABC  lengthM=1200
      ldm   load         p1      ABC  kw=300 customers=80
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
      sp1   span         p2-p3   ABC  lengthM=90
      sp2   span         p3-p4   ABC  lengthM=90
      c4    cutout       p4-p5   B    fuse=K10
      t4    transformer  p5-p6   B    connection=single kva=25 primaryKv=7.2 secondaryV=240
      m4    meter        p6-h4   12   count=4
      ld4   load         h4      12   connection=delta kw=12 customers=4
      h4    point        kind=service
      w1    work         p4      ABC`,
    order: `
      ${PERMIT}; barricade p4
      open sw1; block sw1; tag sw1
      open c4 B with extending-stick; tag c4
      check-detector; test p4 ABC; check-detector
      ground p4 ABC cable 4/0 as g1
      work w1
      all-clear; unground g1 first phase
      ${RELEASE}
      untag c4; close c4 B
      unblock sw1; untag sw1; close sw1`,
    mistakes: [
      [
        "a house on the pole's transformer has its machine, and its cutout stays closed",
        "open c4 B with extending-stick; tag c4 => note | untag c4; close c4 B => note | + gx generator h4 12 kva=8 volts=240",
        "danger tag-each @ work w1",
      ],
      ["no tag on the switch", "- tag sw1 | - untag sw1", "danger tag-each @ test p4 ABC"],
      [
        "grounded before a test",
        "- test p4 ABC",
        "danger test-before-ground @ ground p4 ABC cable 4/0 as g1",
      ],
      [
        "two phases grounded, three in hand",
        "ground p4 ABC cable 4/0 as g1 => ground p4 AB cable 4/0 as g1",
        "danger work-not-safe @ work w1",
      ],
      ["closed onto its own set", "- unground g1 first phase", "danger grounds-left @ close sw1"],
    ],
  },
  {
    job: "put a larger transformer in the place of a small one",
    practice:
      "The old one comes down, the new one goes up on the same leads. Both sides tested and grounded, since the houses could feed " +
      "the low side; the cutout's top is covered. Its volts are read when it is on.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2600
      c1    cutout       p1-p2   A    fuse=K10
      t1    transformer  p2-p3   A    connection=single kva=10 primaryKv=7.2 secondaryV=240 leave=gone
      t2    transformer  p2-p3   A    connection=single kva=25 primaryKv=7.2 secondaryV=240 planned=true
      m1    meter        p3-h1   12   count=2
      ld1   load         h1      12   connection=delta kw=12 customers=2
      h1    point        kind=service
      w1    work         p2      A    does=t1,t2`,
    order: `
      brief; barricade p2
      open c1 A with load-break-tool; tag c1
      cover p1
      check-detector; test p2 A; test p3 12; check-detector
      ground p2 A cable 2/0 as g1; ground p3 12 cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover p1
      all-clear; confirm
      untag c1; stand-clear; close c1 A
      test p3 12 expect live`,
    mistakes: [
      [
        "the low side not held, with houses on it",
        "- ground p3 12 cable 2/0 as g2 | - unground g2 first phase",
        "danger secondary-backfeed @ work w1",
      ],
      ["the live top not covered", "- cover p1 | - uncover p1", "danger approach-distance @ work w1"],
      [
        "the detector not proven before",
        "check-detector; test p2 A => test p2 A",
        "danger detector-check @ test p2 A",
      ],
      ["no tag on the cutout", "- tag c1 | - untag c1", "danger tag-each @ test p2 A"],
      ["closed with the low side shorted", "- unground g2 first phase", "danger grounds-left @ close c1 A"],
    ],
  },
  {
    job: "a branch lies across a line, the recloser has locked out, and another station has a tie at the far end",
    practice:
      "The bad section is cut off at both ends and tagged; the recloser and the tie give everybody else supply; then the branch comes " +
      "off between grounds. The far switch hangs open right at the work, its far side live: covered. Back with a break before a make.",
    drawing: `
      s1    source       sub1    ABC  kvLL=12.47
      m0    span         sub1-p0 ABC  lengthM=600
      r1    recloser     p0-p1   ABC  open=ABC
      m1    span         p1-p2   ABC  lengthM=800
      ld1   load         p2      ABC  kw=300 customers=70
      sw1   disconnect   p2-p3   ABC  gang=true loadBreakAmps=600
      m2    span         p3-p4   ABC  lengthM=500
      f1    fault        p4      AB   to=phases
      ld2   load         p4      ABC  kw=20 customers=6
      sw2   disconnect   p4-p5   ABC  gang=true loadBreakAmps=600
      m3    span         p5-p6   ABC  lengthM=900
      ld3   load         p6      ABC  kw=200 customers=45
      tie   disconnect   p6-p7   ABC  gang=true loadBreakAmps=600 open=ABC normallyOpen=true
      m4    span         p7-sub2 ABC  lengthM=1500
      s2    source       sub2    ABC  kvLL=12.47
      w1    work         p4      ABC  does=f1`,
    order: `
      ${PERMIT}; inspect p4; barricade p4
      open sw1; block sw1; tag sw1
      open sw2; block sw2; tag sw2
      close r1; close tie
      cover p5
      check-detector; test p4 ABC; check-detector
      ground p4 ABC cable 4/0 as g1
      work w1
      all-clear; unground g1 first phase
      uncover p5
      ${RELEASE}
      unblock sw1; untag sw1; close sw1
      open tie
      unblock sw2; untag sw2; close sw2`,
    mistakes: [
      [
        "the recloser tried once more",
        "open sw1; block sw1; tag sw1 => close r1; open sw1; block sw1; tag sw1 | close r1; close tie => close tie",
        "danger onto-fault @ close r1",
      ],
      [
        "the tie closed before the far switch is open",
        "open sw2; block sw2; tag sw2 => close tie; open sw2; block sw2; tag sw2 | close r1; close tie => close r1",
        "danger onto-fault @ close tie",
      ],
      ["no tag at the far switch", "- tag sw2 | - untag sw2", "danger tag-each @ test p4 ABC"],
      [
        "two stations put in parallel without a test of both sides",
        "open tie; unblock sw2; untag sw2; close sw2 => unblock sw2; untag sw2; close sw2; open tie",
        "warning phase-check @ close sw2",
      ],
      [
        "the live side of the far switch not covered",
        "- cover p5 | - uncover p5",
        "warning approach-distance @ work w1",
      ],
    ],
  },
  {
    job: "a secondary rack has broken where the wires of two transformers end on one pole",
    practice:
      "Two supplies end at one rack: both cutouts open and are tagged, both sides are tested and each has its own set. The leads " +
      "between them stay cut.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1500
      c1    cutout       p1-q1   A    fuse=K10
      t1    transformer  q1-r1   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      v1    span         r1-a9   12   construction=secondary lengthM=45
      m1    meter        r1-ha   12   count=3
      lda   load         ha      12   connection=delta kw=9 customers=3
      sp    span         p1-p2   A    lengthM=90
      c2    cutout       p2-q2   A    fuse=K10
      t2    transformer  q2-r2   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      v2    span         r2-b9   12   construction=secondary lengthM=45
      m2    meter        b9-hb   12   count=2
      ldb   load         hb      12   connection=delta kw=6 customers=2
      lx    lead         a9-b9   12   cut=12
      ha    point        kind=service
      hb    point        kind=service
      w1    work         a9      12
      w2    work         b9      12
      job   leave={"lx":"open"}`,
    order: `
      brief; barricade a9
      open c1 A with load-break-tool; tag c1
      open c2 A with load-break-tool; tag c2
      check-detector; test a9 12; test b9 12; check-detector
      ground a9 12 cable 2/0 as g1; ground b9 12 cable 2/0 as g2
      work w1
      work w2
      all-clear; unground g2 first phase; unground g1 first phase
      all-clear; confirm
      untag c1; stand-clear; close c1 A
      untag c2; stand-clear; close c2 A`,
    mistakes: [
      [
        "one of the two transformers left on",
        "open c2 A with load-break-tool; tag c2 => note | untag c2; stand-clear; close c2 A => note",
        "danger ground-on-live @ ground b9 12 cable 2/0 as g2",
      ],
      ["one side not tested", "- test b9 12", "danger test-before-ground @ ground b9 12 cable 2/0 as g2"],
      [
        "one side not grounded",
        "- ground b9 12 cable 2/0 as g2 | - unground g2 first phase",
        "danger work-not-safe @ work w2",
      ],
      [
        "the two secondaries joined without phasing",
        "untag c2; stand-clear; close c2 A => untag c2; stand-clear; close c2 A; join lx 12 method gloves gloveClass 0",
        "warning phase-check @ join lx 12 method gloves gloveClass 0",
      ],
      ["a set left on", "- unground g1 first phase", "danger grounds-left @ close c1 A"],
    ],
  },
  {
    job: "an excavator has hit a cable of a half-loop",
    practice:
      "The hole is guarded. Both ends of the piece are parked and tagged, the pads fed from either side. Tested and grounded at both " +
      "ends, since nothing can be tested in the hole; there the cable is proven, and then cut and spliced.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1000
      c1    cutout       p1-p2   B    fuse=K40 blown=B
      cb1   span         p2-a1   B    construction=cable lengthM=150
      ea1   elbow        a1-a    B
      ea2   elbow        a-a2    B
      ta    transformer  a-sa    B    connection=single kva=50 primaryKv=7.2 secondaryV=240
      lda   load         sa      12   connection=delta kw=10 customers=5
      cb2   span         a2-j    B    construction=cable lengthM=60
      f1    fault        j       B
      cb3   span         j-b1    B    construction=cable lengthM=70
      eb1   elbow        b1-b    B
      eb2   elbow        b-b2    B    open=B normallyOpen=true
      tb    transformer  b-sb    B    connection=single kva=50 primaryKv=7.2 secondaryV=240
      ldb   load         sb      12   connection=delta kw=10 customers=6
      cb4   span         b2-p8   B    construction=cable lengthM=200
      c8    cutout       p1-p8   B    fuse=K40
      a1    point        kind=pad
      a     point        kind=pad
      a2    point        kind=pad
      sa    point        kind=pad
      j     point        kind=pad
      b1    point        kind=pad
      b     point        kind=pad
      b2    point        kind=pad
      sb    point        kind=pad
      w1    work         j       B    does=f1,cb3`,
    order: `
      ${PERMIT}; inspect j; barricade j
      open ea2 B; tag ea2
      open eb1 B; tag eb1
      close eb2 B
      refuse c1 B; stand-clear; close c1 B
      check-detector; test a2 B; test b1 B; check-detector
      ground a2 B cable 2/0 as g1; ground b1 B cable 2/0 as g2
      test j B with spike
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      untag ea2; close ea2 B
      open eb2 B; untag eb1; close eb1 B`,
    mistakes: [
      [
        "the link renewed and tried",
        "open ea2 B; tag ea2 => refuse c1 B; close c1 B; open ea2 B; tag ea2 | refuse c1 B; stand-clear; close c1 B => note",
        "danger onto-fault @ close c1 B",
      ],
      [
        "the bad cable fed from the other riser",
        "open eb1 B; tag eb1; close eb2 B => close eb2 B; open eb1 B; tag eb1",
        "danger onto-fault @ close eb2 B",
      ],
      [
        "grounded at one end alone, and cut in the middle",
        "- ground b1 B cable 2/0 as g2 | - unground g2 first phase",
        "danger work-not-safe @ work w1",
      ],
      ["no tag at the far elbow", "- tag eb1 | - untag eb1", "danger tag-each @ test a2 B"],
      ["nobody proves the cable in the hole", "- test j B with spike", "danger work-not-safe @ work w1"],
      [
        "a detector held to the cable in the hole",
        "test j B with spike => check-detector; test j B; check-detector",
        "danger work-not-safe @ work w1",
      ],
      ["a set left on at the far end", "- unground g2 first phase", "danger grounds-left @ close ea2 B"],
    ],
  },
  {
    job: "change the metering unit of a plant that takes its power at line voltage",
    practice:
      "The plant has a machine: its breaker drops the load, its own gang switch opens and is tagged, the line's switch as well. What is " +
      "changed comes out of the line, so each side has its own set. The machine is the plant's.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      m1    span         sub-p1  ABC  lengthM=1500
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
      q1    span         p2-p3   ABC  lengthM=40
      pm    lead         p3-p4   ABC
      q2    span         p4-p5   ABC  lengthM=40
      sw2   disconnect   p5-p6   ABC  gang=true loadBreakAmps=600
      cb    span         p6-v1   ABC  construction=cable lengthM=60
      brc   breaker      v1-v2   ABC
      t1    transformer  v2-v3   ABC  connection=D-Yg kva=500 primaryKv=12.47 secondaryV=480
      ld1   load         v3      ABC  connection=delta kw=250 customers=1
      gx    generator    v3      ABC  kva=300 volts=480
      v1    point        kind=station
      v2    point        kind=station
      v3    point        kind=station
      w1    work         p3      ABC  does=pm`,
    order: `
      ${PERMIT}; barricade p3
      open brc
      open sw2; block sw2; tag sw2
      open sw1; block sw1; tag sw1
      check-detector; test p3 ABC; test p4 ABC; check-detector
      ground p3 ABC cable 4/0 as g1; ground p4 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      unblock sw1; untag sw1; close sw1
      test p5 ABC expect live
      unblock sw2; untag sw2; close sw2
      close brc`,
    mistakes: [
      [
        "the plant's breaker taken for enough",
        "open sw2; block sw2; tag sw2 => note | unblock sw2; untag sw2; close sw2 => note",
        "danger automatic-device @ test p3 ABC",
      ],
      ["no tag toward the plant", "- tag sw2 | - untag sw2", "danger tag-each @ test p3 ABC"],
      [
        "grounded on the line's side alone",
        "- ground p4 ABC cable 4/0 as g2 | - unground g2 first phase",
        "danger work-not-safe @ work w1",
      ],
      [
        "the plant's machine started by the crew",
        "close brc => close brc; start gx",
        "danger customers-machine @ start gx",
      ],
      [
        "a tag off before the permit is given back",
        "all-clear; unground g2 first phase => untag sw1; all-clear; unground g2 first phase | unblock sw1; untag sw1; close sw1 => unblock sw1; close sw1",
        "danger release-order @ untag sw1",
      ],
    ],
  },
  {
    job: "a leg has burned off in a pedestal that two houses hang on",
    practice:
      "The houses' mains open, so that the connector carries nothing when it is made up. The leg that is off is fed back across the " +
      "houses' things: test everything, gloves on. Both legs are read before the mains close.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1000
      c1    cutout       p1-p2   A    fuse=K20
      cb    span         p2-a1   A    construction=cable lengthM=120
      e1    elbow        a1-a    A
      t1    transformer  a-as    A    connection=single kva=50 primaryKv=7.2 secondaryV=240
      us    span         as-d0   12   construction=secondary lengthM=40
      lx    lead         d0-d1   12   cut=1
      m1    meter        d1-h1   12
      mn1   main         h1-h2   12
      ld1   load         h2      12   connection=wye kw=4 customers=1
      m2    meter        d1-k1   12
      mn2   main         k1-k2   12
      ld2   load         k2      12   connection=wye kw=3 customers=1
      a1    point        kind=pad
      a     point        kind=pad
      as    point        kind=pad
      d0    point        kind=pad
      d1    point        kind=pad
      h1    point        kind=service
      h2    point        kind=service
      k1    point        kind=service
      k2    point        kind=service`,
    order: `
      brief; inspect d0; open mn1; open mn2
      check-detector; test d0 12N expect live; check-detector
      join lx 1 method gloves gloveClass 0
      test d1 12 expect live
      close mn1; close mn2`,
    mistakes: [
      [
        "made up with bare hands",
        "join lx 1 method gloves gloveClass 0 => join lx 1",
        "danger hands-on-live @ join lx 1",
      ],
      [
        "made up with the houses on it",
        "- open mn1 | - open mn2 | - close mn1 | - close mn2",
        "danger pick-up-order @ join lx 1 method gloves gloveClass 0",
      ],
      [
        "the good leg taken off with bare hands",
        "open mn1; open mn2 => open mn1; open mn2; cut lx 2 with lead-cutters",
        "danger hands-on-live @ cut lx 2 with lead-cutters",
      ],
      [
        "the neutral cut while the houses are on",
        "open mn1; open mn2 => cut lx N method gloves gloveClass 0; open mn1; open mn2",
        "danger open-neutral @ cut lx N method gloves gloveClass 0",
      ],
      ["a house left dark", "- close mn2", "warning left-behind @ end"],
    ],
  },
  {
    job: "the neutral of a tap has broken, and houses hang beyond the break",
    practice:
      "An open neutral is a hot conductor: the tap is made dead and blocked, since a mistake would lift the neutral in hand, the houses cut off, phase and neutral tested on both sides of the " +
      "break, and the phase grounded at both.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1500
      ldm   load         p1      ABC  kw=200 customers=50
      c1    cutout       p1-p2   B    fuse=K25
      sp1   span         p2-p3   B    lengthM=80
      sp2   span         p3-p4   B    lengthM=80 parted=N
      c4    cutout       p4-p5   B    fuse=K10
      t4    transformer  p5-p6   B    connection=single kva=25 primaryKv=7.2 secondaryV=240
      m4    meter        p6-h4   12   count=3
      ld4   load         h4      12   connection=delta kw=10 customers=3
      h4    point        kind=service
      w1    work         p3      BN   does=sp2`,
    order: `
      ${PERMIT}; barricade p3; barricade p4
      open c1 B with load-break-tool; block c1; tag c1
      open c4 B with extending-stick; tag c4
      check-detector; test p3 BN; test p4 BN; check-detector
      ground p3 B cable 2/0 as g1; ground p4 B cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      untag c4; close c4 B
      unblock c1; untag c1; stand-clear; close c1 B`,
    mistakes: [
      [
        "the neutral taken for dead because it is one",
        "test p3 BN; test p4 BN => test p3 B; test p4 B",
        "danger work-not-safe @ work w1",
      ],
      [
        "a house beyond the break is on its machine, and its cutout stays closed",
        "open c4 B with extending-stick; tag c4 => note | untag c4; close c4 B => note | + gx generator h4 12 kva=8 volts=240 on=true",
        "danger ground-on-live @ ground p4 B cable 2/0 as g2",
      ],
      ["no tag on the tap's cutout", "- tag c1 | - untag c1", "danger tag-each @ test p3 BN"],
      ["a set left on", "- unground g1 first phase", "danger grounds-left @ close c1 B"],
      [
        "the detector not proven before",
        "check-detector; test p3 BN => test p3 BN",
        "danger detector-check @ test p3 BN",
      ],
    ],
  },
];
