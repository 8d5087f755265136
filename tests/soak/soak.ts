/**
 * The whole answer against the second implementation and against brute force, on as many random drawings as there is time
 * for. The second implementation tries every set of upsets itself, so that it is brute force of its own.
 */
import { isUnreadable, jobOf, readDocument, settingsOf, type WorkPoint } from "../../src/core/document";
import { threatsByBruteForce, threatsTo } from "../../src/core/hazard";
import { LEVELS } from "../../src/core/practice";
import { notStanding, otherStates, tapOf, unplanned } from "../practice/generated";
import { drawnOutside } from "../support/numbersDrawn";
import { randomDocument } from "../support/randomSystems";
import { compare } from "../secondOpinion/compare";
import { nameOf } from "../secondOpinion/hazard";
import { nastyDocument } from "../secondOpinion/nasty";

export interface Soaked {
  readonly systems: number;
  readonly skipped: number;
  readonly threats: number;
  readonly verdicts: Readonly<Record<string, number>>;
  readonly differences: readonly string[];
}

/** Sets of upsets above which a drawing takes longer than many small ones tell. */
const MOST_SETS = 40;
/** Differences after which there is enough to look at. */
const MOST_DIFFERENCES = 200;

/** How far figures may be off is drawn a thousand times: of one drawing in so many. */
const SEEDS_A_RANGE = 100;
const DRAWS = 1000;

export function soak(
  firstSeed: number,
  until: () => boolean,
  tell: (soaked: Soaked, seed: number) => void,
): Soaked {
  let [systems, skipped, threats] = [0, 0, 0];
  const verdicts: Record<string, number> = {};
  const differences: string[] = [];
  const soaked = (): Soaked => ({ systems, skipped, threats, verdicts, differences });
  for (let seed = firstSeed; !until() && differences.length < MOST_DIFFERENCES; seed++) {
    for (const [title, document] of drawingsOf(seed)) {
      const compared = compare(document, MOST_SETS);
      if (compared.skipped !== undefined) {
        skipped++;
        continue;
      }
      systems++;
      threats += compared.threats;
      for (const verdict of compared.verdicts) verdicts[verdict] = (verdicts[verdict] ?? 0) + 1;
      const found = [...compared.differences, ...againstBruteForce(document)];
      differences.push(...found.map((it) => `${title}, ${it}`));
      if (found.length > 0) console.log(differences.slice(-found.length).join("\n"));
    }
    if (seed % SEEDS_A_RANGE === 0) differences.push(...numbersAt(seed));
    differences.push(...generatedAt(seed));
    tell(soaked(), seed);
  }
  return soaked();
}

/** H22: no random draw of the numbers that nobody has seen lies outside of the range that is told. */
function numbersAt(seed: number): string[] {
  const read = readDocument(JSON.stringify(randomDocument(seed, { parts: 6 })));
  if (isUnreadable(read)) return [];
  const { outside } = drawnOutside(read.document, { draws: DRAWS, seed });
  return outside.map((it) => `random ${seed}, by its numbers, ${it}`);
}

const drawingsOf = (seed: number): readonly (readonly [string, unknown])[] => [
  [`nasty ${seed}`, nastyDocument(seed, 4 + (seed % 4))],
  [`random ${seed}`, randomDocument(seed, { parts: 6 })],
];

/** What is wrong with the generated taps of a seed, level by level. */
const generatedAt = (seed: number): string[] =>
  LEVELS.flatMap((level) => {
    const { document } = tapOf(level, seed);
    const found = [...notStanding(document), ...otherStates(document), ...unplanned(document)];
    return found.map((it) => `generated ${level}/${seed}, ${it}`);
  });

/** Threats that only one of the fast search and brute force has. */
function againstBruteForce(document: unknown): string[] {
  const read = readDocument(JSON.stringify(document));
  if (isUnreadable(read)) return [];
  const { system } = read.document;
  const settings = settingsOf(read.document);
  return Object.values(jobOf(read.document).workPoints).flatMap((workPoint: WorkPoint) => {
    const names = (threats: Parameters<typeof nameOf>[0][]) => new Set(threats.map(nameOf));
    const fast = names(threatsTo({ system, settings, workPoint }).threats);
    const slow = names(threatsByBruteForce({ system, settings, workPoint }));
    return [
      ...[...fast].filter((it) => !slow.has(it)).map((it) => `${it}: not by brute force`),
      ...[...slow].filter((it) => !fast.has(it)).map((it) => `${it}: by brute force only`),
    ];
  });
}
