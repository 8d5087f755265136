import { droppedBy, isOwners } from "../../devices";
import type { StillhotDocument } from "../../document";
import { circuitOf } from "../../network";
import type { ElementId } from "../../terms";
import { ampsOf, type OpeningOrder, systemWithout } from "./breaking";
import { type Opening, takesOffHung } from "./openings";
import type { Choice, Demand } from "./search";
import { edgesTaken, wayBetween } from "./ways";

/** What an opening is for: to shut a supply off, to show a gap where that of another is hidden, to take load off another, to pick load up in parts afterwards, or to keep a motor off two phases. */
export type Purpose =
  | { readonly is: "isolates"; readonly source: ElementId }
  | { readonly is: "shows"; readonly other: ElementId }
  | { readonly is: "drops"; readonly other: ElementId }
  | { readonly is: "splits"; readonly other: ElementId }
  | { readonly is: "keeps off"; readonly other: ElementId }
  | { readonly is: "capacitor" };

/** What each opening is for: it is asked what would be left without it. */
export function purposesOf(
  document: StillhotDocument,
  { openings, order, restored }: Choice,
  demand: Demand,
): Map<string, Purpose> {
  const circuit = circuitOf(document.system);
  const purposes = new Map<string, Purpose>();
  const taken = edgesTaken(circuit, demand.strictness);
  // What is closed for the rest meanwhile would feed the work as well.
  for (const { opening } of restored.moves) for (const edge of opening.edges) taken[edge] = 1;
  // What closes again before the work keeps nothing dead.
  const closesAgain = new Set(restored.moves.map(({ opening }) => opening.element));
  for (const opening of openings) {
    const edgeOn = taken.slice();
    const others = openings.filter((it) => it !== opening && !closesAgain.has(it.element));
    for (const { edges, visibleGap } of others)
      if (visibleGap || !demand.strictness.visibleGaps) for (const edge of edges) edgeOn[edge] = 0;
    const stopped = new Set(others.filter(({ moves }) => moves === "machine").map(({ element }) => element));
    const wayOn = (on: Uint8Array) =>
      demand.separations.map((it) => wayBetween(circuit, on, it, stopped)).find((it) => it !== undefined);
    const way = wayOn(edgeOn);
    // What is open already with a gap that nobody can see keeps it dead too, and yet nobody sees that it does.
    const hidden = others.filter(({ visibleGap }) => !visibleGap);
    const reallyOn = edgeOn.slice();
    for (const { edges } of hidden) for (const edge of edges) reallyOn[edge] = 0;
    const isForShow = way !== undefined && hidden.length > 0 && wayOn(reallyOn) === undefined;
    const purpose: Purpose | undefined = isForShow
      ? { is: "shows", other: hidden[0]!.element }
      : way === undefined
        ? idleOf(document, opening, order.order, demand)
        : { is: "isolates", source: way.source };
    if (purpose !== undefined) purposes.set(opening.key, purpose);
  }
  return purposes;
}

function idleOf(
  document: StillhotDocument,
  opening: Opening,
  order: OpeningOrder["order"],
  { first }: Demand,
): Purpose | undefined {
  if (takesOffHung(opening) && !first.has(opening.key)) return { is: "capacitor" };
  const at = order.findIndex((it) => it.opening === opening);
  const before = order
    .slice(0, at)
    .reduce((system, it) => systemWithout(system, it.opening), document.system);
  const after = systemWithout(before, opening);
  const later = order
    .slice(at + 1)
    .flatMap((it) => (it.opening.element === opening.element ? [] : [it.opening]));
  const relieved = later.filter((it) => ampsOf(after, it) < ampsOf(before, it));
  // What is made to break load by itself needs nobody to take it off.
  const helped = (relieved.find((it) => droppedBy(it) !== "load") ?? relieved[0])?.element;
  if (!first.has(opening.key)) return helped === undefined ? undefined : { is: "drops", other: helped };
  const other = helped ?? later[0]?.element;
  if (other === undefined) return undefined;
  return isOwners(opening) ? { is: "keeps off", other } : { is: "splits", other };
}
