import {
  type Act,
  edits,
  jobOf,
  type JobState,
  type Owner,
  type PlayedStep,
  type RehearsalFinding,
  type Step,
} from "../../core";
import type { Session } from "../session/session.svelte";
import { t } from "../words/words";
import { JobPlayer, type JobLook, type Order, type JobAtCount } from "../worker/jobPlayer.svelte";
import { type Between, stateAfter } from "../worker/player";

const NOTHING: ReadonlyMap<number, Between> = new Map();

/** The order of steps of the drawing at hand, and how far the shown drawing has come in it. */
export class Book {
  readonly session: Session;
  #count = $state(0);
  readonly #player = new JobPlayer();

  steps: readonly Step[] = $derived.by(() => jobOf(this.session.document).steps);
  #order: Order = $derived.by(() => ({
    document: this.session.document,
    steps: this.steps,
    between: NOTHING,
    opened: this.session.opened,
  }));
  #played = $derived.by(() => this.#player.play(this.#order));
  /** the steps that have been played: of a large drawing not all of them at once */
  played: readonly PlayedStep[] = $derived(this.#played.steps);
  /** what is wrong when the last step has been done; nothing while that is not known */
  left: readonly RehearsalFinding[] | undefined = $derived.by(() =>
    this.#player.leftOf(this.#order, this.#played),
  );
  /** steps that the shown drawing has behind it */
  count: number = $derived(Math.min(this.#count, this.steps.length));
  state: JobState = $derived.by(() => stateAfter(this.#played, this.count));
  #standing: JobAtCount = $derived.by(() => ({ order: this.#order, count: this.count, state: this.state }));
  /** the shown drawing is not yet as its steps leave it */
  #isBehind = $derived.by(() => this.played.length < this.count);
  /** what is known of the shown drawing; nothing while it is worked out */
  look: JobLook | undefined = $derived.by(() =>
    this.#player.lookOf(this.#isBehind ? undefined : this.#standing),
  );
  /** steps are played beside the page */
  isWorking = $derived.by(
    () =>
      !this.isStopped &&
      this.#player.failed === undefined &&
      (this.left === undefined || this.look === undefined),
  );
  stateAtBegin: JobState = $derived(this.#played.begin);
  before: JobState = $derived.by(() => stateAfter(this.#played, this.count - 1));
  /** the step that was done last on the shown drawing */
  current: PlayedStep | undefined = $derived(this.played[this.count - 1]);

  constructor(session: Session) {
    this.session = session;
  }

  /** somebody did not want to wait for what is still unknown */
  get isStopped(): boolean {
    return this.#player.isStopped;
  }

  /** why what is still unknown does not become known */
  get failed(): string | undefined {
    return this.#player.failed;
  }

  /** What can be done with a thing on the shown drawing; nothing while that is worked out. */
  actsFor(owner: Owner | undefined): readonly Act[] | undefined {
    return this.#isBehind ? undefined : this.#player.actsAt(this.#standing, owner, t("order.noteText"));
  }

  get playedCount(): number {
    return this.played.length;
  }

  get stepCount(): number {
    return this.steps.length;
  }

  /** Asks beside the page for what is not known yet. */
  keepUp(owner: Owner | undefined) {
    this.#player.keepUp(this.#order);
    if (this.#isBehind) return;
    // What can be done is soon known, and what a search finds is not: it does not wait behind that.
    this.#player.askActs(this.#standing, owner, t("order.noteText"));
    this.#player.lookAgain(this.#standing);
  }

  stopWorking() {
    this.#player.stop();
  }

  goOn() {
    this.#player.goOn();
  }

  /** Nobody looks at it any more. */
  end() {
    this.#player.end();
  }

  goTo(count: number) {
    this.#count = Math.max(0, Math.min(count, this.steps.length));
  }

  /** Puts steps in after the shown one, and shows what they do. */
  insert(...steps: readonly Step[]) {
    const at = this.count;
    if (this.#set([...this.steps.slice(0, at), ...steps, ...this.steps.slice(at)]))
      this.goTo(at + steps.length);
  }

  /** @param n of the step, from 1 */
  remove(n: number) {
    const { count } = this;
    const others = this.steps.filter((_, index) => index !== n - 1);
    if (this.#set(others, true)) this.goTo(count >= n ? count - 1 : count);
  }

  /** Moves a step to another place. */
  move(from: number, to: number) {
    const target = Math.max(1, Math.min(to, this.steps.length));
    const step = this.steps[from - 1];
    if (step === undefined || target === from) return;
    const others = this.steps.filter((_, index) => index !== from - 1);
    if (this.#set([...others.slice(0, target - 1), step, ...others.slice(target - 1)])) this.goTo(target);
  }

  change(n: number, step: Step) {
    if (this.#set(this.steps.map((it, index) => (index === n - 1 ? step : it)))) this.goTo(n);
  }

  replace(steps: readonly Step[]) {
    if (this.#set(steps)) this.goTo(0);
  }

  #set(steps: readonly Step[], offersUndo = false): boolean {
    return this.session.run(edits.setSteps(steps), { offersUndo }) !== undefined;
  }
}
