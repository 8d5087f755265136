import { asOf, assess, type StillhotDocument } from "../core";
import { AROUND, assessedAround, OPENINGS, openingsOf, placeCalled, withWorkAt } from "./around";
import type { Call } from "./command";
import { cautions, eachFile } from "./eachFile";
import { looksOf } from "./lookFirst";
import { heading } from "./print";
import { JOBS, jobsOf } from "./sideBySide";
import { answerLines, answerOf } from "./answer";
import { today } from "./today";

/** What is live as drawn, what could become live, and what else is wrong. */
export const check = eachFile({
  name: "check",
  summary: "cli.check.summary",
  help: "cli.check.help",
  flags: [{ name: "--all" }, AROUND, OPENINGS, JOBS],
  closing: cautions,
  before: (call) => {
    openingsOf(call);
    jobsOf(call);
  },
  answer: ({ file, document: drawn, warnings, call }) => {
    const { document, assessment } = asked(asOf(drawn, today()), call);
    const looks = looksOf(document);
    const { ok, json } = answerOf(document, assessment, { warnings, looks });
    return {
      ok,
      json: { file, ok, ...json },
      lines: call.json
        ? []
        : [
            heading(file, document.title),
            ...answerLines(file, document, assessment, {
              warnings,
              looks,
              all: call.flags.has("--all"),
            }),
          ],
    };
  },
});

/** The drawing and what was found of it: all, or what a place's work points need. */
function asked(whole: StillhotDocument, call: Call) {
  const around = call.flags.get("--around");
  if (typeof around !== "string") return { document: whole, assessment: assess(whole) };
  const place = placeCalled(whole, around);
  const document = withWorkAt(whole, place);
  return { document, assessment: assessedAround(whole, place, openingsOf(call), assess(document)) };
}
