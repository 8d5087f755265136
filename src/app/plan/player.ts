import {
  beginJob,
  findingsAtEnd,
  jobOf,
  type JobState,
  play,
  type PlayedStep,
  type RehearsalFinding,
  type Step,
  type StillhotDocument,
} from "../../core";

/** Some steps of a job, played from as found. */
export interface Played {
  readonly begin: JobState;
  readonly steps: readonly PlayedStep[];
}

/** Plays orders of steps one after the other. What two of them begin with alike is played once. */
export class Player {
  #asFound: StillhotDocument | undefined;
  #begin: JobState | undefined;
  #steps: PlayedStep[] = [];

  play(document: StillhotDocument, steps: readonly Step[] = jobOf(document).steps): Played {
    const asFound = this.#asFoundOf(document);
    if (asFound !== this.#asFound || this.#begin === undefined) {
      this.#asFound = asFound;
      this.#begin = beginJob(asFound);
      this.#steps = [];
    }
    const known = this.#steps;
    let alike = 0;
    while (alike < Math.min(known.length, steps.length) && isSameStep(known[alike]!.step, steps[alike]!))
      alike++;
    const played = known.slice(0, alike);
    for (const step of steps.slice(alike)) played.push(play(played.at(-1)?.state ?? this.#begin, step));
    this.#steps = played;
    return { begin: this.#begin, steps: played };
  }

  /**
   * The drawing without its steps. It is the very same object as long as nothing but steps changed, since all that is
   * known of a drawing is remembered for that object.
   */
  #asFoundOf(document: StillhotDocument): StillhotDocument {
    const last = this.#asFound;
    if (last !== undefined && isSameBut(last, document, "job", "title", "notes")) {
      if (isSameBut(last.job ?? {}, document.job ?? {}, "steps")) return last;
    }
    return { ...document, job: { ...document.job, steps: [] } };
  }
}

/** How a job stands after its first `count` steps. */
export const stateAfter = ({ begin, steps }: Played, count: number): JobState =>
  count <= 0 ? begin : (steps[Math.min(count, steps.length) - 1]?.state ?? begin);

/** What is wrong when the last step has been played. */
export const leftAtEnd = (played: Played): readonly RehearsalFinding[] =>
  played.steps.length === 0 ? [] : findingsAtEnd(stateAfter(played, played.steps.length));

/** Whether two steps do the same; a mark that one is done is no difference. */
export const isSameStep = (one: Step, other: Step): boolean => one === other || textOf(one) === textOf(other);

const textOf = ({ done: _done, ...step }: Step): string =>
  JSON.stringify(Object.entries(step).sort(([a], [b]) => (a < b ? -1 : 1)));

function isSameBut(one: object, other: object, ...but: readonly string[]): boolean {
  const [a, b] = [one as Record<string, unknown>, other as Record<string, unknown>];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every(
    (key) => but.includes(key) || a[key] === b[key],
  );
}
