/** All English sentences, apart from the rest of the core, so that the first picture does not wait for them. */
export { english } from "../../core";
