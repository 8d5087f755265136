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
  type Step,
  type StillhotDocument,
} from "../../core";
import { isAtOnce } from "./atOnce";
import { OwnWorker } from "./ownWorker";
import { type Between, breaksOf, leftAtEnd, type PlayedOrder, Player, stateBefore } from "./player";
import { t } from "../words/words";
import type { WorkerAnswer } from "./questions";

/** An order of steps of a drawing, and what came between them. */
export interface Order {
  readonly document: StillhotDocument;
  readonly steps: readonly Step[];
  readonly between: ReadonlyMap<number, Between>;
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
  readonly #line = new OwnWorker();
  /** counts the steps that came, so that what follows from them is worked out anew */
  #came = $state(0);
  #newest: Order | undefined;
  #left = $state.raw<{ readonly state: JobState; readonly found: readonly RehearsalFinding[] }>();
  #look = $state.raw<{ readonly state: JobState; readonly found: JobLook }>();
  #acts = $state.raw<{ readonly of: ActsOf; readonly found: readonly Act[] }>();
  #ahead = $state.raw<{ readonly state: JobState; readonly found: Ahead }>();
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
      if ("step" in answer)
        this.#ahead = { state, found: { would: receivedStep(state, answer.step), breaks: answer.breaks } };
    });
  }

  /** Asks for the next step of a large drawing that is not known, and when all are, for what is left. */
  keepUp(order: Order) {
    // What failed of one order says nothing of another.
    if (order !== this.#newest) this.failed = undefined;
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
    this.#ask("step", order, order, count, (answer) => {
      const { begin, steps } = this.play(this.#newest!);
      const next = this.#newest!.steps[count - 1];
      if (!("step" in answer) || begin !== known.begin || steps.at(-1) !== known.steps.at(-1)) return;
      if (next === undefined || !isSameStep(next, answer.step.step)) return;
      const before = stateBefore(known, order.between);
      this.#player.take(receivedStep(before, answer.step), order.between);
      this.#came++;
    });
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
    const { steps, between } = order;
    this.#line.ask(order.document, { of: "acts", steps, between, count, owner, noteText }, (answer) => {
      if ("acts" in answer) this.#acts = { of: { state, owner }, found: answer.acts };
      else this.#hearFailure(order, answer);
    });
  }

  /** @param order that is at hand, where what is played is another one */
  #ask(
    of: "step" | "would" | "seen" | "left",
    order: Order,
    { document, steps, between }: Order,
    count: number,
    hear: (answer: WorkerAnswer) => void,
  ) {
    this.#line.ask(document, { of, steps, between, count }, (answer) => {
      this.#hearFailure(order, answer);
      hear(answer);
    });
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
    this.#line.end();
    this.isStopped = true;
  }

  goOn() {
    this.failed = undefined;
    this.isStopped = false;
  }

  end() {
    this.#line.end();
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
