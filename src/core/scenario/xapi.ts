import { scenarioOf } from "../document";
import type { JsonObject } from "../terms";
import { type Attempt, secondsOf } from "./attempt";
import type { LogEntry } from "./log";
import { momentAfter } from "./moments";
import { isRight } from "./prediction";
import { scoreOf } from "./scoring";
import { sha256 } from "./sha256";

/** Whose names and which language the statements are given in, and when it began where the attempt does not say. */
export interface XapiOptions {
  /** whose accounts the names are: an IRI that the one who exports owns */
  readonly homePage?: string;
  /** where an attempt says nothing of when it began: ISO 8601 */
  readonly startedAt?: string;
  readonly language?: string;
}

type XapiVerb = "initialized" | "answered" | "completed" | "passed" | "failed" | "terminated";

/** Identifiers of verbs and of the kind of activity, as the standard's own vocabulary publishes them. */
const VOCABULARY = "http://adlnet.gov/expapi";
const SIMULATION = `${VOCABULARY}/activities/simulation`;
const INTERACTION = `${VOCABULARY}/activities/cmi.interaction`;
const OBJECTIVE = `${VOCABULARY}/activities/objective`;

/**
 * An attempt as statements of the Experience API: who (`actor`) did what (`verb`) with which activity (`object`), with
 * what outcome (`result`), in which surroundings (`context`), and when (`timestamp`). They are written into a file; no
 * server is asked.
 *
 * @see Experience API (xAPI) 1.0.3, part two, section 2: statements
 */
export function xapiOf(attempt: Attempt, options: XapiOptions = {}): JsonObject[] {
  const { log } = attempt;
  const score = scoreOf(attempt);
  const last = log.at(-1);
  const ended = log.find(({ verb }) => verb === "finish" || verb === "abandon" || verb === "failed");
  const isFinished = log.some(({ verb }) => verb === "finish");
  const write = (verb: XapiVerb, t: number, more: JsonObject = {}) =>
    statement(attempt, options, verb, t, more);
  const duration = `PT${Math.round(secondsOf(attempt))}S`;
  const outcome = {
    score: { scaled: score.of === 0 ? 0 : score.earned / score.of, raw: score.earned, min: 0, max: score.of },
    success: score.passed,
    completion: isFinished,
    duration,
  };
  const isFailed = !score.passed && (isFinished || score.dangers.length > 0);
  return [
    write("initialized", 0),
    ...log.flatMap((entry) => answered(entry, attempt, options)),
    ...(isFinished || isFailed ? objectives(attempt, options, momentOf(last!)) : []),
    ...(isFinished ? [write("completed", momentOf(ended!), { result: outcome })] : []),
    ...(score.passed ? [write("passed", momentOf(last!), { result: outcome })] : []),
    ...(isFailed ? [write("failed", momentOf(last!), { result: outcome })] : []),
    ...(ended === undefined
      ? []
      : [write("terminated", momentOf(last!), { result: { duration, completion: isFinished } })]),
  ];
}

/** Seconds since the beginning: by the clock where one ran. */
const momentOf = ({ t, at }: LogEntry): number => at ?? t;

/** A prediction and an answer to a question of the debrief are answers to a question. */
function answered(entry: LogEntry, attempt: Attempt, options: XapiOptions): JsonObject[] {
  const { action, result } = entry;
  const t = momentOf(entry);
  if (action?.do === "predict") {
    const compared = result.prediction ?? result.foreseen;
    const success = compared !== undefined && isRight(compared);
    return [
      statement(attempt, options, "answered", t, {
        object: question(attempt, "prediction", "What is live as things stand?", options),
        result: { response: [...action.prediction.live].join("[,]"), success },
      }),
    ];
  }
  if (action?.do === "remark" && action.question !== undefined && action.question !== "")
    return [
      statement(attempt, options, "answered", t, {
        object: question(attempt, sha256(action.question).slice(0, 12), action.question, options),
        result: { response: action.text },
      }),
    ];
  return [];
}

/** Each objective that points hang on: whether all of them were earned, and how many. */
const objectives = (attempt: Attempt, options: XapiOptions, t: number): JsonObject[] =>
  scoreOf(attempt)
    .objectives.filter(({ of }) => of > 0)
    .map(({ id, text, earned, of, met }) =>
      statement(attempt, options, met ? "passed" : "failed", t, {
        object: {
          objectType: "Activity",
          id: `${activityId(attempt)}:objective:${encodeURIComponent(id)}`,
          definition: { type: OBJECTIVE, name: { [options.language ?? "en"]: text } },
        },
        result: { score: { scaled: earned / of, raw: earned, min: 0, max: of }, success: met },
      }),
    );

const activityId = ({ fingerprint }: Attempt): string => `urn:stillhot:scenario:${fingerprint}`;

const question = (
  attempt: Attempt,
  id: string,
  text: string,
  { language = "en" }: XapiOptions,
): JsonObject => ({
  objectType: "Activity",
  id: `${activityId(attempt)}:${id}`,
  definition: { type: INTERACTION, name: { [language]: text }, interactionType: "other" },
});

function statement(
  attempt: Attempt,
  { homePage = "urn:stillhot:local", startedAt = "1970-01-01T00:00:00Z", language = "en" }: XapiOptions,
  verb: XapiVerb,
  t: number,
  { object, ...more }: JsonObject,
): JsonObject {
  const timestamp = momentAfter(attempt.startedAt, t) ?? momentAfter(startedAt, t) ?? startedAt;
  const body: JsonObject = {
    actor: {
      objectType: "Agent",
      account: { homePage, name: attempt.who === "" ? "unnamed" : attempt.who },
    },
    verb: { id: `${VOCABULARY}/verbs/${verb}`, display: { en: verb } },
    object: object ?? {
      objectType: "Activity",
      id: activityId(attempt),
      definition: {
        type: SIMULATION,
        name: { [language]: attempt.document.title === "" ? "Scenario" : attempt.document.title },
        ...(scenarioOf(attempt.document).prebrief === undefined
          ? {}
          : { description: { [language]: scenarioOf(attempt.document).prebrief! } }),
      },
    },
    ...more,
    context: {
      registration: uuidFrom(attempt.checksum),
      platform: "Stillhot",
      language,
      ...(object === undefined
        ? {}
        : { contextActivities: { parent: [{ objectType: "Activity", id: activityId(attempt) }] } }),
      extensions: {
        "urn:stillhot:extension:mode": attempt.mode,
        "urn:stillhot:extension:seed": attempt.seed,
        ...variantMark(attempt),
        "urn:stillhot:extension:checksum": attempt.checksum,
        ...(attempt.forkOf === undefined ? {} : { "urn:stillhot:extension:forkOf": attempt.forkOf }),
      },
    },
    timestamp,
    version: "1.0.3",
  };
  return { id: uuidFrom(JSON.stringify(body)), ...body };
}

const variantMark = ({ document }: Attempt): JsonObject => {
  const { variant } = scenarioOf(document);
  return variant === undefined ? {} : { "urn:stillhot:extension:variant": { ...variant } };
};

/** A name-based identifier (RFC 9562, version 8) from the first bits of a digest: the same statement, the same id. */
function uuidFrom(text: string): string {
  const hex = sha256(text);
  const variant = ((parseInt(hex[16]!, 16) & 3) | 8).toString(16);
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-${variant}${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}
