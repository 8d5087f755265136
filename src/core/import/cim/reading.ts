import type { DrawingDraft, DraftElement } from "../draft";
import type { NeutralWay } from "../neutral";
import { type CimModel, idNameOf, named, nameOf } from "./model";
import type { RdfObject } from "./rdf";
import type { Topology } from "./topology";

/** What every reader of a kind of equipment works with. */
export class Reading {
  constructor(
    readonly model: CimModel,
    readonly topology: Topology,
    readonly draft: DrawingDraft,
    readonly way: NeutralWay,
    readonly frequencyHz: 50 | 60,
  ) {}

  readonly named = named;

  /** Whether a thing is out of service: it is left out, and that is said. */
  isOut(object: RdfObject): boolean {
    const isOut = this.model.flag(object, "inService") === false;
    if (isOut) this.draft.ledger.note("leftOut", "outOfService", nameOf(object));
    return isOut;
  }

  /**
   * Adds what an object becomes.
   *
   * @param piece tells several pieces of one object apart, in their ids and labels
   * @param isDirected whether its ends stand as they are, whichever of them is fed
   */
  add(
    object: RdfObject,
    {
      keys,
      ends,
      piece = "",
      isDirected = this.model.isDrawing,
    }: Pick<DraftElement, "keys" | "ends" | "isDirected"> & { readonly piece?: string },
  ): void {
    const name = object.attributes.get("name") ?? "";
    const idName = idNameOf(this.model, object);
    this.draft.add({
      idOf: {
        name: piece === "" ? idName : `${idName}-${piece}`,
        own: piece === "" ? object.key : `${object.key}-${piece}`,
      },
      label: piece === "" || (name === "" && this.model.isDrawing) ? name : `${nameOf(object)} ${piece}`,
      shown: named(object),
      keys,
      ends,
      isDirected,
    });
  }

  /** Letters that what was read so far brings to the ends of a thing: those that all of its ends have, where any has some. */
  lettersAround(object: RdfObject): string {
    const ends = this.topology
      .terminalsOf(object)
      .flatMap((it) => this.model.targetKey(it, "ConnectivityNode", "TopologicalNode") ?? []);
    const known = ends.map((it) => this.draft.lettersAtPoint(it)).filter((it) => it !== "");
    if (known.length === 0) return "";
    return [...known[0]!].filter((letter) => known.every((it) => it.includes(letter))).join("");
  }

  /** Whether anything but one object has a terminal at a point. */
  isUsedByOthers(point: string, object: RdfObject): boolean {
    const node = this.model.byKey(point);
    if (node === undefined) return false;
    return this.model
      .pointingTo(node, "ConnectivityNode", "TopologicalNode")
      .some(
        (it) => it.className === "Terminal" && this.model.targetKey(it, "ConductingEquipment") !== object.key,
      );
  }

  /** Whether a thing of these letters joins the neutrals of its ends: as the file says, or always, or never. */
  neutralOf(letters: readonly string[]): { readonly neutral?: false } {
    return this.way === "given" && !letters.includes("N") ? { neutral: false } : this.withoutNeutral;
  }

  /** Two-ended things join no neutrals where every neutral is perfect earth. */
  get withoutNeutral(): { readonly neutral?: false } {
    return this.way === "earth" ? { neutral: false } : {};
  }
}
