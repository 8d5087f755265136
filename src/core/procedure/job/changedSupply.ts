import { type CircuitElement, isLine, isTransformer, lowSidesOf } from "../../devices";
import { doneBy, jobOf, type StillhotDocument, type System } from "../../document";
import { type ConductorId, conductorId, type ElementId, lettersOf, type PointId } from "../../terms";
import { legsOf } from "./hands";
import { elementOf } from "./names";

/** What customers get their volts from that work has changed or joined, and where these are read. */
export interface ChangedSupply {
  readonly id: ElementId;
  readonly at: PointId;
  readonly legs: readonly ConductorId[];
}

/**
 * Transformers that work puts in or mends, and secondary lines, whose volts are read at the end toward the customer; of
 * lines that follow one another the last.
 *
 * @param workPoints those whose work counts
 */
export function changedSupplies(
  document: StillhotDocument,
  system: System,
  workPoints: readonly string[] = Object.keys(jobOf(document).workPoints),
): ChangedSupply[] {
  const changed = workPoints
    .flatMap((id) => doneBy(document, id))
    .flatMap((id) => {
      const element = elementOf(system, id);
      return element === undefined ? [] : [[id, element] as const];
    });
  const begins = new Set(changed.flatMap(([, it]) => (isSecondaryLine(it) ? [it.from] : [])));
  return changed.flatMap(([id, it]): ChangedSupply[] => {
    if (isTransformer(it))
      return lowSidesOf(it).map((side) => ({ id, at: side.at as PointId, legs: legsOf(side) }));
    if (!isSecondaryLine(it) || begins.has(it.to)) return [];
    return [
      {
        id,
        at: it.to as PointId,
        legs: lettersOf(it.phases).map((letter) => conductorId(it.to, letter)),
      },
    ];
  });
}

const isSecondaryLine = (it: CircuitElement): it is CircuitElement & { readonly kind: "span" } =>
  isLine(it) && it.construction === "secondary";
