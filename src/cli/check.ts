import { assess } from "../core";
import { cautions, eachFile } from "./eachFile";
import { heading } from "./print";
import { standingLines, standingOf } from "./standing";

/** What is live as drawn, what could become live, and what else is wrong. */
export const check = eachFile({
  name: "check",
  summary: "cli.check.summary",
  help: "cli.check.help",
  flags: [{ name: "--all" }],
  closing: cautions,
  answer: ({ file, document, warnings, call }) => {
    const assessment = assess(document);
    const { ok, json } = standingOf(document, assessment, warnings);
    return {
      ok,
      json: { file, ok, ...json },
      lines: call.json
        ? []
        : [
            heading(file, document.title),
            ...standingLines(file, document, assessment, { warnings, all: call.flags.has("--all") }),
          ],
    };
  },
});
