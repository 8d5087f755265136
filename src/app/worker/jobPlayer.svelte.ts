import { untrack } from "svelte";
import {
  type Act,
  actsFor,
  type Assessment,
  type Breaking,
  fromColumns,
  isSameStep,
  type JobState,
  type Owner,
  play,
  type PlayedStep,
  receivedStep,
  type RehearsalFinding,
  seen,
  type SentStep,
  type Step,
  type StillhotDocument,
} from "../../core";
import { isAtOnce } from "./atOnce";
import { OwnWorker } from "./ownWorker";
import { type Between, breaksOf, leftAtEnd, type PlayedOrder, Player, stateBefore } from "./player";
import { t } from "../words/words";
import type { OrderMoment, WorkerAnswer } from "./questions";

/** An order of steps of a drawing, and what came between them. */
export interface Order {
  readonly document: StillhotDocument;
  readonly steps: readonly Step[];
  readonly between: ReadonlyMap<number, Between>;
  /** another object for each drawing that is opened */
  readonly opened: object;
}

/** How a job stands after some steps of an order. */
export interface JobAtCount {
  readonly order: Order;
  readonly count: number;
  readonly state: JobState;
}

/** What a step would do. */
export interface Ahead {
  readonly would: PlayedStep;
  readonly breaks: readonly Breaking[];
}

/** What is known of a job as it stands. */
export type JobLook = { readonly assessment: Assessment } | { readonly failed: string };

/**
 * Plays an order of steps and says how the job stands: of a small drawing at once, of a large one beside the page, where
 * what is not known yet is nothing.
 */
export class JobPlayer {
  readonly #player = new Player();
  /** plays one step after the other */
  readonly #line = new OwnWorker();
  /** answers what a person asks meanwhile, who does not wait until a long step has been played */
  readonly #asks = new OwnWorker();
  /** steps as they came, for the worker that did not play them */
  readonly #sent = new WeakMap<PlayedStep, SentStep>();
  /** counts the steps that came, so that what follows from them is worked out anew */
  #came = $state(0);
  #newest: Order | undefined;
  #left = $state.raw<{ readonly state: JobState; readonly found: readonly RehearsalFinding[] }>();
  #look = $state.raw<{ readonly state: JobState; readonly found: JobLook }>();
  #acts = $state.raw<{ readonly of: ActsOf; readonly found: readonly Act[] }>();
  #ahead = $state.raw<{ readonly state: JobState; readonly found: Ahead; readonly sent: SentStep }>();
  /** why it does not go on */
  failed = $state<string | undefined>(undefined);
  isStopped = $state(false);

  /** The order, as far as it has been played. */
  play({ document, steps, between }: Order): PlayedOrder {
    void this.#came;
    return isAtOnce(document)
      ? this.#player.play(document, steps, between)
      : this.#player.known(document, steps, between);
  }

  /** What is wrong when the last step has been done; nothing while that is not known. */
  leftOf(order: Order, played: PlayedOrder): readonly RehearsalFinding[] | undefined {
    const last = played.steps.at(-1);
    if (last === undefined && order.steps.length === 0) return [];
    if (isAtOnce(order.document)) return leftAtEnd(played);
    const isWhole = played.steps.length === order.steps.length;
    return isWhole && this.#left?.state === last?.state ? this.#left?.found : undefined;
  }

  /**
   * What is known of a job as it stands, or why it does not become known; nothing while that is on its way.
   *
   * @param standing nothing while not all of its steps have been played
   */
  lookOf(standing: JobAtCount | undefined): JobLook | undefined {
    const known = standing === undefined ? undefined : this.#lookAt(standing);
    if (known !== undefined) return known;
    if (this.isStopped) return { failed: t("order.stopped") };
    return this.failed === undefined ? undefined : { failed: this.failed };
  }

