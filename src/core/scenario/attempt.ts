import {
  conductorsOf,
  HINT_STRENGTHS,
  type HintStrength,
  fingerprintBytes,
  isUnreadable,
  jobOf,
  perObject,
  readDocument,
  readValue,
  scenarioOf,
  type Step,
  type StillhotDocument,
} from "../document";
import type { RehearsalFinding } from "../procedure";
import {
  isMessageKey,
  isObject,
  isRefusal,
  type Json,
  type JsonObject,
  type Message,
  type PointId,
  refuse,
  type Refusal,
  say,
} from "../terms";
import { type Action, isAction, isJobStep, objectOf, secondsFor } from "./actions";
import { matches, whenTrue } from "./conditions";
import { chained, canonicalText, type EntryResult, firstBreak, type LogEntry } from "./log";
import { endOf, playInWorld, type Played, standings } from "./playInWorld";
import { predictionResult } from "./prediction";
import { dangersOf } from "./scoring";
import { sha256 } from "./sha256";
import { nameOfFact } from "./truth";
import { beginWorld, knowing, truthAfter, withinReach, type World } from "./world";

/** What an attempt is an attempt at, and by whom. The log's first hash is taken over it. */
export interface AttemptHead {
  readonly format: "stillhot-attempt";
  readonly formatVersion: 1;
  /** a name typed in, or empty: it stays on the device unless the file is handed on */
  readonly who: string;
  /** when it began, as whoever has a clock says it: ISO 8601, or empty */
  readonly startedAt: string;
  readonly mode: "practice" | "exam";
  readonly seed: number;
  /** of the scenario's file */
  readonly fingerprint: string;
  /** the attempt that this one branches off from: the hash of the entry up to which they are the same */
  readonly forkOf?: string;
}

/** One attempt at a scenario: plain JSON, only ever added to. */
export interface Attempt extends AttemptHead {
  /** the whole scenario, so that an attempt can be opened by itself */
  readonly document: StillhotDocument;
  readonly log: readonly LogEntry[];
  /** the hash of the last entry, of the head where there is none */
  readonly checksum: string;
}

/** An attempt after an action, and the entries that the action added: what the apprentice is shown. */
export interface Acted {
  readonly attempt: Attempt;
  readonly entries: readonly LogEntry[];
}

/** SHA-256 over a document's canonical JSON. */
export const fingerprintOf: (document: StillhotDocument) => string = perObject((document: StillhotDocument) =>
  sha256(fingerprintBytes(document)),
);

export interface StartOptions {
  readonly who?: string;
  readonly startedAt?: string;
  readonly mode?: "practice" | "exam";
  readonly seed?: number;
}

/** A moment of an attempt: how everything stood once so many entries were written. */
interface Kept {
  readonly entries: number;
  readonly world: World;
}

const worlds = new WeakMap<Attempt, World>();
/** Every moment of an attempt after an action, so that a replay is a look-up. */
const kept = new WeakMap<Attempt, readonly Kept[]>();

/** Begins an attempt. What a clock and a person would say is handed in. */
export function startAttempt(document: StillhotDocument, options: StartOptions = {}): Attempt {
  const { mode = "practice", seed = 1 } = scenarioOf(document);
  const head: AttemptHead = {
    format: "stillhot-attempt",
    formatVersion: 1,
    who: options.who ?? "",
    startedAt: options.startedAt ?? "",
    mode: options.mode ?? mode,
    seed: options.seed ?? seed,
    fingerprint: fingerprintOf(document),
  };
  return begun(head, document);
}

function begun(head: AttemptHead, document: StillhotDocument): Attempt {
  const attempt: Attempt = { ...head, document, log: [], checksum: sha256(canonicalText(head)) };
  const world = beginWorld(document);
  worlds.set(attempt, world);
  kept.set(attempt, [{ entries: 0, world }]);
  return attempt;
}

/** The head of an attempt: everything but the document, the log and its checksum. */
export function headOf({ document: _, log: _log, checksum: _checksum, ...head }: Attempt): AttemptHead {
  return head;
}

/** How an attempt stands. Read from a file it is played again once, action by action. */
export function worldOf(attempt: Attempt): World {
  const known = worlds.get(attempt);
  if (known !== undefined) return known;
  const again = replayed(attempt, attempt.log.length);
  const world = isRefusal(again) ? beginWorld(attempt.document) : worlds.get(again)!;
  worlds.set(attempt, world);
  kept.set(attempt, isRefusal(again) ? [{ entries: 0, world }] : kept.get(again)!);
  return world;
}

