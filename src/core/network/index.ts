export * from "./circuit";
export { circuitAtHand, circuitOf } from "./circuitOf";
export { placeFor } from "./places";
export { FewIslands, Islands } from "./islands";
export { edgesAround, type Flood, floodFrom, wayBack } from "./flood";
export * from "./reach";
export { groupsAsDrawn, type StepGroup, stepGroups, UTILITY } from "./inStep";
export { feedNotDrawn } from "./feed";
export { conductorGraphOf, nodeName, type ConductorEdge, type ConductorEdgeAttributes } from "./graph";
