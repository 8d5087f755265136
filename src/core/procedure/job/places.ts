import type { Step } from "../../document";

/** The smallest part that a step is about. */
export const placeOf = (step: Step): string => step.element ?? step.at ?? "job";
