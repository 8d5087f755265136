import type { Step } from "../../document";
import type { Finding, Message, Severity } from "../../terms";
import type { JobState, StepNumber } from "../job/state";

/** A step that a finding points at, and why. */
export interface StepMark {
  readonly step: StepNumber;
  readonly why: Message;
}

/** What one rule found: the smallest part that it is about, what is wrong there, what to do. */
export interface Problem {
  readonly where: string;
  readonly message: Message;
  readonly help?: Message;
  /** where it is not the rule's own */
  readonly severity?: Severity;
  readonly citation?: string;
  /** other steps that show why */
  readonly marks?: readonly StepMark[];
}

/** A finding of a rehearsal: it may point at the steps that led to it. */
export interface RehearsalFinding extends Finding {
  readonly marks?: readonly StepMark[];
}

/** What a rule finds: nothing, one problem or several. */
export type Problems = Problem | readonly Problem[] | undefined;

/** One rule: what it is called, what it rests on, and what it finds. */
export interface Rule {
  readonly id: string;
  readonly severity: Severity;
  readonly citation: string;
  /** what is wrong with a step, between how the job stood before and how it stands after it */
  check?(step: Step, before: JobState, after: JobState): Problems;
  /** what is wrong when the last step has been played */
  atEnd?(state: JobState): Problems;
}

/** Declares one rule of the rehearsal. */
export const defineRule = (rule: Rule): Rule => rule;

/** What a rule found, as findings with its id and citation. */
export function asFindings(rule: Rule, problems: Problems): RehearsalFinding[] {
  if (problems === undefined) return [];
  const list = Array.isArray(problems) ? (problems as readonly Problem[]) : [problems as Problem];
  return list.map(({ where, message, help, severity, citation, marks }) => ({
    rule: rule.id,
    severity: severity ?? rule.severity,
    where,
    message,
    ...(help === undefined ? {} : { help }),
    citation: citation ?? rule.citation,
    ...(marks === undefined ? {} : { marks }),
  }));
}
