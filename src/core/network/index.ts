export * from "./circuit";
export { circuitAtHand, circuitOf } from "./circuitOf";
export { placeFor } from "./places";
export { Islands } from "./islands";
export * from "./reach";
export { groupsAsDrawn, type StepGroup, stepGroups, UTILITY } from "./inStep";
export { feedNotDrawn } from "./feed";
export { conductorGraphOf, nodeName, type ConductorEdge, type ConductorEdgeAttributes } from "./graph";
