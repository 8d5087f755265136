/**
 * A job as a crew would do it, with the ways in which it goes wrong most often. All of it was written down before any of
 * it was played; what it rests on is common practice and 29 CFR 1910.269, with the paragraphs in
 * `shared/reference/procedure-rules.json`.
 */
export interface EverydayJob {
  readonly job: string;
  /** the order in words, and why it is so */
  readonly practice: string;
  /** in the notation of `tests/support/jobNotation.ts` */
  readonly drawing: string;
  /** steps that draw no finding above a note, one a line or parted by semicolons */
  readonly order: string;
  readonly mistakes: readonly Mistake[];
}

/**
 * What is done otherwise: edits parted by ` | `, of which `- STEP` leaves a step out, `STEP => STEPS` does others in its
 * place, and `+ LINE` draws something otherwise. What is wanted is `severity rule @ step`, or `@ end`.
 */
export type Mistake = readonly [why: string, edits: string, wanted: string];

/** The paper of a line section, at its beginning and at its end. */
export const PERMIT = "brief; request-permit; receive-permit; confirm";
export const RELEASE = "all-clear; confirm; release-permit";
