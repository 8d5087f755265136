import {
  type Assessment,
  type Change,
  type Edit,
  complete,
  conductorsOf,
  edits,
  elementCountOf,
  type ElementId,
  emptyHistory,
  hasPlacedPoints,
  type History,
  isRefusal,
  jobLogOf,
  jobOf,
  listOf,
  type Message,
  moveStructures,
  objectionTo,
  type Owner,
  type PointId,
  redo,
  redoKept,
  type Refusal,
  remember,
  type Scene,
  type StateColumn,
  statesUntold,
  type StillhotDocument,
  type StructureId,
  structureOf,
  structuresOf,
  type System,
  undo,
  undoKept,
} from "../../core";
import { Assessor } from "../worker/assessor";
import { say } from "../words/catalogue";
import { later } from "../words/later";
import type { Notice } from "./notice";
import { visitOfWords } from "./typed";
import { Viewing } from "./viewing.svelte";

type Things = Required<edits.Things>;

/** What a tap on the drawing does. */
export type Mode =
  | { readonly name: "select" }
  | { readonly name: "gather" }
  | { readonly name: "join"; readonly from: PointId | undefined }
  | { readonly name: "place" }
  | { readonly name: "move" };

/** What may change so much at once that the drawing is kept as it was before. */
export type LargeEdit = "import" | "plan" | "rehearse";

/** What a press does where nothing else is under way. */
export const SELECTING: Mode = { name: "select" };

const READ_ONLY = say("keep.readOnly");

/** The only mutable thing in the app: which drawing is shown, what is selected, and how it came to be. */
export class Session extends Viewing {
  document: StillhotDocument;
  mode = $state.raw<Mode>(SELECTING);
  notice = $state.raw<Notice | undefined>(undefined);
  /** where the selection is being dragged to, before it is dropped */
  preview = $state.raw<StillhotDocument | undefined>(undefined);
  /** a structure that was just grown, whose number is proposed and may be typed over */
  fresh = $state.raw<StructureId | undefined>(undefined);
  /** of what the person asks why it is hot */
  asksWhy = $state.raw<Owner | undefined>(undefined);
  /** another object for each drawing that is opened, so that whoever shows it knows when it is another one */
  opened: object = $state.raw({});
  /** another window is where this drawing is edited */
  isReadOnly = $state(false);
  /** Keeps the drawing as it is now among the earlier versions, before something large is done to it. */
  keepBefore: (what: LargeEdit) => void = () => undefined;
  /** Keeps the drawing on the device now, without waiting for a pause. */
  keepNow: () => void = () => undefined;
  /** Which drawing of this device it is. */
  keptAs: () => string = () => "";
  /** Keeps a drawing that nobody has changed yet too, as what comes with its photos has to. */
  keepAsIs: () => Promise<void> = () => Promise.resolve();

