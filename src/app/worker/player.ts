import {
  beginJob,
  findingsAtEnd,
  isSameStep,
  jobOf,
  type JobState,
  play,
  type PlayedStep,
  type RehearsalFinding,
  type Step,
  type StillhotDocument,
} from "../../core";

/** Some steps of a job, played from as found. */
export interface PlayedOrder {
  readonly begin: JobState;
  readonly steps: readonly PlayedStep[];
}

/** What came between two steps: the plan was changed, or what was seen was not what was expected. */
export type Between = (state: JobState) => JobState;

const NOTHING: ReadonlyMap<number, Between> = new Map();

/** Plays orders of steps one after the other. What two of them begin with alike is played once. */
export class Player {
  #asFound: StillhotDocument | undefined;
  #begin: JobState | undefined;
  #steps: PlayedStep[] = [];
  #between = NOTHING;

  /** @param between what came between two steps, by how many had been done */
  play(
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
    const known = this.#steps;
    const isKnown = (at: number) =>
      at < known.length &&
      isSameStep(known[at]!.step, steps[at]!) &&
      this.#between.get(at) === between.get(at);
    const first = steps.findIndex((_, at) => !isKnown(at));
    const played = known.slice(0, first < 0 ? steps.length : first);
    for (const step of steps.slice(played.length)) {
      const before = played.at(-1)?.state ?? this.#begin;
      played.push(play(between.get(played.length)?.(before) ?? before, step));
    }
    this.#steps = played;
    this.#between = between;
    return { begin: this.#begin, steps: played };
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

/** How a job stands after its first `count` steps. */
export const stateAfter = ({ begin, steps }: PlayedOrder, count: number): JobState =>
  count <= 0 ? begin : (steps[Math.min(count, steps.length) - 1]?.state ?? begin);

/** What is wrong when the last step has been played. */
export const leftAtEnd = (played: PlayedOrder): readonly RehearsalFinding[] =>
  played.steps.length === 0 ? [] : findingsAtEnd(stateAfter(played, played.steps.length));

function isSameBut(one: object, other: object, ...but: readonly string[]): boolean {
  const [a, b] = [one as Record<string, unknown>, other as Record<string, unknown>];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every(
    (key) => but.includes(key) || a[key] === b[key],
  );
}
