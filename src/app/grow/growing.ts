import {
  type Edit,
  complete,
  type DeviceKind,
  edits,
  type ElementId,
  elementsAt,
  isRefusal,
  isSupply,
  isTransformer,
  type JsonObject,
  type Message,
  type StillhotDocument,
  kindKey,
} from "../../core";
import type { MessageKey } from "../words/catalogue";
import { t } from "../words/words";
import { nextNumber } from "./number";
import { placeNext } from "./place";

/** From pole to pole, on the drawing [units]. */
export const SPAN = 120;

/** Over a device in the line [units]. */
export const DEVICE = 80;

/** From the pole to a customer [units]. */
export const HOUSE = 90;

/** Between customers side by side [units]. */
export const HOUSES_APART = 60;

/** Does edits one after another, each of which may ask what the one before made; they are one entry in the history. */
export const inTurn =
  (
    label: Message,
    build: (step: (edit: Edit) => readonly string[], now: () => StillhotDocument) => void,
  ): Edit =>
  (before) => {
    const several: Edit[] = [];
    let document = before;
    let refused: ReturnType<Edit> | undefined;
    build(
      (edit) => {
        if (refused !== undefined) return [];
        const done = edit(document);
        if (isRefusal(done)) {
          refused = done;
          return [];
        }
        several.push(edit);
        document = done.after;
        return done.made ?? [];
      },
      () => document,
    );
    return refused ?? edits.together(label, several)(before);
  };

/** A number that no label of this kind has yet: `Pole 3`. */
export function nextLabel(document: StillhotDocument, key: MessageKey): string {
  const labels = new Set(
    Object.values<Readonly<Record<string, JsonObject>>>({
      structures: document.system.structures ?? {},
      points: document.system.points,
      elements: document.system.elements,
    }).flatMap((map) => Object.values(map).map((it) => it["label"])),
  );
  for (let n = 1; ; n++) {
    const label = t(key, { n });
    if (!labels.has(label)) return label;
  }
}

interface Growing {
  readonly length?: number;
  readonly isBranch?: boolean;
  readonly keys?: JsonObject;
  /** catalogue key of its own label, numbered */
  readonly label?: MessageKey;
  /** what the new point is */
  readonly point?: "pole" | "pad" | "service" | "bare";
}

/** A two-ended part with a new point at its far end. */
export const grow =
  (kind: DeviceKind, { length = DEVICE, isBranch = false, keys = {}, label, point = "bare" }: Growing) =>
  (document: StillhotDocument, from: string, phases: string): Edit => {
    const { x, y } = placeNext(document, from, length, { isBranch });
    const own = {
      phases,
      ...(label === undefined ? {} : { label: nextLabel(document, label) }),
      ...keys,
    };
    if (point === "bare") return edits.growFrom(from, kind, { x, y }, own);
    return edits.growFrom(
      from,
      kind,
      { x, y, kind: point, ...(point === "pole" ? { earthOhms: 25 } : {}) },
      own,
      newStructure(document, from, point),
    );
  };

/** What stands next: with a number of its own, proposed from the last one. */
export const newStructure = (
  document: StillhotDocument,
  from: string,
  kind: "pole" | "pad" | "service",
): JsonObject => ({
  label: nextNumber(document, from, `grow.${kind}Label`),
  ...kindKey(kind),
});

/** A part at the point itself. */
export const hang =
  (kind: DeviceKind, keys: JsonObject = {}, label?: MessageKey) =>
  (document: StillhotDocument, at: string, phases: string): Edit =>
    edits.addElement(
      kind,
      { at },
      {
        phases,
        ...(label === undefined ? {} : { label: nextLabel(document, label) }),
        ...keys,
      },
    );

/** Line-to-line kilovolts of the nearest source, for what must be rated for them. */
export function kvOf(document: StillhotDocument): number {
  return Object.values(document.system.elements).map(complete).find(isSupply)?.kvLL ?? 12.47;
}

/** Volts to neutral of a drawing's line [kV]. */
export const toNeutralKv = (document: StillhotDocument): number =>
  Math.round((kvOf(document) / Math.sqrt(3)) * 100) / 100;

/** One unit on one letter, to neutral, or between two. Its size stands beside it. */
export const single = (document: StillhotDocument, phases: string, kva = 25): JsonObject => ({
  phases,
  connection: "single",
  kva,
  primaryKv: phases.length > 1 ? kvOf(document) : toNeutralKv(document),
  secondaryV: 240,
});

const MOST_LOW_VOLTS = 1000;

/** The volts of the bank whose secondary a point is joined to by conductors; nothing on a primary. */
export function lowVoltsAt({ system }: StillhotDocument, point: string): number | undefined {
  const seen = new Set([point]);
  const next = [point];
  for (let at = next.pop(); at !== undefined; at = next.pop())
    for (const id of elementsAt(system).get(at) ?? []) {
      const element = complete(system.elements[id as ElementId]!);
      if (isTransformer(element)) {
        if (element.to === at && element.secondaryV < MOST_LOW_VOLTS) return element.secondaryV;
        continue;
      }
      for (const end of "from" in element ? [element.from, element.to] : [])
        if (!seen.has(end)) {
          seen.add(end);
          next.push(end);
        }
    }
  return undefined;
}
