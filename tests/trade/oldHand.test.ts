/**
 * On every demo the first line of *look first* is what an experienced line worker would go and look at. What each would say,
 * and why, was written down before the program was asked. Common practice, no source.
 */
import { expect, test } from "vitest";
import { looksFor, type WorkPointId } from "../../src/core";
import { demoDrawings } from "../support/demoDrawings";

/** What is looked at first: the doubt and where, of what the crew would say. */
const SAID: readonly (readonly [demo: string, workPoint: string, why: string, first: string])[] = [
  [
    "transformer-tap",
    "w1",
    "all on the pole was seen; a set in one of the two houses would come back through T1 onto the bushing in my hands",
    "machine ld2",
  ],
  [
    "sideline-three-transformers",
    "w1",
    "pole 33 is from the map: does the line really end there, or does it go on and come round from somewhere",
    "goes-on p7",
  ],
  ["floating-wye-delta-bank", "w1", "a pump house has a standby set more often than not", "machine ld1"],
  ["grounded-wye-delta-bank", "w1", "a works with a set of its own, before the cottages", "machine ld1"],
  [
    "capacitor-on-the-section",
    "w1",
    "the bank was seen; a school is a shelter, and has a set",
    "machine ld1",
  ],
  [
    "transfer-switch",
    "w1",
    "is it a true transfer switch? The set starts as soon as I open the cutout",
    "machine ts1",
  ],
  ["portable-generator", "w1", "the set at number 4 was only told of", "machine gen1"],
  [
    "underground-loop",
    "w1",
    "which of the two cables at this pad is this one? The riser's may be on the other elbow",
    "other-cable sp4 sp3",
  ],
  ["underground-loop", "w2", "the same at the other pad, with the other riser's", "other-cable sp4 sp5"],
  // The order has hands on the tie, which an old hand would look at otherwise. What is left comes back from the customers:
  // he said a set, the program a neighbour's transformer on the same secondary, of which there are more; a set is second.
  [
    "sideline-far-end-tie",
    "w1",
    "pole 52, if nobody had a hand on the tie; after that whatever the customers can send back",
    "second-transformer t1",
  ],
  // He said the neutral that the set relies on. With it open the worker stays under the limit; what comes up from the
  // sideline when its cutout goes home does as well, but lowers the margin.
  [
    "quarry-lane",
    "w1",
    "the crew has hands on cutout, clamp and tie; what is left is the neutral under the set, and what comes up the sideline",
    "second-transformer t1",
  ],
  // He said the 34.5 kV circuit beside it: that is drawn, so that no doubt names it, and its numbers are told as a range.
  [
    "crossing-circuit",
    "w1",
    "how long and how near the 34.5 kV circuit runs; of what is not drawn, a set at the only house",
    "machine ld1",
  ],
  // He said a set at numbers 2 to 8, unless the leads are cut: the order cuts them, and nothing that the houses have reaches
  // the bushing. What stays is where the line itself comes from.
  [
    "two-transformers-one-secondary",
    "w1",
    "with the leads cut nothing of the houses reaches me; the line is only drawn from the map: what feeds it?",
    "no-span sp1",
  ],
];

const DEMOS = new Map(demoDrawings());

test.each(SAID)("%s, %s: %s", (demo, workPoint, _why, first) => {
  const [line] = looksFor(DEMOS.get(`${demo}.stillhot.json`)!, workPoint as WorkPointId).report.entries;
  const { doubt, where, other } = line!.doubt;
  expect([doubt, where, ...(other === undefined ? [] : [other])].join(" ")).toBe(first);
});

test("every demo is asked", () =>
  expect(new Set(SAID.map(([demo]) => `${demo}.stillhot.json`))).toEqual(new Set(DEMOS.keys())));
