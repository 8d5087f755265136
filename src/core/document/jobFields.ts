import { DEVICES, field } from "../devices";
import type { LeftAs } from "./types";

/** Keys of a job that stand by themselves; work points, tools and steps are maps and lists. */
export const jobFields = {
  task: field.text(),
  permit: field.choice(["none", "requested", "held", "released"], "none"),
  crew: { ...field.text(), fallback: "own" },
  permitHolder: field.text(),
  operator: field.choice(["system", "crew", "none"], "system"),
  people: field.amount("", 2, { min: 1, max: 1000, whole: true }),
  text: field.text(),
};

/** How a thing can be left. */
export const LEFT_AS: readonly LeftAs[] = ["open", "closed", "on", "off", "gone"];

/** Keys of a work point. Which letters its conductors may have follows from its point. */
export const workPointFields = {
  at: field.pointRef(),
  conductors: {
    ...field.text(),
    required: true,
    schema: { type: "string", pattern: "^(?!.*(.).*\\1)[ABC12N]+$" },
  },
  label: field.text(),
  does: field.elementRefs(),
  evidence: DEVICES.span.fields.evidence,
};
