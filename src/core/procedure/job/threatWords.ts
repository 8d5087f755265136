import type { StillhotDocument } from "../../document";
import { LEAST_FELT_VOLTS, type Threat, toldVolts, upsetWords } from "../../hazard";
import { inARow, type Message, say } from "../../terms";
import { figure, listOf } from "./names";

/** A threat in words: what would have to happen, and what the worker would feel. */
export const threatWords = (
  document: StillhotDocument,
  { upsets, exposureVolts, volts }: Threat,
): Message => {
  const told = (of: number) => toldVolts(document.system, of, figure);
  const felt =
    exposureVolts < LEAST_FELT_VOLTS
      ? say("volts.underOne")
      : say("volts.told", { volts: told(exposureVolts) });
  const gaps = { volts: told(volts), felt };
  return upsets.length === 0
    ? say("danger.now", gaps)
    : say("danger.if", { ...gaps, upsets: inARow(upsets.map((it) => upsetWords(document, it))) });
};

/** The most pressing threats in words. */
export const threatsWords = (document: StillhotDocument, threats: readonly Threat[], most = 3): Message =>
  listOf(threats.slice(0, most).map((it) => threatWords(document, it)));
