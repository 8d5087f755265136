import { type Assessment, type JobState, seen, type StillhotDocument } from "../../core";
import { emptyDrawing } from "../session/emptyDrawing";
import { Session } from "../session/session.svelte";

/**
 * A session to look at: the drawing as a job stands, with what was tested and barricaded on the way. What is selected
 * here is its own. Nothing can be edited in it: the drawing of a step follows from the steps.
 */
export class Standing extends Session {
  readonly #state: () => JobState;

  override document: StillhotDocument = $derived.by(() => this.#state().document);
  #look = $derived.by((): { assessment?: Assessment; failed?: string } => {
    try {
      return { assessment: seen(this.#state()) };
    } catch (error) {
      return { failed: error instanceof Error ? error.message : String(error) };
    }
  });
  override assessment: Assessment | undefined = $derived(this.#look.assessment);
  override failed: string | undefined = $derived(this.#look.failed);
  override isStale: boolean = $derived(false);

  constructor(state: () => JobState) {
    super(emptyDrawing);
    this.#state = state;
  }

  override previewMove() {}
  override dropMove() {}
  override remove() {}
  override run(): undefined {
    return undefined;
  }
}
