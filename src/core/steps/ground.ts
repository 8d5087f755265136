import { DEVICES } from "../devices";
import { defineStep } from "./define";
import { key, needed } from "./keys";

const { to: GROUNDED_TO } = DEVICES.ground.fields;

/** Puts a temporary protective ground set on, under the id that it names or the next free one. */
export const ground = defineStep({
  verb: "ground",
  fields: {
    element: key.element,
    at: needed(key.at),
    phases: key.phases,
    to: GROUNDED_TO,
    cable: key.cable,
    first: key.first,
  },
  does: ["grounds", "relies"],
  hold: "ground",
  undoneBy: "unground",
  seconds: 120,
});

/** Takes a ground set off, one end first. */
export const unground = defineStep({
  verb: "unground",
  fields: { element: needed(key.element), first: key.first },
  does: ["ungrounds"],
  undoneBy: "ground",
  seconds: 120,
});
