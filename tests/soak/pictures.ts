/** What is written on pictures, on all kept drawings in both languages and on as many made ones as there is time for. */
import { faultsOf, KEPT, madeFrom, type ToLookAt } from "../support/pictures";

export interface LookedAt {
  readonly drawings: number;
  readonly faults: readonly string[];
}

/** Faults after which there is enough to look at. */
const MOST_FAULTS = 100;

export function soakPictures(
  firstSeed: number,
  until: () => boolean,
  tell: (looked: LookedAt, seed: number) => void,
): LookedAt {
  let drawings = 0;
  const faults: string[] = [];
  const look = (those: readonly ToLookAt[]) => {
    for (const it of those) {
      drawings++;
      const found = faultsOf(it);
      faults.push(...found);
      if (found.length > 0) console.log(found.join("\n"));
    }
  };
  look(KEPT);
  for (let seed = firstSeed; !until() && faults.length < MOST_FAULTS; seed++) {
    look(madeFrom(seed));
    tell({ drawings, faults }, seed);
  }
  return { drawings, faults };
}
