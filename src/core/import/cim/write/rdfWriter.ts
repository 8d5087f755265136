const CIM = "http://iec.ch/TC57/CIM100#";
const RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
const MODEL = "http://iec.ch/TC57/61970-552/ModelDescription/1#";

/** What an object says of itself: a text or a number, another object, or a value of an enumeration. */
export type RdfValue =
  | string
  | number
  | boolean
  | { readonly to: string }
  | { readonly choice: string }
  | undefined;

/** Another object, by the name under which it is written. */
export const to = (name: string): RdfValue => ({ to: name });
/** A value of an enumeration: `PhaseCode.ABC`. */
export const choice = (value: string): RdfValue => ({ choice: value });

/** A model in RDF/XML (IEC 61970-552), object by object. Ids are UUIDs made of names, so that the same drawing gives the same file. */
export class RdfWriter {
  readonly #pieces: string[];

  constructor(profile: string) {
    this.#pieces = [
      `<?xml version="1.0" encoding="UTF-8"?>`,
      `<rdf:RDF xmlns:rdf="${RDF}" xmlns:cim="${CIM}" xmlns:md="${MODEL}">`,
      ` <md:FullModel rdf:about="urn:uuid:${uuidOf("model")}">`,
      `  <md:Model.profile>${escaped(profile)}</md:Model.profile>`,
      ` </md:FullModel>`,
    ];
  }

  add(className: string, name: string, values: Readonly<Record<string, RdfValue>>): void {
    const id = uuidOf(name);
    this.#pieces.push(
      ` <cim:${className} rdf:about="urn:uuid:${id}">`,
      `  <cim:IdentifiedObject.mRID>${id}</cim:IdentifiedObject.mRID>`,
      ...Object.entries(values).flatMap(([key, value]) =>
        value === undefined ? [] : [`  ${part(key, value)}`],
      ),
      ` </cim:${className}>`,
    );
  }

  text = (): string => `${this.#pieces.join("\n")}\n</rdf:RDF>\n`;
}

function part(key: string, value: Exclude<RdfValue, undefined>): string {
  if (typeof value !== "object") return `<cim:${key}>${escaped(String(value))}</cim:${key}>`;
  const target = "to" in value ? `urn:uuid:${uuidOf(value.to)}` : `${CIM}${value.choice}`;
  return `<cim:${key} rdf:resource="${target}"/>`;
}

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", "\r": "&#13;" };

/** Letters that may stand as they are: all but markup, what XML 1.0 has no way to write, and line breaks. */
const PLAIN = /^[ -%'-;=?-\uFFFD]*$/;

/** Text that XML 1.0 may hold: what it has no way to write becomes a space. */
const escaped = (text: string): string => (PLAIN.test(text) ? text : withoutMarkup(text));

const withoutMarkup = (text: string): string =>
  [...text]
    .map((letter) => (isWritable(letter.codePointAt(0)!) ? (ENTITIES[letter] ?? letter) : " "))
    .join("");

/** Section 2.2 of XML 1.0. */
const isWritable = (code: number): boolean =>
  code === 9 || code === 10 || code === 13 || (code >= 0x20 && code !== 0xfffe && code !== 0xffff);

/** A UUID that stands for a name (version 8 of RFC 9562; FNV-1a of four beginnings, Fowler, Noll and Vo). */
function uuidOf(name: string): string {
  const hex = [1, 2, 3, 4].map((salt) => hashOf(`${salt} ${name}`).toString(16).padStart(8, "0")).join("");
  const parts = [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `8${hex.slice(13, 16)}`,
    `8${hex.slice(17, 20)}`,
    hex.slice(20),
  ];
  return parts.join("-");
}

function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193) >>> 0;
  // Mixed once more, so that names that differ at their ends differ in every digit (MurmurHash3's finish, public domain).
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}
