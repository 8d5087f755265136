import { isObject, type Json, type JsonObject, say } from "../terms";
import type { Report } from "./problem";

/** Checks what an instructor hides and how an attempt is scored. So far any object will do. */
export function checkScenario(report: Report, scenario: Json | undefined): void {
  if (scenario !== undefined && !isObject(scenario))
    report.addExpected("scenario", scenario, say("file.expectedObject"));
}

/** The scenario's part of the JSON Schema. */
export const scenarioSchema = (): JsonObject => ({ type: "object" });
