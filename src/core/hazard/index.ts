export { assumedThings } from "./assumptions";
export type * from "./types";
export {
  assess,
  assessWithoutWork,
  type KnownFromPlay,
  type SidedVerdict,
  sidesOfWork,
  verdictOfWork,
  type WorkVerdict,
} from "./assess";
export { mayBeHot } from "./mayBeHot";
export { ampsLoadsOff } from "./reports";
export { type PointNumbers, pointNumbers } from "./pointNumbers";
export { conductorsOf as workConductorsOf, type Outcome, outcomeAfter } from "./outcome";
export { barricadedPlaces, isBarricaded, testedConductors } from "./tested";
export { type CutOff, cutOffBy } from "./cutOff";
export { keyOfUpsets, threatKey } from "./threatKey";
export { clearingLimitVolts, leastWithstand, threatsByBruteForce, threatsTo } from "./threats";
export { afterUpsets, closes, closesByItself, type DrawnUpset, startsDrawn, upsetsOf } from "./upsets";
export { distanceWords, type WithinReach, withinReachOn } from "./withinReach";
export { startsUnknown, upsetWords } from "./upsetWords";
export { documentAfter, marginMap, worstThreat } from "./views";
export type { FaultAmps } from "../phasor";
export { COST_OF_A_NODE, LINE_VOLTS, MOST_STRENGTH } from "./tolerances";
export { isPassingShort, mendedIn, questionsAbout, whileMending } from "./mendedFaults";
export { neutralInHand, worstNeutralDoubt } from "./neutralInHand";
export { cablesWithin } from "./withinCable";
export { BADNESS, hasNeutral as hasNeutralInHand, worstVerdict } from "./verdict";
export { type HotStep, type HotStepKind, type HotWay, whyHot } from "./whyHot";
export { isHot, STATES, type StateColumn, stateColumn, statesUntold } from "./stateColumn";
export { standsAlike, statesAtHand, statesByReach } from "./statesByReach";
export { type AssessmentColumns, fromColumns, type RowIds, rowsOf } from "./columns";
export { buffersOf, toColumns } from "./toColumns";
export { LEAST_FELT_VOLTS, mostBelievableVolts, toldVolts } from "./believable";
export { degreesApart, standApart, voltsApart, type VoltsToEarth } from "./apart";
export { type Apart, feedsApart } from "./closedBetween";
