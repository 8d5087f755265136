import { DEVICES, type Fields } from "../devices";
import type { JsonObject } from "../terms";
import { needsOf, STEP_VERBS, stepFields } from "../steps";
import { jobFields, LEFT_AS, workPointFields } from "./jobFields";
import { jobLogFields } from "./jobLog";
import { MIGRATIONS } from "./migrate";
import { scenarioDefs, scenarioSchema } from "./scenario";
import { reasonFields, ruleFields, settingFields } from "./settingFields";
import { pointFields, structureFields } from "./types";

const ID_PATTERN = "^[A-Za-z0-9_][A-Za-z0-9_-]{0,39}$";

/** A map whose keys are ids. */
const mapOf = (record: JsonObject): JsonObject => ({
  type: "object",
  propertyNames: { pattern: ID_PATTERN, not: { enum: ["__proto__", "constructor", "prototype"] } },
  additionalProperties: record,
});

/** A record of fields. Keys beyond them are allowed: a newer file must stay valid. */
function recordOf(fields: Fields, others: JsonObject = {}, required: readonly string[] = []): JsonObject {
  const own = Object.entries(fields).filter(([, { internal }]) => internal === undefined);
  const needed = [...required, ...own.filter(([, it]) => it.required).map(([key]) => key)];
  return {
    type: "object",
    properties: {
      ...others,
      ...Object.fromEntries(
        own.map(([key, { schema, input }]) => [
          key,
          input.as === "number" && input.unit !== ""
            ? { ...schema, description: `in ${input.unit}` }
            : schema,
        ]),
      ),
    },
    ...(needed.length === 0 ? {} : { required: needed }),
  };
}

/** Asks for more of a record when one of its keys has a value. */
const when = (key: string, value: string | boolean, then: JsonObject): JsonObject => ({
  if: { properties: { [key]: { const: value } }, required: [key] },
  then,
});

const element = (): JsonObject => ({
  type: "object",
  properties: { kind: { enum: Object.keys(DEVICES) } },
  required: ["kind"],
  allOf: Object.keys(DEVICES).map((kind) => when("kind", kind, { $ref: `#/$defs/${kind}` })),
});

const step = (): JsonObject => ({
  ...recordOf(stepFields),
  allOf: STEP_VERBS.map((verb) => [verb, needsOf(verb)] as const)
    .filter(([, needs]) => needs.length > 0)
    .map(([verb, needs]) =>
      when("do", verb, {
        allOf: needs.map((keys) => ({ anyOf: keys.map((key) => ({ required: [key] })) })),
      }),
    ),
});

/**
 * The file format as a JSON Schema (draft 2020-12), made from the same fields that the reader reads by. What one
 * record says of another (dangling ids, conductors that are not there) is beyond a schema: the reader has the last word.
 */
export const jsonSchema = (): JsonObject => ({
  $schema: "https://json-schema.org/draft/2020-12/schema",
  $id: "stillhot.schema.json",
  title: "Stillhot system file",
  description:
    "A radial distribution system, a job on it, a scenario and limits. Keys that are not named here are kept by the program and named in a warning.",
  type: "object",
  required: ["format", "formatVersion", "system"],
  properties: {
    format: { const: "stillhot" },
    formatVersion: { const: MIGRATIONS.length + 1 },
    title: { type: "string", maxLength: 2000 },
    notes: { type: "string", maxLength: 100_000 },
    system: {
      type: "object",
      required: ["points", "elements"],
      properties: {
        frequencyHz: { enum: [50, 60], default: 60 },
        structures: mapOf({ $ref: "#/$defs/structure" }),
        points: mapOf({ $ref: "#/$defs/point" }),
        elements: mapOf({ $ref: "#/$defs/element" }),
      },
    },
    job: recordOf(jobFields, {
      workPoints: mapOf({ $ref: "#/$defs/workPoint" }),
      tools: { type: "array", items: { type: "string", maxLength: 100 } },
      leave: mapOf({ enum: [...LEFT_AS] }),
      steps: { type: "array", items: { $ref: "#/$defs/step" } },
    }),
    scenario: scenarioSchema(),
    settings: recordOf(settingFields, {
      reasons: recordOf(reasonFields),
      rules: mapOf({
        ...recordOf(ruleFields),
        ...when("off", true, {
          required: ["reason"],
          properties: { reason: { type: "string", pattern: "\\S" } },
        }),
      }),
    }),
    log: {
      type: "array",
      items: {
        ...recordOf(jobLogFields, { step: { $ref: "#/$defs/step" } }),
        anyOf: [{ required: ["step"] }, { required: ["mark"] }],
      },
    },
  },
  $defs: {
    structure: recordOf(structureFields),
    point: recordOf(pointFields),
    element: element(),
    ...Object.fromEntries(
      Object.entries(DEVICES).map(([kind, { fields }]) => [
        kind,
        recordOf(fields, { kind: { const: kind } }, ["kind"]),
      ]),
    ),
    workPoint: recordOf(workPointFields),
    step: step(),
    ...scenarioDefs(),
  },
});
