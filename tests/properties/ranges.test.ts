import { describe, expect, test } from "vitest";
import {
  briefingOf,
  type JsonObject,
  planDocument,
  rangesOf,
  rangesSentence,
  readDocument,
  type StillhotDocument,
  threatKey,
  type WorkPointId,
} from "../../src/core";
import { listed, scenarioFile } from "../scenarios/library";
import { demoDrawings } from "../support/demoDrawings";
import { draw } from "../support/jobNotation";
import { drawnOutside } from "../support/numbersDrawn";
import { randomJob } from "../support/randomJobs";
import { randomDocument } from "../support/randomSystems";
import { spell } from "../support/words";

const W1 = "w1" as WorkPointId;

function readable(seed: number, parts: number): StillhotDocument | undefined {
  const read = readDocument(JSON.stringify(randomDocument(seed, { parts })));
  return "document" in read ? read.document : undefined;
}

/** Drawings that are asked, and draws of each, of which the soak has a thousand; 1 of them has a set that parts between the ends of a number. */
const SEEDS = [8, 11, 22, 26, 29];
const DRAWS = 10;
/** A drawing of which a thousand draws once had some outside: a set parts at one end of a number, where the way is none by itself. */
const HARD = { seed: 100, parts: 6, draws: 60 };

const FIGURES = ["volts", "exposureVolts", "exposureToEarthVolts"] as const;

/** Of each drawing a few numbers are moved: what a figure is as drawn tells already whether it is of the same moment. */
const A_LITTLE_WORK = 5e4;
/** Random jobs whose planned orders are asked. */
const JOBS = [1, 2, 3];

/** What the work mends holds the line down while hands are at it. */
const FAILED = `
  s1   source       sub    ABC  kvLL=12.47
  main span         sub-p1 ABC  lengthM=1500
  c1   cutout       p1-p2  AB   fuse=K30 blown=B
  sp2  span         p2-p3  AB   lengthM=80
  nx   nearby       span=sp2 relation=crossing kvLL=34.5 spacingM=3
  la   arrester     p3     AB   failed=B
  bk   transformer  p3-p4  AB   connection=openY-openD kva=50 primaryKv=12.47 secondaryV=240 midTap=ab
  mb   main         p4-h4  ABC
  mo   load         h4     ABC  connection=delta kw=18 kvar=9 customers=1
  w1   work         p3     AB   does=la
`;
const FAILED_ORDER = "open mb; open c1 A with load-break-tool; ground p3 AB cable 4/0 as g1; work w1";
/** What the work joins is apart while hands are at it. */
const PARTED = `
  s1   source       sub    ABC  kvLL=12.47
  c1   cutout       sub-p1 A    fuse=K30 open=A
  sp1  span         p1-p2  A    lengthM=80
  sp2  span         p2-p3  A    lengthM=80 parted=A
  t1   transformer  p3-p4  A    connection=single kva=25 primaryKv=7.2 secondaryV=240
  ld1  load         p4     12   connection=delta kw=6 customers=3
  w1   work         p2     A    does=sp2
`;

