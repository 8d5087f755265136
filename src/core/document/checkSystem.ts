import {
  type DeviceKind,
  deviceOf,
  DEVICES,
  type FieldProblem,
  isBeside,
  isDeviceKind,
  isLine,
  neededBy,
  problem,
  problemsOf,
} from "../devices";
import { wireOf, WIRES } from "../reference";
import { isObject, isWellFormedId, type Json, type JsonObject, say } from "../terms";
import { besideOthers } from "./besideOthers";
import { checkFields, type RecordFacts, reportFacts } from "./checkFields";
import { complete } from "./complete";
import { conductorsOf } from "./conductors";
import type { TouchedRecords } from "./touched";
import { elementsAt, pointsAround, savedElement } from "./elementsAt";
import { perObject } from "./perObject";
import { below, type Report } from "./problem";
import { pointFields, type SavedElement, structureFields, type System } from "./types";

const SYSTEM_KEYS = ["frequencyHz", "structures", "points", "elements"];

/** Checks the electrical part of a file: every record by itself, then what they say of each other. */
export function checkSystem(report: Report, system: Json | undefined): void {
  if (!isObject(system)) return report.addExpected("system", system, say("file.expectedObject"));
  const { frequencyHz, structures = {}, points, elements } = system;
  if (frequencyHz !== undefined && frequencyHz !== 50 && frequencyHz !== 60)
    report.addExpected("system.frequencyHz", frequencyHz, say("read.oneOf", { choices: "50, 60" }));
  for (const key of Object.keys(system))
    if (!SYSTEM_KEYS.includes(key)) report.unknown.push(below("system", key));

  const pointsAreMap = isMap(report, "system.points", points);
  const elementsAreMap = isMap(report, "system.elements", elements);
  const structuresAreMap = isMap(report, "system.structures", structures);
  if (!pointsAreMap || !elementsAreMap || !structuresAreMap) return;
  const maps = { structures, points, elements };
  for (const [id, structure] of records(report, "system.structures", structures))
    checkStructure(report, id, structure, maps);
  for (const [id, point] of records(report, "system.points", points)) checkPoint(report, id, point, maps);
  for (const [id, element] of records(report, "system.elements", elements)) {
    if (report.isFull) return;
    checkElement(report, below("system.elements", id), element, maps);
  }
  // Conductors can be told only once every element is right by itself.
  if (report.problems.length === 0) checkNeeds(report, system as unknown as System);
}

/**
 * Checks the records in which a drawing differs from one that had nothing wrong, and what others say of them. It finds
 * something exactly where `checkSystem` does, though not always the same things first.
 */
export function checkTouched(report: Report, before: System, after: System, touched: TouchedRecords): void {
  const {
    structures = {},
    points,
    elements,
  } = after as unknown as { readonly structures?: JsonObject } & Maps;
  const maps = { structures, points, elements };
  const asked = new Set([...touched.structures, ...touched.points, ...touched.elements]);
  for (const [id, structure] of records(report, "system.structures", among(structures, asked)))
    checkStructure(report, id, structure, maps);
  for (const [id, point] of records(report, "system.points", among(points, touched.points)))
    checkPoint(report, id, point, maps);
  for (const [id, element] of records(report, "system.elements", among(elements, touched.elements)))
    checkElement(report, below("system.elements", id), element, maps);
  if (report.problems.length > 0) return;
  checkLeftOn(report, maps, touched.structures);
  for (const id of elementsLeftAt(after, touched.points))
    checkElement(report, below("system.elements", id), elements[id] as JsonObject, maps);
  for (const id of besideOthers(after)) {
    const { span } = elements[id] as { span?: Json };
    if (touched.elements.has(span as string))
      checkSpanOfNearby(report, `${below("system.elements", id)}.span`, span, elements);
  }
  if (report.problems.length > 0) return;
  const around = new Set(touched.elements);
  for (const point of pointsAround(before, after, touched))
    if (conductorsOf(before).get(point) !== conductorsOf(after).get(point))
      for (const id of elementsAt(after).get(point) ?? []) around.add(id);
  for (const id of around) {
    const saved = savedElement(after.elements, id);
    if (saved !== undefined) checkNeedsOf(report, after, id, saved);
  }
}

const among = (map: JsonObject, ids: ReadonlySet<string>): JsonObject =>
  Object.fromEntries([...ids].flatMap((id) => (Object.hasOwn(map, id) ? [[id, map[id]]] : [])));

/** Elements at points that are gone. */
const elementsLeftAt = (after: System, points: ReadonlySet<string>): string[] =>
  [...points].flatMap((point) =>
    Object.hasOwn(after.points, point) ? [] : (elementsAt(after).get(point) ?? []),
  );

/** Whether something of a file is records by id; where it is not, the report says what was expected. */
export function isMap(report: Report, path: string, map: Json | undefined): map is JsonObject {
  if (isObject(map)) return true;
  report.addExpected(path, map, say("file.expectedObject"));
  return false;
}

/** The records of a map, without those whose id or shape is wrong, which are reported. */
export function records(report: Report, path: string, map: JsonObject): [id: string, record: JsonObject][] {
  return Object.entries(map).flatMap(([id, record]): [string, JsonObject][] => {
    if (!isWellFormedId(id)) report.add(below(path, id), say("file.badId"));
    else if (!isObject(record))
      report.addExpected(below(path, id), record ?? null, say("file.expectedObject"));
    else return [[id, record]];
    return [];
  });
}

/** The records of a file by sort, not yet known to be right. */
interface Maps {
  readonly structures: JsonObject;
  readonly points: JsonObject;
  readonly elements: JsonObject;
}

