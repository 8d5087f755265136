import {
  type Complex,
  isObject,
  isWellFormedId,
  type Json,
  type JsonObject,
  type Message,
  say,
} from "../terms";

/** How the inspector asks for a value; the unit is shown beside it. */
export type Input =
  | { readonly as: "text" }
  | { readonly as: "flag" }
  | { readonly as: "number"; readonly unit: string; readonly min?: number; readonly max?: number }
  | { readonly as: "choice"; readonly choices: readonly (string | number)[] }
  | { readonly as: "phases"; readonly withNeutral: boolean }
  | { readonly as: "letters"; readonly allowed: "ABC" | "ABC or 12" }
  | { readonly as: "structure" }
  | { readonly as: "point" }
  | { readonly as: "element" }
  | { readonly as: "elements" }
  | { readonly as: "impedance" }
  | { readonly as: "matrix"; readonly entries: "complex" | "real" }
  | { readonly as: "equal" }
  | { readonly as: "taps" }
  | { readonly as: "fuse" };

/** What stands wrong in one value: a sentence, and where below the field it is (`""` for the field itself). */
export interface FieldProblem {
  readonly at: string;
  readonly problem: Message;
}

/** What a reader of a value may know of its record: the record's own phases. */
export interface FieldContext {
  readonly phases: string;
}

/** A field's value as a file has it, or what is wrong with it. */
export type FieldReading<Value> = { readonly value: Value } | FieldProblem;

/** One key of a record: the single definition behind the reader, the JSON Schema and the inspector. */
export interface Field<Value> {
  readonly required: boolean;
  readonly fallback: Value;
  readonly input: Input;
  readonly schema: JsonObject;
  /** set by the program only: not a key of the file, not in the schema, not in the inspector */
  readonly internal?: true;
  read(value: Json, context: FieldContext): FieldReading<Value>;
}

/** The keys of a record, each with what reads, describes and asks for it. */
export type Fields = Readonly<Record<string, Field<unknown>>>;

/** The complete record that a set of fields describes, every default filled in. */
export type Complete<F extends Fields> = {
  readonly [Key in keyof F]: F[Key] extends Field<infer Value> ? Value : never;
};

const wrong = (found: Json, expected: Message, at = ""): FieldProblem => ({
  at,
  problem: say("read.expected", { found: describe(found), expected }),
});

/** A short picture of what was found, never the whole of it. */
export function describe(found: Json | undefined): string {
  if (found === undefined) return "nothing";
  if (Array.isArray(found)) return `a list of ${found.length}`;
  if (isObject(found)) return "an object";
  const text = JSON.stringify(found);
  return text.length > 40 ? `${text.slice(0, 37)}…` : text;
}

/** Marks a field that only the program sets, for what an upset does to an element. */
export const internal = <Value>(field: Field<Value>): Field<Value> => ({ ...field, internal: true });

/** Words of a person, up to 2000 letters; none where the file does not say. */
export const text = (): Field<string> => ({
  required: false,
  fallback: "",
  input: { as: "text" },
  schema: { type: "string", maxLength: 2000 },
  read: (value) =>
    typeof value === "string" && value.length <= 2000 ? { value } : wrong(value, say("read.text")),
});

/** A day of the calendar, `2026-03-31`; empty where none is known. */
export const day = (): Field<string> => ({
  ...text(),
  schema: { type: "string", pattern: DAY.source },
  read: (value) => (typeof value === "string" && DAY.test(value) ? { value } : wrong(value, say("read.day"))),
});

const DAY = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;

/** Yes or no; `fallback` where the file does not say. */
export const flag = (fallback: boolean): Field<boolean> => ({
  required: false,
  fallback,
  input: { as: "flag" },
  schema: { type: "boolean", default: fallback },
  read: (value) => (typeof value === "boolean" ? { value } : wrong(value, say("read.flag"))),
});

interface Range {
  readonly min?: number;
  readonly above?: number;
  readonly max?: number;
  readonly whole?: boolean;
}

function inRange(value: Json, { min, above, max, whole }: Range): value is number {
  return (
    typeof value === "number" &&
    Number.isFinite(value) &&
    (min === undefined || value >= min) &&
    (above === undefined || value > above) &&
    (max === undefined || value <= max) &&
    (!whole || Number.isInteger(value))
  );
}

