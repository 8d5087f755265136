export * from "./circuit";
export * from "./reach";
