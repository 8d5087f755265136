import type { Step } from "../../document";
import type { Threat } from "../../hazard";
import type { Message, WorkPointId } from "../../terms";
import type { CustomersOutOfJob } from "../rehearsal/customers";
import type { RehearsalFinding } from "../rules/rule";

/** A step, and in one clause what it is for. */
export type PlannedStep = Step & { readonly why: Message };

/** A threat that nothing on the drawing controls, and what would. */
export interface Uncontrolled extends Threat {
  readonly workPoint: WorkPointId;
  readonly control: Message;
}

/** Another way to do the same job, and its price. */
export interface Alternative {
  readonly summary: Message;
  readonly customersOut: number;
  /** customers without supply in the course of the order */
  readonly customers: CustomersOutOfJob;
  readonly criticalOut: readonly (string | Message)[];
  readonly operations: number;
  readonly steps: readonly PlannedStep[];
}

/** An order of steps from as found to safe to work and back to as found. */
export interface Plan {
  /** every step passes every rule, the work points are grounded when work begins, and nothing stays uncontrolled */
  readonly ok: boolean;
  readonly steps: readonly PlannedStep[];
  /** at the most while work is going on, as `customers.during` */
  readonly customersOut: number;
  /** customers without supply in the course of the order */
  readonly customers: CustomersOutOfJob;
  /** names of customers that cannot do without */
  readonly criticalOut: readonly (string | Message)[];
  /** switching, tags, blocks and grounds, on and off */
  readonly operations: number;
  readonly alternatives: readonly Alternative[];
  readonly uncontrolled: readonly Uncontrolled[];
  /** what the rules still find in the order, dangers and warnings: empty where it is ok */
  readonly findings: readonly RehearsalFinding[];
}
