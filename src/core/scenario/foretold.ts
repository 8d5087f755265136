import type { LookFirst } from "../doubts";
import { structureOf, type StillhotDocument } from "../document";
import type { FactReport } from "./debrief";
import { placesOf, withinReach } from "./world";

/** A line of *look first* that leads to where a look shows what was hidden. */
export interface Foretold {
  /** which line of the list, from 1 */
  readonly line: number;
  readonly entry: LookFirst;
}

/**
 * The first line of *look first*, asked of the map alone, that would have led somebody to a place where one look shows a
 * hidden fact; nothing where no line leads there, or no look shows it. It may have been about another doubt: who stands
 * there sees what is there.
 */
export function foretold(
  map: StillhotDocument,
  entries: readonly LookFirst[],
  ways: FactReport["ways"],
): Foretold | undefined {
  const { system } = map;
  const shows = new Set(
    ways
      .filter(({ by }) => by === "inspect")
      .flatMap(({ at, element }) => [...at, ...(element === undefined ? [] : placesOf(system, element))])
      .flatMap((point) => [point, ...withinReach(system, point)]),
  );
  const leads = ({ doubt: { where, structure } }: LookFirst) =>
    (structure === null ? placesOf(system, where) : (structureOf(system, structure)?.points ?? [])).some(
      (it) => shows.has(it),
    );
  const index = entries.findIndex(leads);
  return index < 0 ? undefined : { line: index + 1, entry: entries[index]! };
}
