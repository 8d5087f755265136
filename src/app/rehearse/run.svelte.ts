import {
  type Act,
  type DoneStep,
  edits,
  isDoneStep,
  isStanding,
  isTelling,
  type JobLogLine,
  jobLogOf,
  type JobMark,
  jobOf,
  type JobState,
  type PlayedStep,
  type Owner,
  placesInOrder,
  type SeenInstead,
  type Step,
  stepSentence,
  type StillhotDocument,
} from "../../core";
import { type Ahead, JobPlayer, type JobLook, type Order, type JobAtCount } from "../worker/jobPlayer.svelte";
import { type Between, type PlayedOrder, stateAfter, stateBefore } from "../worker/player";
import type { Session } from "../session/session.svelte";
import { t, told } from "../words/words";
import { answers } from "./answers.svelte";

/** A line of the log as it is told: a step with what it did, unless it was struck, left out, or names what has gone. */
export type Told =
  | { readonly line: number; readonly mark: JobMark }
  | {
      readonly line: number;
      readonly done: DoneStep;
      /** which step of the order at hand it ticks, from 0; nothing for a step of one's own */
      readonly place: number | undefined;
      readonly played: PlayedStep | undefined;
    };

/** One rehearsal of the order at hand: what was ticked so far, and how the job stands by it. It is kept with the drawing. */
export class Run {
  readonly #session: Session;
  readonly #player = new JobPlayer();
  /** a step of one's own that is about to be done in place of the plan's */
  own = $state.raw<Step | undefined>(undefined);

