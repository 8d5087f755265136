import { deviceOf, isDeviceKind } from "../devices";
import { isObject, type JsonObject } from "../terms";

/** Keys of an element that only the program sets, for what an upset does to it. */
export function internalKeys(element: JsonObject): string[] {
  const { kind } = element;
  if (!isDeviceKind(kind)) return [];
  const { fields } = deviceOf(kind);
  return Object.keys(element).filter((key) => Object.hasOwn(fields, key) && fields[key]!.internal === true);
}

/**
 * Takes out what only the program sets: a file that brings such a key would start a generator or touch two circuits
 * without saying so anywhere that a person looks.
 *
 * @returns the elements, the very same where nothing is taken out, and the keys taken out by element
 */
export function withoutInternals(elements: JsonObject): {
  readonly elements: JsonObject;
  readonly taken: readonly (readonly [id: string, key: string])[];
} {
  const taken = Object.entries(elements).flatMap(([id, element]) =>
    isObject(element) ? internalKeys(element).map((key) => [id, key] as const) : [],
  );
  if (taken.length === 0) return { elements, taken };
  const repaired: Record<string, JsonObject[string]> = { ...elements };
  for (const [id, key] of taken) {
    const { [key]: _, ...rest } = repaired[id] as JsonObject;
    repaired[id] = rest;
  }
  return { elements: repaired, taken };
}