  #assessed = $state.raw<{
    document: StillhotDocument;
    assessment: Assessment | undefined;
    failed?: string;
  }>();
  /** states of the newest drawing that they were worked out for, before its threats are */
  #stated = $state.raw<{ document: StillhotDocument; states: StateColumn; assessment: Assessment }>();
  #history = $state.raw(emptyHistory);
  /** whether the history comes from a shelf, where it may have been damaged */
  #isKept = false;
  readonly #assessor: Assessor;
  /** the drawing as a drag began */
  #still: Scene | undefined;
  /** states as they were last worked out; while a newer answer is on its way, `isStale` says so */
  assessment = $derived(this.#assessed?.assessment);
  isStale = $derived.by(() => this.#assessed?.document !== this.document);
  failed = $derived(this.#assessed?.failed);
  /** what is known of this very drawing; nothing while that is on its way: what leaves the app shows no older states */
  told = $derived.by(() => (this.isStale ? undefined : this.assessment));
  /** whether the states of this very drawing are known, its threats perhaps not yet */
  #isStated = $derived.by(() => {
    const known = this.#stated?.document;
    if (known === undefined || known === this.document) return known !== undefined;
    return this.#assessor.solver?.standsAlike(known, this.document) ?? false;
  });
  /**
   * The states that are shown: those of this very drawing once they are known, and until then what reach tells, which
   * takes what it does not know for hot.
   */
  states = $derived.by((): StateColumn | undefined => {
    const known = this.#stated;
    if (this.failed !== undefined) return undefined;
    if (known === undefined || this.#isStated) return known?.states;
    const { system } = this.document;
    const { solver } = this.#assessor;
    const atHand = solver?.statesAtHand(system);
    const byReach = isSmall(system) ? (atHand ?? solver?.statesByReach(system)) : atHand;
    return byReach ?? statesUntold(known.states);
  });
  /** states and volts of this very drawing, its threats perhaps not yet */
  stated = $derived.by(() => (this.#isStated ? this.#stated?.assessment : undefined));
  /** what undo does where a place has something of its own to take back, if there is anything */
  ownUndo = $state.raw<(() => void) | "nothing" | undefined>(undefined);
  canUndo = $derived(this.ownUndo === undefined ? this.#history.done.length > 0 : this.ownUndo !== "nothing");
  canRedo = $derived(this.ownUndo === undefined && this.#history.undone.length > 0);

  constructor(start: StillhotDocument) {
    super();
    this.document = $state.raw(start);
    this.#assessor = new Assessor({
      states: (document, states, assessment) => {
        this.#stated = { document, states, assessment };
        this.#makeReady(document);
      },
      assessment: (document, assessment, failed) => {
        this.#assessed = { document, assessment, ...(failed === undefined ? {} : { failed }) };
        this.lightAgain();
      },
    });
    this.#assessor.ask(start);
  }

  /** While something is dragged, the drawing as it would be if it were dropped. */
  protected override get drawn(): StillhotDocument {
    return this.preview ?? this.document;
  }

  /** Shows another drawing, with a history of its own. */
  open(document: StillhotDocument, history: History = emptyHistory) {
    this.#assessor.startAfresh();
    this.opened = {};
    this.document = document;
    this.#history = history;
    this.#isKept = history !== emptyHistory;
    this.#assessed = undefined;
    this.#stated = undefined;
    this.selection = [];
    this.mode = SELECTING;
    this.preview = undefined;
    this.notice = undefined;
    this.chosenWorkPoint = undefined;
    this.unlight();
    this.#assessor.ask(document);
  }

  get history(): History {
    return this.#history;
  }

  /** Why an edit cannot be done now; nothing where it can. */
  whyNot(edit: Edit): Message | undefined {
    const tried = this.#tried(edit);
    return isRefusal(tried) ? tried.refused : undefined;
  }

  can(edit: Edit): boolean {
    return this.whyNot(edit) === undefined;
  }

  #tried(edit: Edit): Change | Refusal {
    return this.isReadOnly ? { refused: READ_ONLY } : edits.leftToProgram(edit)(this.document);
  }

  /** Does an edit, or says why it cannot be done. Returns what was done. */
  run(
    edit: Edit,
    { offersUndo = false, gesture }: { offersUndo?: boolean; gesture?: string } = {},
  ): Change | undefined {
    const change = this.#tried(edit);
    if (isRefusal(change)) return void this.say(change.refused, "refusal");
    this.#history = remember(this.#history, change, gesture ?? visitOfWords());
    const also = change.also ?? [];
    this.notice =
      offersUndo || also.length > 0
        ? { message: also.length > 0 ? listOf(also) : change.label, tone: "note", offersUndo: true }
        : undefined;
    const before = this.document;
    this.#show(change.after, change.label);
    void this.#tellCutOff(before, change, also.length > 0 ? listOf(also) : undefined);
    return change;
  }

  /**
   * Writes down what was done of the job. It is no edit of the drawing: undo goes past it, and it is kept at once, since a
   * phone that dies in the rain must not take it along.
   */
  note(lines: Edit) {
    if (this.refusesToEdit()) return;
    const change = lines(this.document);
    if (isRefusal(change)) return this.say(change.refused, "refusal");
    this.#show(change.after);
    this.keepNow();
  }

  /** Only what takes a way for the current away, or leads it elsewhere, cuts anything off. */
  async #tellCutOff({ system }: StillhotDocument, { forward, after }: Change, also: Message | undefined) {
    const isCutting = forward.some(
      ({ op, path }) =>
        path[0] === "system" && (op === "remove" || (op === "replace" && path[1] === "elements")),
    );
    if (!isCutting || !isSmall(system)) return;
    const { cutOffNotice } = await later(() => import("./cutOffNotice"));
    if (this.document.system === after.system) this.notice = cutOffNotice(system, after, also) ?? this.notice;
  }

  /** Says so where another window is the one that edits. */
  refusesToEdit(): boolean {
    if (this.isReadOnly) this.say(READ_ONLY, "refusal");
    return this.isReadOnly;
  }

  undo() {
    if (this.refusesToEdit()) return;
    if (typeof this.ownUndo === "function") return this.ownUndo();
    if (this.ownUndo === undefined) this.#move(this.#isKept ? undoKept : undo);
  }

  redo() {
    if (this.refusesToEdit()) return;
    this.#move(this.#isKept ? redoKept : redo);
  }

  /** Goes one step along the history. A damaged one is let go, and the drawing stays. */
  #move(along: typeof undoKept) {
    const step = along(this.#history, this.document);
    if (step === undefined) return;
    if (isRefusal(step)) {
      this.#history = emptyHistory;
      return this.say(step.refused, "refusal");
    }
    this.#history = step.history;
    this.notice = undefined;
    this.#show(
      step.document,
      along === undo || along === undoKept ? say("app.undone", { what: step.label }) : step.label,
    );
  }

  /** What is selected, as the edits take it. */
  get things(): Things {
    const ids = (of: Owner["of"]) => this.selection.filter((it) => it.of === of).map((it) => it.id as string);
    return {
      structures: ids("structure"),
      points: ids("point"),
      elements: ids("element"),
      workPoints: ids("workPoint"),
    };
  }

  /** The same with what is on the structures in their place. */
  get thingsOnThem(): Things {
    const things = this.things;
    const on = things.structures.flatMap((id) => this.structureOf(id) ?? []);
    return {
      ...things,
      structures: [],
      points: [...new Set([...things.points, ...on.flatMap((it) => it.points)])],
      elements: [...new Set([...things.elements, ...on.flatMap((it) => it.elements)])],
    };
  }

  /** The one point that is selected, or the first one of the one structure. */
  get onlyPoint(): PointId | undefined {
    const [only] = this.selection;
    if (this.selection.length !== 1) return undefined;
    if (only?.of === "structure") return this.structureOf(only.id)?.points[0];
    return only?.of === "point" ? only.id : undefined;
  }

  /** The points that a drag of the selection moves. */
  get movingPoints(): string[] {
    const { points, elements } = this.thingsOnThem;
    const moving = new Set(points);
    for (const id of elements) {
      const ends = complete(this.document.system.elements[id as ElementId]!) as unknown as Record<
        string,
        string
      >;
      for (const end of ["from", "to", "alt", "at"])
        if (ends[end] !== undefined && isPoint(this.document, ends[end])) moving.add(ends[end]);
    }
    return [...moving];
  }

  /** The edit that moves what is selected: points where persons placed them, else whole structures with what is on them. */
  moved(x: number, y: number, grid: number): Edit {
    const points = this.movingPoints;
    if (hasPlacedPoints(this.document.system)) return edits.movePoints(points, { x, y }, grid);
    return moveStructures(this.document, this.scene, points, { x, y }, grid);
  }

  previewMove(dx: number, dy: number, grid: number) {
    const moved = this.#movedFrom(dx, dy, grid)(this.document);
    this.preview = isRefusal(moved) ? undefined : moved.after;
  }

  dropMove(dx: number, dy: number, grid: number) {
    const moved = this.#movedFrom(dx, dy, grid);
    this.preview = undefined;
    this.#still = undefined;
    if (Math.hypot(dx, dy) < 1) return;
    if (!this.refusesToEdit() && this.can(moved)) this.run(moved);
  }

  /** A drag counts from where things stood when it began. */
  #movedFrom(dx: number, dy: number, grid: number): Edit {
    const points = this.movingPoints;
    if (hasPlacedPoints(this.document.system)) return edits.movePoints(points, { x: dx, y: dy }, grid);
    if (this.preview === undefined) this.#still = this.scene;
    return moveStructures(this.document, this.#still ?? this.scene, points, { x: dx, y: dy }, grid);
  }

  /** Removes these things, or what is selected; then the neighbour toward the source is. */
  async remove(things?: edits.Things) {
    const { remove, removeSelected } = await later(() => import("./removing"));
    if (things === undefined) removeSelected(this);
    else remove(this, things);
  }

  say(message: Message, tone: Notice["tone"] = "note") {
    this.notice = { message, tone, offersUndo: false };
  }

  /** Does beforehand, in a quiet moment, what the first edit of a large drawing would else wait for. */
  #makeReady(document: StillhotDocument) {
    if (isSmall(document.system)) return;
    // One after the other: a press between the two is answered between them.
    whenQuiet(() => {
      if (this.document !== document) return;
      objectionTo(document);
      whenQuiet(() => {
        if (this.document === document) this.#assessor.solver?.statesByReach(document.system);
      });
    });
  }

  /** @param what was done to the drawing, for the log of a job that is under way */
  #show(document: StillhotDocument, what?: Message) {
    const before = this.document;
    this.document = document;
    this.preview = undefined;
    const left = this.selection.flatMap((it) => stillThere(before, document, it) ?? []);
    if (left.some((it, nth) => it !== this.selection[nth]) || left.length < this.selection.length)
      this.selection = left;
    this.#assessor.ask(this.document);
    if (what !== undefined && jobLogOf(before).length > 0) void this.#noteChange(before, what);
  }

  /** Writes down that the drawing was changed under a job. */
  async #noteChange(was: StillhotDocument, what: Message) {
    const { changeNoted } = await later(() => import("./changeNoted"));
    const noted = changeNoted(was, this.document, what);
    if (noted !== this.document) this.#show(noted);
  }
}

