import { isHot } from "./stateColumn";
import type { ConductorState } from "./types";

/** Whether nobody touches a conductor in this state: what is not known may be hot. */
export const mayBeHot = (state: ConductorState | undefined): boolean => state === "unknown" || isHot(state);
