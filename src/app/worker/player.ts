import {
  advance,
  beginJob,
  type Breaking,
  breakingsOf,
  findingsAtEnd,
  isSameStep,
  jobOf,
  type JobState,
  notAsExpected,
  planChanged,
  play,
  type PlayedStep,
  receivedStep,
  type RehearsalFinding,
  type SentStep,
  type Step,
  type StillhotDocument,
} from "../../core";

/** Some steps of a job, played from as found. */
export interface PlayedOrder {
  readonly begin: JobState;
  readonly steps: readonly PlayedStep[];
}

const BETWEEN = {
  changed: (state: JobState) => planChanged(state),
  unexpected: (state: JobState) => notAsExpected(state, false),
  voltage: (state: JobState) => notAsExpected(state, true),
};

/** What came between two steps: the plan was changed, or what was seen was not what was expected. */
export type Between = keyof typeof BETWEEN;

interface Known {
  readonly played: PlayedStep;
  readonly came: Between | undefined;
}

const NOTHING: ReadonlyMap<number, Between> = new Map();

/** Plays orders of steps one after the other. What two of them begin with alike is played once. */
export class Player {
  #asFound: StillhotDocument | undefined;
  #begin: JobState | undefined;
  /** each with what came before it */
  #steps: readonly Known[] = [];

  /** @param between what came between two steps, by how many had been done */
  play(
    document: StillhotDocument,
    steps: readonly Step[] = jobOf(document).steps,
    between: ReadonlyMap<number, Between> = NOTHING,
  ): PlayedOrder {
    let order = this.known(document, steps, between);
    for (const step of steps.slice(order.steps.length)) {
      this.take(play(stateBefore(order, between), step), between);
      order = this.known(document, steps, between);
    }
    return order;
  }

  /** The steps of an order that were played before, up to the first that was not. */
  known(
    document: StillhotDocument,
    steps: readonly Step[] = jobOf(document).steps,
    between: ReadonlyMap<number, Between> = NOTHING,
  ): PlayedOrder {
    const asFound = this.#asFoundOf(document);
    if (asFound !== this.#asFound || this.#begin === undefined) {
      this.#asFound = asFound;
      this.#begin = beginJob(asFound);
      this.#steps = [];
    }
    const isOther = ({ played, came }: Known, at: number) =>
      at < steps.length && !(isSameStep(played.step, steps[at]!) && came === between.get(at));
    const other = this.#steps.findIndex(isOther);
    if (other >= 0) this.#steps = this.#steps.slice(0, other);
    return { begin: this.#begin, steps: this.#steps.slice(0, steps.length).map(({ played }) => played) };
  }

  /** Takes in what another player sent of the first steps of an order, as far as it is not known here. */
  takeIn(
    document: StillhotDocument,
    steps: readonly Step[],
    between: ReadonlyMap<number, Between>,
    sent: readonly SentStep[],
  ) {
    const { length } = this.known(document, steps, between).steps;
    for (const step of sent.slice(length, steps.length)) {
      const before = stateBefore(this.known(document, steps, between), between);
      this.take(receivedStep(before, step), between);
    }
  }

  /** Takes in the step that comes after those that are known. */
  take(played: PlayedStep, between: ReadonlyMap<number, Between> = NOTHING) {
    this.#steps = [...this.#steps, { played, came: between.get(this.#steps.length) }];
  }

  /**
   * The drawing without its steps. It is the very same object as long as nothing but steps changed, since all that is
   * known of a drawing is remembered for that object.
   */
  #asFoundOf(document: StillhotDocument): StillhotDocument {
    const last = this.#asFound;
    if (last !== undefined && isSameBut(last, document, "job", "title", "notes", "log")) {
      if (isSameBut(last.job ?? {}, document.job ?? {}, "steps")) return last;
    }
    return { ...document, job: { ...document.job, steps: [] } };
  }
}

/** How a job stands where the next step of an order begins, with what came between. */
export function stateBefore(played: PlayedOrder, between: ReadonlyMap<number, Between>): JobState {
  const count = played.steps.length;
  return between.has(count)
    ? cameBetween(stateAfter(played, count), between.get(count)!)
    : stateAfter(played, count);
}

/** How a job stands once something came between two of its steps. */
export const cameBetween = (state: JobState, came: Between): JobState => BETWEEN[came](state);

/** How a job stands after its first `count` steps. */
export const stateAfter = ({ begin, steps }: PlayedOrder, count: number): JobState =>
  count <= 0 ? begin : (steps[Math.min(count, steps.length) - 1]?.state ?? begin);

/** The currents that a step would break. */
export const breaksOf = (before: JobState, step: Step): readonly Breaking[] =>
  breakingsOf(step, before, advance(before, step));

/** What is wrong when the last step has been played. */
export const leftAtEnd = (played: PlayedOrder): readonly RehearsalFinding[] =>
  played.steps.length === 0 ? [] : findingsAtEnd(stateAfter(played, played.steps.length));

function isSameBut(one: object, other: object, ...but: readonly string[]): boolean {
  const [a, b] = [one as Record<string, unknown>, other as Record<string, unknown>];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every(
    (key) => but.includes(key) || a[key] === b[key],
  );
}
