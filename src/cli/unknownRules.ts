import { type Finding, RULES, rulesOff, type StillhotDocument } from "../core";
import { say } from "./words";

/** What an assessment finds beside the rules of the rehearsal; it can be turned off like them. */
const BESIDE: readonly string[] = ["load-model", "threats-not-all"];

/** A warning for each rule that a file turns off and that there is none of: whoever wrote it thinks that it is off. */
export const unknownRules = (document: StillhotDocument): Finding[] => {
  const known = [...RULES.map(({ id }) => id), ...BESIDE];
  return rulesOff(document)
    .filter(({ id }) => !known.includes(id))
    .map(({ id }): Finding => {
      const near = known.find((it) => changesBetween(id, it) <= Math.max(2, it.length / 4));
      return {
        rule: "unknown-rule",
        severity: "warning",
        where: `settings.rules.${id}`,
        message:
          near === undefined ? say("cli.unknownRule", { id }) : say("cli.unknownRule.near", { id, near }),
        help: say("cli.unknownRule.help"),
        citation: "file format",
      };
    });
};

/** How many letters have to be put in, taken out or changed to make one word of another (Levenshtein). */
function changesBetween(a: string, b: string): number {
  // Ids are short; what is far longer than any is like none of them.
  if (Math.abs(a.length - b.length) > b.length) return Infinity;
  let row = Array.from({ length: b.length + 1 }, (_, at) => at);
  [...a].forEach((letter, i) => {
    const next = [i + 1];
    for (let j = 0; j < b.length; j++)
      next.push(Math.min(next[j]! + 1, row[j + 1]! + 1, row[j]! + (b[j] === letter ? 0 : 1)));
    row = next;
  });
  return row.at(-1)!;
}
