import {
  act,
  type Action,
  type Attempt,
  type CrewRole,
  forkAttempt,
  isOver,
  isRefusal,
  knownView,
  type LogEntry,
  type Message,
  readDocument,
  startAttempt,
  type StillhotDocument,
  worldOf,
  writeDocument,
} from "../../core";
import { whyNotKept } from "../keep/whyNotKept";
import { draftOf, keepDraft } from "../session/drafts";
import { say } from "../words/catalogue";
import { told } from "../words/words";
import { WorkClock } from "./clock.svelte";
import { noteAttempt } from "./learned";
import { keepAttempt, type KeptAttempt, keptAttempts, whenKeptElsewhere } from "./shelf";

/** a scenario whose prebrief is read in this window */
const HANDED_OVER = "scenario";

const newId = () => crypto.randomUUID();

/** What is played and what is talked about, through every change of place. The attempts themselves are never changed. */
class Study {
  /** a scenario whose prebrief is read, and that nobody has begun */
  offered = $state.raw<StillhotDocument | undefined>(undefined);
  /** the attempt that is being played */
  attempt = $state.raw<Attempt | undefined>(undefined);
  /** what the last action brought about */
  latest = $state.raw<readonly LogEntry[]>([]);
  refused = $state.raw<Message | undefined>(undefined);
  /** who learns here, where a learning system says it */
  learner = $state("");
  /** why the device does not keep the attempt */
  unkept = $state("");
  /** attempts that the debrief is about: one, two side by side, or a class */
  reviewed = $state.raw<readonly Attempt[]>([]);
  /** the seat at the table: whoever tries a scenario of their own goes back to where it is built */
  isOwnScenario = $state(false);
  /** who plays here, where two phones play one crew */
  crew = $state<CrewRole | undefined>(undefined);
  readonly clock = new WorkClock();
  #id = "";
  /** the attempt as it is now: the end of an effect is still shown the one before */
  #newest: Attempt | undefined;
  #hasLooked = false;

  world = $derived(this.attempt === undefined ? undefined : worldOf(this.attempt));
  view = $derived(this.attempt === undefined ? undefined : knownView(this.attempt));

  constructor() {
    whenKeptElsewhere((id) => void this.#follow(id));
  }

  /** Takes up an attempt that a reload or a flat battery broke off. */
  async resume(): Promise<void> {
    if (this.#hasLooked) return;
    this.#hasLooked = true;
    const open = (await keptAttempts().catch(() => [])).find((it) => !it.isOver);
    if (this.attempt !== undefined || this.offered !== undefined) return;
    const handedOver = readDocument(draftOf(HANDED_OVER));
    if ("document" in handedOver) this.offer(handedOver.document);
    else if (open !== undefined) this.take(open);
  }

  take({ id, attempt, seconds }: Pick<KeptAttempt, "id" | "attempt" | "seconds">) {
    this.clock.begin(seconds ?? attempt.log.at(-1)?.at ?? 0);
    this.#id = id;
    keepDraft(HANDED_OVER, "");
    this.#show(attempt);
    this.offered = undefined;
    this.latest = [];
    this.refused = undefined;
  }

  #show(attempt: Attempt | undefined) {
    this.#newest = attempt;
    this.attempt = attempt;
  }

  /** Another window plays the same attempt: what was done there is done. */
  async #follow(id: string) {
    if (id !== this.#id || this.#newest === undefined) return;
    const kept = (await keptAttempts()).find((it) => it.id === id);
    if (kept !== undefined && kept.attempt.log.length > this.#newest.log.length) this.take(kept);
  }

  offer(document: StillhotDocument, isOwn = false) {
    this.leave();
    this.offered = document;
    this.isOwnScenario = isOwn;
    // What came by a link or a file stands nowhere else: a reload of its prebrief shows it again.
    if (!isOwn) keepDraft(HANDED_OVER, writeDocument(document));
  }

  /** Begins what is offered, or a variant of it. */
  begin(who: string, mode: Attempt["mode"], document = this.offered) {
    if (document === undefined) return;
    const startedAt = new Date().toISOString();
    this.take({ id: newId(), attempt: startAttempt(document, { who, mode, startedAt }) });
    this.#keep();
  }

  /** Goes on with what the other phone of the crew handed over. */
  takeOver(attempt: Attempt, role: CrewRole) {
    const before = this.#newest;
    const isOne = before?.startedAt === attempt.startedAt && before.fingerprint === attempt.fingerprint;
    const heard = isOne ? attempt.log.slice(before.log.length) : attempt.log.slice(-1);
    const id = isOne ? this.#id : newId();
    this.take({ id, attempt, seconds: attempt.log.at(-1)?.at ?? 0 });
    this.latest = heard;
    this.crew = role;
    this.#keep();
  }

  /** The same scenario from the beginning: the attempt before it stays on the device. */
  again() {
    const document = this.attempt?.document ?? this.reviewed[0]?.document;
    if (document !== undefined) this.offer(document, this.isOwnScenario);
  }

  leave() {
    keepDraft(HANDED_OVER, "");
    this.#show(undefined);
    this.crew = undefined;
    this.offered = undefined;
    this.latest = [];
    this.refused = undefined;
  }

  do(action: Action): boolean {
    if (this.attempt === undefined) return false;
    const acted = act(this.attempt, action, { at: this.clock.read() });
    if (isRefusal(acted)) {
      this.refused = acted.refused;
      return false;
    }
    this.refused = undefined;
    this.#show(acted.attempt);
    this.latest = acted.entries;
    this.#keep();
    if (action.do !== "remark" && isOver(acted.attempt) && !this.isOwnScenario)
      void noteAttempt(acted.attempt).catch(() => undefined);
    return true;
  }

  /** Goes on from the middle of an attempt: what was done since is not done, and the old attempt stays as it is. */
  fork(attempt: Attempt, entry: number): boolean {
    const forked = forkAttempt(attempt, entry, new Date().toISOString());
    if (isRefusal(forked)) {
      this.refused = forked.refused;
      return false;
    }
    this.take({ id: newId(), attempt: forked });
    this.#keep();
    return true;
  }

  /** An answer to a question of the debrief goes into the same log. */
  remark(question: string, text: string) {
    if (this.attempt === undefined || text.trim() === "") return;
    this.do({ do: "remark", question, text: text.trim() });
    this.reviewed = this.reviewed.map((it, index) => (index === 0 ? this.attempt! : it));
  }

  /** Keeps how long it has taken so far, also where nothing was done meanwhile. */
  keepTime() {
    if (this.#newest !== undefined && !isOver(this.#newest)) this.#keep();
  }

  #keep() {
    if (this.#newest === undefined) return;
    const id = this.#id;
    void keepAttempt(id, this.#newest, this.clock.read()).then(
      (ahead) => {
        this.unkept = "";
        if (ahead !== undefined && id === this.#id) this.#giveWay(ahead);
      },
      (error: unknown) => (this.unkept = told(whyNotKept(error))),
    );
  }

  /** Another window was first: what was done here since is not, and is said. */
  #giveWay(ahead: KeptAttempt) {
    this.take(ahead);
    this.refused = say("play.wentOnElsewhere");
  }
}

/** The attempt that is played, and those that are talked about, in this window. */
export const study = new Study();
