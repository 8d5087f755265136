export * from "./circuit";
export * from "./reach";
export { conductorGraphOf, nodeName, type ConductorEdge, type ConductorEdgeAttributes } from "./graph";
