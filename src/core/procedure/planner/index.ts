export { plan, planDocument, type PlanOptions } from "./plan";
export type { Alternative, Plan, PlannedStep, Uncontrolled } from "./types";
