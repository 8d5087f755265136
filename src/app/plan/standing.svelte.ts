import { type Assessment, type JobState, seen, type StillhotDocument } from "../../core";
import { emptyDrawing } from "../session/emptyDrawing";
import { Session } from "../session/session.svelte";

/**
 * A session to look at: the drawing as a job stands, with what was tested and barricaded on the way. What is selected
 * here is its own. Nothing can be edited in it: the drawing of a step follows from the steps.
 */
export class Standing extends Session {
  readonly #state: () => JobState;
  readonly #isTakenForLive: () => boolean;

  override document: StillhotDocument = $derived.by(() => this.#state().document);
  #look = $derived.by((): { assessment?: Assessment; failed?: string } => {
    try {
      const found = seen(this.#state());
      return { assessment: this.#isTakenForLive() ? takenForLive(found) : found };
    } catch (error) {
      return { failed: error instanceof Error ? error.message : String(error) };
    }
  });
  override assessment: Assessment | undefined = $derived(this.#look.assessment);
  override failed: string | undefined = $derived(this.#look.failed);
  override isStale: boolean = $derived(false);

  /** @param isTakenForLive whether the crew found voltage that the drawing does not know of */
  constructor(state: () => JobState, isTakenForLive: () => boolean = () => false) {
    super(emptyDrawing);
    this.#state = state;
    this.#isTakenForLive = isTakenForLive;
  }

  override previewMove() {}
  override dropMove() {}
  override remove() {}
  override run(): undefined {
    return undefined;
  }
}

/** Every work point live, whatever the drawing says of it. */
const takenForLive = (found: Assessment): Assessment => ({
  ...found,
  workPoints: Object.fromEntries(
    Object.entries(found.workPoints).map(([id, it]) => [id, { ...it, verdict: "live", margin: 0 } as const]),
  ),
});
