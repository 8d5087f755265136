export * from "./shapes";
export * from "./palettes";
export * from "./routes";
export * from "./scene";
export * from "./notes";
export * from "./hit";
export * from "./svg";
