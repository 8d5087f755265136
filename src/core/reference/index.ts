export * from "./transformers";
export * from "./conductors";
export * from "./geometry";
export * from "./grounding";
export * from "./fuseLinks";
export * from "./gloves";
export * from "./minimumApproach";
export * from "./procedureRules";
