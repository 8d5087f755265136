import { edits, jobOf, type JobState, type PlayedStep, type RehearsalFinding, type Step } from "../../core";
import type { Session } from "../session/session.svelte";
import { leftAtEnd, Player, stateAfter } from "../worker/player";

/** The order of steps of the drawing at hand, and how far the shown drawing has come in it. */
export class Book {
  readonly session: Session;
  #count = $state(0);
  readonly #player = new Player();

  steps: readonly Step[] = $derived.by(() => jobOf(this.session.document).steps);
  #played = $derived.by(() => this.#player.play(this.session.document));
  played: readonly PlayedStep[] = $derived(this.#played.steps);
  /** what is wrong when the last step has been done */
  left: readonly RehearsalFinding[] = $derived.by(() => leftAtEnd(this.#played));
  /** steps that the shown drawing has behind it */
  count: number = $derived(Math.min(this.#count, this.steps.length));
  state: JobState = $derived.by(() => stateAfter(this.#played, this.count));
  stateAtBegin: JobState = $derived(this.#played.begin);
  before: JobState = $derived.by(() => stateAfter(this.#played, this.count - 1));
  /** the step that was done last on the shown drawing */
  current: PlayedStep | undefined = $derived(this.played[this.count - 1]);

  constructor(session: Session) {
    this.session = session;
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
