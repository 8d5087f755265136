import { readdirSync, readFileSync } from "node:fs";
import { isUnreadable, readDocument, type StillhotDocument } from "../../src/core";
import { spellProblem } from "../support/words";

const folder = new URL("../../shared/scenarios/", import.meta.url);

export interface Listed {
  readonly id: string;
  readonly title: string;
  readonly level: number;
  readonly minutes: number;
  readonly summary: string;
  readonly teaches: string;
  readonly tasks: readonly string[];
}

export const listed = JSON.parse(readFileSync(new URL("index.json", folder), "utf8")) as Listed[];

export const files = readdirSync(folder)
  .filter((it) => it.endsWith(".stillhot.json"))
  .map((it) => it.replace(".stillhot.json", ""));

export const textOf = (id: string): string => readFileSync(new URL(`${id}.stillhot.json`, folder), "utf8");

const known = new Map<string, StillhotDocument>();

/** A scenario of the library, read once for all tests, strictly and without a warning: what one of them works out of it, the next one finds. */
export function scenarioFile(id: string): StillhotDocument {
  const document = known.get(id) ?? readScenario(id);
  known.set(id, document);
  return document;
}

function readScenario(id: string): StillhotDocument {
  const read = readDocument(textOf(id));
  if (isUnreadable(read)) throw new Error(read.problems.map(spellProblem).join("\n"));
  if (read.warnings.length > 0) throw new Error(`${id} has unknown keys`);
  return read.document;
}
