import type { Field } from "../devices";
import { isObject, isWellFormedId, type Json, type JsonObject, type Message, say } from "../terms";
import { below, type Report } from "./problem";

/** An id in a file that leads somewhere else, to be looked up once everything has been read. */
export interface Reference {
  readonly path: string;
  readonly to: string;
  readonly id: string;
}

/** What a check gathers beside the problems. */
export interface Gathered {
  readonly report: Report;
  readonly references: Reference[];
}

/** One place of a file that is deeper than a record of fields: it can be checked, and put into the JSON Schema. */
export interface Shape {
  readonly schema: JsonObject;
  readonly required?: true;
  check(found: Json, path: string, gathered: Gathered): void;
}

/** A single value, read by a field of the devices. */
export const value = (field: Field<unknown>): Shape => ({
  schema: field.schema,
  ...(field.required ? { required: true as const } : {}),
  check(found, path, { report }) {
    const reading = field.read(found, { phases: "ABC12N" });
    if (!("value" in reading)) report.add(path + reading.at, reading.problem);
  },
});

/** Must be there. */
export const needed = (shape: Shape): Shape => ({ ...shape, required: true });

/** Text of at least one letter. */
export const words = (most = 4000): Shape => ({
  schema: { type: "string", minLength: 1, maxLength: most },
  check(found, path, { report }) {
    if (typeof found !== "string" || found === "" || found.length > most)
      report.addExpected(path, found, say("scenario.read.words", { most }));
  },
});

/** The id of something else in the file. */
export const refTo = (to: string): Shape => ({
  schema: { type: "string", pattern: "^[A-Za-z0-9_][A-Za-z0-9_-]{0,39}$" },
  check(found, path, { report, references }) {
    if (typeof found !== "string" || !isWellFormedId(found))
      return report.addExpected(path, found, say("read.id"));
    references.push({ path, to, id: found });
  },
});

export const list = (of: Shape): Shape => ({
  schema: { type: "array", items: of.schema },
  check(found, path, gathered) {
    if (!Array.isArray(found)) return gathered.report.addExpected(path, found, say("file.expectedList"));
    (found as readonly Json[]).forEach((it, index) => of.check(it, below(path, index), gathered));
  },
});

/** A map whose keys are ids; `to` says what they name where they name something that stands elsewhere. */
export const map = (of: Shape, to?: string): Shape => ({
  schema: {
    type: "object",
    propertyNames: {
      pattern: "^[A-Za-z0-9_][A-Za-z0-9_-]{0,39}$",
      not: { enum: ["__proto__", "constructor", "prototype"] },
    },
    additionalProperties: of.schema,
  },
  check(found, path, gathered) {
    const { report, references } = gathered;
    if (!isObject(found)) return report.addExpected(path, found, say("file.expectedObject"));
    for (const [id, it] of Object.entries(found)) {
      if (!isWellFormedId(id)) report.add(below(path, id), say("file.badId"));
      else if (it !== undefined) {
        if (to !== undefined) references.push({ path: below(path, id), to, id });
        of.check(it, below(path, id), gathered);
      }
    }
  },
});

/** An object of known keys; others are kept and named in the warning of unknown keys. */
export const record = (
  keys: Readonly<Record<string, Shape>>,
  judge?: (found: JsonObject) => Message | undefined,
): Shape => {
  const required = Object.keys(keys).filter((key) => keys[key]!.required);
  return {
    schema: {
      type: "object",
      properties: Object.fromEntries(Object.entries(keys).map(([key, { schema }]) => [key, schema])),
      ...(required.length === 0 ? {} : { required }),
    },
    check(found, path, gathered) {
      const { report } = gathered;
      if (!isObject(found)) return report.addExpected(path, found, say("file.expectedObject"));
      for (const [key, shape] of Object.entries(keys)) {
        const it = found[key];
        if (it !== undefined) shape.check(it, below(path, key), gathered);
        else if (shape.required) report.add(below(path, key), say("read.missing"));
      }
      for (const key of Object.keys(found))
        if (!Object.hasOwn(keys, key)) report.unknown.push(below(path, key));
      const objection = judge?.(found);
      if (objection !== undefined) report.add(path, objection);
    },
  };
};

/** An object of whatever keys. */
export const anyObject = (): Shape => ({
  schema: { type: "object" },
  check(found, path, { report }) {
    if (!isObject(found)) report.addExpected(path, found, say("file.expectedObject"));
  },
});

/** A shape that may stand within itself; `name` is its place under the schema's `$defs`. */
export const within = (name: string, of: () => Shape): Shape => ({
  schema: { $ref: `#/$defs/${name}` },
  check: (found, path, gathered) => of().check(found, path, gathered),
});

/** Letters of phases, one or more. */
export const phaseLetters = (): Shape => ({
  schema: { type: "string", pattern: "^[ABC12N]+$" },
  check(found, path, { report }) {
    if (typeof found !== "string" || !/^[ABC12N]+$/.test(found))
      report.addExpected(path, found, say("scenario.read.letters"));
  },
});

/** Phases of some element: its letters, or `true` for all of them. */
export const somePhases = (): Shape => ({
  schema: { oneOf: [{ const: true }, { type: "string", pattern: "^[ABC12N]+$" }] },
  check(found, path, { report }) {
    if (found !== true && (typeof found !== "string" || !/^[ABC12N]+$/.test(found)))
      report.addExpected(path, found, say("scenario.read.phases"));
  },
});
