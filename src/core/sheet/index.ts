export * from "./sentences";
export * from "./steps";
