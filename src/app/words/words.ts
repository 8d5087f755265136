import {
  elementName as nameOfElement,
  inARow,
  type Message,
  type MessageGaps,
  type Owner,
  pointName as nameOfPoint,
  spell,
  type StillhotDocument,
  structureName as nameOfStructure,
  type Threat,
  upsetWords,
  workPointName as nameOfWorkPoint,
} from "../../core";
import { isMessageKey, type MessageKey, say } from "./catalogue";
import { speech } from "./language.svelte";

/** A sentence of the catalogue, spelled out. */
export const t = (key: MessageKey, gaps?: MessageGaps): string => spell(say(key, gaps), speech.catalogue);

/** A sentence in the language of the app; a label is itself. */
export const told = (message: Message | string): string => spell(message, speech.catalogue);

/** A time of day as the person's region writes it. */
export const clockTime = (at: number): string => clockOf(speech.locale).format(at);

const clocks = new Map<string | undefined, Intl.DateTimeFormat>();

/** Kept for each region: making one takes as long as painting the drawing. */
function clockOf(locale: string | undefined): Intl.DateTimeFormat {
  const known = clocks.get(locale);
  if (known !== undefined) return known;
  const fresh = new Intl.DateTimeFormat(locale, { timeStyle: "short" });
  clocks.set(locale, fresh);
  return fresh;
}

/** A day of a file, `2026-03-31`, as the person's region writes it. */
export const dayOf = (day: string): string =>
  new Intl.DateTimeFormat(speech.locale, { dateStyle: "medium", timeZone: "UTC" }).format(Date.parse(day));

/** A day and a time as the person's region writes them. */
export const dayAndTime = (at: number): string =>
  new Intl.DateTimeFormat(speech.locale, { dateStyle: "medium", timeStyle: "short" }).format(at);

/** The first of these keys that the catalogue has a sentence for. */
export function firstOf(...keys: string[]): string | undefined {
  const key = keys.find(isMessageKey);
  return key === undefined ? undefined : t(key);
}

/** What a kind of device is called. */
export const kindName = (kind: string): string => firstOf(`kind.${kind}`) ?? kind;

/** What a person calls an element: its label, else its kind and id. */
export const elementName = (document: StillhotDocument, id: string): string =>
  told(nameOfElement(document, id));

/** What a person calls a point: its label, else its kind and id. */
export const pointName = (document: StillhotDocument, id: string): string => told(nameOfPoint(document, id));

/** What a person calls a structure: its number, or what and where it is. */
export const structureName = (document: StillhotDocument, id: string): string =>
  told(nameOfStructure(document, id));

/** What a person calls a work point: its label, or its place. */
export const workPointName = (document: StillhotDocument, id: string): string =>
  told(nameOfWorkPoint(document, id));

/** What a thing is called, whatever it is. */
export function ownerName(document: StillhotDocument, { of, id }: Owner): string {
  if (of === "element") return elementName(document, id);
  if (of === "point") return pointName(document, id);
  if (of === "structure") return structureName(document, id);
  return workPointName(document, id);
}

/** Three figures, with thin spaces between thousands. */
export function figures(value: number): string {
  if (!Number.isFinite(value)) return "?";
  const digits = value === 0 ? 1 : Math.floor(Math.log10(Math.abs(value))) + 1;
  const rounded = digits > 3 ? Math.round(value / 10 ** (digits - 3)) * 10 ** (digits - 3) : value;
  const text =
    digits >= 3 ? String(Math.round(rounded)) : rounded.toFixed(Math.max(0, Math.min(3, 3 - digits)));
  if (Number(text) === 0) return "0";
  return text
    .replace(/\.?0+$/, (zeros) => (text.includes(".") ? "" : zeros))
    .replace(/\B(?=(\d{3})+(?!\d))/g, "\u202f")
    .replace(".", t("number.point"));
}

/** Volts with three figures [V]; what is said where nobody knows them. */
export const volts = (value: number | null | undefined): string =>
  value === null || value === undefined ? t("app.unknownVolts") : `${figures(value)}\u00a0V`;

/** Amperes with three figures [A]. */
export const amps = (value: number): string => `${figures(value)}\u00a0A`;

/** Watts with three figures, as kilowatts or megawatts where there are many. */
export const watts = (value: number): string =>
  Math.abs(value) >= 1e6
    ? `${figures(value / 1e6)}\u00a0MW`
    : Math.abs(value) >= 1000
      ? `${figures(value / 1000)}\u00a0kW`
      : `${figures(value)}\u00a0W`;

/** What must happen for a threat, as half a sentence. */
function threatCause(document: StillhotDocument, threat: Threat): string {
  if (threat.upsets.length > 0) return told(inARow(threat.upsets.map((it) => upsetWords(document, it))));
  return threat.source === null
    ? t("threat.inducedNow")
    : t("threat.liveNow", { source: elementName(document, threat.source) });
}

/** A threat as one sentence: what happens, and what that does at the work point. */
export function threatSentence(document: StillhotDocument, threat: Threat): string {
  return t(threat.upsets.length === 0 ? "threat.now" : "threat.sentence", {
    cause: capital(threatCause(document, threat)),
    conductor: threat.conductor,
    volts: volts(threat.volts),
  });
}

/** The same with a capital letter first. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
