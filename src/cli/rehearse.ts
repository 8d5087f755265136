import {
  asOf,
  jobOf,
  type Rehearsal,
  type StillhotDocument,
  rehearsalJson,
  rehearsalText,
  rehearse as play,
} from "../core";
import { cautions, eachFile } from "./eachFile";
import { counts, findingJson, findingLines } from "./print";
import { answerOf, verdictLines } from "./answer";
import { say, speech, spell } from "./words";
import { today } from "./today";

/** Plays the job's steps one after another and says what each one does, and which rules it breaks. */
export const rehearse = eachFile({
  name: "rehearse",
  summary: "cli.rehearse.summary",
  help: "cli.rehearse.help",
  flags: [],
  closing: cautions,
  answer: ({ file, document, warnings, call }) => {
    const rehearsal = play(asOf(document, today()));
    const atEnd = [...warnings, ...rehearsal.findings];
    return {
      ok: rehearsal.ok && !atEnd.some(counts),
      json: call.json ? jsonOf(file, document, rehearsal, warnings.map(findingJson)) : undefined,
      lines: call.json
        ? []
        : [
            ...rehearsalText(rehearsal, file, speech().catalogue).trimEnd().split("\n"),
            ...(jobOf(document).steps.length === 0 ? [spell(say("cli.rehearse.noSteps"))] : []),
            ...warnings.flatMap((it) => ["", ...findingLines(it, file, document)]),
            "",
            spell(say("cli.rehearse.final")),
            ...verdictLines(document, rehearsal.final),
          ],
    };
  },
});

function jsonOf(file: string, document: StillhotDocument, rehearsal: Rehearsal, warnings: readonly object[]) {
  const { ok, customers, steps, findings } = rehearsalJson(rehearsal, speech().catalogue);
  const final = answerOf(document, rehearsal.final);
  return {
    file,
    ok,
    customers,
    steps,
    findings: [...warnings, ...findings],
    final: { ok: final.ok, ...final.json },
  };
}
