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

/**
 * How a form asks for what stands at a place of a file. It comes from the same definition that checks the place, so that
 * whatever a file may hold can be asked for.
 */
export type Form =
  | { readonly as: "words"; readonly most: number }
  | { readonly as: "field"; readonly field: Field<unknown> }
  /** the id of something else */
  | { readonly as: "id"; readonly to: string }
  | { readonly as: "list"; readonly of: Form }
  /** keys are ids: of what `to` says, or the entries' own */
  | { readonly as: "map"; readonly of: Form; readonly to?: string }
  | {
      readonly as: "record";
      readonly keys: Readonly<Record<string, FormKey>>;
      readonly oneOf: readonly string[];
    }
  /** phases of the thing that the key above names, or of any thing */
  | { readonly as: "phases"; readonly ofThing: boolean }
  /** keys of a point or of an element, whatever its kind has */
  | { readonly as: "thing" }
  | { readonly as: "within"; readonly form: () => Form };

/** One key of a record, as a form asks for it. */
export interface FormKey {
  readonly form: Form;
  /** must be there */
  readonly required: boolean;
  /** is shown before anybody asks for it */
  readonly usual: boolean;
}

/** One place of a file that is deeper than a record of fields: it can be checked, and put into the JSON Schema. */
export interface RecordShape {
  readonly schema: JsonObject;
  readonly form: Form;
  readonly required?: true;
  readonly usual?: true;
  check(found: Json, path: string, gathered: Gathered): void;
}

/** A single value, read by a field of the devices. */
export const value = (field: Field<unknown>): RecordShape => ({
  schema: field.schema,
  form: { as: "field", field },
  ...(field.required ? { required: true as const } : {}),
  check(found, path, { report }) {
    const reading = field.read(found, { phases: "ABC12N" });
    if (!("value" in reading)) report.add(path + reading.at, reading.problem);
  },
});

/** Must be there. */
export const needed = (shape: RecordShape): RecordShape => ({ ...shape, required: true });

/** May be left out, and is often given. */
export const usual = (shape: RecordShape): RecordShape => ({ ...shape, usual: true });

/** Text of at least one letter. */
export const words = (most = 4000): RecordShape => ({
  schema: { type: "string", minLength: 1, maxLength: most },
  form: { as: "words", most },
  check(found, path, { report }) {
    if (typeof found !== "string" || found === "" || found.length > most)
      report.addExpected(path, found, say("scenario.read.words", { most }));
  },
});

/** The id of something else in the file. */
export const refTo = (to: string): RecordShape => ({
  schema: { type: "string", pattern: "^[A-Za-z0-9_][A-Za-z0-9_-]{0,39}$" },
  form: { as: "id", to },
  check(found, path, { report, references }) {
    if (typeof found !== "string" || !isWellFormedId(found))
      return report.addExpected(path, found, say("read.id"));
    references.push({ path, to, id: found });
  },
});

/** A list of things of one shape. */
export const list = (of: RecordShape): RecordShape => ({
  schema: { type: "array", items: of.schema },
  form: { as: "list", of: of.form },
  check(found, path, gathered) {
    if (!Array.isArray(found)) return gathered.report.addExpected(path, found, say("file.expectedList"));
    (found as readonly Json[]).forEach((it, index) => of.check(it, below(path, index), gathered));
  },
});

/** A map whose keys are ids; `to` says what they name where they name something that stands elsewhere. */
export const map = (of: RecordShape, to?: string): RecordShape => ({
  schema: {
    type: "object",
    propertyNames: {
      pattern: "^[A-Za-z0-9_][A-Za-z0-9_-]{0,39}$",
      not: { enum: ["__proto__", "constructor", "prototype"] },
    },
    additionalProperties: of.schema,
  },
  form: { as: "map", of: of.form, ...(to === undefined ? {} : { to }) },
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

/**
 * An object of known keys; others are kept and named in the warning of unknown keys.
 *
 * @param oneOf of these keys exactly one is given, as `judge` says
 */
export const record = (
  keys: Readonly<Record<string, RecordShape>>,
  judge?: (found: JsonObject) => Message | undefined,
  oneOf: readonly string[] = [],
): RecordShape => {
  const required = Object.keys(keys).filter((key) => keys[key]!.required);
  return {
    schema: {
      type: "object",
      properties: Object.fromEntries(Object.entries(keys).map(([key, { schema }]) => [key, schema])),
      ...(required.length === 0 ? {} : { required }),
    },
    form: { as: "record", keys: formKeys(keys), oneOf },
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

const formKeys = (keys: Readonly<Record<string, RecordShape>>): Readonly<Record<string, FormKey>> =>
  Object.fromEntries(
    Object.entries(keys).map(([key, { form, required, usual: isUsual }]) => [
      key,
      { form, required: required === true, usual: isUsual === true },
    ]),
  );

/** A record of a point or an element, or some keys of it, which its kind checks. */
export const anyObject = (): RecordShape => ({
  schema: { type: "object" },
  form: { as: "thing" },
  check(found, path, { report }) {
    if (!isObject(found)) report.addExpected(path, found, say("file.expectedObject"));
  },
});

/** A shape that may stand within itself; `name` is its place under the schema's `$defs`. */
export const within = (name: string, of: () => RecordShape): RecordShape => ({
  schema: { $ref: `#/$defs/${name}` },
  form: { as: "within", form: () => of().form },
  check: (found, path, gathered) => of().check(found, path, gathered),
});

/** Letters of phases, one or more. */
export const phaseLetters = (): RecordShape => ({
  schema: { type: "string", pattern: "^[ABC12N]+$" },
  form: { as: "phases", ofThing: false },
  check(found, path, { report }) {
    if (typeof found !== "string" || !/^[ABC12N]+$/.test(found))
      report.addExpected(path, found, say("scenario.read.letters"));
  },
});

/** Phases of some element: its letters, or `true` for all of them. */
export const somePhases = (): RecordShape => ({
  schema: { oneOf: [{ const: true }, { type: "string", pattern: "^[ABC12N]+$" }] },
  form: { as: "phases", ofThing: true },
  check(found, path, { report }) {
    if (found !== true && (typeof found !== "string" || !/^[ABC12N]+$/.test(found)))
      report.addExpected(path, found, say("scenario.read.phases"));
  },
});
