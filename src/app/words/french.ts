/** The second language, apart from the rest of the core, so that nobody waits for words that they do not read. */
export { french } from "../../core";
