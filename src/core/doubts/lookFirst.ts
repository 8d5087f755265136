import { jobOf, perQuestion, settingsOf, type StillhotDocument } from "../document";
import { testedConductors } from "../hazard";
import type { WorkPointId } from "../terms";
import { Asker, type DoubtsQuestion, type LookFirst } from "./asker";
import type { Doubt } from "./doubts";
import { whileWorking } from "./whileWorking";

/** How much was asked before the work that one answer may take was spent. */
export interface Asked {
  /** things farther off than those whose doubts were gathered at all */
  readonly beyond: number;
  readonly singles: number;
  readonly ofSingles: number;
  readonly pairs: number;
  readonly ofPairs: number;
}

/** What to look at first, what does the most harm before the rest, and how much was asked for it. */
export interface LookFirstReport {
  readonly entries: readonly LookFirst[];
  readonly asked: Asked;
}

/** Of which moment it is asked, and how long it may take. */
export interface LookFirstOptions {
  /** as the drawing stands, or as it stands once the order's grounds are on and hands go to the work; as drawn where there is no order */
  readonly when?: "drawn" | "working";
  /** how much it may take, in multiplications */
  readonly mostWork?: number;
}

/** So many entries at most: more nobody goes and looks at. */
export const MOST_ENTRIES = 20;

/** The work that one answer may be, in multiplications: a second or so. */
const MOST_WORK = 3e6;

/**
 * What to go and look at before anything else: the doubts that would worsen the verdict of a work point, lower its margin
 * or lift an exposure above the limit if they were true, the most useful look first; then pairs of which neither does
 * harm alone. Single doubts are asked from the work point outward, pairs only where single ones leave room in the list.
 */
export const lookFirst: (
  document: StillhotDocument,
  id: WorkPointId,
  options?: LookFirstOptions,
) => LookFirstReport = perQuestion(lookedFor);

function lookedFor(
  document: StillhotDocument,
  id: WorkPointId,
  { when = "drawn", mostWork = MOST_WORK }: LookFirstOptions = {},
): LookFirstReport {
  const drawn = asDrawn(document, id);
  const working = whileWorking(document, id);
  const asker = new Asker({
    ...drawn,
    ...(working === undefined ? {} : { grounded: working }),
    ...(when === "working" && working !== undefined ? { base: working, handled: working.handled } : {}),
    mostWork,
  });
  const singles = asker.doubts.filter((it) => asker.ask([it]));
  const harmless = singles.filter((it) => !asker.isHarmful(it));
  const pairs = pairsOf(harmless);
  let askedPairs = 0;
  if (asker.places < MOST_ENTRIES)
    for (const [a, b] of pairs) {
      if (!asker.ask([a, b])) break;
      askedPairs++;
    }
  return {
    entries: asker.ranked().slice(0, MOST_ENTRIES),
    asked: {
      beyond: asker.beyond,
      singles: singles.length,
      ofSingles: asker.doubts.length,
      pairs: askedPairs,
      ofPairs: pairs.length,
    },
  };
}

/** What is asked about a work point as the drawing stands. */
export function asDrawn(document: StillhotDocument, id: WorkPointId): DoubtsQuestion {
  const { workPoints, steps } = jobOf(document);
  const workPoint = workPoints[id]!;
  const drawn = { document, tested: testedConductors(steps, workPoint.at) };
  return {
    settings: settingsOf(document),
    workPoint,
    base: drawn,
    grounded: drawn,
    handled: new Set(),
    mostWork: MOST_WORK,
  };
}

/** Pairs of doubts, those first of which both are near. */
const pairsOf = (doubts: readonly Doubt[]): (readonly [Doubt, Doubt])[] =>
  doubts.flatMap((second, nth) =>
    doubts.slice(0, nth).flatMap((first) => (areOfOneThing(first, second) ? [] : [[first, second] as const])),
  );

/** Of one thing only one can be so: a thing that is gone is not otherwise. */
function areOfOneThing(a: Doubt, b: Doubt): boolean {
  const touched = new Set<string>(touchedBy(a));
  return touchedBy(b).some((it) => touched.has(it));
}

const touchedBy = ({ instead: { set, remove } }: Doubt): string[] => [
  ...Object.keys(set ?? {}),
  ...(remove ?? []),
];
