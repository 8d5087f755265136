import type { CimModel } from "./model";
import type { RdfObject } from "./rdf";

const LETTER: Readonly<Record<string, string>> = { A: "A", B: "B", C: "C", N: "N", s1: "1", s2: "2" };

/** Our letter for a single phase of the standard, or nothing where it has none. */
export const letterOf = (phase: string | undefined): string | undefined =>
  phase === undefined ? undefined : LETTER[phase];

const ORDER = "ABC12N";

/** Letters in the order of the format. */
export const inOrder = (letters: Iterable<string>): string =>
  [...new Set(letters)].sort((a, b) => ORDER.indexOf(a) - ORDER.indexOf(b)).join("");

/** Letters of the per-phase parts of a thing, in the order of their sequence numbers, else of the file. */
export function letterRows(model: CimModel, parts: readonly RdfObject[]): string[] {
  const numberOf = (it: RdfObject) => model.number(it, "sequenceNumber") ?? Infinity;
  return [...parts]
    .sort((a, b) => numberOf(a) - numberOf(b) || 0)
    .flatMap((it) => letterOf(model.choice(it, "phase")) ?? []);
}
