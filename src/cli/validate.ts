import { eachFile, refuseAsJson } from "./eachFile";
import { counts, findingJson, findingLines } from "./print";
import { say, spell } from "./words";

/** Reads a file as strictly as every other command does, and says what is wrong with it. */
export const validate = eachFile({
  name: "validate",
  summary: "cli.validate.summary",
  help: "cli.validate.help",
  flags: [],
  refuse: refuseAsJson,
  answer: ({ file, document, warnings }) => {
    const ok = !warnings.some(counts);
    const points = Object.keys(document.system.points).length;
    const elements = Object.keys(document.system.elements).length;
    return {
      ok,
      json: { file, ok, findings: warnings.map(findingJson), errors: [] },
      lines: [
        `${file}: ${spell(say("cli.validate.read", { points, elements }))}`,
        ...warnings.flatMap((it) => findingLines(it, file)),
      ],
    };
  },
});
