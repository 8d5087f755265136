import { canShort, isSupply, isTransformer } from "../devices";
import { readValue, isUnreadable, type StillhotDocument, isStation, isHouse, kindKey } from "../document";
import type { JsonObject } from "../terms";
import { type DrawingDraft, type DraftElement, type DraftPoint, lettersAt } from "./draft";
import { idsFor } from "./ids";
import { type NeutralWay, PERFECT_OHMS, POLE_OHMS, STATION_OHMS } from "./neutral";

/** A label that a drawing still has room for; the reader refuses one of more than 2 000 letters. */
const LONGEST_LABEL = 200;

interface Options {
  readonly title: string;
  readonly frequencyHz: 50 | 60;
  /** `as-given`: what the file says of grounds is all there is */
  readonly way: Exclude<NeutralWay, "given"> | "as-given";
}

/**
 * A drawing made of what was read: turned away from its sources, checked phase by phase, with ids, grounds and places.
 *
 * @returns nothing where there are errors; they stand in the draft's ledger
 */
export function assemble(draft: DrawingDraft, options: Options): StillhotDocument | undefined {
  dropWhatHangsOnNothing(draft);
  checkPhases(draft);
  if (draft.ledger.errors.length > 0) return undefined;
  const elements = turnedAway(draft);
  const pointIds = idsFor(new Map([...draft.points].map(([key, it]) => [key, it.idOf])));
  const elementIds = idsFor(new Map(elements.map((it) => [it, it.idOf])), pointIds.values());
  const withNeutral = new Set(elements.flatMap((it) => neutralEnds(it, options.way)));
  const points: Record<string, JsonObject> = {};
  for (const [key, point] of draft.points)
    points[pointIds.get(key)!] = pointRecord(draft, point, withNeutral.has(key), options.way);
  const records: Record<string, JsonObject> = {};
  for (const element of elements) records[elementIds.get(element)!] = elementRecord(draft, element, pointIds);
  const read = readValue({
    format: "stillhot",
    formatVersion: 1,
    title: options.title,
    system: { frequencyHz: options.frequencyHz, points, elements: records },
  });
  if (!isUnreadable(read)) return read.document;
  for (const { path, message } of read.problems)
    draft.ledger.error("importing.error.drawing", { path, message });
  return undefined;
}

/** Ends at which an element has a neutral. */
function neutralEnds({ keys, ends }: DraftElement, way: Options["way"]): readonly string[] {
  if (isTransformer(keys)) return ends;
  if (ends.length > 1) return way === "earth" ? [] : ends;
  return canShort(keys) ? [] : ends;
}

function pointRecord(
  draft: DrawingDraft,
  point: DraftPoint,
  hasNeutral: boolean,
  way: Options["way"],
): JsonObject {
  const { kind, place, label, earthOhms, evidence } = point;
  const assumed = way === "earth" ? PERFECT_OHMS : isStation(point) ? STATION_OHMS : POLE_OHMS;
  const ohms =
    earthOhms ??
    (hasNeutral && way !== "as-given" && (!isHouse(point) || way === "earth") ? assumed : undefined);
  if (earthOhms === undefined && ohms !== undefined)
    draft.ledger.note("assumed", way === "earth" ? "perfectEarth" : "rods", label);
  return {
    ...(label === "" ? {} : { label: shortened(draft, label) }),
    ...(place === undefined ? {} : { x: place.x, y: place.y }),
    ...kindKey(kind),
    ...(ohms === undefined ? {} : { earthOhms: ohms }),
    ...(evidence === undefined ? {} : { evidence }),
  };
}

function elementRecord(
  draft: DrawingDraft,
  element: DraftElement,
  ids: ReadonlyMap<string, string>,
): JsonObject {
  const [first, second, third] = element.ends.map((it) => ids.get(it)!);
  const { label, keys } = element;
  return {
    ...keys,
    ...(label === "" ? {} : { label: shortened(draft, label) }),
    ...(second === undefined ? { at: first! } : { from: first!, to: second }),
    ...(third === undefined ? {} : { alt: third }),
  };
}