function spellRange({ min, above, max, whole }: Range, unit: string): Message {
  const bounds = [
    ...(min === undefined ? [] : [say("read.min", { min })]),
    ...(above === undefined ? [] : [say("read.above", { above })]),
    ...(max === undefined ? [] : [say("read.max", { max })]),
  ];
  return say(whole ? "read.wholeNumber" : "read.number", {
    unit: unit === "" ? "" : ` ${unit}`,
    bounds: bounds.reduceRight<Message | string>((more, bound) => say("read.bound", { bound, more }), ""),
  });
}

const rangeSchema = ({ min, above, max, whole }: Range): JsonObject => ({
  type: whole ? "integer" : "number",
  ...(min === undefined ? {} : { minimum: min }),
  ...(above === undefined ? {} : { exclusiveMinimum: above }),
  ...(max === undefined ? {} : { maximum: max }),
});

/** Larger than anything that is built, by unit: beyond it equations lose their digits, and a slip of the pen is likelier. */
const MOST: Readonly<Record<string, number>> = { kV: 1000, kVA: 1e6, kvar: 1e6, V: 1e6, A: 1e6, Ω: 1e9 };

function numberField<Value>(unit: string, given: Range, required: boolean, fallback: Value): Field<Value> {
  const range = given.max === undefined && MOST[unit] !== undefined ? { ...given, max: MOST[unit] } : given;
  const lowest = range.min ?? range.above;
  return {
    required,
    fallback,
    input: {
      as: "number",
      unit,
      ...(lowest === undefined ? {} : { min: lowest }),
      ...(range.max === undefined ? {} : { max: range.max }),
    },
    schema: {
      ...rangeSchema(range),
      ...(typeof fallback === "number" && !required ? { default: fallback } : {}),
    },
    read: (value) =>
      inRange(value, range) ? { value: value as Value } : wrong(value, spellRange(range, unit)),
  };
}

/** A number with its unit and a default. */
export const amount = (unit: string, fallback: number, range: Range = { min: 0 }): Field<number> =>
  numberField(unit, range, false, fallback);

/** A number that must be given. */
export const neededAmount = (unit: string, range: Range = { above: 0 }): Field<number> =>
  numberField(unit, range, true, 0);

/** A number that may be left out, where the table or nothing stands in for it. */
export const optionalAmount = (unit: string, range: Range = { min: 0 }): Field<number | undefined> =>
  numberField<number | undefined>(unit, range, false, undefined);

/** One of a few words or numbers; `fallback` where the file does not say, unless it must. */
export const choice = <const Choices extends readonly (string | number)[]>(
  choices: Choices,
  fallback: Choices[number],
  required = false,
): Field<Choices[number]> => ({
  required,
  fallback,
  input: { as: "choice", choices },
  schema: { enum: [...choices], ...(required ? {} : { default: fallback }) },
  read: (value) =>
    choices.includes(value as Choices[number])
      ? { value: value as Choices[number] }
      : wrong(value, say("read.oneOf", { choices: choices.join(", ") })),
});

/** One of a few words, or nothing. */
export const optionalChoice = <const Choices extends readonly string[]>(
  choices: Choices,
): Field<Choices[number] | undefined> => ({
  ...choice(choices, choices[0]!),
  fallback: undefined,
  schema: { enum: [...choices] },
});

/** The element's own letters, out of `ABC` or `12`, in that order. */
export const letters = (allowed: "ABC" | "ABC or 12"): Field<string> => ({
  required: true,
  fallback: "",
  input: { as: "letters", allowed },
  schema: {
    type: "string",
    pattern: allowed === "ABC" ? "^(A?B?C?)$" : "^(A?B?C?|1?2?)$",
    minLength: 1,
  },
  read: (value) => {
    const fits = allowed === "ABC" ? /^(?=.)A?B?C?$/ : /^(?=.)(A?B?C?|1?2?)$/;
    return typeof value === "string" && fits.test(value)
      ? { value }
      : wrong(value, say(allowed === "ABC" ? "read.lettersAbc" : "read.letters"));
  },
});

/**
 * Which of the element's own phases are open, blown, parted…: a string of them, or `true` for all.
 * The complete record has it as a string in the order of the phases.
 */
