import { readFileSync } from "node:fs";
import {
  type Imported,
  type ImportOptions,
  importMap,
  type ImportRefused,
  isImportRefused,
  ModelImport,
} from "../../src/core";
import { spell } from "./words";

const path = (name: string) => `shared/import/${name}`;

export { assess } from "../../src/core";

/** Reads a model of shared/import, in pieces as a stream would give it. */
export function importModel(name: string, options: ImportOptions = {}): Imported | ImportRefused {
  const model = new ModelImport();
  const text = readFileSync(path(name), "utf8");
  for (let at = 0; at < text.length; at += 10_007) model.write(text.slice(at, at + 10_007));
  model.endFile();
  return model.finish(options);
}

/** The same of text at hand. */
export function importText(text: string, options: ImportOptions = {}): Imported | ImportRefused {
  const model = new ModelImport();
  model.write(text);
  model.endFile();
  return model.finish(options);
}

export const importMapFile = (name: string): Imported | ImportRefused =>
  importMap(readFileSync(path(name), "utf8"));

/** What was imported; a refusal is told in words. */
export function done(outcome: Imported | ImportRefused): Imported {
  if (isImportRefused(outcome)) throw new Error(outcome.errors.map((it) => spell(it)).join("\n"));
  return outcome;
}

/** Why nothing was imported, in words. */
export const reasons = (outcome: Imported | ImportRefused): string[] =>
  isImportRefused(outcome) ? outcome.errors.map((it) => spell(it)) : [];
