import { canonicalText, isUnreadable, readDocument, readValue, type StillhotDocument } from "../document";
import { english } from "../words";
import { isObject, isRefusal, type Json, type JsonObject, refuse, type Refusal, say } from "../terms";
import { isAction } from "./actions";
import type { Attempt } from "./attempt";
import { firstBreak, type LogEntry } from "./log";
import { sha256 } from "./sha256";

/** An attempt as a file. */
export const writeAttempt = (attempt: Attempt): string => `${JSON.stringify(attempt)}\n`;

const readDocuments = new Map<string, StillhotDocument>();

/**
 * Reads an attempt's file. An edited log is noticed and refused, with the entry at which it is not what was written.
 * A checksum keeps no secret: it shows a change, it does not prove who wrote it.
 */
export function readAttempt(text: string): Attempt | Refusal {
  const file = parsedOnce(text);
  if (file === undefined) return refuse(say("attempt.notJson"));
  if (!isObject(file) || file["format"] !== "stillhot-attempt") return refuse(say("attempt.notOne"));
  if (file["formatVersion"] !== 1) return refuse(say("attempt.version"));
  if (!isWhole(file)) return refuse(say("attempt.damaged"));
  const { document: found, log, checksum, ...head } = file;
  const broken = firstBreak(head, log as unknown as LogEntry[], checksum);
  if (broken !== undefined)
    return refuse(broken === 0 ? say("attempt.editedHead") : say("attempt.edited", { n: broken }));
  const fingerprint = sha256(canonicalText(found));
  if (fingerprint !== head["fingerprint"]) return refuse(say("attempt.otherScenario"));
  const document = readDocuments.get(fingerprint) ?? readScenario(found);
  if (isRefusal(document)) return document;
  if (readDocuments.size > 50) readDocuments.clear();
  readDocuments.set(fingerprint, document);
  return { ...head, document, log, checksum } as unknown as Attempt;
}

interface WholeFile extends JsonObject {
  readonly document: JsonObject;
  readonly log: readonly Json[];
  readonly checksum: string;
}

const isWhole = (file: JsonObject): file is WholeFile => {
  const { document: found, log, checksum, ...head } = file;
  return (
    isObject(found) &&
    Array.isArray(log) &&
    typeof checksum === "string" &&
    isHead(head) &&
    log.every(isEntry)
  );
};

/**
 * An attempt that the same device kept, unless it could not be played: its checksums are not asked, which would take long for a
 * shelf of them.
 */
export function readKeptAttempt(kept: unknown): Attempt | undefined {
  if (!isObject(kept) || kept["format"] !== "stillhot-attempt" || kept["formatVersion"] !== 1)
    return undefined;
  if (!isWhole(kept)) return undefined;
  const read = readValue(kept.document);
  return isUnreadable(read) ? undefined : ({ ...kept, document: read.document } as unknown as Attempt);
}

/**
 * The language's own parser, which is fast: what a strict one would refuse beyond the grammar the checksum refuses as
 * well, and the scenario within is read strictly.
 */
function parsedOnce(text: string): Json | undefined {
  try {
    return JSON.parse(text) as Json;
  } catch {
    return undefined;
  }
}

function readScenario(found: Json): StillhotDocument | Refusal {
  const read = readDocument(JSON.stringify(found));
  if (!isUnreadable(read)) return read.document;
  const [first] = read.problems;
  return refuse(say("attempt.unreadable", { path: `document.${first!.path}`, problem: first!.message }));
}

const isHead = (head: Json): boolean =>
  isObject(head) &&
  typeof head["who"] === "string" &&
  typeof head["startedAt"] === "string" &&
  (head["mode"] === "practice" || head["mode"] === "exam") &&
  typeof head["seed"] === "number" &&
  typeof head["fingerprint"] === "string";

const isEntry = (entry: Json): boolean =>
  isObject(entry) &&
  typeof entry["n"] === "number" &&
  typeof entry["t"] === "number" &&
  (entry["at"] === undefined || typeof entry["at"] === "number") &&
  typeof entry["verb"] === "string" &&
  typeof entry["object"] === "string" &&
  typeof entry["hash"] === "string" &&
  isObject(entry["result"]) &&
  isResult(entry["result"]) &&
  (entry["action"] === undefined || isAction(entry["action"]));

const isListOf = (list: Json | undefined, is: (it: Json) => boolean): boolean =>
  list === undefined || (Array.isArray(list) && list.every(is));

const isFinding = (it: Json): boolean =>
  isObject(it) &&
  ["rule", "severity", "where", "citation"].every((key) => typeof it[key] === "string") &&
  isMessage(it["message"]);

const isMessage = (it: Json | undefined): boolean =>
  isObject(it) && typeof it["key"] === "string" && Object.hasOwn(english, it["key"]);

/** What is read of a result without playing it again has to be what it should be, whoever wrote it. */
const isResult = (result: JsonObject): boolean =>
  Array.isArray(result["shown"]) &&
  isListOf(result["shown"], isMessage) &&
  isListOf(result["findings"], isFinding) &&
  isListOf(result["coached"], isFinding) &&
  isListOf(result["reveals"], (it) => typeof it === "string") &&
  ["workPoints", "believed"].every((key) => result[key] === undefined || isVerdicts(result[key])) &&
  (result["consequence"] === undefined ||
    (isObject(result["consequence"]) && isMessage(result["consequence"]["text"]))) &&
  ["prediction", "foreseen"].every((key) => result[key] === undefined || isPredictionResult(result[key]));

const isPredictionResult = (result: Json): boolean =>
  isObject(result) &&
  Object.values(result).every((it) => isListOf(it as Json, (id) => typeof id === "string"));

const isVerdicts = (verdicts: Json): boolean =>
  isObject(verdicts) &&
  Object.values(verdicts).every((it: unknown) => isObject(it) && typeof it["verdict"] === "string");
