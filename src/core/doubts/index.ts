export { carriedOut, type Doubt, doubtsAround } from "./doubts";
export { whileWorking } from "./whileWorking";
export { groundsWorth, type GroundsWorth } from "./groundsWorth";
export { type ConductorRanges, type Range, type Ranges, rangesOf, type WayRanges } from "./ranges";
export { lookFirst, type LookFirstReport, MOST_ENTRIES } from "./lookFirst";
export { type LookFirst } from "./asker";
export { type LookList, looksFor } from "./looks";
