import { deviceOf, type Fields, isDeviceKind } from "../../devices";
import { parseJson } from "../../document/parse";
import type { Json, JsonObject } from "../../terms";
import type { Ledger } from "../ledger";
import { cell, type Feature, flag, number, text } from "./features";

type Reader = (feature: Feature, key: string, ledger: Ledger) => string | number | boolean | undefined;
const words: Reader = (feature, key) => text(feature.properties, key);

/** A property of a map and the key of ours that it is. */
const KEYS: Readonly<Record<string, readonly [ours: string, read: Reader]>> = {
  phases: ["phases", words],
  evidence: ["evidence", words],
  open: ["open", words],
  load_break: ["loadBreak", words],
  load_break_amps: ["loadBreakAmps", number],
  interrupting_amps: ["interruptingAmps", number],
  gang: ["gang", flag],
  remote: ["remote", flag],
  reclosing: ["reclosing", flag],
  visible_gap: ["visibleGap", flag],
  connection: ["connection", words],
  kva: ["kva", number],
  primary_kv: ["primaryKv", number],
  secondary_v: ["secondaryV", number],
  secondary: ["secondary", words],
  r_percent: ["rPercent", number],
  x_percent: ["xPercent", number],
  mid_tap: ["midTap", words],
  kw: ["kw", number],
  kvar: ["kvar", number],
  model: ["model", words],
  customers: ["customers", number],
  critical: ["critical", flag],
  volts: ["volts", number],
  running: ["on", flag],
  interface: ["interface", words],
  kv_ll: ["kvLL", number],
  angle_deg: ["angleDeg", number],
  count: ["count", number],
  construction: ["construction", words],
  conductor: ["conductor", words],
  neutral_conductor: ["neutralConductor", words],
  neutral: ["neutral", flag],
  parted: ["parted", words],
};

/** Properties that are read elsewhere. */
const READ_ELSEWHERE = new Set([
  "class",
  "device",
  "id",
  "label",
  "on",
  "toward",
  "order",
  "from_id",
  "to_id",
  "alt_id",
  "length_m",
  "earth_ohms",
  "fuse",
  "normal",
  "tap_a",
  "tap_b",
  "tap_c",
  "z1_r",
  "z1_x",
  "z0_r",
  "z0_x",
]);

/** What a map calls a key that has no word of its own there: in lower case, with underscores. */
const spelled = (key: string): string => key.replace(/([a-z0-9])([A-Z])/g, "$1_$2").toLowerCase();

const PROPERTY_OF = new Map(Object.entries(KEYS).map(([property, [key]]) => [key, property]));

/** The property that a key of ours is in a map. */
export const propertyOf = (key: string): string => PROPERTY_OF.get(key) ?? spelled(key);

/** The kind of ours that a feature is, if any. */
export const kindOfFeature = ({ className, properties }: Feature): string =>
  className === "span" ? "span" : (text(properties, "device") ?? "");

/** A value as a field takes it: as it stands, as a number, as yes or no, or as the list that a text spells. */
function readBy(
  field: Fields[string],
  value: string | number | boolean,
  phases: string,
): JsonObject[string] | undefined {
  for (const it of [value, ...spellings(String(value))]) if ("value" in field.read(it, { phases })) return it;
  return undefined;
}

function spellings(written: string): Json[] {
  const parsed = parseJson(written);
  return ["value" in parsed ? parsed.value : written, /^(yes|y)$/i.test(written), written];
}

/** A key of the format that a property names by its spelling, and what stands there. */
function ownKey(feature: Feature, property: string, value: string | number | boolean) {
  const kind = kindOfFeature(feature);
  if (!isDeviceKind(kind)) return undefined;
  const fields: Fields = deviceOf(kind).fields;
  const key = Object.keys(fields).find(
    (it) => spelled(it) === property && fields[it]!.internal === undefined,
  );
  if (key === undefined) return undefined;
  const read = readBy(fields[key]!, value, text(feature.properties, "phases") ?? "");
  return read === undefined ? undefined : ([key, read] as const);
}

/** The keys of ours that a feature's properties are; what is none of ours is kept in a note. */
export function keysOf(feature: Feature, ledger: Ledger): JsonObject {
  const keys: Record<string, JsonObject[string]> = {};
  const others: string[] = [];
  for (const property of Object.keys(feature.properties)) {
    const known = KEYS[property];
    if (known !== undefined) {
      const value = known[1](feature, property, ledger);
      if (value !== undefined) keys[known[0]] = value;
    } else if (!READ_ELSEWHERE.has(property)) {
      const value = cell(feature.properties, property);
      if (value === undefined) continue;
      const own = ownKey(feature, property, value);
      if (own === undefined) others.push(`${property}: ${String(value)}`);
      else keys[own[0]] = own[1]!;
    }
  }
  if (others.length > 0) ledger.note("leftOut", "unknownProperty", feature.id);
  const notes = [...(typeof keys["note"] === "string" ? [keys["note"]] : []), ...others];
  return {
    ...keys,
    ...composed(feature, ledger),
    ...(notes.length === 0 ? {} : { note: notes.join("; ") }),
  };
}

/** Keys that several properties, or a word, make together. */
function composed(feature: Feature, ledger: Ledger): JsonObject {
  const fuse = text(feature.properties, "fuse");
  const taps = Object.fromEntries(
    (["a", "b", "c"] as const).flatMap((it) => {
      const tap = number(feature, `tap_${it}`, ledger);
      return tap === undefined ? [] : [[it.toUpperCase(), tap]];
    }),
  );
  const pair = (name: string): JsonObject => {
    const [r, x] = [number(feature, `${name}_r`, ledger), number(feature, `${name}_x`, ledger)];
    return r === undefined && x === undefined ? {} : { [`${name}Ohms`]: [r ?? 0, x ?? 0] };
  };
  return {
    ...(fuse === undefined ? {} : { fuse: fuseOf(fuse, feature.id, ledger) }),
    ...(text(feature.properties, "normal")?.toLowerCase() === "open" ? { normallyOpen: true } : {}),
    ...(Object.keys(taps).length === 0 ? {} : { taps }),
    ...pair("z1"),
    ...pair("z0"),
  };
}

function fuseOf(written: string, id: string, ledger: Ledger): JsonObject | string {
  if (written.toLowerCase() === "solid") return "solid";
  const match = /^(\d+(?:\.\d+)?)\s*([KT])$/i.exec(written.trim());
  if (match !== null) return { type: match[2]!.toUpperCase(), amps: Number(match[1]) };
  ledger.error("importing.error.cell", { id, key: "fuse", found: written, expected: "25K, 10T, solid" });
  return "solid";
}
