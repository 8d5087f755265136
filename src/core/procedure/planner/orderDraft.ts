import { isOperating } from "../../steps";
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
  /** customers without supply, added up over its steps, of those alone who get it back */
  readonly darkSteps: number;
  /** dangers and warnings that no repair took away */
  readonly findings: readonly RehearsalFinding[];
}

/** Whether no rule finds more in a draft than in another, nor a danger in place of a warning, and nobody is longer without supply. */
export const isNoWorse = (a: OrderDraft, b: OrderDraft): boolean =>
  dangersIn(a) <= dangersIn(b) &&
  a.findings.length <= b.findings.length &&
  compareRanks(customersIn(a), customersIn(b)) <= 0;

/** Whether rules find less in a draft than in another; or as much with fewer customers out, or with as many and fewer operations. */
export const isLeaner = (a: OrderDraft, b: OrderDraft): boolean => compareRanks(priceOf(a), priceOf(b)) < 0;

const dangersIn = ({ findings }: OrderDraft): number =>
  findings.filter(({ severity }) => severity === "danger").length;

const priceOf = ({ findings, customers: { during, worst }, steps }: OrderDraft): readonly number[] => [
  findings.length,
  during,
  worst,
  steps.filter(isOperating).length,
];

const customersIn = (draft: OrderDraft): readonly number[] => [
  draft.customers.during,
  draft.customers.worst,
  draft.customers.end,
  draft.darkSteps,
];
