import { type Catalogue, type Message, say, spell } from "../terms";
import type { Attempt } from "./attempt";
import { type ClassRow, rowOf } from "./compare";
import { type Debrief, debriefOf } from "./debrief";
import type { Planner } from "./checks";
import { nameOfFact } from "./truth";

/** Everything that stands on the printed record of an attempt. Blanks are for a pencil. */
export interface AttemptRecord {
  readonly heading: Message;
  readonly title: string;
  readonly fingerprint: string;
  readonly seed: number;
  readonly mode: Attempt["mode"];
  /** the beginning of the hash up to which it is another attempt's; empty where it began at the beginning */
  readonly forkOf: string;
  readonly who: string;
  readonly startedAt: string;
  readonly minutes: number;
  readonly outcome: Message;
  readonly row: ClassRow;
  readonly debrief: Debrief;
  readonly remarks: string;
  readonly checksum: string;
  readonly blanks: readonly ["apprentice", "instructor", "date"];
  readonly caution: Message;
}

/** The record of an attempt, to be printed and signed. `remarks` is what the instructor typed. */
export function recordOf(attempt: Attempt, remarks = "", plan?: Planner): AttemptRecord {
  const row = rowOf(attempt);
  return {
    heading: say("record.title"),
    title: attempt.document.title,
    fingerprint: attempt.fingerprint,
    seed: attempt.seed,
    mode: attempt.mode,
    forkOf: forkMark(attempt),
    who: attempt.who,
    startedAt: attempt.startedAt,
    minutes: row.minutes,
    outcome: say(`record.${row.outcome}`),
    row,
    debrief: debriefOf(attempt, plan),
    remarks,
    checksum: attempt.checksum,
    blanks: ["apprentice", "instructor", "date"],
    caution: say("record.caution"),
  };
}

const forkMark = ({ forkOf = "" }: Attempt): string => forkOf.slice(0, 16);

const NEW_LINE = "\r\n";
/** So that a spreadsheet reads the letters as UTF-8. */
const BYTE_ORDER_MARK = "\uFEFF";

/** A cell as RFC 4180 has it. What a spreadsheet would take for a formula gets an apostrophe before it. */
function csvCell(value: string | number): string {
  const text = typeof value === "string" && /^[=+\-@\t\r]/.test(value) ? `'${value}` : String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A class as a table, one attempt a row. */
export function classCsv(attempts: readonly Attempt[], catalogue: Catalogue): string {
  const rows = attempts.map((attempt) => {
    const row = rowOf(attempt);
    return [
      attempt.who,
      attempt.document.title,
      attempt.fingerprint.slice(0, 16),
      attempt.mode,
      attempt.seed,
      attempt.startedAt,
      Number(row.minutes.toFixed(1)),
      spell(say(`record.${row.outcome}`), catalogue),
      row.percent,
      row.dangers,
      row.hints,
      row.traps.join(" "),
      row.facts.map((id) => nameOfFact(attempt.document, id)).join("; "),
      attempt.checksum.slice(0, 16),
      forkMark(attempt),
      row.variant ?? "",
      row.minutesAllowed,
      row.passMark,
    ]
      .map(csvCell)
      .join(",");
  });
  return BYTE_ORDER_MARK + [spell(say("csv.head"), catalogue), ...rows].join(NEW_LINE) + NEW_LINE;
}