  plan: readonly Step[] = $derived.by(() => jobOf(this.#session.document).steps);
  log: readonly JobLogLine[] = $derived.by(() => jobLogOf(this.#session.document));
  isBegun: boolean = $derived(this.log.length > 0);
  #places = $derived(placesInOrder(this.log, this.plan));
  #done: readonly DoneStep[] = $derived.by(() =>
    this.log.filter(isStanding).filter(({ step }) => isThere(this.#session.document, step)),
  );
  /** what came between two steps, by how many had been done */
  #between: ReadonlyMap<number, Between> = $derived.by(() => {
    const between = new Map<number, Between>();
    let count = 0;
    for (const line of this.log)
      if (this.#done.includes(line as DoneStep)) count++;
      else if (!isDoneStep(line)) {
        const came = cameWith(line);
        if (came !== undefined && between.get(count) !== "voltage") between.set(count, came);
      }
    return between;
  });
  #order: Order = $derived.by(() => ({
    document: this.#session.document,
    steps: this.#done.map(({ step }) => step),
    between: this.#between,
    opened: this.#session.opened,
  }));
  #played: PlayedOrder = $derived.by(() => this.#player.play(this.#order));
  /** not all that was done has been played yet: of a large drawing that takes its time */
  isBehind = $derived.by(() => this.#played.steps.length < this.#done.length);
  state: JobState = $derived.by(() => stateBefore(this.#played, this.#between));
  #standing: JobAtCount = $derived.by(() => ({
    order: this.#order,
    count: this.#done.length,
    state: this.state,
  }));
  /** what is known of the job as it stands; nothing while that is worked out */
  look: JobLook | undefined = $derived.by(() =>
    this.#player.lookOf(this.isBehind ? undefined : this.#standing),
  );
  /** somebody does the job, and has to know how it stands */
  #looksAhead = $state(false);
  /** something is worked out beside the page */
  isWorking = $derived.by(
    () =>
      !this.isStopped &&
      this.#player.failed === undefined &&
      (this.isBehind || this.left === undefined || (this.#looksAhead && this.look === undefined)),
  );

  /** a detector showed voltage where none was to be, and no test was as expected since: the drawing is not believed */
  isTakenForLive: boolean = $derived.by(() => {
    const shown = this.log.findLastIndex(
      (it) => !isDoneStep(it) && (it.seen === "voltage" || it.mark === "again"),
    );
    const mark = this.log[shown];
    if (mark === undefined || isDoneStep(mark) || mark.mark === "again") return false;
    return !this.log.slice(shown).some((it) => isStanding(it) && isForDead(it.step) && this.#isProven(it));
  });
  /** what was last not as expected, while no step was done since */
  stopped: JobMark | undefined = $derived.by(() => this.since.findLast((it) => it.mark === "unexpected"));
  before: JobState = $derived.by(() => stateAfter(this.#played, this.#done.length - 1));
  /** nothing while it is not known what the last one did */
  last: PlayedStep | undefined = $derived(this.isBehind ? undefined : this.#played.steps.at(-1));
  told: readonly Told[] = $derived.by(() =>
    this.log.map((it, line) =>
      isDoneStep(it)
        ? { line, done: it, place: this.#places[line], played: this.#played.steps[this.#done.indexOf(it)] }
        : { line, mark: it },
    ),
  );
  /** what happened to the drawing or to the job since the last step that was done */
  since: readonly JobMark[] = $derived.by(() => {
    const last = this.log.findLastIndex(isDoneStep);
    return this.log.slice(last + 1).filter((it): it is JobMark => !isDoneStep(it) && it.mark !== "begun");
  });
  /** the first step of the plan that is neither ticked nor left out, from 0 */
  due: number | undefined = $derived.by(() => {
    const index = this.plan.findIndex((_, n) => !this.#places.includes(n));
    return index < 0 ? undefined : index;
  });
  /**
   * The detector, proven once more: the order proved it before the test that is due, and since then the job was stopped, or
   * something was done that was not planned. Nothing where somebody left just this out.
   */
  proof: Step | undefined = $derived.by(() => {
    const { due, plan } = this;
    if (due === undefined || this.state.detector !== "unproven" || !isForDead(plan[due]!)) return undefined;
    const place = plan.slice(0, due).findLastIndex((it) => !isForDead(it) && !isTelling(it));
    if (plan[place]?.do !== "check-detector") return undefined;
    const isDone = this.log.some((it, line) => isStanding(it) && this.#places[line] === place);
    const last = this.log.findLast((it) => isDoneStep(it) && it.struck === undefined);
    const isLeftOut =
      last !== undefined && isDoneStep(last) && last.leftOut === true && last.step.do === "check-detector";
    return isDone && !isLeftOut ? plan[place] : undefined;
  });
  step: Step | undefined = $derived.by(
    () => this.own ?? this.proof ?? (this.due === undefined ? undefined : this.plan[this.due]),
  );
  /** findings of every step that counts */
  findings = $derived.by(() => this.#played.steps.flatMap((it) => it.findings));
  /** what is wrong when all is done; nothing while that is not known */
  left = $derived.by(() => this.#player.leftOf(this.#order, this.#played));
  /** the line of the last step that was done, which undo strikes */
  lastDone: number | undefined = $derived.by(() => {
    const line = this.log.findLastIndex(isStanding);
    return line < 0 ? undefined : line;
  });

  constructor(session: Session) {
    this.#session = session;
  }

  /** somebody did not want to wait for what is still unknown */
  get isStopped(): boolean {
    return this.#player.isStopped;
  }

  /** why what is still unknown does not become known */
  get failed(): string | undefined {
    return this.#player.failed;
  }

  get playedCount(): number {
    return this.#played.steps.length;
  }

  get stepCount(): number {
    return this.#done.length;
  }

  /** What can be done with a thing as the job stands; nothing while that is worked out. */
  actsFor(owner: Owner | undefined): readonly Act[] | undefined {
    return this.isBehind ? undefined : this.#player.actsAt(this.#standing, owner, t("order.noteText"));
  }

  /** What a step would do now; nothing while that is worked out. */
  aheadOf(step: Step): Ahead | undefined {
    return this.isBehind ? undefined : this.#player.aheadOf(this.#standing, step);
  }

  /** Asks beside the page for what is not known yet. */
  keepUp() {
    this.#player.keepUp(this.#order);
  }

  /** Asks beside the page for what whoever does the job has to know. */
  lookAhead(owner: Owner | undefined, isBegun: boolean) {
    this.#looksAhead = true;
    if (this.isBehind) return;
    this.#player.lookAgain(this.#standing);
    if (isBegun && this.step !== undefined) this.#player.askAhead(this.#standing, this.step);
    this.#player.askActs(this.#standing, owner, t("order.noteText"));
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

  begin() {
    this.#session.keepBefore("rehearse");
    this.#add({ at: now(), mark: "begun" });
  }

  /**
   * Ticks the step in hand: it has been done.
   *
   * @param said what was said or seen, where that is written down: the number of a permit, an answer
   */
  tick(said = "") {
    const { step, due } = this;
    if (step === undefined) return;
    this.#addStep(
      said === "" ? step : { ...step, text: said },
      due !== undefined && step === this.plan[due] ? due : undefined,
    );
  }

  /** Leaves the plan's next step out, or the proof that comes before it once more. */
  skip() {
    const { due, proof } = this;
    if (proof !== undefined) this.#addStep(proof, undefined, true);
    else if (due !== undefined) this.#addStep(this.plan[due]!, due, true);
  }

  /** Writes down that the step in hand did not show what it should. It is not ticked. */
  stop(seen: SeenInstead) {
    const { step } = this;
    if (step === undefined) return;
    this.own = undefined;
    const at = now();
    const text = told(stepSentence(this.state.document, step));
    const lines = seen === "silent" ? this.#withoutUnproven(at) : this.log;
    this.#write([...lines, { at, mark: "unexpected", seen, text, brief: true }]);
  }

  /** What a detector showed that turns out to be broken proves nothing: the tests since its last proof are struck, and due again. */
  #withoutUnproven(struck: string): readonly JobLogLine[] {
    const proven = this.log.findLastIndex((it) => isStanding(it) && it.step.do === "check-detector");
    return this.log.map((it, line) =>
      line > proven && isStanding(it) && isForDead(it.step) ? { ...it, struck } : it,
    );
  }

  /** Whether a test was made with a detector that was proven; not so as long as the test has not been played. */
  #isProven(line: DoneStep): boolean {
    const played = this.#played.steps[this.#done.indexOf(line)];
    return played !== undefined && played.state.detector !== "unproven";
  }

  /** Strikes a line: it was ticked wrongly, and its step is due again. */
  strike(line: number) {
    const struck = now();
    this.#write(this.log.map((it, at) => (at === line && isDoneStep(it) ? { ...it, struck } : it)));
  }

  /** Strikes the last step that was done. */
  takeBack() {
    if (this.lastDone !== undefined) this.strike(this.lastDone);
  }

  /** Strikes everything, and begins the job again. */
  startAgain() {
    const at = now();
    this.own = undefined;
    answers.forget();
    const struck = this.log.map((it) =>
      isDoneStep(it) && it.struck === undefined ? { ...it, struck: at } : it,
    );
    this.#write([...struck, { at, mark: "again" }]);
  }

  #addStep({ done: _done, ...step }: Step, place: number | undefined, leftOut = false) {
    this.own = undefined;
    this.#add({
      at: now(),
      step: step as Step,
      ...(place === undefined ? {} : { n: place + 1 }),
      ...(leftOut ? { leftOut } : {}),
    });
  }

  #add(line: JobLogLine) {
    this.#write([...this.log, line]);
  }

  #write(lines: readonly JobLogLine[]) {
    this.#session.note(edits.setJobLog(lines));
  }
}

function cameWith({ mark, seen, brief }: JobMark): Between | undefined {
  if (seen === "voltage") return "voltage";
  if (mark === "unexpected") return "unexpected";
  return brief === true ? "changed" : undefined;
}

/** A test that is to show no voltage. */
const isForDead = (step: Step): boolean => step.do === "test" && step.expect !== "live";

const now = (): string => new Date().toISOString();

/** Whether the place that a step names is still on the drawing. A thing that is not is told of by the step itself. */
function isThere(document: StillhotDocument, { at }: Step): boolean {
  if (at === undefined) return true;
  const { points, structures = {} } = document.system;
  return [points, structures, jobOf(document).workPoints].some((them) => Object.hasOwn(them, at));
}