export const phases = ({ withNeutral = false } = {}): Field<string> => ({
  required: false,
  fallback: "",
  input: { as: "phases", withNeutral },
  schema: { type: ["string", "boolean"], default: "" },
  read: (value, { phases: own }) => {
    const allowed = withNeutral ? `${own}N` : own;
    if (value === true) return { value: own };
    if (value === false) return { value: "" };
    if (typeof value !== "string" || [...value].some((it) => !allowed.includes(it)))
      return wrong(value, say("read.ownPhases", { phases: allowed }));
    return { value: [...allowed].filter((it) => value.includes(it)).join("") };
  },
});

/** Other letters that the element's own go on as, one for each in the same order; empty where they keep their own. */
export const otherLetters = (): Field<string> => ({
  required: false,
  fallback: "",
  input: { as: "text" },
  schema: { type: "string", pattern: "^([ABC]{0,3}|[12]{0,2})$" },
  read: (value, { phases: own }) => {
    const isLegs = /[12]/.test(own);
    const fits =
      typeof value === "string" &&
      (value === "" ||
        (value.length === own.length &&
          new Set(value).size === value.length &&
          [...value].every((it) => (isLegs ? "12" : "ABC").includes(it))));
    return fits ? { value } : wrong(value, say("read.otherLetters", { phases: own }));
  },
});

/** The id of a point; the document's reader checks that the point is there. */
export const pointRef = (): Field<string> => reference("point");
/** The id of an element; the document's reader checks that the element is there. */
export const elementRef = (): Field<string> => reference("element");

/** Ids of elements, each once; the document's reader checks that they are there. */
export const elementRefs = (): Field<readonly string[]> => ({
  required: false,
  fallback: [],
  input: { as: "elements" },
  schema: { type: "array", items: reference("element").schema, uniqueItems: true },
  read: (value) =>
    Array.isArray(value) &&
    value.every((it): it is string => typeof it === "string" && isWellFormedId(it)) &&
    new Set(value).size === value.length
      ? { value }
      : wrong(value, say("read.ids")),
});

/** The id of a structure, or nothing; the document's reader checks that the structure is there. */
export const structureRef = (): Field<string | undefined> => ({
  ...(reference("structure") as Field<string | undefined>),
  required: false,
  fallback: undefined,
});

const reference = (as: "structure" | "point" | "element"): Field<string> => ({
  required: true,
  fallback: "",
  input: { as },
  schema: { type: "string", pattern: "^[A-Za-z0-9_][A-Za-z0-9_-]{0,39}$" },
  read: (value) =>
    typeof value === "string" && isWellFormedId(value) ? { value } : wrong(value, say("read.id")),
});

const isFiniteNumber = (value: Json | undefined): value is number =>
  typeof value === "number" && Number.isFinite(value);

const isComplex = (value: Json | undefined): value is [number, number] =>
  Array.isArray(value) && value.length === 2 && isFiniteNumber(value[0]) && isFiniteNumber(value[1]);

/** An impedance `[r, x]` in ohms, not both zero: a source without impedance has no finite fault current. */
export const impedance = (fallback: Complex): Field<Complex> => ({
  required: false,
  fallback,
  input: { as: "impedance" },
  schema: { type: "array", items: { type: "number" }, minItems: 2, maxItems: 2, default: [...fallback] },
  read: (value) =>
    isComplex(value) && value[0] >= 0 && (value[0] !== 0 || value[1] !== 0)
      ? { value: [value[0], value[1]] }
      : wrong(value, say("read.impedance")),
});

/** An impedance that is there only where the file names it. */
export const optionalImpedance = (): Field<Complex | undefined> => {
  const { schema, ...field } = impedance([0, 0]);
  return {
    ...field,
    fallback: undefined,
    schema: Object.fromEntries(Object.entries(schema).filter(([key]) => key !== "default")),
  };
};

/** The rows of a square matrix. */
type Square<Entries extends "complex" | "real"> = readonly (readonly (Entries extends "complex"
  ? Complex
  : number)[])[];

/** A square matrix of complex or real numbers; its size is checked where the conductors are known. */
export const matrix = <Entries extends "complex" | "real">(
  entries: Entries,
): Field<Square<Entries> | undefined> => {
  const fits = entries === "complex" ? isComplex : isFiniteNumber;
  const entry: JsonObject =
    entries === "complex"
      ? { type: "array", items: { type: "number" }, minItems: 2, maxItems: 2 }
      : { type: "number" };
  return {
    required: false,
    fallback: undefined,
    input: { as: "matrix", entries },
    schema: { type: "array", maxItems: 4, items: { type: "array", maxItems: 4, items: entry } },
    read: (value) => {
      const isSquare =
        Array.isArray(value) &&
        value.length > 0 &&
        value.length <= 4 &&
        value.every(
          (row) => Array.isArray(row) && row.length === value.length && row.every((it) => fits(it)),
        );
      return isSquare ? { value: value as Square<Entries> } : wrong(value, say("read.matrix", { entries }));
    },
  };
};

