import {
  answerTo,
  type Attempt,
  type ConductorId,
  debriefOf,
  type ElementId,
  type FactReport,
  factsOf,
  lookFirstSentence,
  nameOfFact,
  type Owner,
  partsOfConductor,
  type Planner,
  planned,
  type PointId,
  rowOf,
  structureOf,
  truthOf,
  verifyAttempt,
} from "../../core";
import { study } from "../scenario/study.svelte";
import { clock, entryTitle } from "../scenario/words";
import { elementName, pointName, structureName, t, told } from "../words/words";
import { Foretelling } from "./foretelling.svelte";
import { Replay } from "./replay";

/** One attempt as its debrief tells it: what the sections say of it, and the moment of it that they show. */
export class Debriefing {
  /** how many entries of the log have happened at the moment that is shown */
  at = $state(0);
  readonly planner: Planner;
  readonly debrief;
  readonly row;
  readonly truth;
  /** why its log is not believed; nothing where it plays again as it is written */
  readonly doubt;
  /** whether anything was hidden in its scenario */
  readonly hides: boolean;
  readonly #replay: Replay;
  readonly #foretelling: Foretelling | undefined;

  constructor(readonly attempt: Attempt) {
    const order = orderOf(attempt);
    this.planner = () => order;
    this.debrief = debriefOf(attempt, this.planner);
    this.row = rowOf(attempt);
    this.truth = truthOf(attempt.document);
    this.doubt = verifyAttempt(attempt);
    this.hides = factsOf(attempt.document).size > 0;
    this.#replay = new Replay(attempt);
    this.#foretelling = this.hides ? new Foretelling(attempt) : undefined;
  }

  end(): void {
    this.#foretelling?.end();
  }

  /** Only who played it is asked; what others read are the answers. */
  get isMine(): boolean {
    return study.attempt !== undefined && study.attempt.checksum === this.attempt.checksum;
  }

  readonly world = $derived.by(() => this.#replay.after(this.at));

  /** What happened last at the moment that is shown. */
  get entry() {
    return this.attempt.log[this.at - 1];
  }

  /** What that was about, on the drawing. */
  get about(): readonly Owner[] {
    const step = this.entry?.action as { element?: ElementId; at?: PointId } | undefined;
    if (step?.element !== undefined) return [{ of: "element", id: step.element }];
    return step?.at === undefined ? [] : [{ of: "point", id: step.at }];
  }

  /** Goes to a moment, and brings its picture into view. */
  show(entry: number): void {
    this.at = entry;
    globalThis.document.querySelector("[data-replay]")?.scrollIntoView({ block: "start" });
  }

  titleAt(n: number): string {
    const it = this.attempt.log[n - 1];
    return it === undefined
      ? t("review.atOnce")
      : t("review.entry", { n, at: clock(it.t), title: entryTitle(this.truth, it) });
  }

  conductors(ids: readonly string[]): string {
    return ids
      .map((id) => {
        const { point, letter } = partsOfConductor(id as ConductorId);
        return t("play.conductor", { name: pointName(this.truth, point), letter });
      })
      .join("; ");
  }

  elements(ids: readonly string[]): string {
    return ids.map((id) => elementName(this.truth, id)).join(", ");
  }

  /** Where somebody stands to see what is at these points: each structure once. */
  structures(ids: readonly string[]): string {
    const seen = new Set(ids.flatMap((id) => structureOf(this.truth.system, id)?.id ?? []));
    return [...seen].map((id) => structureName(this.truth, id)).join(", ");
  }

  points(ids: readonly string[]): string {
    return ids.map((id) => pointName(this.truth, id)).join(", ");
  }

  facts(ids: readonly string[]): string {
    return ids.map((id) => nameOfFact(this.attempt.document, id)).join("; ");
  }

  /** Whether a list that was made of the map alone would have led to where the fact shows. */
  foretold(fact: FactReport): string {
    const foretelling = this.#foretelling;
    if (foretelling === undefined || foretelling.isWorking) return t("review.foretelling");
    const it = foretelling.of(fact);
    if (it === undefined && foretelling.failed !== undefined)
      return t("review.foretellingFailed", { why: foretelling.failed });
    if (it === undefined) return t("review.notForetold");
    return t("review.foretold", { line: it.line, text: told(lookFirstSentence(foretelling.map, it.entry)) });
  }
}

/** The order that should have been played: the file's own, or else the planner's on the truth; none where it finds none. */
function orderOf({ document }: Attempt) {
  try {
    return answerTo(document, planned).flatMap((it) => (it.do === "go" ? [] : [it]));
  } catch {
    return [];
  }
}
