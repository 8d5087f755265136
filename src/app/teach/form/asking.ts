import type { Json, ScenarioStep } from "../../../core";
import type { Session } from "../../session/session.svelte";

/** What every part of a form is given beside its own value. */
export interface FormContext {
  readonly session: Session;
  /** the steps of the instructor's own try, where there is one: quicker than writing them down */
  readonly triedSteps: readonly ScenarioStep[];
}

/** Takes a field's new value; nothing takes the key away. */
export type OnSet = (value: Json | undefined) => void;
