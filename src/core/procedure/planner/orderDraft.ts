import type { CustomersOutOfJob } from "../rehearsal/customers";
import type { RehearsalFinding } from "../rules/rule";
import { compareRanks } from "./breaking";
import type { Intent } from "./intent";
import type { PlannedStep } from "./types";
import type { Wishes } from "./wishes";

/** One order of steps, played, and the decisions behind it. */
export interface OrderDraft {
  readonly intent: Intent;
  readonly wishes: Wishes;
  readonly steps: readonly PlannedStep[];
  readonly customers: CustomersOutOfJob;
  /** dangers and warnings that no repair took away */
  readonly findings: readonly RehearsalFinding[];
}

/** Whether no rule finds more in a draft than in another, and nobody is longer without supply. */
export const isNoWorse = (a: OrderDraft, b: OrderDraft): boolean =>
  a.findings.length <= b.findings.length && compareRanks(customersIn(a), customersIn(b)) <= 0;

const customersIn = ({ customers: { during, worst, steps } }: OrderDraft): readonly number[] => [
  during,
  worst,
  steps,
];
