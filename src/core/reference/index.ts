export * from "./transformers";
export * from "./conductors";
export * from "./geometry";
export * from "./grounding";
