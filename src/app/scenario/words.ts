import {
  type Attempt,
  isJobStep,
  type LogEntry,
  stepSentence,
  type LoggedVerdict,
  type StillhotDocument,
  structureOf,
} from "../../core";
import { dayAndTime, structureName, t, told, volts } from "../words/words";
import type { KeptAttempt } from "./shelf";
import { isMessageKey } from "../words/catalogue";

/** Seconds since the beginning, as minutes and seconds. */
export function clock(seconds: number): string {
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}

/** An entry of the log in one line: what somebody did, said, or what happened. */
export function entryTitle(document: StillhotDocument, entry: LogEntry): string {
  const { actor, verb, object, action, result } = entry;
  if (actor === "operator") return t("play.radio.operator");
  if (actor === "scenario")
    return t(
      verb === "failed"
        ? "play.entry.failed"
        : result.shown.length === 0
          ? "play.entry.unnoticed"
          : "play.entry.happens",
    );
  if (action !== undefined && isJobStep(action)) return told(stepSentence(document, action));
  if (verb === "go") {
    const place = structureOf(document.system, object)?.id ?? object;
    return t("play.entry.go", { name: structureName(document, place) });
  }
  if (action?.do === "hint") return t("play.entry.hint", { strength: t(`play.hint.${action.strength}`) });
  if (action?.do === "remark") return t("play.entry.remark", { text: action.text });
  return wordOr(`play.entry.${verb}`, verb);
}

/** What an entry showed; a walk has said all in its own line. */
export const entryShown = ({ verb, result }: LogEntry): string[] =>
  verb === "go" ? [] : result.shown.map(told).filter((it) => it !== "");

/** What may be read of an entry while the attempt goes on: what nobody notices is not in the log that is shown. */
export const isVisible = ({ actor, verb, result }: LogEntry): boolean =>
  verb !== "let-pass" && !(actor === "scenario" && result.shown.length === 0);

const wordOr = (key: string, otherwise: string): string => (isMessageKey(key) ? t(key) : otherwise);

/** What a tool is called; one that has no name here goes by the file's own word. */
export const toolName = (tool: string): string => wordOr(`tool.${tool}`, tool.replaceAll("-", " "));

/** How a work point stands, in a few words. */
export const standingWords = (standing: LoggedVerdict | undefined): string =>
  standing === undefined
    ? t("review.noStanding")
    : t("review.standing", {
        verdict: t(`verdict.${standing.verdict}`),
        margin: marginWord(standing.margin),
        volts: volts(standing.exposureVolts),
      });

const marginWord = (margin: number | null): string =>
  margin === null ? t("review.marginMore") : String(margin);

/** What the scenario of an attempt is called. */
export const titleOf = ({ document }: Attempt): string => document.title || t("app.untitled");

/** Who made an attempt, as they called themselves. */
export const whoOf = ({ who }: Attempt): string => who || t("play.noName");

/** By what an attempt of this device is looked for: its title, who made it, and the day. */
export const keptWords = ({ attempt, savedAt }: KeptAttempt): string =>
  `${titleOf(attempt)} ${whoOf(attempt)} ${dayAndTime(savedAt)}`;
