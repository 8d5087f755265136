export * from "./ids";
export * from "./json";
export * from "./message";
export * from "./finding";
export * from "./complex";
