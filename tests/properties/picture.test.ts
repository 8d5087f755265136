import { expect, test } from "vitest";
import { faultsOf, KEPT, madeFrom } from "../support/pictures";

/** Every kept drawing in one language after the other; `npm run soak -- --pictures` has all, and as many made ones as there is time for. */
const KEPT_HERE = KEPT.filter((_, nth) => nth % 2 === Math.floor(nth / 2) % 2);
const MADE_HERE = Array.from({ length: 10 }, (_, nth) => madeFrom(1 + nth * 7)).flat();

test.each([...KEPT_HERE, ...MADE_HERE])(
  "G7 $name, $language: what is written stands free and at its own symbol",
  (it) => {
    expect(faultsOf(it)).toEqual([]);
  },
);
