import type { LedgerEntry, LedgerSide } from "../core";
import { wrapped } from "./print";
import { say, spell } from "./words";

/** One side of what was done on a converter's own account, for a person: nothing where there is nothing to tell. */
export const ledgerLines = (side: LedgerSide, entries: readonly LedgerEntry[]): string[] =>
  entries.length === 0 ? [] : ["", spell(say(`cli.import.${side}`)), ...entries.flatMap(entryLines)];

const entryLines = ({ what, why, count, names }: LedgerEntry): string[] =>
  wrapped(
    "  ",
    spell(
      say(names.length === 0 ? "cli.import.entry" : "cli.import.entryOf", {
        what,
        why,
        count,
        names: names.join(", "),
      }),
    ),
    "    ",
  );

/** The same for scripts. */
export const entryJson = ({ what, why, count, names }: LedgerEntry) => ({
  what: spell(what),
  count,
  why: spell(why),
  names,
});
