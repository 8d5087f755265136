import { type Assessment, type JobState, seen, type StillhotDocument } from "../../core";
import { Viewing } from "../session/viewing.svelte";

/**
 * The drawing as a job stands, with what was tested and barricaded on the way. What is selected here is its own. It follows
 * from the steps.
 */
export class JobViewing extends Viewing {
  readonly #state: () => JobState;
  readonly #isTakenForLive: () => boolean;

  document: StillhotDocument = $derived.by(() => this.#state().document);
  #look = $derived.by((): { assessment?: Assessment; failed?: string } => {
    try {
      const found = seen(this.#state());
      return { assessment: this.#isTakenForLive() ? takenForLive(found) : found };
    } catch (error) {
      return { failed: error instanceof Error ? error.message : String(error) };
    }
  });
  assessment: Assessment | undefined = $derived(this.#look.assessment);
  /** nothing while the drawing is not believed */
  stated: Assessment | undefined = $derived.by(() => (this.#isTakenForLive() ? undefined : this.assessment));
  failed: string | undefined = $derived(this.#look.failed);
  readonly isStale = false;
  readonly states = undefined;

  /** @param isTakenForLive whether the crew found voltage that the drawing does not know of */
  constructor(state: () => JobState, isTakenForLive: () => boolean = () => false) {
    super();
    this.#state = state;
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
