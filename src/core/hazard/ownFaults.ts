import { isFault, isGroundSet, shortedBy } from "../devices";
import { complete, perQuestion, type SavedElement, type System } from "../document";
import type { ElementId } from "../terms";
import { byStrength, type FoundSides, type FoundThreats } from "./threats";
import type { Question, Threat } from "./types";
import { threatKey } from "./threatKey";

/**
 * The drawing without the faults that the work of a work point takes away; nothing where it takes none. What is cut out and
 * mended under the hands is no ground set: until it is gone it may hold the line down, and a moment later it does not.
 */
export function withoutOwnFaults({ system, workPoint }: Question): System | undefined {
  const { elements } = system;
  const own = (workPoint.does ?? []).filter((id) => {
    if (!Object.hasOwn(elements, id)) return false;
    const element = complete(elements[id as ElementId]!);
    return shortedBy(element) !== "" && !isGroundSet(element);
  });
  return own.length === 0 ? undefined : without(system, own.join());
}

const without = perQuestion((system: System, own: string): System => {
  const elements: Record<string, SavedElement> = { ...system.elements };
  for (const id of own.split(",")) {
    const record = elements[id]!;
    if (isFault(record)) delete elements[id];
    else elements[id] = { ...record, failed: "" };
  }
  return { ...system, elements };
});

/** Threats with such faults in place and gone, each as bad as it is in either. */
export function worstOfBoth(inPlace: FoundThreats, gone: FoundThreats): FoundThreats {
  const known = new Map(inPlace.threats.map((it) => [threatKey(it), it]));
  const worst = gone.threats.map((it): Threat => {
    const other = known.get(threatKey(it));
    known.delete(threatKey(it));
    if (other === undefined) return it;
    const most = (
      figure: "volts" | "exposureVolts" | "exposureToEarthVolts" | "bodyMilliamps" | "groundAmps",
    ) => Math.max(it[figure], other[figure]);
    return {
      ...it,
      volts: most("volts"),
      exposureVolts: most("exposureVolts"),
      exposureToEarthVolts: most("exposureToEarthVolts"),
      bodyMilliamps: most("bodyMilliamps"),
      groundAmps: most("groundAmps"),
    };
  });
  return {
    threats: [...worst, ...known.values()].sort(byStrength),
    completeTo: Math.min(inPlace.completeTo, gone.completeTo),
    settled: inPlace.settled && gone.settled,
    work: inPlace.work + gone.work,
  };
}

/** The same where only the sides of the limits are known. */
export const sidesOfBoth = (inPlace: FoundSides, gone: FoundSides): FoundSides => ({
  threats: [...inPlace.threats, ...gone.threats],
  completeTo: Math.min(inPlace.completeTo, gone.completeTo),
  work: inPlace.work + gone.work,
});
