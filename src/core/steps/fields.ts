import { field } from "../devices";
import { key } from "./keys";
import { STEP_VERBS } from "./list";

/** Keys of a step of any verb, in the order in which they are written. Which of them a verb needs, `needsOf` says. */
export const stepFields = { do: field.choice(STEP_VERBS, "note", true), ...key };
