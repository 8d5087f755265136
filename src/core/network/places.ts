import {
  type CircuitElement,
  type End,
  isBeside,
  isLine,
  isLoad,
  isSplit,
  type Part,
  partsOf,
  type DevicePlace,
} from "../devices";
import { complete, type SavedElement, type System } from "../document";
import { conductorId, type ElementId, type Letter } from "../terms";
import type { Circuit } from "./circuit";
import type { NominalVolts } from "./nominal";

/** The point at each of an element's ends; a `nearby` has those of its span. */
export type EndPoints = Readonly<Partial<Record<End, string>>>;

/** The point at each end of an element; none where a `nearby` names a span that is not there. */
export function endPointsOf(system: System, element: CircuitElement): EndPoints {
  if (!isBeside(element)) return element;
  const beside = besideOf(system, element.span);
  return beside === undefined ? {} : { from: beside.from, to: beside.to };
}

function besideOf(system: System, span: string) {
  const saved = system.elements[span as ElementId];
  const element = saved === undefined ? undefined : complete(saved);
  return isLine(element) ? element : undefined;
}

/** What the circuit knows of the place of one of its elements. */
export function placeFor(
  circuit: Pick<Circuit, "system" | "nodeOf" | "nominalVolts" | "elementIds">,
  index: number,
): DevicePlace {
  const { system, nodeOf, nominalVolts } = circuit;
  const element = complete(system.elements[circuit.elementIds[index]!]!);
  return placeOf(system, element, (point, letter) => nodeOf.get(conductorId(point, letter)), nominalVolts);
}

/** What an element may know of where it stands; nominal volts are line to line, leg to leg on a split secondary [V]. */
export function placeOf(
  system: System,
  element: CircuitElement,
  nodeAt: (point: string, letter: Letter) => number | undefined,
  nominalVolts: NominalVolts,
): DevicePlace {
  const points = endPointsOf(system, element);
  const beside = isBeside(element) ? besideOf(system, element.span) : undefined;
  return {
    frequencyHz: system.frequencyHz,
    hasNeutral: (end) => points[end] !== undefined && nodeAt(points[end], "N") !== undefined,
    nominalVolts: (end) => {
      const own = (element as { phases?: string }).phases ?? "";
      // A letter that nothing feeds has the volts of its point.
      for (const letter of [...own, ...(isSplit(own) ? "12" : "ABC")] as Letter[]) {
        const node = nodeAt(points[end] ?? "", letter);
        if (node !== undefined && nominalVolts[node] !== 0) return nominalVolts[node]!;
      }
      return 0;
    },
    ...(beside === undefined
      ? {}
      : {
          span: {
            letters: [...beside.phases] as Letter[],
            lettersBeyond: [...(beside.toPhases || beside.phases)] as Letter[],
            parted: [...beside.parted] as Letter[],
          },
        }),
  };
}

/** All that a place tells an element, as a key: the same key gives the same parts. */
const told = (place: DevicePlace, element: CircuitElement): string =>
  [
    place.frequencyHz,
    ...(["from", "to", "at"] as const).map((end) => place.hasNeutral(end)),
    isLoad(element) ? place.nominalVolts("at") : "",
    place.span === undefined
      ? ""
      : `${place.span.letters.join("")}/${place.span.lettersBeyond.join("")}/${place.span.parted.join("")}`,
  ].join();

/** Parts are remembered for each saved record and for what its place told it, so that an edit builds only what it changed. */
const knownParts = new WeakMap<SavedElement, { readonly told: string; readonly parts: readonly Part[] }>();

/** Parts of an element in its place; asked of the device once. */
export function rememberedParts(
  saved: SavedElement,
  element: CircuitElement,
  place: DevicePlace,
): readonly Part[] {
  const key = told(place, element);
  const known = knownParts.get(saved);
  if (known !== undefined && known.told === key) return known.parts;
  const parts = partsOf(element, place);
  knownParts.set(saved, { told: key, parts });
  return parts;
}

/** Parts of one element of a circuit, as it now stands. */
export function partsOfElement(circuit: Circuit, index: number): readonly Part[] {
  const saved = circuit.system.elements[circuit.elementIds[index]!]!;
  return rememberedParts(saved, complete(saved), placeFor(circuit, index));
}
