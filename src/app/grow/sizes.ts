import type { JsonObject } from "../../core";
import { t } from "../words/words";

/** What is asked of a thing before it is drawn: on which letters one unit hangs, its link, its size or sizes. */
export type PartQuestion = "phase" | "pair" | "link" | "kva" | "kvaB" | "kvaC";

/** What was answered; what nobody said is left out. */
export type Answers = Partial<Readonly<Record<PartQuestion, string>>>;

const LINKS = ["10K", "15T", "25K"];
const SIZES = ["15", "25", "37.5", "50"];
const PAIRS = ["AB", "BC", "AC"];

/** The answers that a question offers on these letters; none where it does not arise. */
export function chipsFor(ask: PartQuestion, phases: string): readonly string[] {
  if (ask === "link") return LINKS;
  if (ask !== "phase" && ask !== "pair") return SIZES;
  const pairs = PAIRS.filter((it) => [...it].every((letter) => phases.includes(letter)));
  const chips = ask === "pair" ? pairs : [...phases, ...pairs];
  return chips.length > 1 ? chips : [];
}

/** Letters are never guessed; a size may stay unknown. */
export const mustBeKnown = (ask: PartQuestion): boolean => ask === "phase" || ask === "pair";

/** The letters of one unit: those that were said, else all that there are. */
export const lettersFrom = (answers: Answers, phases: string): string =>
  answers.phase ?? answers.pair ?? phases;

/** A link that nobody named is none in the drawing: it is not known. */
export const linkFrom = ({ link }: Answers): JsonObject =>
  link === undefined ? {} : { fuse: { type: link.slice(-1), amps: Number(link.slice(0, -1)) } };

/** A size that nobody gave is one that is assumed, and says so wherever it is shown. */
export function kvaFrom(said: string | undefined, usual: number, units = 1): JsonObject {
  if (said !== undefined) return { kva: Number(said) * units };
  return { kva: usual * units, evidence: "assumed", note: t("grow.sizeAssumed", { kva: String(usual) }) };
}
