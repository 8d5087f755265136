import {
  canonicalText,
  isSameStructure,
  jobOf,
  scenarioOf,
  type Step,
  type StillhotDocument,
  structureOf,
} from "../document";
import type { RehearsalFinding } from "../procedure";
import { stepOf, takesStructure } from "../steps";
import { isRefusal, type Message, type PointId, type Refusal, refuse, say } from "../terms";
import { type Action, isJobStep, secondsFor } from "./actions";
import { type Acted, type Attempt, type AttemptHead, fingerprintOf, headOf } from "./attempt";
import { firstBreak, type LogEntry, plain } from "./log";
import { sha256 } from "./sha256";
import { beginWorld, type StructureOrPointId, type World } from "./world";
import { Writer } from "./writer";

/** Who begins an attempt, when and how; a seed where an attempt is to come out the same again. */
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

/** Every moment of an attempt after an action, the last one last, so that a replay is a look-up. */
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
  kept.set(attempt, [{ entries: 0, world: beginWorld(document) }]);
  return attempt;
}

/** The moments of an attempt. Read from a file it is played again once, action by action. */
function keptOf(attempt: Attempt): readonly Kept[] {
  const known = kept.get(attempt);
  if (known !== undefined) return known;
  const again = replayed(attempt, attempt.log.length);
  const found = isRefusal(again) ? [{ entries: 0, world: beginWorld(attempt.document) }] : kept.get(again)!;
  kept.set(attempt, found);
  return found;
}

/** How an attempt stands. */
export const worldOf = (attempt: Attempt): World => keptOf(attempt).at(-1)!.world;

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

/** A new attempt that begins as this one did, up to an entry: a rewind loses nothing of the old one. Refused for an exam. */
export function forkAttempt(
  attempt: Attempt,
  upTo: number,
  startedAt = attempt.startedAt,
): Attempt | Refusal {
  if (attempt.mode === "exam") return refuse(say("attempt.examIsOne"));
  const at = attempt.log[upTo - 1];
  return replayed(attempt, upTo, {
    ...headOf(attempt),
    startedAt,
    forkOf: at?.hash ?? sha256(canonicalText(headOf(attempt))),
  });
}

/** How an attempt stood after an entry of its log: for the replay, both what was true and what was known. */
export function worldAt(attempt: Attempt, entry: number): World {
  if (entry >= attempt.log.length) return worldOf(attempt);
  return keptOf(attempt).findLast(({ entries }) => entries <= entry)?.world ?? beginWorld(attempt.document);
}

/** Whether an attempt has come to its end, and how. */
export const isOver = (attempt: Attempt): boolean => worldOf(attempt).over !== "";

/** When an action is done. */
export interface ActOptions {
  /** seconds since the beginning when the action is done, by a clock; without it the round figures of `secondsFor` count */
  readonly t?: number;
  /** seconds at it by a real clock, to be written down */
  readonly at?: number;
}

/** When an entry was done, to do it again at the same times. */
export const asWritten = ({ t, at }: LogEntry): ActOptions => ({ t, ...(at === undefined ? {} : { at }) });

/**
 * Does one thing in an attempt: it is played against the truth, shown as far as it can be seen, and written down with
 * whatever follows from it: the walk to the pole, the operator's answer, what happens in the middle.
 * Refused when the attempt is over, and when the action names what nobody has told the apprentice of.
 */
export function act(attempt: Attempt, action: Action, { t, at }: ActOptions = {}): Acted | Refusal {
  const before = worldOf(attempt);
  if (before.over !== "" && action.do !== "remark") return refuse(say("attempt.over"));
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
  const { attempt: after, world } = writer.finished();
  kept.set(after, [...keptOf(attempt), { entries: after.log.length, world }]);
  return { attempt: after, entries: after.log.slice(attempt.log.length) };
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
  const isOfStructure = !isJobStep(action) || takesStructure(action.do);
  const isThere = (it: string) =>
    Object.hasOwn(system.points, it) || (isOfStructure && Object.hasOwn(system.structures ?? {}, it));
  if (at !== undefined && action.do !== "work" && !isThere(at)) return say("attempt.stranger", { id: at });
  if (action.do === "work" && !Object.hasOwn(jobOf(known.document).workPoints, action.at))
    return say("attempt.stranger", { id: action.at });
  if (
    element !== undefined &&
    action.do !== "ground" &&
    action.do !== "unground" &&
    !Object.hasOwn(system.elements, element)
  )
    return say("attempt.stranger", { id: element });
  return undefined;
}

/** Where a step has to be done, where the apprentice is on another structure. */
function placeToStand(world: World, step: Step): StructureOrPointId | undefined {
  if (stepOf(step.do).anywhere) return undefined;
  const { document } = world.known;
  const workPoint = step.do === "work" ? jobOf(document).workPoints[step.at] : undefined;
  const places = workPoint === undefined ? placesFor(world, step) : [workPoint.at];
  const { system } = world.truth.document;
  const isThere = places.some((it) => world.at !== undefined && isSameStructure(system, world.at, it));
  return isThere ? undefined : places[0];
}

/** Where hands come to what a step is about: its structure, or an end of what is on none. */
function placesFor(world: World, { at, element }: Step): StructureOrPointId[] {
  if (element === undefined || at !== undefined) return at === undefined ? [] : [at as StructureOrPointId];
  const system = [world.known, world.truth]
    .map((it) => it.document.system)
    .find((it) => Object.hasOwn(it.elements, element));
  const saved = system?.elements[element] as { at?: string; from?: string; to?: string } | undefined;
  const ends = [saved?.at, saved?.from, saved?.to].filter((it) => it !== undefined) as PointId[];
  const structure = system === undefined ? undefined : structureOf(system, element)?.id;
  if (structure === undefined) return ends;
  const onIt = ends.filter((it) => isSameStructure(system!, structure, it));
  return onIt.length > 0 ? onIt : [structure];
}

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
