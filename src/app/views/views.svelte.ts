import {
  type Assessment,
  documentAfter,
  type ElementId,
  marginMarks,
  type PointId,
  powerMarks,
  type Scene,
  sceneOf,
  stepMarks,
  type StillhotDocument,
  worstThreat,
} from "../../core";
import type { Instead } from "../canvas/view";
import type { Session } from "../session/session.svelte";
import { speech } from "../words/language.svelte";
import { Assessor } from "../worker/assessor";
import { OwnWorker } from "../worker/ownWorker";
import { paintMarks } from "./paintMarks";

/** What is shown in place of the drawing as it stands, or over it. */
export type ViewId = "mistake" | "margins" | "power";

const STEP_MS = 450;

/** Views that change nothing: one mistake away, the margin of every point, the flow of power. */
export class Views {
  look = $state<ViewId | undefined>(undefined);
  /** how many things may go wrong in *one mistake away* */
  strength = $state(1);
  /** how far the walk along the path has come, as an index into it */
  step = $state(0);
  #session: Session;
  #after = $state.raw<Assessed | undefined>(undefined);
  #margins = $state.raw<Margins | undefined>(undefined);
  #assessor: Assessor | undefined;
  readonly #marginLine = new OwnWorker();

  constructor(session: Session) {
    this.#session = session;
  }

  /** the worst that may happen at the shown work point; nothing where no threat was found */
  worst = $derived.by(() => {
    const report = this.#session.isStale ? undefined : this.#session.workPoint?.report;
    return this.look !== "mistake" || report === undefined ? undefined : worstThreat(report, this.strength);
  });
  /** the drawing after that; the drawing itself where nothing needs to go wrong */
  after = $derived.by(() =>
    this.worst === undefined || this.worst.upsets.length === 0
      ? undefined
      : documentAfter(this.#session.document, this.worst.upsets),
  );
  /** from the source to the hand */
  path = $derived(this.worst === undefined || this.worst.path.length === 0 ? undefined : this.worst.path);
  /** whether the picture is that of a drawing that does not stand so */
  isOtherwise = $derived(this.after !== undefined);
  /** why the drawing after the upsets could not be worked out */
  failed = $derived(this.look === "margins" ? this.#margins?.failed : this.#assessed()?.failed);
  isWorking = $derived.by(() =>
    this.look === "mistake"
      ? this.after !== undefined && this.#assessed() === undefined
      : this.#margins?.state === "working",
  );

  /** the margins of the drawing as it is now; nothing where they were not asked for, or it has changed since */
  margins = $derived.by(() =>
    this.#margins?.document === this.#session.document ? this.#margins.map : undefined,
  );
  marginState = $derived.by((): Margins["state"] | "none" | "stale" => {
    if (this.#margins === undefined) return "none";
    return this.#margins.document === this.#session.document ? this.#margins.state : "stale";
  });

  scene: Scene = $derived.by(() => {
    const { catalogue } = speech;
    if (this.look !== "mistake" || this.after === undefined) return this.#session.scene;
    return sceneOf(this.after, this.#assessed()?.assessment, { ...this.#session.lie, catalogue });
  });

  marks = $derived.by(() => {
    const { document, assessment, isStale } = this.#session;
    if (this.look === "mistake" && this.path !== undefined)
      return stepMarks(this.scene, this.path, this.step);
    if (this.look === "margins" && this.margins !== undefined) return marginMarks(this.scene, this.margins);
    if (this.look === "power" && assessment !== undefined && !isStale)
      return powerMarks(document, assessment, this.scene);
    return [];
  });

  /** What the canvas shows instead of the drawing, or over it. */
  instead: Instead | undefined = $derived.by(() => {
    if (this.look === undefined) return undefined;
    const { marks } = this;
    const lit: readonly ElementId[] | undefined =
      this.look === "mistake" ? (this.path?.slice(0, this.step + 1) ?? []) : undefined;
    return {
      scene: this.scene,
      lit: lit === undefined ? undefined : [...lit, ...(this.worst?.upsets.map((it) => it.element) ?? [])],
      overlay: (context, palette, scale) => paintMarks(context, marks, palette, scale),
    };
  });

  /** Works out how the drawing would stand; asked again whenever it changes. */
  follow() {
    if (this.after === undefined) return;
    this.#assessor ??= new Assessor({
      assessment: (document, assessment, failed) => (this.#after = { document, assessment, failed }),
    });
    this.#assessor.ask(withoutJob(this.after));
  }

  /** Walks the path a step at a time, or shows it whole where motion is not wanted. Returns how to stop. */
  walk(): () => void {
    const length = this.path?.length ?? 0;
    if (length === 0 || matchMedia("(prefers-reduced-motion: reduce)").matches) {
      this.step = Math.max(0, length - 1);
      return () => undefined;
    }
    this.step = 0;
    const timer = setInterval(() => {
      if (this.step >= length - 1) return clearInterval(timer);
      this.step++;
    }, STEP_MS);
    return () => clearInterval(timer);
  }

  /** Asks for the margin of every point of the drawing as it is now. */
  askMargins() {
    this.stopMargins();
    const { document } = this.#session;
    this.#margins = { document, state: "working" };
    this.#marginLine.ask(document, { of: "margins" }, (answer) => {
      if ("margins" in answer) this.#margins = { document, state: "done", map: answer.margins };
      else if ("failed" in answer) this.#margins = { document, state: "failed", failed: answer.failed };
      this.#marginLine.end();
    });
  }

  stopMargins() {
    if (this.#margins?.state === "working") this.#margins = { ...this.#margins, state: "stopped" };
    this.#marginLine.end();
  }

  /** How the drawing after the upsets stands, once that is known. */
  #assessed(): Assessed | undefined {
    return this.after !== undefined && this.#after?.document === withoutJob(this.after)
      ? this.#after
      : undefined;
  }
}

interface Assessed {
  readonly document: StillhotDocument;
  readonly assessment: Assessment | undefined;
  readonly failed: string | undefined;
}

interface Margins {
  readonly document: StillhotDocument;
  readonly state: "working" | "done" | "stopped" | "failed";
  readonly map?: Readonly<Record<PointId, number | null>>;
  readonly failed?: string;
}

const bare = new WeakMap<StillhotDocument, StillhotDocument>();

/** Without work points there are no threats to look for, which is most of the work; the states are the same. */
function withoutJob(document: StillhotDocument): StillhotDocument {
  const known = bare.get(document);
  if (known !== undefined) return known;
  const { job: _job, scenario: _scenario, ...fresh } = document;
  bare.set(document, fresh);
  return fresh;
}