/** Up to so many elements whatever is derived from a drawing is built anew within a frame. */
const SMALL = 2000;
const isSmall = (system: System): boolean => elementCountOf(system) <= SMALL;

const whenQuiet = (act: () => void): void => {
  if ("requestIdleCallback" in window) requestIdleCallback(act);
  else setTimeout(act);
};

const isPoint = (document: StillhotDocument, id: string): boolean =>
  Object.hasOwn(document.system.points, id);

/** A thing, unless it is gone; a structure goes by another id once it stands in the file, or no longer does. */
function stillThere(before: StillhotDocument, after: StillhotDocument, owner: Owner): Owner | undefined {
  if (owner.of !== "structure") return exists(after, owner) ? owner : undefined;
  if (structuresOf(after.system).has(owner.id)) return owner;
  const point = structuresOf(before.system)
    .get(owner.id)
    ?.points.find((it) => isPoint(after, it));
  const id = point === undefined ? undefined : structureOf(after.system, point)?.id;
  return id === undefined ? undefined : { of: "structure", id };
}

function exists(document: StillhotDocument, { of, id }: Owner): boolean {
  if (of === "point") return isPoint(document, id);
  if (of === "element") return Object.hasOwn(document.system.elements, id);
  return Object.hasOwn(jobOf(document).workPoints, id);
}

/** The letters of a point's phase conductors, without the neutral. */
export const phasesAt = (document: StillhotDocument, point: string): string =>
  (conductorsOf(document.system).get(point) ?? []).filter((it) => it !== "N").join("");
