import type { StillhotDocument } from "../document";
import type { Threat, Upset } from "../hazard";
import { type Message, say } from "../terms";
import { figure, listOf, nameOf } from "./names";

/** One thing that could change without the crew, in words. */
export const upsetWords = (document: StillhotDocument, { kind, element, phase }: Upset): Message =>
  say(`change.${kind}`, { name: nameOf(document, element), phase: phase === undefined ? "" : ` ${phase}` });

/** A threat in words: what would have to happen, and what the worker would feel. */
export const threatWords = (document: StillhotDocument, { upsets, exposureVolts, volts }: Threat): Message =>
  say(upsets.length === 0 ? "danger.now" : "danger.if", {
    upsets: listOf(upsets.map((it) => upsetWords(document, it))),
    volts: figure(volts),
    exposure: figure(exposureVolts),
  });

/** The most pressing threats in words. */
export const threatsWords = (document: StillhotDocument, threats: readonly Threat[], most = 3): Message =>
  listOf(threats.slice(0, most).map((it) => threatWords(document, it)));
