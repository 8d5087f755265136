import { type EverydayJob, PERMIT, RELEASE } from "./everydayJob";

/** What a crew is called out for: restored first where it can be, with nobody out who need not be. */
export const CALL_OUT_JOBS: readonly EverydayJob[] = [
  {
    job: "change a unit of an open-delta bank on the cutouts' own pole, a dairy and its generator behind a transfer switch",
    practice:
      "The dairy's main drops its load before the meter is pulled, since a meter breaks none. The cutouts' tops stay live beside the hands and are covered. The meter goes back in gloves, its jaws live, and the main closes last.",
    drawing: `
      s1 source sub ABC kvLL=24.94
      main span sub-p1 ABC lengthM=3000
      c1 cutout p1-p2 AC fuse=K15
      t1 transformer p2-p3 AC connection=openY-openD kva=100 primaryKv=24.94 secondaryV=240
      sv span p3-h0 ABC construction=secondary lengthM=30
      m1 meter h0-h1 ABC
      mn main h1-h2 ABC
      tx transfer h2-h3-hg ABC position=utility
      gx generator hg ABC kva=75 volts=240
      ld load h3 ABC connection=delta kw=40 customers=1
      h0 point kind=service
      h1 point kind=service
      h2 point kind=service
      h3 point kind=service
      hg point kind=service
      w1 work p2 AC does=t1`,
    order: `
      ${PERMIT}; barricade p2
      open mn; open c1 A with load-break-tool; open c1 C with load-break-tool; tag c1
      pull m1; tag m1
      cover p1
      check-detector; test p2 AC; test p3 ABC; check-detector
      ground p2 AC cable 2/0 as g1; ground p3 ABC cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      uncover p1
      ${RELEASE}
      untag c1; stand-clear; close c1 A; stand-clear; close c1 C
      test p3 ABC expect live
      untag m1; replace m1 method gloves gloveClass 0; close mn`,
    mistakes: [
      [
        "meter left in, secondary not grounded",
        "- pull m1 | - tag m1 | - untag m1 | - replace m1 method gloves gloveClass 0 | - ground p3 ABC cable 2/0 as g2 | - unground g2 first phase",
        "danger secondary-backfeed @ work w1",
      ],
      [
        "transfer bridged, dairy on its machine, meter left in",
        "- pull m1 | - tag m1 | - untag m1 | - replace m1 method gloves gloveClass 0 | - open mn | - close mn | + tx transfer h2-h3-hg ABC position=generator bridged=true | + gx generator hg ABC kva=75 volts=240 on=true",
        "danger ground-on-live @ ground p2 AC cable 2/0 as g1",
      ],
      [
        "switched before permit is held",
        "request-permit; receive-permit; confirm => note | release-permit => note",
        "danger permit-first @ open c1 A with load-break-tool",
      ],
      [
        "the cutout's top at 14.4 kV beside the hands not covered",
        "- cover p1 | - uncover p1",
        "danger approach-distance @ work w1",
      ],
      ["closed with the secondary set on", "- unground g2 first phase", "danger grounds-left @ close c1 A"],
      [
        "meter pulled under load",
        "open mn; open c1 A with load-break-tool; open c1 C with load-break-tool; tag c1; pull m1 => pull m1; open mn; open c1 A with load-break-tool; open c1 C with load-break-tool; tag c1",
        "danger load-break @ pull m1",
      ],
    ],
  },
  {
    job: "renew the link of a pump's floating bank",
    practice:
      "Look for the cause. The motor ran on two phases and goes off first; the other poles open, the link is renewed, all three close with nothing on the bank, and the motor comes last.",
    drawing: `
      s1 source sub ABC kvLL=12.47
      main span sub-p1 ABC lengthM=2500
      c1 cutout p1-p2 ABC fuse=K8 blown=A
      t1 transformer p2-p3 ABC connection=Y-D kva=75 primaryKv=12.47 secondaryV=480 neutral=false
      m1 meter p3-h1 ABC
      mn main h1-h2 ABC
      ld load h2 ABC connection=delta kw=45 kvar=25 customers=1
      h1 point kind=service
      h2 point kind=service
      job operator=none text=the_cutouts_are_in_sight`,
    order: `
      brief; inspect p2; inspect p3
      open mn
      open c1 B with load-break-tool; open c1 C with load-break-tool
      remove-barrel c1 A; refuse c1 A; replace-barrel c1 A
      stand-clear; close c1 A; stand-clear; close c1 B; stand-clear; close c1 C
      test p3 ABC expect live
      close mn`,
    mistakes: [
      ["motor left running on two phases", "- open mn | - close mn", "warning single-phasing @ close c1 A"],
      ["cause not looked for", "- inspect p2 | - inspect p3", "warning cause-first @ close c1 A"],
      [
        "opened phase taken for dead and grounded",
        "open c1 B with load-break-tool; open c1 C with load-break-tool => check-detector; test p2 A; check-detector; ground p2 A cable 2/0 as g1; open c1 B with load-break-tool; open c1 C with load-break-tool",
        "danger ground-on-live @ ground p2 A cable 2/0 as g1",
      ],
      ["third pole forgotten", "- close c1 C", "danger phase-missing @ end"],
      ["no link renewed", "- refuse c1 A", "warning step-not-possible @ close c1 A"],
      [
        "motor's load broken with a bare stick",
        "- open mn | - close mn | open c1 B with load-break-tool => open c1 B with extending-stick | + ld load h2 ABC connection=delta kw=500 kvar=200 customers=1 | + t1 transformer p2-p3 ABC connection=Y-D kva=750 primaryKv=12.47 secondaryV=480 neutral=false",
        "danger load-break @ open c1 B with extending-stick",
      ],
    ],
  },
  {
    job: "change the middle one of three transformers that are banked on one secondary",
    practice:
      "Its leads are cut in gloves, so that nobody is out. It is energized by its cutout, its volts and phasing are tested, and only then are its leads remade, in gloves again.",
    drawing: `
      s1 source sub ABC kvLL=12.47
      m0 span sub-p1 ABC lengthM=1500
      sa span p1-p2 B lengthM=60
      sb span p2-p3 B lengthM=60
      x1 cutout p1-q1 B fuse=K10
      t1 transformer q1-r1 B connection=single kva=25 primaryKv=7.2 secondaryV=240
      x2 cutout p2-q2 B fuse=K10
      t2 transformer q2-r2 B connection=single kva=25 primaryKv=7.2 secondaryV=240
      l2 lead r2-s2 12
      x3 cutout p3-q3 B fuse=K10
      t3 transformer q3-r3 B connection=single kva=25 primaryKv=7.2 secondaryV=240
      v12 span r1-s2 12 construction=secondary lengthM=60
      v23 span s2-r3 12 construction=secondary lengthM=60
      ma meter r1-ha 12 count=3
      mb meter s2-hb 12 count=4
      mc meter r3-hc 12 count=3
      lda load ha 12 connection=delta kw=8 customers=3
      ldb load hb 12 connection=delta kw=9 customers=4
      ldc load hc 12 connection=delta kw=8 customers=3
      ha point kind=service
      hb point kind=service
      hc point kind=service
      w1 work q2 B does=t2`,
    order: `
      ${PERMIT}; barricade q2
      open x2 B with load-break-tool; tag x2
      ask; cut l2 12 with lead-cutters method gloves gloveClass 0; tag l2
      cover s2; cover p2
      check-detector; test q2 B; test r2 12; check-detector
      ground q2 B cable 2/0 as g1; ground r2 12 cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      uncover s2; uncover p2
      untag x2; stand-clear; close x2 B
      test r2 12 expect live; test s2 12 expect live
      untag l2; join l2 12 method gloves gloveClass 0`,
    mistakes: [
      [
        "the leads not cut: the others feed it backwards",
        "cut l2 12 with lead-cutters method gloves gloveClass 0; tag l2 => note | untag l2; join l2 12 method gloves gloveClass 0 => note",
        "danger ground-on-live @ ground q2 B cable 2/0 as g1",
      ],
      [
        "leads cut bare-handed",
        "cut l2 12 with lead-cutters method gloves gloveClass 0 => cut l2 12 with lead-cutters",
        "danger hands-on-live @ cut l2 12 with lead-cutters",
      ],
      [
        "joined without phasing",
        "- test r2 12 expect live | - test s2 12 expect live",
        "warning phase-check @ join l2 12 method gloves gloveClass 0",
      ],
      [
        "the live primary beside not covered",
        "cover s2; cover p2 => cover s2 | uncover s2; uncover p2 => uncover s2",
        "danger approach-distance @ work w1",
      ],
      [
        "tag off before release",
        "all-clear; unground g2 first phase => untag x2; all-clear; unground g2 first phase | untag x2; stand-clear => stand-clear",
        "danger release-order @ untag x2",
      ],
      [
        "joined by hand while T2 dead but leads live, no gloves",
        "untag x2; stand-clear; close x2 B; test r2 12 expect live; test s2 12 expect live; untag l2; join l2 12 method gloves gloveClass 0 => untag l2; join l2 12; untag x2; stand-clear; close x2 B",
        "danger hands-on-live @ join l2 12",
      ],
    ],
  },
  {
    job: "a burned clamp with nothing but transformers' cutouts beyond it",
    practice:
      "The cutouts drop the load, so that the clamp carries nothing; the line ahead of it keeps its supply. The clamp goes on again with all of them open.",
    drawing: `
      s1 source sub ABC kvLL=12.47
      m0 span sub-p0 ABC lengthM=900
      rc1 recloser p0-p1 ABC
      m1 span p1-p2 ABC lengthM=900
      ldm load p2 ABC kw=150 customers=44
      k1 clamp p2-p3 A condition=burned
      sp1 span p3-p4 A lengthM=80
      x1 cutout p4-q1 A fuse=K10
      t1 transformer q1-r1 A connection=single kva=25 primaryKv=7.2 secondaryV=240
      ma meter r1-ha 12 count=3
      lda load ha 12 connection=delta kw=10 customers=3
      sp2 span p4-p5 A lengthM=80
      x2 cutout p5-q2 A fuse=K10
      t2 transformer q2-r2 A connection=single kva=25 primaryKv=7.2 secondaryV=240
      mb meter r2-hb 12 count=2
      ldb load hb 12 connection=delta kw=8 customers=2
      ha point kind=service
      hb point kind=service
      w1 work p3 A does=k1`,
    order: `
      ${PERMIT}; secure k1; barricade p3
      open x1 A with load-break-tool; tag x1
      open x2 A with load-break-tool; tag x2
      lift k1 A with clamp-stick; block k1; tag k1; cover p2
      check-detector; test p3 A; check-detector
      ground p3 A cable 2/0 as g1
      work w1
      all-clear; unground g1 first phase; uncover p2
      ${RELEASE}
      untag k1; unblock k1; attach k1 A with clamp-stick
      untag x1; stand-clear; close x1 A
      untag x2; stand-clear; close x2 A`,
    mistakes: [
      [
        "only one of the two cutouts opened",
        "open x2 A with load-break-tool; tag x2 => note | untag x2; stand-clear; close x2 A => note",
        "danger load-break @ lift k1 A with clamp-stick",
      ],
      ["not held first", "- secure k1", "danger loose-hardware @ lift k1 A with clamp-stick"],
      [
        "lifted clamp not tied back nor tagged",
        "- block k1 | - tag k1 | - untag k1 | - unblock k1",
        "danger tag-each @ test p3 A",
      ],
      ["live stirrup not covered", "- cover p2 | - uncover p2", "danger approach-distance @ work w1"],
      [
        "lifted by hand",
        "lift k1 A with clamp-stick => lift k1 A method bare",
        "danger hands-on-live @ lift k1 A method bare",
      ],
      [
        "cutouts closed first, the clamp picks up the load",
        "untag k1; unblock k1; attach k1 A with clamp-stick; untag x1; stand-clear; close x1 A => untag x1; stand-clear; close x1 A; untag k1; unblock k1; attach k1 A with clamp-stick",
        "danger pick-up-order @ attach k1 A with clamp-stick",
      ],
    ],
  },
  {
    job: "after a storm: a main and a tap are down, and the far part has a tie to the same station",
    practice:
      "Every wire is guarded. The two bad sections are cut off at all ends, then the breaker and the tie feed the rest. Each break is grounded on both sides.",
    drawing: `
      s1 source sub ABC kvLL=12.47
      br1 breaker sub-p0 ABC open=ABC
      m1 span p0-p1 ABC lengthM=700 rodsPerKm=2.5
      ld1 load p1 ABC kw=250 customers=70
      c2 cutout p1-p2 B fuse=K25 blown=B
      sp2 span p2-p3 B lengthM=120 parted=B rodsPerKm=2.5
      ld3 load p3 B kw=30 customers=8
      sw1 disconnect p1-p4 ABC gang=true loadBreakAmps=600
      m2 span p4-p5 ABC lengthM=600 parted=A rodsPerKm=2.5
      f2 fault p5 A to=earth ohms=30
      ld5 load p5 ABC kw=60 customers=15
      rc2 recloser p5-p6 ABC visibleGap=true
      m3 span p6-p7 ABC lengthM=900 rodsPerKm=2.5
      ld7 load p7 ABC kw=200 customers=52
      tie disconnect p7-p8 ABC gang=true loadBreakAmps=600 open=ABC normallyOpen=true
      m4 span p8-sub ABC lengthM=2500 rodsPerKm=2.5
      sub point kind=station
      w1 work p5 ABC does=m2,f2
      w2 work p3 B does=sp2`,
    order: `
      brief; barricade p4; barricade p5; barricade p3; barricade p2
      request-permit; receive-permit; confirm
      open sw1; block sw1; tag sw1
      open rc2; block rc2; tag rc2
      remove-barrel c2 B; tag c2
      close br1
      close tie
      cover p1; cover p6
      check-detector; test p4 ABC; test p5 ABC; check-detector
      ground p4 ABC cable 4/0 as g1; ground p5 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      check-detector; test p2 B; test p3 B; check-detector
      ground p2 B cable 2/0 as g3; ground p3 B cable 2/0 as g4
      work w2
      all-clear; unground g4 first phase; unground g3 first phase
      uncover p1; uncover p6
      ${RELEASE}
      unblock sw1; untag sw1; close sw1
      test p5 ABC expect live; test p6 ABC expect live
      unblock rc2; untag rc2; close rc2; open tie
      untag c2; refuse c2 B; replace-barrel c2 B; stand-clear; close c2 B`,
    mistakes: [
      [
        "breaker tried first",
        "barricade p2 => barricade p2; close br1 | close br1; close tie => close tie",
        "danger onto-fault @ close br1",
      ],
      [
        "tie closed before the recloser is open",
        "open rc2; block rc2; tag rc2 => close tie; open rc2; block rc2; tag rc2 | close br1; close tie => close br1",
        "danger onto-fault @ close tie",
      ],
      [
        "recloser open and tagged, not blocked",
        "- block rc2 | - unblock rc2",
        "danger automatic-device @ test p4 ABC",
      ],
      [
        "paralleled without test",
        "- test p5 ABC expect live | - test p6 ABC expect live",
        "warning phase-check @ close rc2",
      ],
      ["mill tap energized before it is mended", "- work w2", "danger onto-fault @ close c2 B"],
    ],
  },
  {
    job: "move a pole of a single-phase tap that a cutout feeds from its far end meanwhile",
    practice:
      "The loop is closed after a test of both sides, then the near end opens, so that nobody is out. Grounds at the old pole and where the new spans begin.",
    drawing: `
      s1 source sub ABC kvLL=12.47
      m0 span sub-p1 ABC lengthM=900 rodsPerKm=2.5
      mf span p1-p9 ABC lengthM=500 rodsPerKm=2.5
      c1 cutout p1-p2 A fuse=K40
      sp1 span p2-p3 A lengthM=50 rodsPerKm=2.5 leave=gone
      sp2 span p3-p4 A lengthM=50 rodsPerKm=2.5 leave=gone
      np1 span p2-p33 A lengthM=52 rodsPerKm=2.5 planned=true
      np2 span p33-p4 A lengthM=52 rodsPerKm=2.5 planned=true
      d4 disconnect p4-p5 A loadBreakAmps=200
      sp5 span p5-p6 A lengthM=150 rodsPerKm=2.5
      x6 cutout p6-q6 A fuse=K10
      t6 transformer q6-r6 A connection=single kva=25 primaryKv=7.2 secondaryV=240
      m6 meter r6-h6 12 count=4
      ld6 load h6 12 connection=delta kw=11 customers=4
      sp6 span p6-p8 A lengthM=150 rodsPerKm=2.5
      c9 cutout p8-p9 A fuse=K40 open=A normallyOpen=true
      h6 point kind=service
      w1 work p3 A does=sp1,sp2,np1,np2`,
    order: `
      ${PERMIT}; barricade p3; barricade p2; barricade p4
      test p8 A expect live; test p9 A expect live; stand-clear; close c9 A
      open d4 A; tag d4; block d4
      open c1 A with load-break-tool; tag c1
      cover p1; cover p5
      check-detector; test p2 A; test p3 A; test p4 A; check-detector
      ground p2 A cable 2/0 as g1; ground p3 A cable 2/0 as g2; ground p4 A cable 2/0 as g3
      work w1
      all-clear; unground g3 first phase; unground g2 first phase; unground g1 first phase
      uncover p1; uncover p5
      ${RELEASE}
      untag c1; stand-clear; close c1 A
      test p4 A expect live; test p5 A expect live
      unblock d4; untag d4; close d4 A
      open c9 A with load-break-tool`,
    mistakes: [
      [
        "tap opened before it is fed from the far end: opens with load, then feeds",
        "test p8 A expect live; test p9 A expect live; stand-clear; close c9 A; open d4 A; tag d4; block d4; open c1 A with load-break-tool; tag c1 => open c1 A with extending-stick; tag c1; open d4 A; tag d4; block d4; close c9 A | + ld6 load h6 12 connection=delta kw=90 customers=4",
        "danger load-break @ open c1 A with extending-stick",
      ],
      [
        "loop closed untested",
        "test p8 A expect live; test p9 A expect live => note",
        "warning phase-check @ close c9 A",
      ],
      ["far cutout left closed", "- open c9 A with load-break-tool", "warning left-behind @ end"],
      ["ground left at the near end", "- unground g1 first phase", "danger grounds-left @ close c1 A"],
      ["line switch tagged by nobody", "- tag d4 | - untag d4", "danger tag-each @ test p2 A"],
    ],
  },
  {
    job: "change a burned switch in the middle of a line that another station can feed",
    practice:
      "The far part is taken over break before make, then both sides of the switch are dead, tested and grounded.",
    drawing: `
      s1 source sub1 ABC kvLL=12.47
      m0 span sub1-p1 ABC lengthM=900 rodsPerKm=2.5
      ld1 load p1 ABC kw=150 customers=40
      swa disconnect p1-p2 ABC gang=true loadBreakAmps=600
      m1 span p2-p3 ABC lengthM=400 rodsPerKm=2.5
      ld3 load p3 ABC kw=60 customers=18
      q3 span p3-p30 ABC lengthM=30 rodsPerKm=2.5
      sw disconnect p30-p40 ABC gang=true condition=burned loadBreakAmps=600
      q4 span p40-p4 ABC lengthM=30 rodsPerKm=2.5
      swb disconnect p4-p5 ABC gang=true loadBreakAmps=600
      m2 span p5-p6 ABC lengthM=600 rodsPerKm=2.5
      ld6 load p6 ABC kw=90 customers=33
      tie disconnect p6-p7 ABC gang=true loadBreakAmps=600 open=ABC normallyOpen=true
      m3 span p7-sub2 ABC lengthM=1900 rodsPerKm=2.5
      s2 source sub2 ABC kvLL=12.47
      w1 work p30 ABC does=sw`,
    order: `
      ${PERMIT}; secure sw; barricade p30
      open swb; block swb; tag swb
      close tie
      open swa; block swa; tag swa
      check-detector; test p30 ABC; test p40 ABC; check-detector
      ground p30 ABC cable 4/0 as g1; ground p40 ABC cable 4/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      unblock swa; untag swa; close swa
      open tie
      unblock swb; untag swb; close swb`,
    mistakes: [
      [
        "only the near side opened",
        "open swb; block swb; tag swb; close tie => close tie | unblock swb; untag swb; close swb => note",
        "danger ground-on-live @ ground p30 ABC cable 4/0 as g1",
      ],
      [
        "two stations in parallel without a test",
        "open tie; unblock swb; untag swb; close swb => unblock swb; untag swb; close swb; open tie",
        "warning phase-check @ close swb",
      ],
      [
        "tie left closed, switch open",
        "open tie; unblock swb; untag swb; close swb => unblock swb; untag swb",
        "warning left-behind @ end",
      ],
      [
        "ground on before test",
        "- test p30 ABC",
        "danger test-before-ground @ ground p30 ABC cable 4/0 as g1",
      ],
      [
        "the burned switch shaken open",
        "secure sw; barricade p30; open swb; block swb; tag swb => barricade p30; open sw; open swb; block swb; tag swb",
        "danger loose-hardware @ open sw",
      ],
    ],
  },
  {
    job: "change a three-phase pad, and a clinic behind it in the loop",
    practice:
      "The loop is closed first, so that the clinic keeps its supply. The isolation lies beyond the pad: the riser on one side, the next pad's elbows on the other.",
    drawing: `
      s1 source sub ABC kvLL=12.47
      m0 span sub-p1 ABC lengthM=900 rodsPerKm=2.5
      ca cutout p1-ra ABC fuse=K65
      cb cutout p1-rb ABC fuse=K65
      u1 span ra-a1 ABC construction=cable lengthM=120
      ea1 elbow a1-a ABC
      ta transformer a-sa ABC connection=Yg-Yg kva=150 primaryKv=12.47 secondaryV=208
      lda load sa ABC kw=50 customers=1
      ea2 elbow a-a2 ABC
      u2 span a2-b1 ABC construction=cable lengthM=120
      eb1 elbow b1-b ABC
      tb transformer b-sb ABC connection=Yg-Yg kva=150 primaryKv=12.47 secondaryV=208
      mb meter sb-hb ABC
      ldb load hb ABC kw=40 customers=1 critical=true
      eb2 elbow b-b2 ABC open=ABC normallyOpen=true
      u3 span b2-rb ABC construction=cable lengthM=130
      a point kind=pad
      a1 point kind=pad
      a2 point kind=pad
      sa point kind=pad
      b point kind=pad
      b1 point kind=pad
      b2 point kind=pad
      sb point kind=pad
      hb point kind=service
      w1 work a ABC does=ta`,
    order: `
      ${PERMIT}; barricade a
      test b ABC expect live; test b2 ABC expect live; close eb2 ABC
      open eb1 ABC; tag eb1
      open ca ABC with load-break-tool; tag ca
      check-detector; test a ABC; test sa ABC; check-detector
      ground a ABC cable 2/0 as g1; ground sa ABC cable 2/0 as g2
      work w1
      all-clear; unground g2 first phase; unground g1 first phase
      ${RELEASE}
      untag ca; stand-clear; close ca ABC
      test sa ABC expect live
      test b1 ABC expect live; test b ABC expect live
      untag eb1; close eb1 ABC
      open eb2 ABC`,
    mistakes: [
      [
        "clinic dropped: opened before the loop is closed",
        "test b ABC expect live; test b2 ABC expect live; close eb2 ABC; open eb1 ABC; tag eb1 => open eb1 ABC; tag eb1; close eb2 ABC",
        "note customers-out @ open eb1 ABC",
      ],
      [
        "isolated in the very pad",
        "open eb1 ABC; tag eb1 => open ea2 ABC; tag ea2 | untag eb1; close eb1 ABC => untag ea2; close ea2 ABC | open ca ABC with load-break-tool; tag ca => open ea1 ABC; tag ea1 | untag ca; stand-clear; close ca ABC => untag ea1; close ea1 ABC",
        "danger approach-distance @ work w1",
      ],
      [
        "low side not grounded with a shop on it",
        "- ground sa ABC cable 2/0 as g2 | - unground g2 first phase",
        "danger secondary-backfeed @ work w1",
      ],
      [
        "only two phases tested",
        "test a ABC => test a AB",
        "danger test-before-ground @ ground a ABC cable 2/0 as g1",
      ],
      [
        "loop closed without phasing",
        "- test b ABC expect live | - test b2 ABC expect live",
        "warning phase-check @ close eb2 ABC",
      ],
      ["loop left closed", "- open eb2 ABC", "warning left-behind @ end"],
    ],
  },
  {
    job: "work in a section that another crew has opened, tagged and grounded",
    practice:
      "Theirs stays as it is. The crew tests and puts a set of its own where it works, and takes nothing off but that.",
    drawing: `
      s1 source sub ABC kvLL=12.47
      m0 span sub-p1 ABC lengthM=900 rodsPerKm=2.5
      sw1 disconnect p1-p2 ABC gang=true loadBreakAmps=600 open=ABC tagged=true blocked=true taggedBy=Crew_2
      sp1 span p2-p3 ABC lengthM=200 rodsPerKm=2.5
      gz ground p2 ABC cable=4/0 by=Crew_2
      sp2 span p3-p4 ABC lengthM=200 rodsPerKm=2.5
      ld4 load p4 ABC kw=80 customers=22
      w1 work p3 ABC
      job crew=Crew_5`,
    order: `
      ${PERMIT}; barricade p3
      check-detector; test p3 ABC; check-detector
      ground p3 ABC cable 4/0 as g1
      work w1
      all-clear; unground g1 first phase
      ${RELEASE}`,
    mistakes: [
      [
        "own work done, their ground off and switch closed",
        "release-permit => release-permit; unground gz first phase; unblock sw1; untag sw1; close sw1",
        "danger others-tag @ untag sw1",
      ],
      [
        "their ground off",
        "release-permit => release-permit; unground gz first phase",
        "danger others-tag @ unground gz first phase",
      ],
      [
        "their ground trusted, none of our own",
        "- ground p3 ABC cable 4/0 as g1 | - unground g1 first phase",
        "warning equipotential @ work w1",
      ],
      [
        "not tested since theirs is on",
        "check-detector; test p3 ABC; check-detector => note",
        "danger work-not-safe @ work w1",
      ],
      ["own ground left", "- unground g1 first phase", "warning left-behind @ end"],
    ],
  },
  {
    job: "change a failed transformer with a house on its generator",
    practice:
      "The house's machine is stopped and both meters come out. Primary and secondary are tested and grounded; the cutout's top is covered. The machine stays off.",
    drawing: `
      s1 source sub ABC kvLL=12.47
      m0 span sub-p1 ABC lengthM=900 rodsPerKm=2.5
      c1 cutout p1-p2 C fuse=K10 blown=C
      t1 transformer p2-p3 C connection=single kva=25 primaryKv=7.2 secondaryV=240 condition=leaking
      f1 fault p2 C
      d1 span p3-h1 12 construction=secondary lengthM=30
      m1 meter h1-k1 12
      ld1 load k1 12 connection=delta kw=5 customers=1
      g1x generator k1 12 kva=8 volts=240 on=true
      d2 span p3-h2 12 construction=secondary lengthM=30
      m2 meter h2-k2 12
      ld2 load k2 12 connection=delta kw=5 customers=1
      h1 point kind=service
      h2 point kind=service
      k1 point kind=service
      k2 point kind=service
      w1 work p2 C does=t1,f1`,
    order: `
      ${PERMIT}; secure t1; inspect p2; barricade p2
      stop g1x; pull m1; tag m1; pull m2; tag m2
      remove-barrel c1 C; tag c1
      cover p1
      check-detector; test p2 C; test p3 12; check-detector
      ground p2 C cable 2/0 as ga; ground p3 12 cable 2/0 as gb
      work w1
      all-clear; unground gb first phase; unground ga first phase; uncover p1
      ${RELEASE}
      untag c1; refuse c1 C; replace-barrel c1 C; stand-clear; close c1 C
      test p3 12 expect live
      untag m1; replace m1 method gloves gloveClass 0; untag m2; replace m2 method gloves gloveClass 0`,
    mistakes: [
      [
        "link renewed and tried",
        "secure t1 => secure t1; refuse c1 C; close c1 C",
        "danger onto-fault @ close c1 C",
      ],
      [
        "generator left on, low side taken for dead",
        "- stop g1x | - pull m1 | - tag m1 | - untag m1 | - replace m1 method gloves gloveClass 0",
        "danger ground-on-live @ ground p2 C cable 2/0 as ga",
      ],
      [
        "house's generator started by the crew again",
        "replace m2 method gloves gloveClass 0 => replace m2 method gloves gloveClass 0; start g1x",
        "danger customers-machine @ start g1x",
      ],
      [
        "only the primary grounded, one meter in",
        "- ground p3 12 cable 2/0 as gb | - unground gb first phase | - pull m2 | - tag m2 | - untag m2 | - replace m2 method gloves gloveClass 0",
        "danger secondary-backfeed @ work w1",
      ],
      ["pulled under load", "stop g1x; pull m1 => pull m1", "danger load-break @ pull m1"],
      ["tap the cutout's bare top", "- cover p1 | - uncover p1", "danger approach-distance @ work w1"],
    ],
  },
  {
    job: "change a cracked cutout with gloves, around a jumper",
    practice:
      "Reclosing is held and what is within reach covered. The jumper takes the load, so that nobody is out and the cutout breaks nothing; it comes off when the new one is closed.",
    drawing: `
      s1 source sub ABC kvLL=12.47
      br1 recloser sub-p0 ABC
      m0 span p0-p1 ABC lengthM=900 rodsPerKm=2.5
      c1 cutout p1-p2 A fuse=K40 condition=cracked
      j1 lead p1-p2 A cut=A
      sp1 span p2-p3 A lengthM=150 rodsPerKm=2.5
      ld3 load p3 A kw=60 customers=21
      w1 work p2 A does=c1`,
    order: `
      ${PERMIT}; block br1; secure c1; barricade p2
      cover p1
      join j1 A method gloves-and-cover gloveClass 2
      open c1 A with extending-stick
      work w1 method gloves-and-cover gloveClass 2
      all-clear; confirm
      stand-clear; close c1 A
      cut j1 A method gloves-and-cover gloveClass 2
      unblock br1; uncover p1
      release-permit`,
    mistakes: [
      [
        "bare hands",
        "work w1 method gloves-and-cover gloveClass 2 => work w1 method bare",
        "danger work-not-safe @ work w1 method bare",
      ],
      [
        "class 0 gloves",
        "join j1 A method gloves-and-cover gloveClass 2 => join j1 A method gloves-and-cover gloveClass 0",
        "danger hands-on-live @ join j1 A method gloves-and-cover gloveClass 0",
      ],
      [
        "reclosing not held",
        "- block br1 | - unblock br1",
        "warning hands-on-live @ join j1 A method gloves-and-cover gloveClass 2",
      ],
      [
        "opened with load and no jumper",
        "- join j1 A method gloves-and-cover gloveClass 2 | - cut j1 A method gloves-and-cover gloveClass 2 | + ld3 load p3 A kw=160 customers=21",
        "danger load-break @ open c1 A with extending-stick",
      ],
      [
        "jumper cut before the cutout is closed",
        "stand-clear; close c1 A; cut j1 A method gloves-and-cover gloveClass 2 => cut j1 A method gloves-and-cover gloveClass 2; close c1 A",
        "danger load-break @ cut j1 A method gloves-and-cover gloveClass 2",
      ],
      ["cracked cutout not secured", "- secure c1", "danger loose-hardware @ open c1 A with extending-stick"],
    ],
  },
];