/** The first actions of an attempt played again, as a fresh attempt of the same head. */
function replayed(attempt: Attempt, upTo: number, head: AttemptHead = headOf(attempt)): Attempt | Refusal {
  let again = begun(head, attempt.document);
  for (const entry of attempt.log.slice(0, upTo)) {
    if (entry.action === undefined) continue;
    const acted = act(again, entry.action, asWritten(entry));
    if (isRefusal(acted)) return acted;
    again = acted.attempt;
  }
  return again;
}

/** When an entry was done, to do it again at the same times. */
export const asWritten = ({ t, at }: LogEntry): ActOptions => ({ t, ...(at === undefined ? {} : { at }) });

/** Seconds that an attempt took: by the clock where one ran, else by the round figures. */
export const secondsOf = ({ log }: Attempt): number => {
  const last = log.at(-1);
  return last?.at ?? last?.t ?? 0;
};

/** A new attempt that begins as this one did, up to an entry: a rewind loses nothing of the old one. */
export function forkAttempt(
  attempt: Attempt,
  upTo: number,
  startedAt = attempt.startedAt,
): Attempt | Refusal {
  const at = attempt.log[upTo - 1];
  return replayed(attempt, upTo, {
    ...headOf(attempt),
    startedAt,
    forkOf: at?.hash ?? sha256(canonicalText(headOf(attempt))),
  });
}

/** How an attempt stood after an entry of its log: for the replay, both what was true and what was known. */
export function worldAt(attempt: Attempt, entry: number): World {
  const now = worldOf(attempt);
  if (entry >= attempt.log.length) return now;
  return (
    kept.get(attempt)!.findLast(({ entries }) => entries <= entry)?.world ?? beginWorld(attempt.document)
  );
}

/** Whether an attempt has come to its end, and how. */
export const isOver = (attempt: Attempt): boolean => worldOf(attempt).over !== "";

/** What somebody looks at, and where what is wrong there would have to be. */
export interface ActOptions {
  /** seconds since the beginning when the action is done, by a clock; without it the round figures of `secondsFor` count */
  readonly t?: number;
  /** seconds at it by a real clock, to be written down */
  readonly at?: number;
}

/**
 * Does one thing in an attempt: it is played against the truth, shown as far as it can be seen, and written down with
 * whatever follows from it: the walk to the pole, the operator's answer, what happens in the middle.
 * Refused when the attempt is over, and when the action names what nobody has told the apprentice of.
 */
export function act(attempt: Attempt, action: Action, { t, at }: ActOptions = {}): Acted | Refusal {
  const before = worldOf(attempt);
  if (before.over !== "" && action.do !== "remark") return refuse(say("attempt.over"));
  if (action.do === "predict" && before.tried.size > 0) return refuse(say("attempt.tooLate"));
  const unknown = strangerIn(before, action);
  if (unknown !== undefined) return refuse(unknown);
  const writer = new Writer(attempt, before, at);
  const walk = isJobStep(action) ? placeToStand(before, action) : undefined;
  const end = Math.max(
    before.t,
    t ?? before.t + secondsFor(action) + (walk === undefined ? 0 : secondsFor({ do: "go", at: walk })),
  );
  const begin = Math.max(before.t, end - secondsFor(action));
  writer.happenUntil(begin);
  if (walk !== undefined) writer.walk(walk, begin);
  writer.perform(action, end);
  writer.happenUntil(end);
  const result = writer.finished();
  return { attempt: result, entries: result.log.slice(attempt.log.length) };
}

/** Lets time pass: what was to happen by then happens. Nothing is written where nothing does. */
export function letPass(attempt: Attempt, t: number): Acted {
  const acted = act(attempt, { do: "let-pass" }, { t });
  return isRefusal(acted) || acted.entries.length <= 1 ? { attempt, entries: [] } : acted;
}

/** Why an action cannot be asked for: it names a thing that is not on the apprentice's drawing. */
function strangerIn({ known }: World, action: Action): Message | undefined {
  if (!isJobStep(action) && action.do !== "go") return undefined;
  const { system } = known.document;
  const { at, element } = action as Partial<Step>;
  if (at !== undefined && action.do !== "work" && !Object.hasOwn(system.points, at))
    return say("attempt.stranger", { id: at });
  if (action.do === "work" && !Object.hasOwn(jobOf(known.document).workPoints, at ?? ""))
    return say("attempt.stranger", { id: at ?? "" });
  if (
    element !== undefined &&
    action.do !== "ground" &&
    action.do !== "unground" &&
    !Object.hasOwn(system.elements, element)
  )
    return say("attempt.stranger", { id: element });
  return undefined;
}

