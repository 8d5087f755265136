export * from "./ids";
export * from "./json";
export * from "./message";
export { inARow } from "./inARow";
export { english } from "./messages/en";
export { french } from "./messages/fr";
export * from "./finding";
export * from "./complex";
