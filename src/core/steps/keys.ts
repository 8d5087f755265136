import { DEVICES, type Field, field } from "../devices";
import type { ElementId, PointId, StructureId, WorkPointId } from "../terms";

const optional = <Value>(needed: Field<Value>): Field<Value | undefined> => ({
  ...needed,
  required: false,
  fallback: undefined,
});

/** A text that is the id of one kind of thing, once the document's reader has looked it up. */
const idOf = <Id extends string>(reference: Field<string>) => reference as Field<Id>;

/** How hands may be kept from the conductor that they work on. */
export const HAND_METHODS = ["bare", "gloves", "sticks", "gloves-and-cover"] as const;

/** Classes of rubber insulating gloves (ASTM D120), the least first. */
export const GLOVE_CLASSES = ["00", "0", "1", "2", "3", "4"] as const;

/** Keys that any step may have, in the order in which a file is written. A verb picks those that it takes. */
export const key = {
  element: optional(idOf<ElementId>(field.elementRef())),
  at: optional(idOf<PointId>(field.pointRef())),
  phases: optional({ ...field.text(), schema: { type: "string", pattern: "^[ABC12N]*$" } }),
  with: field.text(),
  to: field.text(),
  text: field.text(),
  cable: DEVICES.ground.fields.cable,
  /** which end goes on, or comes off, first */
  first: field.optionalChoice(["neutral", "phase"]),
  seconds: field.optionalAmount("s", { min: 0, max: 1e6 }),
  position: field.optionalChoice(["utility", "generator", "off"]),
  done: field.flag(false),
  /** what a test is to show */
  expect: field.optionalChoice(["dead", "live"]),
  method: field.optionalChoice(HAND_METHODS),
  gloveClass: field.optionalChoice(GLOVE_CLASSES),
  /** it is about the permit */
  permit: field.flag(false),
};

/** Keys of a step that puts hands on a conductor. */
export const hands = { method: key.method, gloveClass: key.gloveClass };

/** The name of a key that steps have. */
export type StepKey = keyof typeof key;

/** The key `at` where it names a work point. */
export const atWorkPoint = optional(idOf<WorkPointId>(field.pointRef()));

/** The key `at` where it names a point, or a structure and so all of its points. */
export const atPlace = { ...optional(idOf<PointId | StructureId>(field.pointRef())), orStructure: true };

/** A key without which the verb means nothing. */
export const needed = <F extends Field<unknown>>(field: F) => ({ ...field, required: true as const });
