import { jobOf, scenarioOf, type StillhotDocument } from "../../document";
import { escapeXml } from "../../drawing";
import { mapOf } from "../../scenario";
import { type Catalogue, type MessageGaps, type MessageKey, say, spell } from "../../terms";
import { plainPicture, SHEET_STYLE } from "./worksheet";

/** Room for the drawing, by which it is a page by itself with its task [px]. */
const ROOM = { width: 660, height: 620 };

/**
 * What a learner may be given on paper before a scenario: its map without any state, the task, and lines to write on. Nothing
 * that is hidden, no step, and nothing that is live or could be.
 */
export function mapSheetHtml(
  scenario: StillhotDocument,
  { catalogue, language = "en" }: { readonly catalogue: Catalogue; readonly language?: string },
): string {
  const map = mapOf(scenario);
  const { prebrief, assume = [] } = scenarioOf(map);
  const word = (key: MessageKey, gaps?: MessageGaps) => escapeXml(spell(say(key, gaps), catalogue));
  const about = say("drill.mapOf", { task: jobOf(map).task });
  return [
    "<!doctype html>",
    `<html lang="${escapeXml(language)}"><head><meta charset="utf-8"><title>${escapeXml(map.title)}</title>`,
    `<meta name="viewport" content="width=device-width"><style>${SHEET_STYLE}</style></head><body>`,
    `<header><h1>${escapeXml(map.title)}</h1><p>${word("drill.name")} ____________________ ${word("drill.date")} ______________</p></header>`,
    `<p><b>${escapeXml(jobOf(map).task)}</b></p>`,
    prebrief === undefined ? "" : `<p>${escapeXml(prebrief)}</p>`,
    assume.length === 0 ? "" : `<ul>${assume.map((it) => `<li>${escapeXml(it)}</li>`).join("")}</ul>`,
    `<figure>${plainPicture({ ...map, scenario: undefined } as unknown as StillhotDocument, ROOM, about, catalogue)}</figure>`,
    `<p>${word("drill.mapOnly")}</p>`,
    `<p class="caution">${word("page.caution")}</p></body></html>`,
    "",
  ].join("\n");
}
