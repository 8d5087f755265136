import { type EverydayJob, PERMIT, RELEASE } from "./everydayJob";

/** Other people: customers behind a service, another crew's tags, the one who is in charge. */
export const PEOPLE_JOBS: readonly EverydayJob[] = [
  {
    job: "an open service neutral",
    practice:
      "The house's things are burning: its main is opened, since a meter breaks no load, and the meter comes out. Then test what stands on the legs and on the neutral, and " +
      "splice the neutral in gloves, since it is a hot conductor until it is joined. Volts tested before the meter goes back.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p2   A    fuse=K10
      t1    transformer  p2-p3   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      sv    span         p3-h0   12   construction=secondary lengthM=30 parted=N
      m1    meter        h0-h1   12
      mn1   main         h1-h2   12
      ld1   load         h2      12   connection=wye kw=4 customers=1
      ldx   load         h2      1    connection=wye kw=1
      h0    point        kind=service earthOhms=100
      h1    point        kind=service earthOhms=100
      h2    point        kind=service earthOhms=100`,
    order: `
      brief; inspect p3; open mn1; pull m1 method gloves gloveClass 0; tag m1
      check-detector; test h0 12N expect live; check-detector
      join sv N method gloves gloveClass 0
      test h0 12 expect live
      untag m1; replace m1 method gloves gloveClass 0; close mn1`,
    mistakes: [
      [
        "spliced with bare hands",
        "join sv N method gloves gloveClass 0 => join sv N",
        "danger hands-on-live @ join sv N",
      ],
      [
        "spliced with the house on it",
        "open mn1; pull m1 method gloves gloveClass 0; tag m1 => note | untag m1; replace m1 method gloves gloveClass 0; close mn1 => note | join sv N method gloves gloveClass 0 => join sv N",
        "danger hands-on-live @ join sv N",
      ],
      [
        "the meter put back on an open neutral",
        "- join sv N method gloves gloveClass 0 | - close mn1 | - open mn1",
        "danger open-neutral @ replace m1 method gloves gloveClass 0",
      ],
      [
        "spliced before a test",
        "check-detector; test h0 12N expect live; check-detector => note",
        "warning hands-on-live @ join sv N method gloves gloveClass 0",
      ],
      [
        "a neutral cut with the house on it",
        "inspect p3 => cut sv N method gloves gloveClass 0; inspect p3 | + sv span p3-h0 12 construction=secondary lengthM=30",
        "danger open-neutral @ cut sv N method gloves gloveClass 0",
      ],
    ],
  },
  {
    job: "work between another crew's tags",
    practice:
      "What is found tagged is somebody's: it stays as it is, tag and ground. The crew puts its own tags beside it. At the end its " +
      "own come off, theirs stay.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=1500
      sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
      sp1   span         p2-p3   ABC  lengthM=200
      sp2   span         p3-p4   ABC  lengthM=200
      sw2   disconnect   p4-p5   ABC  gang=true loadBreakAmps=600 open=ABC normallyOpen=true tagged=true blocked=true taggedBy=Crew_9
      sp3   span         p5-p6   ABC  lengthM=200
      gz    ground       p6      ABC  cable=4/0 by=Crew_9
      w1    work         p3      ABC  does=sp1
      job   crew=Crew_4`,
    order: `
      ${PERMIT}; barricade p3
      open sw1; block sw1; tag sw1
      check-detector; test p3 ABC; check-detector
      ground p3 ABC cable 4/0 as g1
      work w1
      all-clear; unground g1 first phase
      ${RELEASE}
      unblock sw1; untag sw1; close sw1`,
    mistakes: [
      ["their tag taken off", "barricade p3 => untag sw2", "danger others-tag @ untag sw2"],
      ["their switch closed", "barricade p3 => unblock sw2; close sw2", "danger others-tag @ close sw2"],
      [
        "their ground taken off",
        "barricade p3 => unground gz first phase",
        "danger others-tag @ unground gz first phase",
      ],
      [
        "the permit given back by somebody else",
        "receive-permit => receive-permit with Crew_4 | release-permit => release-permit with Crew_9",
        "danger others-tag @ release-permit with Crew_9",
      ],
      ["their block taken off", "barricade p3 => unblock sw2", "danger others-tag @ unblock sw2"],
    ],
  },
];
