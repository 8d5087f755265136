import type { DrawingDraft } from "../draft";
import { type CimModel, idNameOf, named, nameOf } from "./model";
import type { RdfObject } from "./rdf";

/** Where the terminals of each thing lead: keys of points, in the order of the terminals. */
export class Topology {
  readonly #model: CimModel;
  readonly #draft: DrawingDraft;
  readonly #terminals = new Map<string, RdfObject[]>();
  readonly #nodeName: "ConnectivityNode" | "TopologicalNode";

  constructor(model: CimModel, draft: DrawingDraft) {
    this.#model = model;
    this.#draft = draft;
    this.#nodeName = model.all("ConnectivityNode").length > 0 ? "ConnectivityNode" : "TopologicalNode";
    for (const node of model.all(this.#nodeName)) draft.points.set(node.key, this.#pointOf(node));
    for (const terminal of model.all("Terminal")) {
      const of = model.targetKey(terminal, "ConductingEquipment");
      if (of === undefined) continue;
      const known = this.#terminals.get(of);
      if (known === undefined) this.#terminals.set(of, [terminal]);
      else known.push(terminal);
    }
    for (const terminals of this.#terminals.values()) this.#inOrder(terminals);
  }

  /** Keys of everything that has a terminal. */
  get equipment(): Iterable<string> {
    return this.#terminals.keys();
  }

  /**
   * The points of a thing's terminals.
   *
   * @param count how many it must have; fewer is an error, and more are left away
   * @returns nothing where that is an error
   */
  endsOf(object: RdfObject, count: number): string[] | undefined {
    const terminals = this.#terminals.get(object.key) ?? [];
    if (terminals.length < count) {
      this.#draft.ledger.error(
        terminals.length === 1 ? "importing.error.oneTerminal" : "importing.error.terminals",
        {
          object: named(object),
          found: terminals.length,
          expected: count,
        },
      );
      return undefined;
    }
    const ends = terminals.slice(0, count).map((it, index) => this.pointOfTerminal(it, object, index + 1));
    return ends.every((it) => it !== undefined) ? ends : undefined;
  }

  terminalsOf = (object: RdfObject): readonly RdfObject[] => this.#terminals.get(object.key) ?? [];

  /** The point of one terminal; a point of its own where it is not connected. */
  pointOfTerminal(terminal: RdfObject, of: RdfObject, number: number): string | undefined {
    const { ledger } = this.#draft;
    const key = this.#model.targetKey(terminal, this.#nodeName);
    if (key === undefined || !this.#draft.points.has(key)) {
      ledger.error(key === undefined ? "importing.error.noNode" : "importing.error.nodeMissing", {
        terminal: terminal.id,
        number,
        className: of.className,
        name: nameOf(of),
        id: of.id,
        node: key === undefined ? "" : this.#model.shownId(key),
      });
      return undefined;
    }
    if (this.#model.flag(terminal, "connected") !== false) return key;
    const own = `${terminal.key} end`;
    if (!this.#draft.points.has(own)) {
      ledger.note("approximated", "disconnected", nameOf(of));
      const { kind, place, label } = this.#draft.points.get(key)!;
      this.#draft.points.set(own, {
        key: own,
        label: "",
        idOf: { name: `${label}-${number}`, own },
        kind,
        ...(place === undefined ? {} : { place }),
      });
    }
    return own;
  }

  #inOrder(terminals: RdfObject[]): void {
    const numberOf = (it: RdfObject) => this.#model.number(it, "sequenceNumber");
    if (terminals.length > 1 && terminals.some((it) => numberOf(it) === undefined))
      this.#draft.ledger.note("assumed", "terminalOrder", "");
    terminals.sort((a, b) => (numberOf(a) ?? Infinity) - (numberOf(b) ?? Infinity) || 0);
  }

  #pointOf(node: RdfObject) {
    const container = this.#model.target(node, "ConnectivityNodeContainer");
    const isStation = container !== undefined && /^(Substation|VoltageLevel|Bay)$/.test(container.className);
    const name = node.attributes.get("name") ?? "";
    const isMade = this.#model.isDrawing && name === node.attributes.get("aliasName");
    return {
      key: node.key,
      label: isMade ? "" : name || node.attributes.get("mRID") || node.id.replace(/^_/, ""),
      idOf: { name: idNameOf(this.#model, node), own: node.key },
      kind: isStation ? ("station" as const) : ("pole" as const),
    };
  }
}
