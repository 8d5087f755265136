import { DEVICES, field } from "../devices";

/** Keys of a job that stand by themselves; work points, tools and steps are maps and lists. */
export const jobFields = {
  task: field.text(),
  permit: field.choice(["none", "requested", "held", "released"], "none"),
};

/** Keys of a work point. Which letters its conductors may have follows from its point. */
export const workPointFields = {
  at: field.pointRef(),
  conductors: {
    ...field.text(),
    required: true,
    schema: { type: "string", pattern: "^(?!.*(.).*\\1)[ABC12N]+$" },
  },
  label: field.text(),
  evidence: DEVICES.span.fields.evidence,
};
