export { type CoreMessageKey, english } from "./english";
export { french } from "./french";
