import {
  type AttemptRecord,
  type CriterionResult,
  escapeXml,
  missedHow,
  nameOfFact,
  truthOf,
  TYPEFACE,
} from "../../core";
import { clock, entryTitle } from "../scenario/words";
import { speech } from "../words/language.svelte";
import { t, told } from "../words/words";

/** The record of an attempt as a page to be printed and signed, with nothing that comes from elsewhere. */
export function recordHtml(record: AttemptRecord): string {
  const { debrief, row } = record;
  const { attempt } = row;
  const truth = truthOf(attempt.document);
  const text = (words: string) => escapeXml(words);
  const line = (words: string, value: string) =>
    `<tr><th scope="row">${text(words)}</th><td>${text(value)}</td></tr>`;
  const list = (title: string, items: readonly string[]) =>
    items.length === 0
      ? ""
      : `<h2>${text(title)}</h2><ul>${items.map((it) => `<li>${text(it)}</li>`).join("")}</ul>`;
  const at = (n: number) => {
    const entry = attempt.log[n - 1];
    return entry === undefined ? "" : `${n}. ${clock(entry.t)} ${entryTitle(truth, entry)}`;
  };
  const howMissed = (result: CriterionResult) => {
    const missed = missedHow(attempt, result);
    return missed === undefined
      ? ""
      : t(`review.missed.${missed.how}`, { entry: missed.entry === undefined ? "" : at(missed.entry) });
  };
  return [
    `<!doctype html><html lang="${speech.language}"><head><meta charset="utf-8"><title>${text(told(record.heading))}</title>`,
    `<style>@page{margin:12mm}body{font:11pt/1.3 ${TYPEFACE};color:#000;background:#fff;margin:0}`,
    `h1{font-size:1.4em;margin:0}h2{font-size:1.1em;margin:4mm 0 1mm;break-after:avoid}table{border-collapse:collapse}`,
    `th{text-align:left;font-weight:normal;padding-right:6mm;vertical-align:top}td{font-weight:bold}ul{margin:0;padding-left:5mm}li{break-inside:avoid}`,
    `.sign{display:flex;gap:8mm;margin-top:11mm;break-inside:avoid}.sign div{flex:1;border-top:.4mm solid #000}.caution{font-weight:bold;margin-top:4mm;break-inside:avoid;break-after:avoid}</style></head><body>`,
    `<h1>${text(told(record.heading))}: ${text(record.title)}</h1><table>`,
    line(t("review.column.who"), record.who || "____________________"),
    line(t("review.column.outcome"), told(record.outcome)),
    line(
      t("review.column.percent"),
      [
        `${row.percent} %`,
        ...(row.passMark > 0 ? [t("review.passMark", { percent: row.passMark })] : []),
      ].join(", "),
    ),
    line(
      t("review.column.minutes"),
      `${Math.round(record.minutes)} ${t("review.allowed", { minutes: row.minutesAllowed })}`,
    ),
    line(t("review.column.hints"), String(row.hints)),
    line(t("play.mode"), t(`play.mode.${record.mode}`)),
    record.forkOf === "" ? "" : line(t("review.continuedFrom"), record.forkOf),
    row.variant === undefined ? "" : line(t("review.column.variant"), String(row.variant)),
    line(t("review.startedAt"), record.startedAt),
    line(t("review.fingerprint"), record.fingerprint.slice(0, 16)),
    line(t("review.seed"), String(record.seed)),
    line(t("review.checksum"), record.checksum.slice(0, 16)),
    `</table>`,
    list(
      t("play.objectives"),
      debrief.score.objectives.map((it) => `${t("review.of", { earned: it.earned, of: it.of })} ${it.text}`),
    ),
    list(
      t("review.criteria"),
      debrief.score.criteria.map(
        (it) =>
          `${t("review.of", { earned: it.earned, of: it.weight })} ${it.criterion.text} ${t(it.met ? "review.met" : "review.missed")} ${howMissed(it)}`,
      ),
    ),
    list(
      t("review.dangers"),
      debrief.score.dangers.map((it) => `${at(it.entry)}: ${told(it.why)}`),
    ),
    list(
      t("review.facts"),
      debrief.why.facts.map(
        (it) =>
          `${nameOfFact(attempt.document, it.id)}: ${it.knownAt === undefined ? t("review.neverKnown") : t("review.knownAt", { entry: at(it.knownAt) })}`,
      ),
    ),
    list(
      t("review.reactions"),
      debrief.reactions.remarks.map((it) => `${it.question} ${it.text}`),
    ),
    record.remarks === "" ? "" : `<h2>${text(t("review.remarks"))}</h2><p>${text(record.remarks)}</p>`,
    `<p class="caution">${text(told(record.caution))}</p>`,
    `<div class="sign">${record.blanks.map((it) => `<div>${text(t(`review.blank.${it}`))}</div>`).join("")}</div>`,
    `</body></html>`,
  ].join("\n");
}
