import { isObject, type Json } from "../terms";
import type { StillhotDocument } from "./types";

/**
 * A document as canonical JSON: keys by their UTF-16 units, no spaces, numbers as JavaScript writes them. Two
 * documents that say the same give the same text, so its hash can be compared by voice.
 *
 * @see RFC 8785, JSON Canonicalization Scheme
 */
export const fingerprintBytes = (document: StillhotDocument): string =>
  canonical(document as unknown as Json);

function canonical(value: Json): string {
  if (Array.isArray(value)) return `[${(value as readonly Json[]).map(canonical).join(",")}]`;
  if (!isObject(value)) return JSON.stringify(value);
  const members = Object.keys(value)
    .sort()
    .flatMap((key) => {
      const member = value[key];
      return member === undefined ? [] : [`${JSON.stringify(key)}:${canonical(member)}`];
    });
  return `{${members.join(",")}}`;
}
