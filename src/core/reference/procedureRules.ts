import table from "../../../shared/reference/procedure-rules.json";

const ROWS = new Map([...table.rules, ...table.backfeed].map((row) => [row.id, row]));

/** Where no document states what a rule asks. */
export const COMMON_PRACTICE = "common practice, no source";

/**
 * The paragraph that a rule rests on, as it is cited. Says so where the table has it only from memory.
 *
 * @param id of a row of `shared/reference/procedure-rules.json`
 * @throws RangeError when the table has no such row
 */
export function citationOf(id: string): string {
  const row = ROWS.get(id);
  if (row === undefined) throw new RangeError(`no row ${id} in procedure-rules.json`);
  const paragraph = row.paragraph.startsWith("1910") ? `29 CFR ${row.paragraph}` : row.paragraph;
  return row.status === "from memory" ? `${paragraph} (from memory)` : paragraph;
}
