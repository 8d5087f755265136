export * from "./ids";
export * from "./json";
export * from "./message";
export { inARow } from "./inARow";
export { english } from "./messages/en";
export { first as firstEnglish } from "./messages/en/first";
export { french, unbroken } from "./messages/fr";
export * from "./finding";
export * from "./complex";
