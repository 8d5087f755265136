import { defineStep } from "./define";
import { key } from "./keys";

/** Asks the system operator for the permit. */
export const requestPermit = defineStep({
  verb: "request-permit",
  fields: {},
  does: ["arranges"],
  anywhere: true,
  byRadio: true,
  plain: true,
});

/** Receives the permit; `with` says by whom it is held. */
export const receivePermit = defineStep({
  verb: "receive-permit",
  fields: { with: key.with },
  does: ["arranges"],
  undoneBy: "release-permit",
  anywhere: true,
  byRadio: true,
});

/** Gives the permit back to the system operator. */
export const releasePermit = defineStep({
  verb: "release-permit",
  fields: { with: key.with },
  does: ["arranges"],
  anywhere: true,
  byRadio: true,
  plain: true,
});
