import { createHash } from "node:crypto";
import {
  assess,
  type Assessment,
  generateTap,
  isUnreadable,
  type Level,
  plan,
  readDocument,
  type StillhotDocument,
  structureOf,
  writeDocument,
} from "../../src/core";
import { limitsOf, nominalOf, type Plain } from "../secondOpinion/plain";
import { look, statesOf } from "../secondOpinion/hazard";
import { spell, spellProblem } from "../support/words";

/** A generated tap as a reader of its file gets it. */
export function tapOf(level: Level, seed: number): { text: string; document: StillhotDocument } {
  const text = writeDocument(generateTap({ level, seed }));
  const read = readDocument(text);
  if (isUnreadable(read)) throw new Error(read.problems.map(spellProblem).join("\n"));
  if (read.warnings.length > 0) throw new Error(read.warnings.map((it) => spell(it.message)).join("\n"));
  return { text, document: read.document };
}

/** What could not stand on a pole, or is fed by nobody: sentences for whoever reads the failure. */
export function notStanding({ system, job }: StillhotDocument): string[] {
  const elements = Object.entries(system.elements);
  const nowhere = elements
    .filter(([id, { kind }]) => kind !== "span" && kind !== "nearby" && structureOf(system, id) === undefined)
    .map(([id, { kind }]) => `${kind} ${id} is on no structure`);
  const placed = Object.entries(system.points)
    .filter(([, it]) => it["x"] !== undefined || it["y"] !== undefined || it["on"] === undefined)
    .map(([id]) => `point ${id} is placed, or on nothing`);
  const labels = elements.map(([, it]) => String(it["label"] ?? "")).filter((it) => it !== "");
  const twice = labels
    .filter((it, index) => labels.indexOf(it) !== index)
    .map((it) => `two are called ${it}`);
  return [...nowhere, ...placed, ...twice, ...(job === undefined ? ["there is no job"] : [])];
}

/** Conductors whose state the second implementation, which knows nothing of the core, tells otherwise. */
export function otherStates(document: StillhotDocument): string[] {
  const plain = document.system as unknown as Plain;
  const seen = look(plain, nominalOf(plain));
  const theirs = assess({ ...document, job: {} }).conductors as Record<
    string,
    Assessment["conductors"][never]
  >;
  const states = statesOf(seen, seen, limitsOf());
  const names = new Set([...states.keys(), ...Object.keys(theirs)]);
  return [...names]
    .filter((it) => theirs[it]?.state !== states.get(it))
    .map((it) => `${it}: program ${theirs[it]?.state}, second ${states.get(it)}`);
}

/** A tap that is planned neither cleanly nor with a reason. */
export function unplanned(document: StillhotDocument): string[] {
  const { ok, findings, uncontrolled, steps } = plan(document, { alternatives: false });
  if (ok) return steps.length > 0 ? [] : ["an order without a step"];
  return findings.length + uncontrolled.length > 0 ? [] : ["no order, and no reason"];
}

export const fingerprint = (texts: readonly string[]): string =>
  createHash("sha256").update(texts.join("")).digest("hex");
