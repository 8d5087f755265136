import { jobOf, type StillhotDocument } from "../document";
import { planDocument } from "../procedure";
import type { WorkPointId } from "../terms";
import { groundsWorth, type GroundsWorth } from "./groundsWorth";
import { lookFirst, type LookFirstReport } from "./lookFirst";
import { type Ranges, rangesOf } from "./ranges";
import { whileWorking } from "./whileWorking";

/** What to look at first, and of which way of standing that is said. */
export interface LookList {
  readonly report: LookFirstReport;
  /** as drawn, or while hands are at the work: by the order that is there, or by the one that would be proposed */
  readonly when: "drawn" | "working" | "proposed";
  /** what the grounds do against what may be wrong; nothing where none stand */
  readonly worth: GroundsWorth | undefined;
  /** what its figures may be where numbers from the map are off */
  readonly ranges: Ranges;
}

/**
 * What somebody is to look at first: while the order of steps has its hands at the work, or where there is none and the
 * work point is not live, as drawn. Of a live one without an order only a proposed order makes anything that could be lost.
 */
export function looksFor(document: StillhotDocument, id: WorkPointId): LookList {
  const working = (of: StillhotDocument) => ({
    report: lookFirst(of, id, { when: "working" }),
    worth: groundsWorth(of, id),
    ranges: rangesOf(of, id),
  });
  if (whileWorking(document, id) !== undefined) return { when: "working", ...working(document) };
  const report = lookFirst(document, id);
  const drawn = {
    when: "drawn",
    report,
    worth: groundsWorth(document, id),
    ranges: rangesOf(document, id),
  } as const;
  if (report.asked.ofSingles > 0 || jobOf(document).steps.length > 0) return drawn;
  const planned = planDocument(document);
  return whileWorking(planned, id) === undefined ? drawn : { when: "proposed", ...working(planned) };
}
