import type { Finding } from "./finding";

/** A finding, and the further places of which just the same is to be said. */
export interface FindingsAlike {
  readonly finding: Finding;
  /** `where` of the others */
  readonly also: readonly string[];
}

/**
 * Findings as a person wants to read them: those that differ only in the place, which their sentence calls `{where}`, are one.
 * One broken neutral lifts every point beyond it, and that is one thing to go and look for.
 */
export function findingsAlike(findings: readonly Finding[]): FindingsAlike[] {
  const told = new Map<string, { finding: Finding; also: string[] }>();
  findings.forEach((finding, nth) => {
    const { rule, severity, message, help } = finding;
    const { where: place, ...others } = message.with ?? {};
    const key =
      place === undefined ? String(nth) : JSON.stringify([rule, severity, message.key, others, help]);
    const known = told.get(key);
    if (known === undefined) told.set(key, { finding, also: [] });
    else known.also.push(finding.where);
  });
  return [...told.values()];
}
