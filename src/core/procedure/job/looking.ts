import type { Step } from "../../document";
import { TELLING } from "./verbs";

/** Steps by which a crew stops and looks, after a test that showed voltage. */
export const isLooking = (step: Step): boolean =>
  TELLING.has(step.do) || ["inspect", "ask", "brief", "test", "check-detector", "wait"].includes(step.do);
