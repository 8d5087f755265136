/** A drawing of bare records, for the tests of what a drawing means. */
import { assess, type Assessment } from "../../src/core/hazard";
import { isUnreadable, readDocument, type StillhotDocument } from "../../src/core/document";

export interface Drawn {
  readonly points?: Readonly<Record<string, object>>;
  readonly elements: Readonly<Record<string, object>>;
  readonly job?: object;
  readonly settings?: object;
}

/** Points that elements name and `points` does not say more of are there too. */
export function drawn({ points = {}, elements, ...more }: Drawn): StillhotDocument {
  const named = Object.values(elements).flatMap((element) =>
    (["from", "to", "alt", "at"] as const).flatMap(
      (end) => (element as Record<string, string | undefined>)[end] ?? [],
    ),
  );
  const all = Object.fromEntries(named.map((id) => [id, points[id] ?? {}]));
  const file = { format: "stillhot", formatVersion: 1, system: { points: { ...points, ...all }, elements } };
  const read = readDocument(JSON.stringify({ ...file, ...more }));
  if (isUnreadable(read)) throw new Error(JSON.stringify(read.problems));
  return read.document;
}

/** What is known of it, by plain names. */
export const assessed = (it: Drawn) =>
  assess(drawn(it)) as {
    readonly conductors: Readonly<Record<string, Assessment["conductors"][never]>>;
    readonly elements: Readonly<Record<string, Assessment["elements"][never]>>;
    readonly workPoints: Readonly<Record<string, Assessment["workPoints"][never]>>;
    readonly findings: Assessment["findings"];
  };

/** Rules and severities of the findings at a place. */
export const saidAt = ({ findings }: Pick<Assessment, "findings">, where: string): string[] =>
  findings.filter((it) => it.where === where).map(({ rule, severity }) => `${rule} ${severity}`);
