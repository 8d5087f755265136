import type { Message } from "./message";

/** `danger`: a person can be hurt. `note` alone leaves the command line's exit code at 0. */
export type Severity = "danger" | "warning" | "note";

/** Something that the drawing or the steps have wrong: data, many at once. */
export interface Finding {
  /** id of the rule, as in the table of rules */
  readonly rule: string;
  readonly severity: Severity;
  /** the smallest part that it is about: an element id, a work point id, a conductor or a path of keys */
  readonly where: string;
  readonly message: Message;
  /** what to do about it */
  readonly help?: Message;
  /** the published paragraph, or "common practice" */
  readonly citation: string;
}

/** An edit, a file or a step that cannot be done, and why: data, one. */
export interface Refusal {
  readonly refused: Message;
}

/** An edit or a call that cannot be done, with the reason in words of the catalogue. */
export const refuse = (refused: Message): Refusal => ({ refused });

/** Whether what came back is a refusal. */
export const isRefusal = (value: unknown): value is Refusal =>
  typeof value === "object" && value !== null && "refused" in value;