function shortened(draft: DrawingDraft, label: string): string {
  if (label.length <= LONGEST_LABEL) return label;
  draft.ledger.note("approximated", "longLabel", label.slice(0, 40));
  return `${label.slice(0, LONGEST_LABEL - 1)}…`;
}

/** Loads and the like at points to which nothing leads: there is no conductor that they could hang on. */
function dropWhatHangsOnNothing(draft: DrawingDraft): void {
  const isOnNothing = ({ keys, ends }: DraftElement) =>
    ends.length === 1 && !isSupply(keys) && draft.lettersAtPoint(ends[0]!) === "";
  for (const element of draft.elements.filter(isOnNothing))
    draft.ledger.note("leftOut", "onNothing", element.label);
  draft.retain((it) => !isOnNothing(it));
  const used = new Set(draft.elements.flatMap((it) => it.ends));
  for (const [key, { label }] of draft.points)
    if (!used.has(key)) {
      draft.ledger.note("leftOut", "emptyNode", label);
      draft.points.delete(key);
    }
}

/** What hangs on a point has no phase that nothing brings there. */
function checkPhases(draft: DrawingDraft): void {
  const around = draft.byPoint();
  for (const { ends, keys, shown } of draft.elements) {
    if (ends.length !== 1 || isSupply(keys)) continue;
    const [at] = ends as [string];
    const there = draft.lettersAtPoint(at);
    const missing = [...String(keys["phases"])].filter((it) => !there.includes(it));
    if (missing.length === 0) continue;
    const lines = around
      .get(at)!
      .filter((it) => it.ends.length === 2 && lettersAt(it, it.ends.indexOf(at)) !== "");
    draft.ledger.error(
      there.length === 1 ? "importing.error.phaseNotThere" : "importing.error.phasesNotThere",
      {
        object: shown,
        phase: missing.join(", "),
        place: draft.points.get(at)!.label,
        there: [...there].join(", "),
        lines: lines.map((it) => it.shown.replace(/ \([^()]*\)$/, "")).join(", "),
      },
    );
  }
}

/** Two-ended elements with the source side first, walked outward from all sources at once. */
function turnedAway(draft: DrawingDraft): DraftElement[] {
  const around = draft.byPoint();
  const reached = new Set(draft.elements.filter((it) => isSupply(it.keys)).map((it) => it.ends[0]!));
  const turned = new Map<DraftElement, DraftElement>();
  const queue = [...reached];
  for (let next = 0; next < queue.length; next++)
    for (const element of around.get(queue[next]!) ?? []) {
      const [first, second, ...others] = element.ends as [string, string?, ...string[]];
      if (second === undefined || turned.has(element)) continue;
      const isBackwards = queue[next] === second && !reached.has(first) && !isTransformer(element.keys);
      turned.set(
        element,
        isBackwards && element.isDirected !== true ? turnedRound(element, [second, first]) : element,
      );
      for (const end of [first, second, ...others])
        if (!reached.has(end)) {
          reached.add(end);
          queue.push(end);
        }
    }
  const islands = draft.points.size - reached.size;
  if (islands > 0)
    for (const [key, { label }] of draft.points)
      if (!reached.has(key)) draft.ledger.note("warnings", "island", label);
  return draft.elements.map((it) => turned.get(it) ?? it);
}

/** Told from its other end, by the letters that its phases have there. */
function turnedRound(element: DraftElement, ends: readonly string[]): DraftElement {
  const { phases: own, toPhases: beyond, ...keys } = element.keys;
  if (typeof own !== "string" || typeof beyond !== "string") return { ...element, ends };
  const pairs = [...own].map((near, nth): [string, string] => [beyond[nth]!, near]);
  pairs.sort(([one], [other]) => (one < other ? -1 : 1));
  const there = new Map(pairs.map(([far, near]) => [near, far]));
  const named = (letters: string) => [...letters].map((it) => there.get(it) ?? it).sort();
  const renamed = (["open", "cut"] as const).flatMap((key) =>
    typeof keys[key] === "string" ? [[key, named(keys[key]).join("")] as const] : [],
  );
  return {
    ...element,
    ends,
    keys: {
      ...keys,
      ...Object.fromEntries(renamed),
      phases: pairs.map(([far]) => far).join(""),
      toPhases: pairs.map(([, near]) => near).join(""),
    },
  };
}
