import {
  type Assessment,
  assessWithoutWork,
  fromColumns,
  type RowIds,
  type StillhotDocument,
} from "../../core";
import { isAtOnce } from "./atOnce";
import { OwnWorker } from "./ownWorker";

/** States and volts of a drawing that is looked at: of a small one at once, of a large one beside the page. */
export class StatesBeside {
  readonly #line = new OwnWorker();
  #ids: RowIds | undefined;
  #known = $state.raw<{ readonly document: StillhotDocument; readonly assessment: Assessment }>();
  failed = $state<string | undefined>(undefined);

  /** What is known of it; nothing while that is on its way. */
  of(document: StillhotDocument): Assessment | undefined {
    if (isAtOnce(document)) return assessWithoutWork(document);
    return this.#known?.document === document ? this.#known.assessment : undefined;
  }

  ask(document: StillhotDocument) {
    if (isAtOnce(document)) return;
    this.#line.ask(document, { of: "states" }, (answer) => {
      this.failed = "failed" in answer ? answer.failed : undefined;
      if (!("columns" in answer)) return;
      const { assessment, ids } = fromColumns(answer.columns, this.#ids);
      this.#ids = ids;
      this.#known = { document, assessment };
    });
  }

  end() {
    this.#line.end();
  }
}