/** Steps that are done from wherever one is: talk, paper, the radio. */
const ANYWHERE: ReadonlySet<string> = new Set([
  "brief",
  "request-permit",
  "receive-permit",
  "release-permit",
  "confirm",
  "ask",
  "all-clear",
  "stand-clear",
  "wait",
  "note",
  "check-detector",
]);

/** The pole that a step has to be done on, where the apprentice is not there yet. */
function placeToStand(world: World, step: Step): PointId | undefined {
  if (ANYWHERE.has(step.do)) return undefined;
  const { document } = world.known;
  const workPoint = step.do === "work" ? jobOf(document).workPoints[step.at as never] : undefined;
  const points = workPoint === undefined ? pointsOf(world, step) : [workPoint.at];
  if (points.length === 0) return undefined;
  const reach = world.at === undefined ? [] : withinReach(world.truth.document.system, world.at);
  return points.some((it) => reach.includes(it)) ? undefined : points[0];
}

function pointsOf(world: World, { at, element }: Step): PointId[] {
  if (element === undefined || at !== undefined) return at === undefined ? [] : [at as PointId];
  const system = [world.known, world.truth]
    .map((it) => it.document.system)
    .find((it) => Object.hasOwn(it.elements, element));
  const saved = system?.elements[element as never] as { at?: string; from?: string; to?: string } | undefined;
  return [saved?.at, saved?.from, saved?.to].filter((it) => it !== undefined) as PointId[];
}

/** Writes what an action brings about, entry by entry. */
class Writer {
  private readonly entries: LogEntry[] = [];
  private hash: string;

  constructor(
    private readonly attempt: Attempt,
    private world: World,
    private readonly at: number | undefined,
  ) {
    this.hash = attempt.checksum;
  }

  finished(): Attempt {
    const attempt: Attempt = {
      ...this.attempt,
      log: [...this.attempt.log, ...this.entries],
      checksum: this.hash,
    };
    worlds.set(attempt, this.world);
    kept.set(attempt, [
      ...(kept.get(this.attempt) ?? []),
      { entries: attempt.log.length, world: this.world },
    ]);
    return attempt;
  }

  private get next(): number {
    return this.attempt.log.length + this.entries.length + 1;
  }

  private write(entry: Omit<LogEntry, "n" | "stateHash" | "hash">): void {
    const { truth, facts } = this.world;
    const state = {
      system: truth.document.system,
      permit: truth.permit,
      tested: [...truth.tested].sort(),
      facts: [...facts.keys()].sort(),
      at: this.world.at ?? "",
    };
    const clock = this.at === undefined ? {} : { at: this.at };
    const full = {
      n: this.next,
      ...plain(entry),
      ...clock,
      stateHash: sha256(canonicalText(state)).slice(0, 16),
    };
    this.hash = chained(this.hash, full);
    this.entries.push({ ...full, hash: this.hash });
  }

  walk(at: PointId, t: number): void {
    this.world = { ...this.world, at, t };
    this.write({
      t,
      actor: "learner",
      verb: "go",
      object: at,
      result: { done: true, shown: [say("attempt.walked", { at })] },
    });
  }

  /** Injects that wait for a time. */
  happenUntil(t: number): void {
    const { injects = {} } = scenarioOf(this.attempt.document);
    const due = Object.entries(injects)
      .map(([id, { after }]) => ({
        id,
        at: after.seconds === undefined ? Infinity : after.seconds + this.drawn(id, after.plusUpTo ?? 0),
      }))
      .filter(({ id, at }) => at <= t && !this.world.happened.has(id))
      .sort((a, b) => a.at - b.at);
    for (const { id, at } of due) this.happen(id, Math.max(this.world.t, at));
    if (t > this.world.t) this.world = { ...this.world, t };
  }

  /** Whole seconds from 0 to `most`, by the seed: the same in every replay. */
  private drawn(id: string, most: number): number {
    if (most === 0) return 0;
    const digits = sha256(`${this.attempt.seed} ${id}`).slice(0, 8);
    return Math.round((parseInt(digits, 16) / 2 ** 32) * most);
  }

  private happenBySteps(step: Step): void {
    const { injects = {} } = scenarioOf(this.attempt.document);
    for (const [id, { after }] of Object.entries(injects)) {
      if (this.world.happened.has(id)) continue;
      const isDue =
        (after.step !== undefined && this.world.steps >= after.step) ||
        (after.match !== undefined && matches(after.match, step));
      if (isDue) this.happen(id, this.world.t);
    }
  }

