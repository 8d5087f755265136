export type * from "./types";
export {
  ampsLoadsOff,
  assess,
  assessWithoutWork,
  type PointNumbers,
  pointNumbers,
  type KnownFromPlay,
  standingOfWork,
  type WorkStanding,
} from "./assess";
export { conductorsOf as workConductorsOf } from "./outcome";
export { barricadedPlaces, isBarricaded, testedConductors } from "./tested";
export { clearingLimitVolts, threatsByBruteForce, threatsTo } from "./threats";
export { afterUpsets, type DrawnUpset, upsetsOf } from "./upsets";
export { upsetWords } from "./upsetWords";
export { documentAfter, marginMap, worstThreat } from "./views";
export type { FaultAmps } from "../phasor";
export { type HotStep, type HotStepKind, type HotWay, whyHot } from "./whyHot";
export { STATES, type StateColumn, stateColumn, statesUntold } from "./stateColumn";
export { standsAlike, statesAtHand, statesByReach } from "./statesByReach";
export { type AssessmentColumns, buffersOf, fromColumns, type RowIds, rowsOf, toColumns } from "./columns";
