import { describe, expect, test } from "vitest";
import type { StillhotDocument } from "../document";
import { draw } from "../../../tests/support/jobNotation";
import { spell } from "../../../tests/support/words";
import { assess } from "./assess";

/** A tap that is dead, and its neutral in hand at p3, where a rod stands. */
const NEUTRAL = `
  s1   source   sub    ABC  kvLL=12.47
  main span     sub-p1 ABC  lengthM=500
  c1   cutout   p1-p2  A    open=A tagged=true blocked=true
  sp1  span     p2-p3  A    lengthM=200
  w1   work     p3     N
`;
const DONE = "check-detector done=true; test p3 done=true";
const SET = "g1 ground p3 A to=both cable=4/0";
const CROSSED = "x1 nearby span=sp1 relation=crossing kvLL=34.5 spacingM=3";

/** The verdict, and what is said of the neutral in hand. */
function found(more: string, steps: string, withoutRods: readonly string[]): string {
  const document = withoutRodsAt(draw(`${NEUTRAL}\n${more}`, steps), withoutRods);
  const { workPoints, findings } = assess(document);
  const said = findings.filter((it) => it.rule === "neutral-in-hand").map((it) => spell(it.message));
  return [workPoints["w1" as never]!.verdict, ...said].join(": ");
}

/** The notation puts a rod at each point; here some have none. */
function withoutRodsAt(document: StillhotDocument, points: readonly string[]): StillhotDocument {
  const { system } = document;
  const bare = Object.entries(system.points).map(([id, it]) => {
    const { earthOhms: _earthOhms, ...rest } = it;
    return [id, points.includes(id) ? rest : it];
  });
  return { ...document, system: { ...system, points: Object.fromEntries(bare) } };
}

type Case = readonly [why: string, more: string, steps: string, wanted: RegExp, withoutRods?: string[]];

const CASES: readonly Case[] = [
  ["on its own rod, all of the point tested", "", DONE, /^grounded$/],
  ["tested by its own letter", "", "check-detector done=true; test p3 N done=true", /^grounded$/],
  ["not tested", "", "", /^isolated$/],
  ["its phase tested alone", "", "check-detector done=true; test p3 A done=true", /^isolated$/],
  ["tested, then something switched", "", `${DONE}; open c1 A done=true`, /^isolated$/],
  ["no rod on its pole", "", DONE, /^isolated: the neutral at .* is held to earth by nothing/, ["p3"]],
  ["no rod, but a ground set with one", SET, DONE, /^grounded$/, ["p3"]],
  ["no rod, and a set that only bonds to it", "g1 ground p3 A", DONE, /^isolated: .*by nothing/, ["p3"]],
  ["the rod at another point of the pole", "l1 lead p3-p4 A", DONE, /^grounded$/, ["p3"]],
  [
    "the rod beyond the lead that is changed",
    "l1 lead p3-p4 A\nw1 work p3 N does=l1",
    DONE,
    /^isolated: .*by nothing/,
    ["p3"],
  ],
  ["a broken one on its rod, tested", "sp1 span p2-p3 A parted=N", DONE, /^grounded$/],
  ["a broken one, not tested", "sp1 span p2-p3 A parted=N", "", /^isolated$/],
  ["a broken one that is bridged", "sp1 span p2-p3 A parted=N\nb1 lead p2-p3 A", "", /^grounded$/],
  [
    "a circuit that would lift it through the set of the phase",
    `${SET}\n${CROSSED}`,
    DONE,
    /^isolated: if .*, the neutral in hand at .* stands at \d+ V to earth$/,
  ],
  ["with its phase: both tested and grounded", `${SET}\nw1 work p3 AN`, DONE, /^grounded$/],
  ["with its phase, which has no ground", "w1 work p3 AN", DONE, /^isolated$/],
];

describe("a neutral in hand is grounded where something else on its structure holds it and nothing lifts it", () => {
  for (const [why, more, steps, wanted, withoutRods = []] of CASES)
    test(why, () => expect(found(more, steps, withoutRods)).toMatch(wanted));
});
