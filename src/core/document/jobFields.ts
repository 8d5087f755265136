import { DEVICES, field } from "../devices";

/** Keys of a job that stand by themselves; work points, tools and steps are maps and lists. */
export const jobFields = {
  task: field.text(),
  permit: field.choice(["none", "requested", "held", "released"], "none"),
  /** what the crew is called: whose its tags and grounds are */
  crew: { ...field.text(), fallback: "own" },
  /** who holds the permit; nothing is the crew */
  permitHolder: field.text(),
  /** who does what a system operator does: that operator, one of the crew, or nobody where one crew is alone */
  operator: field.choice(["system", "crew", "none"], "system"),
  /** people on the crew */
  people: field.amount("", 2, { min: 1, max: 1000, whole: true }),
  /** what is to be known beside the task */
  text: field.text(),
};

/** How a thing can be left. */
export const LEFT_AS = ["open", "closed", "on", "off", "gone"] as const;

/** Keys of a work point. Which letters its conductors may have follows from its point. */
export const workPointFields = {
  at: field.pointRef(),
  conductors: {
    ...field.text(),
    required: true,
    schema: { type: "string", pattern: "^(?!.*(.).*\\1)[ABC12N]+$" },
  },
  label: field.text(),
  /** elements that the work there makes sound, puts in or takes down */
  does: field.elementRefs(),
  evidence: DEVICES.span.fields.evidence,
};