  private happen(id: string, t: number): void {
    const { document } = this.attempt;
    const inject = scenarioOf(document).injects![id]!;
    const happened = new Map(this.world.happened).set(id, this.next);
    this.world = { ...this.world, t, truth: truthAfter(this.world.truth, inject), happened };
    const isNoticed = inject.what !== undefined;
    const tells = (scenarioOf(document).reveals ?? []).some(({ shows }) => shows?.includes(id));
    const shown = isNoticed && !tells ? [id] : [];
    this.world = knowing(document, this.world, shown, this.next, "told");
    this.write({
      t,
      actor: "scenario",
      verb: "inject",
      object: id,
      result: {
        done: true,
        shown: isNoticed ? [say("scenario.text", { text: inject.what! })] : [],
        inject: id,
        ...(shown.length === 0 ? {} : { reveals: shown }),
        ...standings(this.world),
      },
    });
  }

  perform(action: Action, t: number): void {
    this.world = { ...this.world, t };
    const { result, world, answers } = this.outcomeOf(action);
    this.world = world;
    const n = this.next;
    this.write({ t, actor: "learner", verb: action.do, object: objectOf(action), action, result });
    for (const { verb, text } of answers ?? [])
      this.write({ t, actor: "operator", verb, object: "", result: { done: true, shown: [text] } });
    if (isJobStep(action)) {
      this.happenBySteps(action);
      this.failAtOnce(n, t);
    }
  }

  private outcomeOf(action: Action): Played {
    const { world } = this;
    const { document } = this.attempt;
    if (isJobStep(action)) return playInWorld(document, world, action, this.next);
    const said = (...shown: Message[]): EntryResult => ({ done: true, shown });
    switch (action.do) {
      case "go":
        return {
          world: { ...world, at: action.at as PointId },
          result: said(say("attempt.walked", { at: action.at })),
        };
      case "predict":
        return {
          world,
          result: {
            ...said(say("attempt.predicted")),
            prediction: predictionResult(world.truth, world.known, action.prediction),
          },
        };
      case "hint": {
        const hint = scenarioOf(document).hints?.find(({ id }) => id === action.hint);
        const text = hint?.[action.strength];
        return {
          world,
          result:
            text === undefined
              ? { done: false, shown: [say("attempt.noHint")] }
              : said(say("scenario.text", { text })),
        };
      }
      case "remark":
      case "let-pass":
        return { world, result: said() };
      case "abandon":
        return { world: { ...world, over: "abandoned" }, result: said() };
      case "finish": {
        const { findings, restored } = endOf(world.truth);
        return {
          world: { ...world, over: "finished" },
          result: {
            ...said(),
            findings,
            coached: endOf(world.known).findings,
            restored,
            ...standings(world),
          },
        };
      }
    }
  }

  /** In an exam the attempt ends with what may never happen. */
  private failAtOnce(n: number, t: number): void {
    if (this.attempt.mode !== "exam" || this.world.over !== "") return;
    const log = [...this.attempt.log, ...this.entries].slice(0, n);
    const why = dangersOf(this.attempt.document, log);
    if (why.length === 0) return;
    this.world = { ...this.world, over: "failed" };
    this.write({ t, actor: "scenario", verb: "failed", object: "", result: { done: true, shown: why } });
  }
}

