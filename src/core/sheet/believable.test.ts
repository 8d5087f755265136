import { describe, expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { spell } from "../../../tests/support/words";
import type { Message } from "../terms";
import { exposureSentences, figures, threatSentence } from "./sentences";
import { assess, mostBelievableVolts, toldVolts } from "../hazard";

const THREE_WIRE = `
  s1  source      sub     ABC kvLL=4.8 earthed=false
  m0  span        sub-p0  ABC neutral=false lengthM=1000
  c1  cutout      p0-p1   ABC fuse=K30 neutral=false open=ABC
  q12 span        p1-p2   ABC neutral=false lengthM=150
  x2  cutout      p2-p2b  AB  fuse=K10 neutral=false
  t2  transformer p2b-p2c AB  connection=single kva=25 primaryKv=4.8 secondaryV=240
  q23 span        p2-p3   ABC neutral=false lengthM=120
  x3  cutout      p3-p3b  BC  fuse=K10 neutral=false
  t3  transformer p3b-p3c BC  connection=single kva=25 primaryKv=4.8 secondaryV=240
  sv2 span        p2c-h2  12  construction=secondary lengthM=30
  ld2 load        h2      12  kw=5 customers=5
  sv3 span        p3c-h3  12  construction=secondary lengthM=30
  ld3 load        h3      12  kw=4 customers=4
  g1  ground      p3      AB  to=earth
${["sub", "p0", "p1", "p2", "p2b", "p2c", "p3", "p3b", "p3c", "h2", "h3"].map((it) => `${it} point earthOhms=none`).join("\n")}
  w1  work        p3      ABC`;

describe("A resonance with an exciting branch that no core would hold is told as more than five times the supply (IEEE C57.105, from memory)", () => {
  const document = draw(THREE_WIRE);
  const { verdict, threats } = Object.values(assess(document).workPoints)[0]!;
  const worst = [...threats].sort((a, b) => b.exposureVolts - a.exposureVolts)[0]!;
  const plain = (message: Message): string => spell(message).replaceAll("\u00a0", " ");

  test("it is counted as it was worked out, and stays over every limit", () =>
    expect([worst.exposureVolts > 100_000, verdict]).toEqual([true, "could-go-live"]));

  test("no sentence tells it as a figure", () => {
    expect(mostBelievableVolts(document.system)).toBe(24_000);
    const told = [threatSentence(document, worst), ...exposureSentences(document, worst)].map(plain);
    expect(told.filter((it) => /\d{3} \d{3} V/.test(it))).toEqual([]);
    expect(told.some((it) => it.includes("more than 24 000 V"))).toBe(true);
  });

  test("volts that a supply makes are told as they are, also those of a circuit that crosses", () => {
    const crossed = draw(`${THREE_WIRE}\n n1 nearby span=q23 relation=crossing kvLL=115`).system;
    expect(toldVolts(document.system, 4800, figures)).toBe(figures(4800));
    expect(toldVolts(crossed, 115_000 / Math.sqrt(3), figures)).toBe(figures(115_000 / Math.sqrt(3)));
  });
});
