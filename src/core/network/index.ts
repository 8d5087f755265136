export * from "./circuit";
export { Islands } from "./islands";
export * from "./reach";
export { conductorGraphOf, nodeName, type ConductorEdge, type ConductorEdgeAttributes } from "./graph";