/** A value as JSON gives it back: what is not there is left out, and a number that JSON has no word for is a word. */
function plain<Value>(value: Value): Value {
  if (typeof value === "number") return (Number.isFinite(value) ? value + 0 : String(value)) as Value;
  if (Array.isArray(value)) return value.map((it: unknown) => plain(it)) as Value;
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, it]) => it !== undefined)
      .map(([key, it]) => [key, plain(it as unknown)]),
  ) as Value;
}

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
export function readKeptAttempt(kept: Json | undefined): Attempt | undefined {
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
  isObject(it) && typeof it["key"] === "string" && isMessageKey(it["key"]);

/** What is read of a result without playing it again has to be what it should be, whoever wrote it. */
const isResult = (result: JsonObject): boolean =>
  Array.isArray(result["shown"]) &&
  isListOf(result["shown"], isMessage) &&
  isListOf(result["findings"], isFinding) &&
  isListOf(result["coached"], isFinding) &&
  isListOf(result["reveals"], (it) => typeof it === "string") &&
  ["workPoints", "believed"].every((key) => result[key] === undefined || isStandings(result[key])) &&
  (result["consequence"] === undefined ||
    (isObject(result["consequence"]) && isMessage(result["consequence"]["text"]))) &&
  (result["prediction"] === undefined ||
    (isObject(result["prediction"]) &&
      Object.values(result["prediction"]).every((it) =>
        isListOf(it as Json, (id) => typeof id === "string"),
      )));

const isStandings = (standings: Json): boolean =>
  isObject(standings) &&
  Object.values(standings).every((it: unknown) => isObject(it) && typeof it["verdict"] === "string");

/** Plays an attempt again and compares each entry with what was written: nothing where the same happened. */
export function verifyAttempt(attempt: Attempt): Message | undefined {
  const broken = firstBreak(headOf(attempt), attempt.log, attempt.checksum);
  if (broken !== undefined) return say("attempt.playsOtherwise", { n: broken });
  const again = replayed(attempt, attempt.log.length);
  if (isRefusal(again)) return again.refused;
  const differs = attempt.log.findIndex((entry, index) => {
    const other = again.log[index];
    return other === undefined || happening(entry) !== happening(other);
  });
  if (differs !== -1 || again.log.length !== attempt.log.length)
    return say("attempt.playsOtherwise", { n: differs === -1 ? attempt.log.length + 1 : differs + 1 });
  return undefined;
}

/** What happened by an entry, without its words: a sentence that is better put since then casts no doubt on an old file. */
function happening({ n, t, at, actor, verb, object, action, result, stateHash }: LogEntry): string {
  const { shown: _shown, findings, coached, consequence, ...rest } = result;
  const rules = (list: readonly RehearsalFinding[] = []) =>
    list.map(({ rule, severity, where }) => `${rule} ${severity} ${where}`);
  const { text: _text, ...hit } = consequence ?? { text: undefined };
  return canonicalText(
    plain({
      ...{ n, t, at, actor, verb, object, action, stateHash },
      ...{ rest, hit, findings: rules(findings), coached: rules(coached) },
    }),
  );
}

/** What the apprentice's drawing is at the end of an attempt: the map, amended by all that has come to light. */
export interface KnownView {
  readonly document: StillhotDocument;
  /** points and elements that nobody has looked at or been told of: to be marked as not known */
  readonly unknown: readonly string[];
  /** hidden facts that have come to light, in the order in which they did */
  readonly facts: readonly { readonly id: string; readonly label: string; readonly entry: number }[];
  readonly at: PointId | undefined;
}

/** The map amended by what an attempt has brought to light, with what is not known marked. */
export function knownView(attempt: Attempt, entry = attempt.log.length): KnownView {
  const world = worldAt(attempt, entry);
  const { system } = world.known.document;
  const isKnown = (saved: { readonly evidence?: Json }) =>
    saved.evidence === "seen" || saved.evidence === "told";
  return {
    document: world.known.document,
    unknown: [...Object.entries(system.points), ...Object.entries(system.elements)]
      .filter(([, saved]) => !isKnown(saved) && saved["kind"] !== "ground")
      .map(([id]) => id),
    facts: [...world.facts].map(([id, at]) => ({ id, label: nameOfFact(attempt.document, id), entry: at })),
    at: world.at,
  };
}

/** Conductors of the apprentice's drawing, for the question what is live. */
export const conductorsToPredict = (attempt: Attempt): string[] =>
  [...conductorsOf(worldOf(attempt).known.document.system)].flatMap(([point, letters]) =>
    letters.filter((it) => it !== "N").map((it) => `${point}/${it}`),
  );

/** What the apprentice is told of an entry: what was seen and heard, and in practice what is wrong with it on the map. */
export interface Feedback {
  readonly shown: readonly Message[];
  readonly coached: readonly RehearsalFinding[];
}

/** The feedback of an entry while an attempt runs: nothing in it rests on what is still hidden. In an exam nobody coaches. */
export const feedbackOf = ({ mode }: Attempt, { result }: LogEntry): Feedback => ({
  shown: result.shown,
  coached: mode === "practice" ? (result.coached ?? []) : [],
});

/** A hint that can still be asked for: its rungs, weakest first, and those that were asked for. */
export interface HintOffer {
  readonly id: string;
  readonly rungs: readonly HintStrength[];
  readonly asked: readonly HintStrength[];
}

/** Hints on offer as an attempt stands; none in an exam. */
export function hintsOffered({ document, log, mode }: Attempt): HintOffer[] {
  if (mode === "exam") return [];
  return (scenarioOf(document).hints ?? [])
    .filter(({ until }) => until === undefined || whenTrue(until, document, log) === undefined)
    .map((hint) => ({
      id: hint.id,
      rungs: HINT_STRENGTHS.filter((it) => hint[it] !== undefined),
      asked: log.flatMap(({ action }) =>
        action?.do === "hint" && action.hint === hint.id ? [action.strength] : [],
      ),
    }));
}
