export * from "./sentences";
