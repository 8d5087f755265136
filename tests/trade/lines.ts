import { type EverydayJob, PERMIT, RELEASE } from "./everydayJob";

/** Wires, clamps and cutouts of overhead lines. */
export const LINE_JOBS: readonly EverydayJob[] = [
  {
    job: "a wire down in the road, and a house beyond it on its generator",
    practice:
      "Guard the wire before anything else. The house's machine feeds the far end at line voltage: the customer shuts it off, " +
      "and its cutout is opened and tagged as well. The source's barrel is out. Tested and grounded on both sides of the " +
      "break (NIOSH FACE 90-02), then spliced. The machine stays off: it is the customer's.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p2   A    fuse=K25 blown=A
      sp1   span         p2-p3   A    lengthM=60
      sp2   span         p3-p4   A    lengthM=60 parted=A
      f1    fault        p3      A    to=earth ohms=40
      c3    cutout       p4-p5   A    fuse=K10
      t3    transformer  p5-p6   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      m3    meter        p6-h3   12
      ld3   load         h3      12   connection=delta kw=2 customers=1
      gx    generator    h3      12   kva=8 volts=240 on=true
      h3    point        kind=service
      w1    work         p3      A    does=sp2,f1`,
    order: `
      brief; barricade p3; barricade p4
      request-permit; receive-permit; confirm
      stop gx; open c3 A with load-break-tool; tag c3
      remove-barrel c1 A; tag c1
      check-detector; test p3 A; test p4 A; check-detector
      ground p3 A cable 2/0 as g1; ground p4 A cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      untag c1; refuse c1 A; replace-barrel c1 A; stand-clear; close c1 A
      untag c3; stand-clear; close c3 A`,
    mistakes: [
      ["nobody guards the wire first", "- barricade p3 | - barricade p4", "danger guard-first @ stop gx"],
      [
        "the link renewed and closed onto the wire in the road",
        "stop gx; open c3 A with load-break-tool => refuse c1 A; close c1 A; stop gx; open c3 A with load-break-tool",
        "danger onto-fault @ close c1 A",
      ],
      [
        "the house's machine not looked for",
        "- stop gx | - open c3 A with load-break-tool | - tag c3 | - untag c3 | - close c3 A",
        "danger ground-on-live @ ground p4 A cable 2/0 as g2",
      ],
      [
        "grounded on one side of the break only",
        "- ground p4 A cable 2/0 as g2 | - unground g2 first phase",
        "danger work-not-safe @ work w1",
      ],
      [
        "the customer's machine started again",
        "stand-clear; close c3 A => stand-clear; close c3 A; start gx",
        "danger customers-machine @ start gx",
      ],
    ],
  },
  {
    job: "renew a span that another circuit crosses",
    practice:
      "A contact with the crossing circuit would put it on the span: the ends are grounded with cable that carries it, the base " +
      "is kept clear, and the operator holds the other circuit's reclosing. The remote switch is blocked and tagged.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=300
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600 remote=true
      sq0   span         p2-p3   ABC  lengthM=40
      sp1   span         p3-p4   ABC  lengthM=80
      ld1   load         p4      ABC  kw=200
      x1    nearby       span=sp1 relation=crossing kvLL=34.5 spacingM=3
      w1    work         p3      ABC  does=sp1`,
    order: `
      ${PERMIT}; ask; barricade p3; barricade p4
      open sw1; block sw1; tag sw1
      check-detector; test p3 ABC; test p4 ABC; check-detector
      ground p3 ABC cable 4/0 as g1; ground p4 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      unblock sw1; untag sw1; close sw1`,
    mistakes: [
      [
        "grounds of No. 2, which the crossing circuit would part",
        "ground p3 ABC cable 4/0 as g1 => ground p3 ABC cable 2 as g1 | ground p4 ABC cable 4/0 as g2 => ground p4 ABC cable 2 as g2",
        "danger ground-rating @ ground p3 ABC cable 2 as g1",
      ],
      [
        "grounds whose cable is under No. 2",
        "ground p3 ABC cable 4/0 as g1 => ground p3 ABC cable 4 as g1",
        "danger ground-rating @ ground p3 ABC cable 4 as g1",
      ],
      [
        "the remote switch not blocked",
        "- block sw1 | - unblock sw1",
        "danger automatic-device @ test p3 ABC",
      ],
      ["nobody kept off the pole's base", "- barricade p3", "warning step-touch @ work w1"],
      [
        "no set at the place of work",
        "- ground p3 ABC cable 4/0 as g1 | - unground g1 first phase",
        "warning equipotential @ work w1",
      ],
    ],
  },
  {
    job: "replace a burned tap clamp",
    practice:
      "It is held with a second stick before the pole is shaken. The cutout below drops the load; the clamp then carries nothing " +
      "and is lifted, secured and tagged. It goes on again with the cutout open, and the cutout picks up the load.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      k1    clamp        p1-p2   A    condition=burned
      sq1   span         p2-p3   A    lengthM=30
      c1    cutout       p3-p4   A    fuse=K10
      t1    transformer  p4-p5   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      m1    meter        p5-h1   12
      ld1   load         h1      12   connection=delta kw=10 customers=2
      h1    point        kind=service
      w1    work         p2      A    does=k1`,
    order: `
      brief; secure k1; barricade p2
      open c1 A with load-break-tool; tag c1
      lift k1 A with clamp-stick; block k1; tag k1; cover p1
      check-detector; test p2 A; check-detector
      ground p2 A cable 2/0 as g1
      work w1
      all-clear; unground g1 first phase
      all-clear; confirm; uncover p1
      untag k1; unblock k1; attach k1 A with clamp-stick
      untag c1; stand-clear; close c1 A`,
    mistakes: [
      [
        "the clamp lifted with the load on it",
        "open c1 A with load-break-tool; tag c1 => lift k1 A with clamp-stick; open c1 A with load-break-tool; tag c1 | lift k1 A with clamp-stick; block k1 => block k1",
        "danger load-break @ lift k1 A with clamp-stick",
      ],
      [
        "the pole shaken before it is secured",
        "- secure k1",
        "danger loose-hardware @ lift k1 A with clamp-stick",
      ],
      [
        "the load picked up by the clamp",
        "untag k1; unblock k1; attach k1 A with clamp-stick => untag c1; close c1 A; untag k1; unblock k1; attach k1 A with clamp-stick | untag c1; stand-clear; close c1 A => note",
        "danger pick-up-order @ attach k1 A with clamp-stick",
      ],
      [
        "the ground off while somebody is up there",
        "all-clear; unground g1 first phase => unground g1 first phase",
        "danger clear-before-ungrounding @ unground g1 first phase",
      ],
      [
        "the burned clamp put back on, and the load on it",
        "check-detector; test p2 A; check-detector => untag k1; unblock k1; attach k1 A with clamp-stick; check-detector; test p2 A; check-detector",
        "danger not-repaired @ attach k1 A with clamp-stick",
      ],
    ],
  },
  {
    job: "after a storm: restore what can be restored, then mend the section in the middle",
    practice:
      "The wire that is down is guarded. The bad section is cut off at both ends, dead, and everybody else gets supply back " +
      "before the repair: the first section from its own breaker, the last one by the tie. Both ends of the break grounded. " +
      "Back to normal: the tie opened before the last switch closes, so that two stations are never in parallel.",
    drawing: `
      s1    source       sub1    ABC  kvLL=12.47
      br1   breaker      sub1-p0 ABC  open=ABC
      m1    span         p0-p1   ABC  lengthM=1000
      ld1   load         p1      ABC  kw=300 customers=40
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
      m2    span         p2-p3   ABC  lengthM=300 parted=B
      f1    fault        p2      B    to=earth ohms=20
      m2b   span         p3-p4   ABC  lengthM=300
      ld2   load         p4      ABC  kw=100 customers=12
      sw2   disconnect   p4-p5   ABC  gang=true loadBreakAmps=600
      m3    span         p5-p6   ABC  lengthM=800
      ld3   load         p6      ABC  kw=200 customers=26
      sw3   disconnect   p6-p7   ABC  gang=true loadBreakAmps=600 open=ABC normallyOpen=true
      m4    span         p7-sub2 ABC  lengthM=1500
      s2    source       sub2    ABC  kvLL=12.47
      w1    work         p2      ABC  does=m2,f1`,
    order: `
      brief; barricade p2; barricade p3
      request-permit; receive-permit; confirm
      open sw1; block sw1; tag sw1
      open sw2; block sw2; tag sw2
      close br1
      close sw3
      cover p1
      check-detector; test p2 ABC; test p3 ABC; check-detector
      ground p2 ABC cable 4/0 as g1; ground p3 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover p1
      ${RELEASE}
      unblock sw1; untag sw1; close sw1
      open sw3; unblock sw2; untag sw2; close sw2`,
    mistakes: [
      [
        "the breaker closed onto the broken wire",
        "open sw1; block sw1; tag sw1 => close br1; open sw1; block sw1; tag sw1 | close br1; close sw3 => close sw3",
        "danger onto-fault @ close br1",
      ],
      [
        "the tie closed onto the broken wire from the other side",
        "open sw2; block sw2; tag sw2 => close sw3; open sw2; block sw2; tag sw2 | close br1; close sw3 => close br1",
        "danger onto-fault @ close sw3",
      ],
      ["the far end not tagged", "- tag sw2 | - untag sw2", "danger tag-each @ test p2 ABC"],
      ["the wire not guarded", "- barricade p2 | - barricade p3", "danger guard-first @ open sw1"],
      [
        "two stations put in parallel without phasing",
        "open sw3; unblock sw2; untag sw2; close sw2 => unblock sw2; untag sw2; close sw2; open sw3",
        "warning phase-check @ close sw2",
      ],
    ],
  },
  {
    job: "move a pole while the tap beyond it stays fed from the other end",
    practice:
      "Both sides of the tie are tested for phase, the tie closed, the tap taken off the old way, which loses nobody. The two " +
      "spans to the old pole go, two new ones come. On the way back the same: the old way closed after a test, then the tie.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1500
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
      sq2   span         p2-p20  ABC  lengthM=40
      sp2   span         p20-p3  ABC  lengthM=60 leave=gone
      sp3   span         p3-p40  ABC  lengthM=60 leave=gone
      sp2n  span         p20-p9  ABC  lengthM=65 planned=true
      sp3n  span         p9-p40  ABC  lengthM=65 planned=true
      sq4   span         p40-p4  ABC  lengthM=40
      sw4   disconnect   p4-p5   ABC  gang=true loadBreakAmps=600
      sp5   span         p5-p6   ABC  lengthM=100
      ld5   load         p6      ABC  kw=150 customers=20
      sw9   disconnect   p6-p7   ABC  gang=true loadBreakAmps=600 open=ABC normallyOpen=true
      sp7   span         p1-p7   ABC  lengthM=400
      w1    work         p3      ABC  does=sp2,sp3,sp2n,sp3n`,
    order: `
      ${PERMIT}; barricade p3; barricade p20; barricade p40
      test p6 ABC expect live; test p7 ABC expect live; close sw9
      open sw4; block sw4; tag sw4
      open sw1; block sw1; tag sw1
      check-detector; test p3 ABC; test p20 ABC; test p40 ABC; check-detector
      ground p3 ABC cable 4/0 as g1; ground p20 ABC cable 4/0 as g2; ground p40 ABC cable 4/0 as g3
      work w1
      all-clear; unground g3 first phase; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      unblock sw1; untag sw1; close sw1
      test p4 ABC expect live; test p5 ABC expect live
      unblock sw4; untag sw4; close sw4
      open sw9`,
    mistakes: [
      [
        "the loop closed without phasing",
        "- test p6 ABC expect live | - test p7 ABC expect live",
        "warning phase-check @ close sw9",
      ],
      ["the tap's switch has no tag", "- tag sw4 | - untag sw4", "danger tag-each @ test p3 ABC"],
      [
        "a ground left where the new span begins",
        "- unground g2 first phase",
        "danger grounds-left @ close sw1",
      ],
      [
        "the line closed while people are on it",
        "work w1 => work w1; close sw1 | unblock sw1; untag sw1; close sw1 => untag sw1 | - block sw1",
        "danger grounds-left @ close sw1",
      ],
      ["the tie left closed at the end", "- open sw9", "warning left-behind @ end"],
    ],
  },
  {
    job: "replace a cracked arrester beside a cutout",
    practice:
      "It is held before the pole is shaken. The cutout drops the load, then the tap clamp above it is lifted: otherwise the " +
      "cutout's top stands at line voltage beside the hands. Test and ground between the two.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p0  ABC  lengthM=2000
      k1    clamp        p0-p1   B
      sq1   span         p1-p2   B    lengthM=30
      c1    cutout       p2-p3   B    fuse=K10
      la1   arrester     p3      B    condition=cracked
      t1    transformer  p3-p4   B    connection=single kva=25 primaryKv=7.2 secondaryV=240
      m1    meter        p4-h1   12
      ld1   load         h1      12   connection=delta kw=7 customers=3
      h1    point        kind=service
      w1    work         p3      B    does=la1`,
    order: `
      brief; secure la1; barricade p3
      open c1 B with load-break-tool; tag c1
      lift k1 B with clamp-stick; block k1; tag k1
      check-detector; test p2 B; test p3 B; test p4 12; check-detector
      ground p3 B cable 2/0 as g1; ground p2 B cable 2/0 as g3; ground p4 12 cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g3 first phase; unground g1 first phase
      all-clear; confirm
      untag k1; unblock k1; attach k1 B with clamp-stick
      untag c1; stand-clear; close c1 B`,
    mistakes: [
      [
        "worked with the cutout's top at line voltage",
        "lift k1 B with clamp-stick; block k1; tag k1 => note | test p2 B; test p3 B => test p3 B | - ground p2 B cable 2/0 as g3 | - unground g3 first phase | untag k1; unblock k1; attach k1 B with clamp-stick => note",
        "danger approach-distance @ work w1",
      ],
      ["the arrester not held", "- secure la1", "danger loose-hardware @ open c1 B with load-break-tool"],
      [
        "the load broken with a bare stick",
        "open c1 B with load-break-tool => open c1 B with extending-stick | + ld1 load h1 12 connection=delta kw=90 customers=3",
        "danger load-break @ open c1 B with extending-stick",
      ],
      ["nobody said that all are clear", "all-clear; confirm => note", "danger all-clear-first @ close c1 B"],
      [
        "not stood clear of the barrel",
        "stand-clear; close c1 B => close c1 B",
        "warning stand-clear @ close c1 B",
      ],
    ],
  },
  {
    job: "put a new transformer's clamp on a live line with a stick",
    practice:
      "Live work has its method: sticks, reclosing held, a second person. The cutout stays open while the clamp goes on; it " +
      "picks up the transformer.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      br1   recloser     sub-p0  ABC
      main  span         p0-p1   ABC  lengthM=2000
      k1    clamp        p1-p2   A    open=A
      sq1   span         p2-p3   A    lengthM=30
      c1    cutout       p3-p4   A    fuse=K10 open=A
      t1    transformer  p4-p5   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      m1    meter        p5-h1   12
      ld1   load         h1      12   connection=delta kw=5 customers=1
      h1    point        kind=service`,
    order: `
      ${PERMIT}
      block br1
      attach k1 A with clamp-stick method sticks
      stand-clear; close c1 A
      unblock br1
      release-permit`,
    mistakes: [
      [
        "put on by hand",
        "attach k1 A with clamp-stick method sticks => attach k1 A method bare",
        "danger hands-on-live @ attach k1 A method bare",
      ],
      [
        "gloves for 500 V on 7 200 V",
        "attach k1 A with clamp-stick method sticks => attach k1 A method gloves gloveClass 00",
        "danger hands-on-live @ attach k1 A method gloves gloveClass 00",
      ],
      [
        "reclosing not held",
        "- block br1 | - unblock br1",
        "warning hands-on-live @ attach k1 A with clamp-stick method sticks",
      ],
      [
        "alone above 600 V",
        "+ job people=1",
        "warning hands-on-live @ attach k1 A with clamp-stick method sticks",
      ],
      [
        "the load picked up by the clamp",
        "attach k1 A with clamp-stick method sticks => close c1 A; attach k1 A with clamp-stick method sticks | stand-clear; close c1 A => note",
        "danger pick-up-order @ attach k1 A with clamp-stick method sticks",
      ],
    ],
  },
  {
    job: "renew a blown link, one crew alone with the cutout in sight",
    practice:
      "Look for what blew it before it is closed again; renew the link in the barrel; stand clear. One crew has the open device in " +
      "sight and under its own control: no tags, no permit.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p2   C    fuse=K10 blown=C
      t1    transformer  p2-p3   C    connection=single kva=25 primaryKv=7.2 secondaryV=240
      m1    meter        p3-h1   12
      ld1   load         h1      12   connection=delta kw=5 customers=1
      h1    point        kind=service
      job   operator=none text=the_cutout_is_in_sight`,
    order: `
      brief; inspect p2; inspect p3
      remove-barrel c1 C; refuse c1 C; replace-barrel c1 C
      stand-clear; close c1 C
      test p3 12 expect live`,
    mistakes: [
      [
        "closed again without looking for the cause",
        "- inspect p2 | - inspect p3",
        "warning cause-first @ close c1 C",
      ],
      ["closed onto what blew it", "+ f1 fault p2 C", "danger onto-fault @ close c1 C"],
      ["not stood clear of the barrel", "- stand-clear", "warning stand-clear @ close c1 C"],
      ["no word before it begins", "- brief", "warning brief-first @ remove-barrel c1 C"],
      ["the old link closed again", "- refuse c1 C", "warning step-not-possible @ close c1 C"],
    ],
  },
];
