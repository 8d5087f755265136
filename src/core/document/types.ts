import { type Complete, conditionFields, EVIDENCE, field, type DeviceKind, type Evidence } from "../devices";
import type { Step } from "../steps";
import type { jobFields, LEFT_AS, workPointFields } from "./jobFields";
import type { ruleFields, settingFields } from "./settingFields";
import type { ElementId, Json, JsonObject, PointId, StructureId, WorkPointId } from "../terms";

/** Places of the drawing, in its own units. */
const PLACE = { min: -1e7, max: 1e7 };

/** Keys of a structure. Its place stands in the file only where a person put it there. */
export const structureFields = {
  label: field.text(),
  kind: field.choice(["pole", "pad", "vault", "station", "service"], "pole"),
  x: field.optionalAmount("", PLACE),
  y: field.optionalAmount("", PLACE),
  evidence: field.choice(EVIDENCE, "map"),
  /** the day on which somebody stood there and saw it */
  seenOn: field.day(),
  ...conditionFields,
};

/** Keys of a point. */
export const pointFields = {
  label: field.text(),
  x: field.amount("", 0, PLACE),
  y: field.amount("", 0, PLACE),
  kind: field.choice(["pole", "pad", "station", "service"], "pole"),
  /** the structure that it is part of; derived where nothing is said */
  on: field.structureRef(),
  earthOhms: field.optionalAmount("Ω", { above: 0 }),
  evidence: field.choice(EVIDENCE, "map"),
  /** stays where it is when the drawing is laid out anew */
  pinned: field.flag(false),
};

/** A structure as saved, its defaults filled in. */
export type StructureRecord = Complete<typeof structureFields>;

/** A point, its defaults filled in. */
export type Point = Complete<typeof pointFields>;

/** A structure exactly as saved: defaults left out, unknown keys kept. */
export type SavedStructure = JsonObject;
/** A point exactly as saved: defaults left out, unknown keys kept. */
export type SavedPoint = JsonObject;
/** An element exactly as saved: defaults left out, unknown keys kept. `complete` fills the defaults in. */
export type SavedElement = JsonObject & { readonly kind: DeviceKind };

/** The electrical part of a file: plain JSON, no classes, nothing derived. */
export interface System {
  readonly frequencyHz: 50 | 60;
  /** absent in a drawing that names none: they are derived */
  readonly structures?: Readonly<Record<StructureId, SavedStructure>>;
  readonly points: Readonly<Record<PointId, SavedPoint>>;
  readonly elements: Readonly<Record<ElementId, SavedElement>>;
}

/** A work point as saved. */
export type WorkPoint = { readonly at: PointId } & Pick<WorkPointKeys, "conductors"> &
  Partial<Omit<WorkPointKeys, "at" | "conductors">>;
type WorkPointKeys = Complete<typeof workPointFields>;

/** How a thing is to be left where that is not the normal way. */
export type LeftAs = (typeof LEFT_AS)[number];

/** Whether the crew holds a permit for the work, and what it has of it. */
export type PermitState = Job["permit"];

/** A job with every default filled in. */
export type Job = Complete<typeof jobFields> & {
  readonly workPoints: Readonly<Record<WorkPointId, WorkPoint>>;
  readonly tools: readonly string[];
  readonly leave: Readonly<Record<string, LeftAs>>;
  readonly steps: readonly Step[];
};

/** Limits that differ by company, every default filled in. */
export type Settings = Complete<typeof settingFields> & {
  /** rule id → off with a reason, or on */
  readonly rules: Readonly<Record<string, RuleSetting>>;
  /** key of a limit → why it is not the default */
  readonly reasons: Readonly<Record<string, string>>;
};

/** What a company says of one rule, its defaults filled in. */
export type RuleSetting = Complete<typeof ruleFields>;

/** A spot on the drawing, in its units: x to the right, y downward. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A whole file, exactly as saved. `settings` and `job` are asked for through `settingsOf` and `jobOf`. */
export interface StillhotDocument {
  readonly format: "stillhot";
  readonly formatVersion: 1;
  readonly title: string;
  readonly notes?: string;
  readonly system: System;
  readonly job?: JsonObject;
  readonly scenario?: JsonObject;
  readonly settings?: JsonObject;
  /** what was done of the job; asked for through `jobLogOf` */
  readonly log?: readonly JsonObject[];
  /** keys of a newer file */
  readonly [unknown: string]: unknown;
}

/** Top-level keys of a file, in the order in which they are written. */
export const DOCUMENT_KEYS: readonly string[] = [
  "format",
  "formatVersion",
  "title",
  "notes",
  "system",
  "job",
  "scenario",
  "settings",
  "log",
];

export type { Evidence, Json };
