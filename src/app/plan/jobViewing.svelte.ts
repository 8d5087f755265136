import type { Assessment, JobState, StillhotDocument } from "../../core";
import { Viewing } from "../session/viewing.svelte";
import type { JobLook } from "../worker/jobPlayer.svelte";

/** A job as it stands, and what is known of that: nothing while it is worked out. */
interface JobInHand {
  readonly state: JobState;
  readonly look: JobLook | undefined;
}

/**
 * The drawing as a job stands, with what was tested and barricaded on the way. What is selected here is its own. It follows
 * from the steps.
 */
export class JobViewing extends Viewing {
  readonly #job: JobInHand;
  readonly #isTakenForLive: () => boolean;

  document: StillhotDocument = $derived.by(() => this.#job.state.document);
  assessment: Assessment | undefined = $derived.by(() => {
    const { look } = this.#job;
    if (look === undefined || !("assessment" in look)) return undefined;
    return this.#isTakenForLive() ? takenForLive(look.assessment) : look.assessment;
  });
  /** nothing while the drawing is not believed */
  stated: Assessment | undefined = $derived.by(() => (this.#isTakenForLive() ? undefined : this.assessment));
  failed: string | undefined = $derived.by(() => {
    const { look } = this.#job;
    return look !== undefined && "failed" in look ? look.failed : undefined;
  });
  isStale = $derived.by(() => this.#job.look === undefined);
  readonly states = undefined;

  /** @param isTakenForLive whether the crew found voltage that the drawing does not know of */
  constructor(job: JobInHand, isTakenForLive: () => boolean = () => false) {
    super();
    this.#job = job;
    this.#isTakenForLive = isTakenForLive;
  }
}

/** Every work point live, whatever the drawing says of it. */
const takenForLive = (found: Assessment): Assessment => ({
  ...found,
  workPoints: Object.fromEntries(
    Object.entries(found.workPoints).map(([id, it]) => [id, { ...it, verdict: "live", margin: 0 } as const]),
  ),
});
