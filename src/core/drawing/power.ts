import { complete, type StillhotDocument } from "../document";
import type { Assessment } from "../hazard";
import { conductorId, type ElementId, type Letter } from "../terms";

/** Real power that a device takes in at its first end, by conductor and in all [W]. Negative: it gives power. */
export interface Power {
  readonly watts: number;
  readonly byLetter: Readonly<Partial<Record<Letter, number>>>;
}

/**
 * The real power into an element, from the volts and amperes of an assessment: the sum of Re(V · I*) over the conductors
 * of its `from`, or of the point that it stands at, the neutral among them.
 *
 * @returns nothing where a conductor's volts are not known
 */
export function powerInto(
  { system }: StillhotDocument,
  assessment: Assessment,
  id: ElementId,
): Power | undefined {
  const saved = system.elements[id];
  const report = assessment.elements[id];
  if (saved === undefined || report === undefined) return undefined;
  const element = complete(saved) as unknown as Readonly<Record<string, string>>;
  const point = element["from"] ?? element["at"];
  if (point === undefined) return undefined;
  const byLetter: Partial<Record<Letter, number>> = {};
  let watts = 0;
  for (const [letter, amps] of Object.entries(report.amps) as [Letter, number][]) {
    const conductor = assessment.conductors[conductorId(point, letter)];
    if (conductor === undefined) return undefined;
    const between = ((conductor.angleDeg - report.angleDeg[letter]!) * Math.PI) / 180;
    const own = conductor.volts * amps * Math.cos(between);
    byLetter[letter] = own;
    watts += own;
  }
  return Object.keys(byLetter).length === 0 ? undefined : { watts, byLetter };
}
