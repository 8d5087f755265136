/** The solver, apart from the rest of the core, so that the first picture does not wait for it. */
export { assess, standsAlike, statesAtHand, statesByReach } from "../../core";
