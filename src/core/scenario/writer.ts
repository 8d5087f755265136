import { canonicalText, scenarioOf, type Step, structureName, structureOf } from "../document";
import { type Message, say } from "../terms";
import { type Action, isJobStep, objectOf } from "./actions";
import type { Attempt } from "./attempt";
import { matches } from "./conditions";
import { chained, type EntryResult, type LogEntry, plain } from "./log";
import { endOf, playInWorld, type Played, verdicts } from "./playInWorld";
import { predictionResult } from "./prediction";
import { dangersOf } from "./scoring";
import { sha256 } from "./sha256";
import { knowing, type StructureOrPointId, truthAfter, type World } from "./world";

/** Writes what an action brings about, entry by entry. */
export class Writer {
  private readonly entries: LogEntry[] = [];
  private hash: string;

  constructor(
    private readonly attempt: Attempt,
    private world: World,
    private readonly at: number | undefined,
  ) {
    this.hash = attempt.checksum;
  }

  finished(): { readonly attempt: Attempt; readonly world: World } {
    const log = [...this.attempt.log, ...this.entries];
    return { attempt: { ...this.attempt, log, checksum: this.hash }, world: this.world };
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

  walk(at: StructureOrPointId, t: number): void {
    this.world = { ...this.world, at, t };
    this.write({
      t,
      actor: "learner",
      verb: "go",
      object: at,
      result: { done: true, shown: [walked(this.world, at)] },
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
        (after.match !== undefined && matches(this.world.truth.document.system, after.match, step));
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
        shown: isNoticed ? [say("scenario.text", { text: inject.what })] : [],
        inject: id,
        ...(shown.length === 0 ? {} : { reveals: shown }),
        ...verdicts(this.world),
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
          world: { ...world, at: action.at as StructureOrPointId },
          result: said(walked(world, action.at as StructureOrPointId)),
        };
      case "predict":
        return {
          world,
          result: {
            ...said(say("attempt.predicted")),
            [world.tried.size === 0 ? "prediction" : "foreseen"]: predictionResult(
              world.truth,
              world.known,
              action.prediction,
            ),
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
            ...verdicts(world),
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

const walked = ({ known: { document } }: World, at: StructureOrPointId): Message =>
  say("attempt.walked", { at: structureName(document, structureOf(document.system, at)?.id ?? at) });