/**
 * What stands for a part that was cut off, as seen from one point: volts to earth of each conductor with nothing drawn from
 * it, and the impedances behind them; rows in the order of the phases, then the neutral where it has a row.
 */
export interface EqualSource {
  readonly volts: readonly Complex[];
  readonly ohms: readonly (readonly Complex[])[];
  /** the same with every load off */
  readonly voltsLoadsOff: readonly Complex[];
  readonly ohmsLoadsOff: readonly (readonly Complex[])[];
}

const EQUAL_KEYS = ["volts", "ohms", "voltsLoadsOff", "ohmsLoadsOff"] as const;

/** An equal source by Thévenin's theorem; how many rows it has to have is checked where the phases are known. */
export const equalSource = (): Field<EqualSource | undefined> => {
  const ohms = matrix("complex");
  const entry: JsonObject = { type: "array", items: { type: "number" }, minItems: 2, maxItems: 2 };
  const volts: JsonObject = { type: "array", minItems: 1, maxItems: 4, items: entry };
  return {
    required: false,
    fallback: undefined,
    input: { as: "equal" },
    schema: {
      type: "object",
      properties: { volts, ohms: ohms.schema, voltsLoadsOff: volts, ohmsLoadsOff: ohms.schema },
      required: [...EQUAL_KEYS],
    },
    read: (value, context) => {
      if (!isObject(value)) return wrong(value, say("read.equal"));
      const size = Array.isArray(value["volts"]) ? value["volts"].length : 0;
      for (const key of EQUAL_KEYS) {
        const found = value[key] ?? null;
        const isOfSize = Array.isArray(found) && found.length === size && size > 0;
        const isRead = key.startsWith("volts")
          ? isOfSize && found.every(isComplex)
          : isOfSize && "value" in ohms.read(found, context);
        if (!isRead) return wrong(found, say("read.equal"), `.${key}`);
      }
      return { value: value as unknown as EqualSource };
    },
  };
};

/** Tap positions of a step-voltage regulator, one whole number a phase, −16 to 16. */
export const taps = (): Field<Readonly<Record<string, number>>> => ({
  required: false,
  fallback: {},
  input: { as: "taps" },
  schema: {
    type: "object",
    additionalProperties: { type: "integer", minimum: -16, maximum: 16 },
    default: {},
  },
  read: (value, { phases: own }) => {
    if (!isObject(value)) return wrong(value, say("read.taps"));
    for (const [letter, tap] of Object.entries(value)) {
      if (!own.includes(letter) || letter.length !== 1)
        return wrong(letter, say("read.ownPhases", { phases: own }), `.${letter}`);
      if (!inRange(tap ?? null, { min: -16, max: 16, whole: true }))
        return wrong(tap ?? null, say("read.taps"), `.${letter}`);
    }
    return { value: value as Record<string, number> };
  },
});

/** A fuse link by its type and rated amperes, a solid blade, or not known. */
export type Fuse = { readonly type: "K" | "T"; readonly amps: number } | "solid" | undefined;

/** A fuse link by type and size [A], a solid blade, or nothing where nobody knows what is in it. */
export const fuse = (): Field<Fuse> => ({
  required: false,
  fallback: undefined,
  input: { as: "fuse" },
  schema: {
    oneOf: [
      { const: "solid" },
      {
        type: "object",
        properties: { type: { enum: ["K", "T"] }, amps: { type: "number", exclusiveMinimum: 0 } },
        required: ["type", "amps"],
      },
    ],
  },
  read: (value) => {
    if (value === "solid") return { value };
    if (!isObject(value)) return wrong(value, say("read.fuse"));
    if (value["type"] !== "K" && value["type"] !== "T")
      return wrong(value["type"] ?? null, say("read.oneOf", { choices: "K, T" }), ".type");
    if (!inRange(value["amps"] ?? null, { above: 0, max: 1000 }))
      return wrong(value["amps"] ?? null, spellRange({ above: 0, max: 1000 }, "A"), ".amps");
    return { value: { type: value["type"], amps: value["amps"] as number } };
  },
});
