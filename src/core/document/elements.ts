import {
  type AnyTransformer,
  type CircuitElement,
  type DeviceKind,
  type ElementOfKind,
  isTransformer,
} from "../devices";
import type { ElementId } from "../terms";
import { complete } from "./complete";
import { perObject } from "./perObject";
import type { System } from "./types";

/** An element with its defaults, or nothing where there is none of this id. */
export function elementOf(system: System, id: string | undefined): CircuitElement | undefined {
  if (id === undefined || !Object.hasOwn(system.elements, id)) return undefined;
  return complete(system.elements[id as ElementId]!);
}

/** The same where it is of one kind. */
export function elementOfKind<Kind extends DeviceKind>(
  system: System,
  id: string | undefined,
  kind: Kind,
): ElementOfKind<Kind> | undefined {
  const element = elementOf(system, id);
  return element?.kind === kind ? (element as ElementOfKind<Kind>) : undefined;
}

/** Every element that is there, with its id: what is still to be put in is not. */
export const elementsOf = (system: System): (readonly [ElementId, CircuitElement])[] =>
  (Object.keys(system.elements) as ElementId[])
    .map((id) => [id, complete(system.elements[id]!)] as const)
    .filter(([, { planned }]) => !planned);

/** Those of one kind, in the order of the drawing. */
export const elementsOfKind = <Kind extends DeviceKind>(
  system: System,
  kind: Kind,
): readonly (readonly [ElementId, ElementOfKind<Kind>])[] =>
  (byKind(system).get(kind) ?? []) as unknown as readonly (readonly [ElementId, ElementOfKind<Kind>])[];

/** Every transformer, of two windings or of three, in the order of the drawing. */
export const transformersOf = perObject((system: System): readonly (readonly [ElementId, AnyTransformer])[] =>
  elementsOf(system).filter((it): it is readonly [ElementId, AnyTransformer] => isTransformer(it[1])),
);

/** Ground sets at a point. */
export const groundSetsAt = (
  system: System,
  point: string,
): readonly (readonly [ElementId, ElementOfKind<"ground">])[] =>
  elementsOfKind(system, "ground").filter(([, it]) => it.at === point);

const byKind = perObject((system: System) => {
  const lists = new Map<DeviceKind, (readonly [ElementId, CircuitElement])[]>();
  for (const entry of elementsOf(system)) {
    const { kind } = entry[1];
    const list = lists.get(kind);
    if (list === undefined) lists.set(kind, [entry]);
    else list.push(entry);
  }
  return lists;
});
