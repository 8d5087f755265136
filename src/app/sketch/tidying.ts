/** Apart from the rest of the core, so that the first picture does not wait for it. */
export { tidy } from "../../core";
