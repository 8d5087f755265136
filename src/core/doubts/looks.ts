import { jobOf, type StillhotDocument } from "../document";
import { planDocument } from "../procedure";
import type { WorkPointId } from "../terms";
import { lookFirst, type LookFirstReport } from "./lookFirst";
import { whileWorking } from "./whileWorking";

/** What to look at first, and of which way of standing that is said. */
export interface LookList {
  readonly report: LookFirstReport;
  /** as drawn, or while hands are at the work: by the order that is there, or by the one that would be proposed */
  readonly when: "drawn" | "working" | "proposed";
}

/**
 * What somebody is to look at first: while the order of steps has its hands at the work, or where there is none and the
 * work point is not live, as drawn. Of a live one without an order only a proposed order makes anything that could be lost.
 */
export function looksFor(document: StillhotDocument, id: WorkPointId): LookList {
  if (whileWorking(document, id) !== undefined)
    return { when: "working", report: lookFirst(document, id, { when: "working" }) };
  const report = lookFirst(document, id);
  if (report.asked.ofSingles > 0 || jobOf(document).steps.length > 0) return { when: "drawn", report };
  const planned = planDocument(document);
  if (whileWorking(planned, id) === undefined) return { when: "drawn", report };
  return { when: "proposed", report: lookFirst(planned, id, { when: "working" }) };
}
