import { type FileProblem, type Finding, nameOfPlace, type StillhotDocument } from "../core";
import type { Refused } from "./input";
import { say, spell } from "./words";

/**
 * One JSON value on one line. A number that is not finite would become `null`, which reads as "nothing there": it is
 * printed as the largest number there is, which is over every limit whoever compares it.
 */
export const jsonLine = (value: unknown): string =>
  `${JSON.stringify(value, (_key, it: unknown) =>
    typeof it === "number" && !Number.isFinite(it) ? Number.MAX_VALUE : it,
  ).replace(/[\u007f-\u009f\u2028\u2029]/g, escaped)}\n`;

/** A finding as JSON, its words spelled out. */
export const findingJson = ({ rule, severity, where, message, help, citation }: Finding) => ({
  rule,
  severity,
  where,
  message: spell(message),
  ...(help === undefined ? {} : { help: spell(help) }),
  citation,
});

/** What is wrong in a file, and where, as `--json` gives it. */
export const problemJson = ({ path, message }: FileProblem) => ({ path, message: spell(message) });

/** Whether a finding changes the exit code. */
export const counts = ({ severity }: Finding): boolean => severity !== "note";

const WIDTH = 100;

/**
 * A finding as lines: how bad and where, and under it what, what to do, and who says so.
 *
 * @param document the drawing by which to name what it is about; without it the file's own ids and keys are told
 * @param also further places of which just the same is to be said
 */
export const findingLines = (
  { rule, severity, where, message, help, citation }: Finding,
  file: string,
  document?: StillhotDocument,
  also: readonly string[] = [],
): string[] => [
  `${severity}, ${file}, ${document === undefined ? where : spell(nameOfPlace(document, where))} (${rule})`,
  ...wrapped("  ", spell(message), "  "),
  ...(document === undefined || also.length === 0
    ? []
    : wrapped("  ", spell(say("report.alsoAt", { places: placesOf(document, also) })), "  ")),
  ...(help === undefined ? [] : wrapped("  ", spell(say("report.do", { help })), "  ")),
  ...wrapped("  ", citation, "  "),
];

const placesOf = (document: StillhotDocument, places: readonly string[]): string =>
  places.map((it) => spell(nameOfPlace(document, it))).join("; ");

/** Why a file could not be used, as lines. */
export function refusedLines({ file, problems }: Refused): string[] {
  const name = file === "-" ? spell(say("cli.stdin")) : file;
  if (problems.length === 1 && problems[0]!.path === "") return [`${name}: ${spell(problems[0]!.message)}`];
  return [
    `${name}: ${spell(say(problems.length === 1 ? "cli.oneProblem" : "cli.problems", { count: problems.length }))}`,
    ...problems.map(({ path, message }) => `  ${path === "" ? "" : `${path}: `}${spell(message)}`),
  ];
}

/** Words after a beginning, wrapped so that lines stay readable; later lines begin with the indent. */
export function wrapped(beginning: string, words: string, indent: string): string[] {
  const lines: string[] = [];
  let line = beginning;
  let isBare = true;
  for (const word of words.split(BETWEEN_WORDS)) {
    if (!isBare && line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = indent + word;
    } else line += isBare ? word : ` ${word}`;
    isBare = false;
  }
  return [...lines, line];
}

/** Spaces, but those between a number and its unit. */
const BETWEEN_WORDS = /(?<!\d) | (?!(?:V|A|mA|kV|kVA|Ω|s)\b)/;

/**
 * Lines as text for a person. Labels come from files that others wrote: what would move the cursor, colour the
 * terminal or turn the writing around is shown as its code instead.
 */
export const asText = (lines: readonly string[]): string =>
  lines.map((line) => `${line.replace(UNPRINTABLE, escaped)}\n`).join("");

// eslint-disable-next-line no-control-regex -- these are the letters that a terminal obeys
const UNPRINTABLE = /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069]/g;

const escaped = (letter: string): string => `\\u${letter.charCodeAt(0).toString(16).padStart(4, "0")}`;

/** A drawing as text for a terminal: what one obeys JSON may spell as its code, and read again it is the same drawing. */
export const printable = (json: string): string =>
  json.replace(/[\u007f-\u009f]/g, (it) => `\\u00${it.charCodeAt(0).toString(16)}`);

/** The line above what is said of a file. */
export const heading = (file: string, title: string): string => (title === "" ? file : `${file} · ${title}`);
