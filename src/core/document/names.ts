import type { DeviceKind } from "../devices";
import { type ElementId, type Message, type PointId, say } from "../terms";
import { complete, completePoint } from "./complete";
import type { Point, System } from "./types";

type Drawn = { readonly system: System };

/** What a person calls an element: its label, or its kind and id. */
export function elementName({ system }: Drawn, id: string): string | Message {
  const saved = Object.hasOwn(system.elements, id) ? system.elements[id as ElementId] : undefined;
  return saved === undefined ? id : named(id, complete(saved));
}

/** What a person calls a point: its label, or its kind and id. */
export function pointName({ system }: Drawn, id: string): string | Message {
  const saved = Object.hasOwn(system.points, id) ? system.points[id as PointId] : undefined;
  return saved === undefined ? id : named(id, completePoint(saved));
}

const named = (
  id: string,
  { label, kind }: { label: string; kind: DeviceKind | Point["kind"] },
): string | Message => (label === "" ? say("name.kind", { kind: say(`kind.${kind}`), id }) : label);
