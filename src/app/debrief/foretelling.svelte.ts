import {
  type Attempt,
  type FactReport,
  type Foretold,
  foretold,
  jobOf,
  type LookFirst,
  mapOf,
  type WorkPointId,
} from "../../core";
import { OwnWorker } from "../worker/ownWorker";

/**
 * What *look first* would have said to somebody who had the map alone, asked of a worker for one work point after the
 * other while the debrief is read.
 */
export class Foretelling {
  readonly map;
  #lists = $state.raw<readonly (readonly LookFirst[])[]>([]);
  #isWorking = $state(true);
  #failed = $state.raw<string | undefined>(undefined);
  readonly #line = new OwnWorker();

  constructor({ document }: Attempt) {
    this.map = mapOf(document);
    this.#ask(Object.keys(jobOf(this.map).workPoints) as WorkPointId[]);
  }

  get isWorking() {
    return this.#isWorking;
  }

  /** Why a list could not be made. */
  get failed() {
    return this.#failed;
  }

  /** The earliest line, of any work point's list, that leads to where a look shows the fact. */
  of({ ways }: FactReport): Foretold | undefined {
    return this.#lists
      .flatMap((entries) => foretold(this.map, entries, ways) ?? [])
      .reduce<Foretold | undefined>(
        (least, it) => (least === undefined || it.line < least.line ? it : least),
        undefined,
      );
  }

  end() {
    this.#line.end();
  }

  #ask([id, ...rest]: readonly WorkPointId[]) {
    if (id === undefined) {
      this.#isWorking = false;
      return;
    }
    this.#line.ask(this.map, { of: "looks", id }, (answer) => {
      if ("failed" in answer) this.#failed = answer.failed;
      if ("looks" in answer) this.#lists = [...this.#lists, answer.looks.report.entries];
      this.#ask(rest);
    });
  }
}
