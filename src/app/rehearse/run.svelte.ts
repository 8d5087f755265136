import { jobOf, type JobState, type PlayedStep, sha256, type Step, type StillhotDocument } from "../../core";
import { type Played, Player, leftAtEnd, stateAfter } from "../plan/player";
import type { Session } from "../session/session.svelte";
import { say } from "../words/catalogue";
import { keepRun, runOf, whenRunKeptElsewhere } from "./store";

/** One thing that was ticked. It is struck where it was ticked wrongly, and never erased. */
export interface Entry {
  readonly step: Step;
  /** which step of the plan it is, from 0; nothing for a step of one's own */
  readonly planned?: number;
  /** when it was ticked [ms since 1970] */
  readonly at: number;
  /** left out on purpose: it is not played */
  readonly skipped?: boolean;
  readonly struckAt?: number;
}

/** An entry with what it did, unless it was struck or left out. */
export interface Told extends Entry {
  readonly played: PlayedStep | undefined;
}

/** One rehearsal of the order at hand: what was ticked so far, and how the job stands by it. Kept through a reload. */
export class Run {
  readonly #session: Session;
  readonly #player = new Player();
  entries = $state.raw<readonly Entry[]>([]);
  /** answers that were given at hold points */
  answered = $state.raw<readonly string[]>([]);
  /** a step of one's own that is about to be done in place of the plan's */
  own = $state.raw<Step | undefined>(undefined);
  isBegun = $state(false);
  #turn = 0;
  #loaded = $state.raw<StillhotDocument | undefined>(undefined);

  plan: readonly Step[] = $derived.by(() => jobOf(this.#session.document).steps);
  isReady: boolean = $derived.by(() => this.#loaded === this.#session.document);
  #done = $derived(this.entries.filter((it) => it.struckAt === undefined && it.skipped !== true));
  #played: Played = $derived.by(() =>
    this.#player.play(
      this.#session.document,
      this.#done.map(({ step }) => step),
    ),
  );
  state: JobState = $derived.by(() => stateAfter(this.#played, this.#done.length));
  before: JobState = $derived.by(() => stateAfter(this.#played, this.#done.length - 1));
  last: PlayedStep | undefined = $derived(this.#played.steps.at(-1));
  told: readonly Told[] = $derived.by(() =>
    this.entries.map((entry) => ({ ...entry, played: this.#played.steps[this.#done.indexOf(entry)] })),
  );
  /** the first step of the plan that is neither ticked nor left out, from 0 */
  due: number | undefined = $derived.by(() => {
    const ticked = new Set(this.entries.filter((it) => it.struckAt === undefined).map((it) => it.planned));
    const index = this.plan.findIndex((_, n) => !ticked.has(n));
    return index < 0 ? undefined : index;
  });
  step: Step | undefined = $derived.by(
    () => this.own ?? (this.due === undefined ? undefined : this.plan[this.due]),
  );
  /** findings of every step that counts */
  findings = $derived.by(() => this.#played.steps.flatMap((it) => it.findings));
  left = $derived.by(() => leftAtEnd(this.#played));

  constructor(session: Session) {
    this.#session = session;
    whenRunKeptElsewhere((key) => {
      const { document } = this.#session;
      if (this.#loaded === document && key === keyOf(document)) void this.load(document);
    });
  }

  /** Finds the run of a drawing again, or begins without one. */
  async load(document: StillhotDocument) {
    const stored = await runOf(keyOf(document)).catch(() => undefined);
    if (this.#session.document !== document) return;
    this.entries = stored?.entries ?? [];
    this.answered = stored?.answered ?? [];
    this.#turn = stored?.turn ?? 0;
    this.isBegun = stored !== undefined && stored.entries.length + stored.answered.length > 0;
    this.own = undefined;
    this.#loaded = document;
  }

  /** Ticks the step in hand: it has been done. */
  tick() {
    const { step, own, due } = this;
    if (step === undefined || this.#isElsewhere()) return;
    const planned = own === undefined ? due : undefined;
    this.own = undefined;
    this.#add({ step, at: Date.now(), ...(planned === undefined ? {} : { planned }) });
  }

  /** Leaves the plan's next step out. */
  skip() {
    const { due } = this;
    if (due === undefined || this.#isElsewhere()) return;
    this.own = undefined;
    this.#add({ step: this.plan[due]!, planned: due, at: Date.now(), skipped: true });
  }

  /** Strikes an entry: it was ticked wrongly, and its step is due again. */
  strike(index: number) {
    if (this.#isElsewhere()) return;
    this.entries = this.entries.map((it, at) => (at === index ? { ...it, struckAt: Date.now() } : it));
    this.#keep();
  }

  /** Strikes the last step that was done. */
  takeBack() {
    const last = this.#done.at(-1);
    if (last !== undefined) this.strike(this.entries.indexOf(last));
  }

  answer(item: string) {
    if (this.#isElsewhere()) return;
    this.answered = this.answered.includes(item)
      ? this.answered.filter((it) => it !== item)
      : [...this.answered, item];
    this.#keep();
  }

  startAgain() {
    if (this.#isElsewhere()) return;
    this.entries = [];
    this.answered = [];
    this.own = undefined;
    this.#keep();
  }

  /** Where another window edits the drawing, the rehearsal is its as well: this one follows. */
  #isElsewhere(): boolean {
    const { isReadOnly } = this.#session;
    if (isReadOnly) this.#session.say(say("keep.readOnly"), "refusal");
    return isReadOnly;
  }

  #add(entry: Entry) {
    this.entries = [...this.entries, entry];
    this.#keep();
  }

  #keep() {
    const { entries, answered } = this;
    const key = keyOf(this.#session.document);
    void keepRun({ key, savedAt: Date.now(), turn: ++this.#turn, entries, answered }).catch(() => undefined);
  }
}

/** A run belongs to a drawing and its order of steps, whatever they are called. */
const keyOf = ({ system, job, settings }: StillhotDocument): string =>
  sha256(JSON.stringify([system, job ?? null, settings ?? null]));
