import { daysBetween, type StructureId } from "../terms";
import { perObject } from "./perObject";
import { settingsOf } from "./settings";
import type { StillhotDocument } from "./types";

/**
 * The drawing as it is known on a day: a structure that somebody saw more than `settings.seenDays` ago counts as known
 * from the map. Only for what is asked of a drawing, never for what is saved: the day on which it was seen stands.
 *
 * @param day as a file writes it, `2026-03-31`
 * @returns the same document where nothing has faded
 */
export function asOf(document: StillhotDocument, day: string): StillhotDocument {
  if (settingsOf(document).seenDays === 0) return document;
  const days = knownByDay(document);
  const known = days.get(day) ?? fadedBy(document, day);
  days.set(day, known);
  return known;
}

/** One object for each day, so that what was worked out of it once is found again. */
const knownByDay = perObject((_: StillhotDocument) => new Map<string, StillhotDocument>());

function fadedBy(document: StillhotDocument, day: string): StillhotDocument {
  const { seenDays } = settingsOf(document);
  const structures = document.system.structures ?? {};
  const faded = (Object.keys(structures) as StructureId[]).filter((id) => {
    const { evidence, seenOn = "" } = structures[id]!;
    return evidence === "seen" && seenOn !== "" && daysBetween(String(seenOn), day) > seenDays;
  });
  if (faded.length === 0) return document;
  const fromTheMap = Object.fromEntries(
    faded.map((id) => [id, { ...structures[id]!, evidence: "map" as const }]),
  );
  return { ...document, system: { ...document.system, structures: { ...structures, ...fromTheMap } } };
}
