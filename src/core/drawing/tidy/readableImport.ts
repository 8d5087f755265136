import type { Imported } from "../../import";
import { standsAsOnAMap } from "../../piece";
import { isRefusal, say } from "../../terms";
import { tidy } from "./tidy";

/**
 * What was imported, readable: where the file's places are those of a map, on which symbols would lie over each other, the
 * main line runs straight on, and what leaves it stays on its side. What was laid out is told with the rest; places that
 * keep clear of each other stay.
 */
export function readableImport(imported: Imported): Imported {
  if (!standsAsOnAMap(imported.document)) return imported;
  const change = tidy(imported.document);
  if (isRefusal(change)) return imported;
  const told = {
    what: say("importing.laidOut"),
    why: say("importing.laidOut.why"),
    count: imported.counts.points,
    names: [],
  };
  return { ...imported, document: change.after, approximated: [...imported.approximated, told] };
}
