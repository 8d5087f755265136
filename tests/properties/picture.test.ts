import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import ieee4 from "../../shared/feeders/ieee4.json";
import type { StillhotDocument } from "../../src/core";
import { feederOf } from "../published/ieee4";
import { BANKS, elementsOf } from "../published/ieee4wireDelta";
import { loadFlow } from "../published/ieee37";
import { type Elements, systemOf } from "../published/network";
import { atWork } from "../support/atWork";
import { SCREENS } from "../support/picture";
import { faultsOf, inOneLanguage, KEPT, madeFrom, type ToLookAt } from "../support/pictures";
import { sampled } from "../support/long";

/**
 * Every third kept drawing, and in the long run every one, in one language after the other; `npm run soak -- --pictures` has
 * all, and as many made ones as there is time for.
 */
const KEPT_HERE = sampled(inOneLanguage(KEPT), 3);
const SEEDS = sampled([1, 8, 22, 43, 57, 64], 3);
/**
 * Of the first seven hundred those that once stood badly: a number beside its plate, or under a tie; a flag among the parts
 * of a symbol; a state on a line in another; a lead on a neutral; a third winding on its line; a loop that came back along
 * another line; a device of one phase on the middle one; phases swapped over what hangs beside them.
 */
const ONCE_BAD = [3, 31, 41, 95, 102, 105, 124, 142, 166, 167, 215, 251, 253, 274, 370];
const MADE_HERE = [...SEEDS, ...ONCE_BAD].flatMap(madeFrom);

/** Of a drawing too large to be read whole two parts are looked at, each with symbols of another size. */
const AT_BOTH_SIZES = [0, 1];

/**
 * What is drawn wrong today. So much stands about a meter that what it says has no room which is its alone; and among all
 * that turns down between two rows of a feeder of 123 nodes, a line that closes a loop has no place of its own.
 */
const WRONG: Readonly<Record<string, readonly string[]>> = {
  "ieee123.xml": SCREENS.flatMap(({ width, height }) =>
    AT_BOTH_SIZES.map(() => `${width} × ${height}: B of l108, energized lies on C of s104c, energized`),
  ),
  "random 274": ["360 × 320", "640 × 200", "844 × 250", "on paper"].map(
    (room) => `${room}: RETIRÉ is nearest to another symbol`,
  ),
};

const jobs = ["demos", "scenarios"].flatMap((it) => readdirSync(`shared/${it}`));
const hasJob = ({ name }: ToLookAt): boolean => jobs.includes(name);
const whileWorkGoesOn = (it: ToLookAt): ToLookAt => ({
  ...it,
  name: `${it.name} at work`,
  document: () => atWork(it.document()),
});

const NO_MOTOR = [0, 0, 0].map(() => [0, 0] as const);

/** Published feeders that are built for their checks: nobody placed or named anything of them. */
const FEEDERS: readonly ToLookAt[] = [
  feederToLookAt("37 nodes", () => loadFlow),
  ...ieee4.cases
    .filter(({ load }) => load === "balanced")
    .map((it) => feederToLookAt(`4 nodes, ${it.direction}, ${it.connection}`, () => feederOf(it))),
  ...Object.entries(BANKS).map(([name, bank]) =>
    feederToLookAt(`four-wire delta, ${name}`, () => elementsOf(bank, NO_MOTOR)),
  ),
];

test.each([...FEEDERS, ...KEPT_HERE, ...MADE_HERE])(
  "G7 $name, $language: what is written stands free and at its own symbol",
  (it) => {
    const wrong = WRONG[it.name] ?? [];
    expect(faultsOf(it)).toEqual(wrong.map((fault) => `${it.name}, ${it.language}, ${fault}`));
  },
);

test.each(KEPT_HERE.filter(hasJob).map(whileWorkGoesOn))(
  "G7 $name, $language: what is opened, tagged and grounded is written as well",
  (it) => {
    expect(faultsOf(it)).toEqual([]);
  },
);

function feederToLookAt(name: string, elements: () => Elements): ToLookAt {
  return {
    name,
    language: "en",
    document: () =>
      ({
        format: "stillhot",
        formatVersion: 1,
        title: name,
        system: systemOf(elements()),
      }) as StillhotDocument,
  };
}
