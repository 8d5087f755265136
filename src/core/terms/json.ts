/** Anything that a JSON file can hold. */
export type Json = null | boolean | number | string | readonly Json[] | JsonObject;

/** A JSON object as parsed: nothing is known of its keys. */
export interface JsonObject {
  readonly [key: string]: Json | undefined;
}

/** True for a plain JSON object (not an array, not null). */
export const isObject = (value: unknown): value is JsonObject =>
  typeof value === "object" && value !== null && !Array.isArray(value);