  #lookAt({ order, state }: JobAtCount): JobLook | undefined {
    if (isAtOnce(order.document)) return seenAtOnce(state);
    return this.#look?.state === state ? this.#look.found : undefined;
  }

  /** What can be done; nothing while that is on its way. */
  actsAt(
    { order, state }: JobAtCount,
    owner: Owner | undefined,
    noteText: string,
  ): readonly Act[] | undefined {
    if (isAtOnce(order.document)) return actsFor(state, owner, noteText);
    const known = this.#acts;
    return known?.of.state === state && known.of.owner === owner ? known.found : undefined;
  }

  /** What a step would do; nothing while that is on its way. */
  aheadOf({ order, state }: JobAtCount, step: Step): Ahead | undefined {
    if (isAtOnce(order.document)) return { would: play(state, step), breaks: breaksOf(state, step) };
    const known = this.#ahead;
    return known?.state === state && isSameStep(known.found.would.step, step) ? known.found : undefined;
  }

  /** Asks what a step would do on a large drawing. */
  askAhead({ order, count, state }: JobAtCount, step: Step) {
    if (isAtOnce(order.document) || this.#isHalted) return;
    if (this.#ahead?.state === state && isSameStep(this.#ahead.found.would.step, step)) return;
    const tried = { ...order, steps: [...order.steps.slice(0, count), step] };
    this.#ask("would", order, tried, count + 1, (answer) => {
      if (!("step" in answer)) return;
      const { step: sent, breaks } = answer;
      this.#ahead = { state, found: { would: receivedStep(state, sent), breaks }, sent };
    });
  }

  /** Asks for the next step of a large drawing that is not known, and when all are, for what is left. */
  keepUp(order: Order) {
    // What failed of one order says nothing of another, and who did not wait for one drawing may wait for the next.
    if (order !== this.#newest) this.failed = undefined;
    if (this.#newest !== undefined && order.opened !== this.#newest.opened) {
      this.end();
      this.isStopped = false;
    }
    this.#newest = order;
    if (isAtOnce(order.document) || this.#isHalted) return;
    const known = this.play(order);
    const { length } = known.steps;
    if (length < order.steps.length) return this.#askStep(order, known);
    const state = known.steps.at(-1)?.state;
    if (state === undefined || this.#left?.state === state) return;
    this.#ask("left", order, order, length, (answer) => {
      if ("left" in answer) this.#left = { state, found: answer.left };
    });
  }

  #askStep(order: Order, known: PlayedOrder) {
    const count = known.steps.length + 1;
    if (this.#wasAhead(order, known)) return;
    this.#ask("step", order, order, count, (answer) => {
      const { begin, steps } = this.play(this.#newest!);
      const next = this.#newest!.steps[count - 1];
      if (!("step" in answer) || begin !== known.begin || steps.at(-1) !== known.steps.at(-1)) return;
      if (next === undefined || !isSameStep(next, answer.step.step)) return;
      this.#take(order, known, answer.step);
    });
  }

  /** What the next step would do is what it did. @returns whether that was known */
  #wasAhead(order: Order, known: PlayedOrder): boolean {
    const before = stateBefore(known, order.between);
    const ahead = this.#ahead;
    if (ahead === undefined || ahead.state !== before) return false;
    if (!isSameStep(ahead.sent.step, order.steps[known.steps.length]!)) return false;
    this.#take(order, known, ahead.sent);
    return true;
  }

  #take(order: Order, known: PlayedOrder, sent: SentStep) {
    const step = receivedStep(stateBefore(known, order.between), sent);
    this.#sent.set(step, sent);
    this.#player.take(step, order.between);
    this.#came++;
  }

  /** Asks how the job of a large drawing stands. */
  lookAgain({ order, count, state }: JobAtCount) {
    if (isAtOnce(order.document) || this.#isHalted || this.#look?.state === state) return;
    this.#ask("seen", order, order, count, (answer) => {
      if ("columns" in answer)
        this.#look = { state, found: { assessment: fromColumns(answer.columns).assessment } };
    });
  }

  /** Asks what can be done on a large drawing. */
  askActs({ order, count, state }: JobAtCount, owner: Owner | undefined, noteText: string) {
    if (isAtOnce(order.document) || this.#isHalted) return;
    if (this.#acts?.of.state === state && this.#acts.of.owner === owner) return;
    const what = { of: "acts", ...this.#momentOf(order, count), owner, noteText } as const;
    this.#asks.ask(order.document, what, (answer) => {
      if ("acts" in answer) this.#acts = { of: { state, owner }, found: answer.acts };
      else this.#hearFailure(order, answer);
    });
  }

  /** @param order that is at hand, where what is played is another one */
  #ask(
    of: "step" | "would" | "seen" | "left",
    order: Order,
    played: Order,
    count: number,
    hear: (answer: WorkerAnswer) => void,
  ) {
    const line = of === "step" || of === "left" ? this.#line : this.#asks;
    const moment = { ...this.#momentOf(order, count), steps: played.steps };
    line.ask(played.document, { of, ...moment }, (answer) => {
      this.#hearFailure(order, answer);
      hear(answer);
    });
  }

  /** A moment of an order, with what is known of the steps before it. */
  #momentOf(order: Order, count: number): OrderMoment {
    const played = untrack(() => this.play(order)).steps.slice(0, count);
    const known = played.map((it) => this.#sent.get(it)!);
    return { steps: order.steps, between: order.between, count, known };
  }

  /** What failed is said until somebody wants it once more: another answer does not make it known. */
  #hearFailure(order: Order, answer: WorkerAnswer) {
    if ("failed" in answer && order === this.#newest) this.failed = answer.failed;
  }

  /** Nothing is asked until somebody wants it. */
  get #isHalted(): boolean {
    return this.isStopped || this.failed !== undefined;
  }

  /** Leaves the rest unknown, until somebody wants it. */
  stop() {
    this.end();
    this.isStopped = true;
  }

  goOn() {
    this.failed = undefined;
    this.isStopped = false;
  }

  end() {
    this.#line.end();
    this.#asks.end();
  }
}

interface ActsOf {
  readonly state: JobState;
  readonly owner: Owner | undefined;
}

function seenAtOnce(state: JobState): JobLook {
  try {
    return { assessment: seen(state) };
  } catch (error) {
    return { failed: error instanceof Error ? error.message : String(error) };
  }
}