describe("how far the figures may be off", () => {
  test.each(SEEDS)("H22 no random draw of the numbers lies outside of the range: drawing %i", (seed) => {
    const document = readable(seed, 8)!;
    const { asked, outside } = drawnOutside(document, { draws: DRAWS, seed });
    expect(outside).toEqual([]);
    expect(asked).toBeGreaterThan(DRAWS);
  });

  test("H22 nor where a way is none by itself at one end of a number", () => {
    const document = readable(HARD.seed, HARD.parts)!;
    expect(drawnOutside(document, HARD).outside).toEqual([]);
  });

  test.each([
    ...demoDrawings(),
    ...listed.map(({ id }) => [id, scenarioFile(id)] as const),
    ...JOBS.map((seed) => [`random job ${seed}`, planDocument(randomJob(seed))] as const),
    ["a failed arrester under a crossing circuit", draw(FAILED, FAILED_ORDER)],
    ["a line that the work makes whole", draw(PARTED, "ground p2 A; ground p3 A; work w1")],
  ] as const)(
    "H22 each figure of the sheet lies in the range that stands beside it: %s",
    (_name, document) => {
      const outside = briefingOf(document).works.flatMap(({ id, asDrawn, atWork }) => {
        const { ways } = rangesOf(document, id, {
          when: atWork === undefined ? "drawn" : "working",
          mostWork: A_LITTLE_WORK,
        });
        const rangesByKey = new Map(ways.map((it) => [threatKey(it), it]));
        return (atWork?.report ?? asDrawn).threats.flatMap((threat) => {
          const range = rangesByKey.get(threatKey(threat));
          return FIGURES.filter((it) => {
            const [least, most] = [range?.[it].least ?? NaN, range?.[it].most ?? NaN];
            return !(least <= threat[it] * (1 + 1e-9) && threat[it] <= most * (1 + 1e-9));
          }).map((it) => `${id} ${threatKey(threat)} ${it}`);
        });
      });
      expect(outside).toEqual([]);
    },
  );

  // By hand: behind 6.25 Ω a rod of 25 Ω keeps four fifths of the volts, behind twice as much half a rod keeps one half.
  test("two numbers that each take a little of one way's volts take more together", () => {
    const document = draw(`
      s1  source p1    A   kvLL=12.47 z1Ohms=[6.25,0] z0Ohms=[6.25,0]
      c1  cutout p1-p2 A   open=A evidence=seen
      g1  ground p2    A   to=earth earthOhms=25 ohms=0.001 cable=4/0
      w1  work   p2    A
    `);
    const { ways } = rangesOf(document, W1, { mostWork: Infinity });
    const { least, drawn } = ways.find(({ upsets }) => upsets.length === 1)!.exposureVolts;
    const supplyVolts = 12_470 / Math.sqrt(3);
    expect(drawn / supplyVolts).toBeCloseTo(0.8, 2);
    expect(least / supplyVolts).toBeLessThan(0.975 * 0.5);
    expect(least / supplyVolts).toBeGreaterThan(0.4);
  });

  test("what was seen is not off", () => {
    const document = draw(`
      s1  source p1    ABC kvLL=12.47 evidence=seen
      sp1 span   p1-p2 A   lengthM=400 evidence=seen
      p1  point  evidence=seen
      p2  point  evidence=seen
      w1  work   p2    A
    `);
    const { conductors, of } = rangesOf(document, W1);
    expect(of).toBe(0);
    expect(conductors.A!.volts.least).toBe(conductors.A!.volts.most);
  });

  // By hand: a rod of 25 Ω against 25 Ω of the source's own is half of the volts; against half and twice it is a third and two.
  test("a divider of two resistances lies where it lies by hand", () => {
    const document = draw(`
      s1  source p1    A   kvLL=12.47 z1Ohms=[25,0] z0Ohms=[25,0] evidence=seen
      c1  cutout p1-p2 A   evidence=seen
      g1  ground p2    A   to=earth earthOhms=25 ohms=0.001 cable=4/0
      w1  work   p2    A
    `);
    const { exposureVolts } = rangesOf(document, W1).conductors.A!;
    const supplyVolts = 12_470 / Math.sqrt(3);
    const [least, most] = [12.5, 50].map((rod) => supplyVolts * (rod / (rod + 25)));
    expect(exposureVolts.drawn / supplyVolts).toBeCloseTo(0.5, 2);
    expect(exposureVolts.least / least!).toBeCloseTo(1, 2);
    expect(exposureVolts.most / most!).toBeCloseTo(1, 2);
  });

  // ASTM F855: No. 2 withstands 10 kA for half a second; behind 0.9 Ω there are 8 kA, behind half of it 16.
  test("a set that parts only where the system behind is stiffer than drawn is told, and what then holds", () => {
    const document = draw(`
      s1  source p1    ABC kvLL=12.47 z1Ohms=[0,0.9] z0Ohms=[0,0.9] evidence=seen
      c1  cutout p1-p2 A   open=A evidence=seen
      g1  ground p2    A   cable=2 evidence=seen
      w1  work   p2    A
    `);
    const seen = rangesOf(document, W1);
    const { s1, ...others } = document.system.elements as Record<string, JsonObject>;
    const { evidence: _evidence, ...mapped } = s1!;
    const unseen = {
      ...document,
      system: { ...document.system, elements: { s1: mapped, ...others } },
    } as StillhotDocument;
    const ranges = rangesOf(unseen, W1);
    const supplyVolts = 12_470 / Math.sqrt(3);
    expect(seen.conductors.A!.exposureVolts.most).toBeLessThan(0.1 * supplyVolts);
    expect(ranges.conductors.A!.exposureVolts.drawn).toBeLessThan(0.1 * supplyVolts);
    expect(ranges.conductors.A!.exposureVolts.most).toBeGreaterThan(supplyVolts);
    const sentence = spell(rangesSentence(unseen, W1, ranges)!);
    expect(sentence).toContain("over the limit, though it is not as drawn");
    const onTheSheet = (of: StillhotDocument) => briefingOf(of).unseen.map((it) => spell(it));
    expect(onTheSheet(unseen)).toContain(sentence);
    expect(onTheSheet(document).filter((it) => it.includes("numbers from the map"))).toEqual([]);
  });
});
