/** The walk along a path, apart from the rest of the core, so that the first picture does not wait for it. */
export { whyHot } from "../../core";
