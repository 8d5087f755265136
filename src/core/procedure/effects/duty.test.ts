import { expect, test } from "vitest";
import { draw, parseSteps, playAll } from "../../../../tests/support/jobNotation";
import { dutiesOf } from "./duty";

const TO_NEUTRAL = 12470 / Math.sqrt(3);

/** A tap that an open cutout holds off a source of 0.2 + j1 Ω, with ground sets on it. */
const tap = (more: string) => `
  s1  source sub   ABC kvLL=12.47 z1Ohms=[0.2,1] z0Ohms=[0.2,1]
  c1  cutout sub-p1 A  open=A
  sp1 span   p1-p2 A   lengthM=1
  w1  work   p2    A
  ${more}
`;

const duties = (drawing: string, steps: string) =>
  dutiesOf(playAll(draw(drawing), parseSteps(steps, [])).at(-1)!.state);

test("one set carries what the source drives through its own ohms: 7200 V over 0.2 + j1 Ω", () => {
  const duty = duties(tap(""), "ground p2 A cable 4/0 as g1").get("g1" as never)!;
  expect(duty.amps / (TO_NEUTRAL / Math.hypot(0.2, 1))).toBeCloseTo(1, 1);
  expect(duty.xOverR / 5).toBeCloseTo(1, 0);
});

test("two sets at one place share it, and each is known by itself", () => {
  const both = duties(tap(""), "ground p2 A cable 4/0 as g1; ground p2 A cable 4/0 as g2");
  const [one, other] = [both.get("g1" as never)!.amps, both.get("g2" as never)!.amps];
  expect(one).toBeCloseTo(other, 3);
  expect((one + other) / (TO_NEUTRAL / Math.hypot(0.2, 1))).toBeCloseTo(1, 1);
});

test("a set between the supply and another carries more than the one behind it", () => {
  const both = duties(
    tap("sp1 span p1-p2 A lengthM=400"),
    "ground p1 A cable 4/0 as near; ground p2 A cable 4/0 as far",
  );
  expect(both.get("near" as never)!.amps).toBeGreaterThan(1.5 * both.get("far" as never)!.amps);
});

test("each set is judged by the threat that drives most through it", () => {
  const twoFed = tap(`
    sp2 span   p2-p3 A lengthM=400
    s2  source p4 ABC kvLL=12.47 z1Ohms=[0.1,2] z0Ohms=[0.1,2]
    c2  cutout p3-p4 A open=A
  `);
  const both = duties(twoFed, "ground p1 A cable 4/0 as g1; ground p3 A cable 4/0 as g2");
  // By c1 the first set is driven at 0.2 + j1 Ω, by c2 the other at 0.1 + j2 Ω.
  expect(both.get("g1" as never)!.amps / (TO_NEUTRAL / Math.hypot(0.2, 1))).toBeGreaterThan(0.8);
  expect(both.get("g2" as never)!.amps / (TO_NEUTRAL / Math.hypot(0.1, 2))).toBeGreaterThan(0.8);
  expect(both.get("g1" as never)!.amps).toBeGreaterThan(both.get("g2" as never)!.amps);
});

test("nothing where nothing could come", () =>
  expect(duties(tap("s1 source sub ABC kvLL=12.47 on=false\nc1 none"), "ground p2 A as g1").size).toBe(0));

test("nothing where no set is", () => expect(duties(tap(""), "note").size).toBe(0));
