import {
  type Assessment,
  bestLie,
  type ElementId,
  jobOf,
  lettersAt,
  type Owner,
  type Scene,
  sceneOf,
  type StateColumn,
  type StillhotDocument,
  type Structure,
  type StructureId,
  structuresOf,
  type WorkPointId,
} from "../../core";
import { speech } from "../words/language.svelte";

/**
 * A drawing that is looked at: how it is shown, what is chosen on it, and what is lit. Whoever makes one says which drawing
 * it is and what is known of it; nothing here can change that drawing.
 */
export abstract class Viewing {
  abstract readonly document: StillhotDocument;
  /** what is known of its work points, perhaps of the drawing before: `isStale` says so */
  abstract readonly assessment: Assessment | undefined;
  abstract readonly isStale: boolean;
  /** why nothing is known of it */
  abstract readonly failed: string | undefined;
  /** states and volts of this very drawing, its threats perhaps not yet */
  abstract readonly stated: Assessment | undefined;
  /** the states that are shown, where they are not those of `stated` */
  abstract readonly states: StateColumn | undefined;

  selection = $state.raw<readonly Owner[]>([]);
  /** elements of a path that is lit on the drawing */
  lit = $state.raw<readonly ElementId[]>([]);
  /** which threat of the shown work point is lit */
  litThreat = $state<number | undefined>(undefined);
  protected chosenWorkPoint = $state<WorkPointId | undefined>(undefined);

  /** room for the drawing on the screen [px] */
  room = $state.raw<{ readonly width: number; readonly height: number }>({ width: 1200, height: 700 });
  /** how the drawing lies in that room, where the program lays it out */
  lie = $derived.by(() => bestLie(this.drawn, this.room, lettersAt));
  scene: Scene = $derived.by(() =>
    sceneOf(this.drawn, this.stated, {
      ...this.lie,
      catalogue: speech.catalogue,
      ...(this.states === undefined ? {} : { states: this.states }),
    }),
  );

  /** the work points of the drawing, worst first */
  workPoints = $derived.by(() => {
    const reports = this.assessment?.workPoints ?? {};
    const rank = { live: 0, "could-go-live": 1, isolated: 2, grounded: 3 };
    return (Object.keys(jobOf(this.document).workPoints) as WorkPointId[])
      .map((id) => ({ id, ...jobOf(this.document).workPoints[id]!, report: reports[id] }))
      .sort((a, b) => (a.report ? rank[a.report.verdict] : -1) - (b.report ? rank[b.report.verdict] : -1));
  });
  /** the one that the verdict strip speaks of */
  workPoint = $derived.by(
    () => this.workPoints.find((it) => it.id === this.chosenWorkPoint) ?? this.workPoints[0],
  );

  /** the drawing that the picture shows */
  protected get drawn(): StillhotDocument {
    return this.document;
  }

  select(...owners: readonly Owner[]) {
    this.selection = owners;
  }

  toggle(owner: Owner) {
    this.selection = this.isSelected(owner)
      ? this.selection.filter((it) => !isSame(it, owner))
      : [...this.selection, owner];
  }

  isSelected(owner: Owner): boolean {
    return this.selection.some((it) => isSame(it, owner));
  }

  structureOf(id: string): Structure | undefined {
    return structuresOf(this.document.system).get(id as StructureId);
  }

  chooseWorkPoint(id: WorkPointId) {
    this.chosenWorkPoint = id;
    this.unlight();
  }

  /** Lights the path of a threat of the shown work point; lit already, it goes out. */
  light(threat: number) {
    if (this.litThreat === threat) return this.unlight();
    this.litThreat = threat;
    this.lightAgain();
  }

  unlight() {
    this.litThreat = undefined;
    this.lit = [];
  }

  protected lightAgain() {
    if (this.litThreat === undefined) return;
    const threat = this.workPoint?.report?.threats[this.litThreat];
    if (threat === undefined) return this.unlight();
    this.lit = [...new Set([...threat.path, ...threat.upsets.map((it) => it.element)])];
  }
}

/** Whether two owners are the same thing. */
export const isSame = (a: Owner, b: Owner): boolean => a.of === b.of && a.id === b.id;
