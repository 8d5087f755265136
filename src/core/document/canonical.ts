import { isObject, type Json, type JsonObject } from "../terms";
import { perObject } from "./perObject";
import type { StillhotDocument } from "./types";

/**
 * A document as canonical JSON: keys by their UTF-16 units, no spaces, numbers as JavaScript writes them. Two
 * documents that say the same give the same text, so its hash can be compared by voice.
 *
 * @see RFC 8785, JSON Canonicalization Scheme
 */
export const fingerprintBytes = (document: StillhotDocument): string => canonicalText(document);

/** Any plain value as canonical JSON. */
export const canonicalText = (value: unknown): string => canonical(value as Json);

function canonical(value: Json): string {
  if (Array.isArray(value)) return `[${(value as readonly Json[]).map(canonical).join(",")}]`;
  return isObject(value) ? ofObject(value) : JSON.stringify(value);
}

/** Remembered per object: after an edit only the records that it changed are written again. */
const ofObject = perObject((value: JsonObject): string => {
  const members = Object.keys(value)
    .sort()
    .flatMap((key) => {
      const member = value[key];
      return member === undefined ? [] : [`${JSON.stringify(key)}:${canonical(member)}`];
    });
  return `{${members.join(",")}}`;
});