/** A structure stands on nothing: structures in circles, and one on another, are told here. */
function checkStructure(report: Report, id: string, structure: JsonObject, { points, elements }: Maps): void {
  const path = below("system.structures", id);
  if (Object.hasOwn(points, id))
    report.add(path, say("file.idOfOther", { path: below("system.points", id) }));
  else if (Object.hasOwn(elements, id))
    report.add(path, say("file.idOfOther", { path: below("system.elements", id) }));
  if (structure["on"] !== undefined) report.add(`${path}.on`, say("file.structureOn"));
  reportFacts(report, path, structureFacts(structure));
}

function checkPoint(report: Report, id: string, point: JsonObject, { structures }: Maps): void {
  const path = below("system.points", id);
  reportFacts(report, path, pointFacts(point));
  checkOn(report, path, point, structures);
}

/** What a point or a device says that it is on must be a structure of this file. */
function checkOn(report: Report, path: string, { on }: JsonObject, structures: JsonObject): void {
  if (typeof on !== "string" || !isWellFormedId(on)) return; // said by its field
  if (!Object.hasOwn(structures, on)) report.addExpected(`${path}.on`, on, say("file.idOfStructure"));
}

/** What is on structures that are gone. */
function checkLeftOn(report: Report, maps: Maps, touched: ReadonlySet<string>): void {
  if ([...touched].every((id) => Object.hasOwn(maps.structures, id))) return;
  for (const sort of ["points", "elements"] as const)
    for (const [id, record] of Object.entries(maps[sort]) as [string, JsonObject][])
      checkOn(report, below(`system.${sort}`, id), record, maps.structures);
}

const structureFacts = perObject((structure: JsonObject) => checkFields(structureFields, structure, ["on"]));

/** Remembered per record: after an edit only the records that it changed are read again. */
const pointFacts = perObject((point: JsonObject) => checkFields(pointFields, point));

const elementFacts = perObject((saved: SavedElement): RecordFacts => {
  const facts = checkFields(deviceOf(saved.kind).fields, saved, ["kind"]);
  if (facts.problems.length > 0) return facts;
  const element = complete(saved);
  const problems = problemsOf(element);
  return { ...facts, problems: [...problems, ...wireProblems(saved)] };
});

/** A conductor that the table lacks has no impedance, unless the span brings a matrix of its own. */
function wireProblems(saved: SavedElement): FieldProblem[] {
  const element = complete(saved);
  if (!isLine(element) || element.zOhmsPerKm !== undefined) return [];
  return (["conductor", "neutralConductor"] as const)
    .filter((key) => element[key] !== "" && wireOf(element[key]) === undefined)
    .map((key) =>
      problem(
        key,
        say("read.expected", {
          found: JSON.stringify(element[key].slice(0, 40)),
          expected: say("file.wire", { codes: WIRES.map((it) => it.code).join(", ") }),
        }),
      ),
    );
}

function checkElement(
  report: Report,
  path: string,
  element: JsonObject,
  { structures, points, elements }: Maps,
): void {
  const { kind } = element;
  if (!isDeviceKind(kind))
    return report.addExpected(
      `${path}.kind`,
      kind,
      say("read.oneOf", { choices: Object.keys(DEVICES).join(", ") }),
    );
  reportFacts(report, path, elementFacts(element as SavedElement));
  checkEnds(report, path, kind, element, points);
  if (deviceOf(kind).fields["on"]?.input.as === "structure") checkOn(report, path, element, structures);
  if (isBeside({ kind })) checkSpanOfNearby(report, `${path}.span`, element["span"], elements);
}

function checkEnds(
  report: Report,
  path: string,
  kind: DeviceKind,
  element: JsonObject,
  points: JsonObject,
): void {
  const seen = new Map<string, string>();
  for (const end of deviceOf(kind).ends) {
    const point = element[end];
    if (typeof point !== "string" || !isWellFormedId(point)) continue; // said by its field
    const other = seen.get(point);
    if (!Object.hasOwn(points, point)) report.addExpected(`${path}.${end}`, point, say("file.idOfPoint"));
    else if (other !== undefined) report.add(`${path}.${end}`, say("file.sameEnds", { point, end, other }));
    seen.set(point, end);
  }
}

function checkSpanOfNearby(report: Report, path: string, span: Json | undefined, elements: JsonObject): void {
  if (typeof span !== "string" || !isWellFormedId(span)) return; // said by its field
  const beside = Object.hasOwn(elements, span) ? elements[span] : undefined;
  if (!isObject(beside) || !isLine(beside as SavedElement))
    report.addExpected(path, span, say("file.idOfSpan"));
}

/** D4: what an element hangs on must be there already, brought by something else. */
function checkNeeds(report: Report, system: System): void {
  for (const [id, saved] of Object.entries<SavedElement>(system.elements))
    checkNeedsOf(report, system, id, saved);
}

function checkNeedsOf(report: Report, system: System, id: string, saved: SavedElement): void {
  const conductors = conductorsOf(system);
  const element = complete(saved);
  const ends = element as unknown as Readonly<Record<string, string>>;
  const told = new Set<string>();
  for (const { end, letter, key } of neededBy(element)) {
    const point = ends[end]!;
    const there = conductors.get(point)!;
    if (there.includes(letter) || told.has(key)) continue;
    told.add(key);
    report.add(`${below("system.elements", id)}.${key}`, missing(letter, point, there));
  }
}

/** Says that a conductor is not at a point. */
export const missing = (letter: string, point: string, there: readonly string[]) =>
  there.length === 0
    ? say("file.noConductors", { letter, point })
    : say("file.noConductor", { letter, point, letters: there.join(" ") });
