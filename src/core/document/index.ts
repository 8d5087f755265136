export * from "./types";
export * from "./settings";
export * from "./complete";
export { perObject } from "./perObject";
