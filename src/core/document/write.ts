import { DEVICES, isDeviceKind } from "../devices";
import { isObject, type Json, type JsonObject } from "../terms";
import { stepFields } from "../steps";
import { workPointFields } from "./jobFields";
import { jobLogFields } from "./jobLog";
import { naturalOrder } from "./naturalOrder";
import { SCENARIO_KEYS } from "./scenario";
import { reasonFields, ruleFields, settingFields } from "./settingFields";
import { DOCUMENT_KEYS, pointFields, type StillhotDocument, structureFields } from "./types";

/** A record is written on one line up to this width, so that one change is one line of a comparison. */
const WIDTH = 200;

/** How one place of the file is written: which keys come first, and which of its parts start a line of their own. */
interface WrittenPlace {
  /** keys in this order; any other key follows, sorted */
  readonly first?: readonly string[];
  readonly inside?: Readonly<Record<string, WrittenPlace>>;
  /** of every member of a map or list that `inside` does not name */
  readonly each?: WrittenPlace | ((member: Json) => WrittenPlace);
  /** one line a member, even where all would fit on one */
  readonly spread?: true;
}

const ANY: WrittenPlace = {};

const ELEMENT: Readonly<Record<string, WrittenPlace>> = Object.fromEntries(
  Object.entries(DEVICES).map(([kind, { fields }]) => [
    kind,
    { first: ["kind", ...Object.keys(fields)], inside: { fuse: { first: ["type", "amps"] } } },
  ]),
);

const elementShape = (element: Json): WrittenPlace =>
  isObject(element) && isDeviceKind(element["kind"]) ? ELEMENT[element["kind"]]! : ANY;

const RECORDS = (fields: object): WrittenPlace => ({ spread: true, each: { first: Object.keys(fields) } });

/** Who is on the job, and under what paper. */
const JOB_PEOPLE = ["permit", "crew", "permitHolder", "operator", "people"];

const FILE: WrittenPlace = {
  spread: true,
  first: DOCUMENT_KEYS,
  inside: {
    system: {
      spread: true,
      first: ["frequencyHz", "structures", "points", "elements"],
      inside: {
        structures: RECORDS(structureFields),
        points: RECORDS(pointFields),
        elements: { spread: true, each: elementShape },
      },
    },
    job: {
      spread: true,
      first: ["task", "text", "workPoints", "tools", ...JOB_PEOPLE, "leave", "steps"],
      inside: { workPoints: RECORDS(workPointFields), steps: RECORDS(stepFields) },
    },
    scenario: {
      spread: true,
      first: SCENARIO_KEYS,
      inside: {
        objectives: RECORDS({ id: 0, text: 0, tasks: 0 }),
        truth: RECORDS({ label: 0, text: 0 }),
        injects: RECORDS({ label: 0, after: 0, what: 0 }),
        reveals: RECORDS({ by: 0, at: 0, element: 0, text: 0, shows: 0 }),
        criteria: RECORDS({ id: 0, kind: 0, text: 0, when: 0 }),
        traps: {
          spread: true,
          each: { first: ["id", "label", "fact", "when", "text"], inside: { fall: RECORDS(stepFields) } },
        },
        hints: RECORDS({ id: 0, where: 0, think: 0, rule: 0, step: 0 }),
        answer: RECORDS(stepFields),
      },
    },
    settings: {
      spread: true,
      first: Object.keys(settingFields),
      inside: { rules: RECORDS(ruleFields), reasons: { first: Object.keys(reasonFields) } },
    },
    log: {
      spread: true,
      each: { first: Object.keys(jobLogFields), inside: { step: { first: Object.keys(stepFields) } } },
    },
  },
};

/**
 * A file's text: the same bytes for the same document, in whatever order its keys were made. Records stand as they
 * were given, unknown keys last; ids count naturally; two spaces; one line a record.
 */
export const writeDocument = (document: StillhotDocument): string =>
  `${write(document as unknown as Json, FILE, "", 0)}\n`;

/** @param taken letters before the value on its line, and a comma after it */
function write(value: Json, shape: WrittenPlace, indent: string, taken: number): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const members = membersOf(value, shape);
  const [open, close] = Array.isArray(value) ? "[]" : "{}";
  if (members.length === 0) return `${open!}${close!}`;
  const line = shape.spread ? undefined : inLine(value, shape, WIDTH - taken);
  if (line !== undefined) return line;
  const deeper = `${indent}  `;
  const lines = members.map(
    ([name, member, of]) => deeper + name + write(member, of, deeper, deeper.length + name.length + 1),
  );
  return `${open!}\n${lines.join(",\n")}\n${indent}${close!}`;
}

/** A value on one line, or nothing where it is wider than the room for it. */
function inLine(value: Json, shape: WrittenPlace, room: number): string | undefined {
  if (room < 0) return undefined;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  let line = "";
  for (const [name, member, of] of membersOf(value, shape)) {
    const next = inLine(member, of, room - line.length);
    if (next === undefined) return undefined;
    line += `${line === "" ? "" : ", "}${name}${next}`;
    if (line.length > room) return undefined;
  }
  return Array.isArray(value) ? `[${line}]` : line === "" ? "{}" : `{ ${line} }`;
}

/** The members of an object or list in their order, each with what stands before its value and its shape. */
function membersOf(
  value: readonly Json[] | JsonObject,
  shape: WrittenPlace,
): (readonly [name: string, Json, WrittenPlace])[] {
  const each = (member: Json) =>
    typeof shape.each === "function" ? shape.each(member) : (shape.each ?? ANY);
  if (isList(value)) return value.map((member) => ["", member, each(member)]);
  const first = (shape.first ?? []).filter((key) => Object.hasOwn(value, key));
  const others = Object.keys(value).filter((key) => !first.includes(key));
  return [...first, ...others.sort(naturalOrder)].flatMap(
    (key): (readonly [string, Json, WrittenPlace])[] => {
      const member = value[key];
      return member === undefined
        ? []
        : [[`${JSON.stringify(key)}: `, member, shape.inside?.[key] ?? each(member)]];
    },
  );
}

const isList = (value: readonly Json[] | JsonObject): value is readonly Json[] => Array.isArray(value);
