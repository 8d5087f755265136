import type { StillhotDocument } from "../../core";
import { OwnWorker } from "../worker/ownWorker";
import type { WorkerAnswer, What } from "../worker/questions";

/** One thing at a time that is asked of a worker. The newest wins; what was answered stays until the next answer. */
export class NewestAnswer {
  answer = $state.raw<WorkerAnswer | undefined>(undefined);
  /** the drawing that the answer is about */
  of = $state.raw<StillhotDocument | undefined>(undefined);
  failed = $state.raw<string | undefined>(undefined);
  readonly #line = new OwnWorker();
  #about = "";

  ask(document: StillhotDocument, what: What) {
    const about = JSON.stringify(what);
    // What is known of another thing says nothing of this one.
    if (about !== this.#about) this.answer = undefined;
    this.#about = about;
    this.#line.ask(document, what, (answer, isNewest) => {
      if (!isNewest || about !== this.#about) return;
      this.failed = "failed" in answer ? answer.failed : undefined;
      this.answer = "failed" in answer ? undefined : answer;
      this.of = document;
    });
  }

  end() {
    this.#line.end();
  }
}
