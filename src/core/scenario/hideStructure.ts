import { type CircuitElement, isLine, isSupply } from "../devices";
import {
  amended,
  complete,
  type Edit,
  type HiddenFact,
  jobOf,
  type SavedElement,
  scenarioOf,
  type Structure,
  structureName,
  structureOf,
  structuresOf,
  type System,
} from "../document";
import { endsOf } from "../network";
import { listOf } from "../procedure/job/names";
import { isRefusal, type JsonObject, refuse, say } from "../terms";
import { leavingTheMap, newFactId, takenOff, withTruth } from "./edits";

/**
 * Hides a structure with all that is on it, as on a map that is older than the pole. Where the line runs through it, it
 * runs past there on the map; whatever else is fed through it alone leaves the map too, since an end without a feed would
 * give it away.
 *
 * @param label what the fact is called afterwards
 */
export const hideStructure =
  (id: string, label: string): Edit =>
  (before) => {
    const { system } = before;
    const structure = structureOf(system, id);
    if (structure === undefined) return refuse(say("edit.noThing", { id }));
    const past = lineRunningPast(system, structure);
    const gone = goneWith(system, structure, past);
    if (Object.values(jobOf(before).workPoints).some(({ at }) => gone.has(at)))
      return refuse(say("scenario.edit.workThere", { name: structureName(before, id) }));
    const off = takenOff(before, [...gone]);
    if (isRefusal(off)) return off;

    const structures = Object.fromEntries(
      Object.entries(system.structures ?? {}).filter(([it]) => {
        const points = structuresOf(system).get(it as Structure["id"])?.points ?? [];
        return points.length > 0 && points.every((point) => gone.has(point));
      }),
    );
    const { [past?.id ?? ""]: _, ...elements } = off.add.elements ?? {};
    const fact: HiddenFact = {
      label,
      add: { ...off.add, ...(Object.keys(structures).length === 0 ? {} : { structures }), elements },
      ...(past === undefined ? {} : { set: { [past.id]: past.truly } }),
    };
    const map = amended(off.map, [
      { remove: Object.keys(structures) },
      ...(past === undefined ? [] : [{ add: { elements: { [past.id]: past.onTheMap } } }]),
    ]);
    const fresh = newFactId(before);
    const truth = { ...scenarioOf(before).truth, [fresh]: fact };
    return leavingTheMap(before, { names: listOf([structureName(before, id)]), map }, fresh, (scenario) =>
      withTruth({ ...before, scenario }, truth),
    );
  };

/** A line that on the map runs past a structure at which in truth it ends and another one begins. */
interface RunningPast {
  readonly id: string;
  /** the points that it joins on the map */
  readonly joins: readonly [string, string];
  readonly onTheMap: SavedElement;
  /** what of it the map has otherwise */
  readonly truly: JsonObject;
}

/** The line through a structure, where exactly two lines of the same conductors lead to it, whole, from two places. */
function lineRunningPast(system: System, { points }: Structure): RunningPast | undefined {
  const isHere = (point: string) => (points as readonly string[]).includes(point);
  const leading = Object.entries(system.elements).flatMap(([id, saved]) => {
    const line = complete(saved);
    const [here, away] = [
      endsOf(line).find(([, it]) => isHere(it)),
      endsOf(line).find(([, it]) => !isHere(it)),
    ];
    return isLine(line) && here !== undefined && away !== undefined
      ? [{ id, saved, line, end: here[0], at: here[1], far: away[1] }]
      : [];
  });
  const [one, other] = leading;
  if (one === undefined || other === undefined || leading.length > 2 || one.far === other.far)
    return undefined;
  if (!areAlike(one.line, other.line)) return undefined;
  const lengthM = one.line.lengthM + other.line.lengthM;
  return {
    id: one.id,
    joins: [one.far, other.far],
    onTheMap: { ...one.saved, [one.end]: other.far, lengthM },
    truly: { [one.end]: one.at, lengthM: one.saved["lengthM"] ?? null },
  };
}

type LineElement = Extract<CircuitElement, { lengthM: number }>;

/** Whether two lines could be one: the same conductors, none of them parted. */
const areAlike = (one: LineElement, other: LineElement): boolean =>
  one.kind === other.kind &&
  one.phases === other.phases &&
  ("neutral" in one ? one.neutral : undefined) === ("neutral" in other ? other.neutral : undefined) &&
  [one, other].every((it) => !("parted" in it) || it.parted === "");

/** The points of a structure, and those that no supply leads to any more once it is gone. */
function goneWith(system: System, { points }: Structure, past: RunningPast | undefined): Set<string> {
  const gone = new Set<string>(points);
  const fedBefore = fedPoints(system, new Set());
  const fedAfter = fedPoints(system, gone, past?.joins);
  for (const point of fedBefore) if (!fedAfter.has(point)) gone.add(point);
  return gone;
}

/** Every point that hangs together with a supply, whatever is open between, but not by way of some points. */
function fedPoints(
  system: System,
  without: ReadonlySet<string>,
  joined?: readonly [string, string],
): ReadonlySet<string> {
  const joins = new Map<string, string[]>();
  const join = (ends: readonly string[]) => {
    for (const end of ends) joins.set(end, [...(joins.get(end) ?? []), ...ends]);
  };
  const supplied: string[] = [];
  for (const saved of Object.values(system.elements)) {
    const element = complete(saved);
    const ends = endsOf(element)
      .map(([, point]) => point as string)
      .filter((it) => !without.has(it));
    join(ends);
    if (isSupply(element)) supplied.push(...ends);
  }
  if (joined !== undefined) join(joined);
  const fed = new Set<string>(supplied);
  for (const point of fed) for (const next of joins.get(point) ?? []) fed.add(next);
  return fed;
}
