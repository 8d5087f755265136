import { conductorsOf, type System } from "../document";
import { KNOWN_STATES, rowsOf, type StateColumn } from "../hazard";
import { type ConductorId, conductorId, type Letter } from "../terms";
import type { Look } from "./shapes";

const NONE: StateColumn = { ids: [], states: new Uint8Array() };
const BACKFED = KNOWN_STATES.indexOf("backfed");
const UNKNOWN = KNOWN_STATES.indexOf("unknown");

/** How the conductors of a drawing look, by their states. A conductor whose state is not told is unknown. */
export class Looks {
  readonly #rows: ReadonlyMap<string, number>;
  readonly #system: System;
  readonly column: StateColumn;
  #backfed: ReadonlySet<ConductorId> | undefined;

  constructor(system: System, column: StateColumn = NONE) {
    this.#system = system;
    this.column = column;
    this.#rows = rowsOf(column.ids);
  }

  at(point: string, letter: Letter): Look {
    const row = this.#rows.get(conductorId(point, letter));
    return row === undefined ? "unknown" : KNOWN_STATES[this.column.states[row]!]!;
  }

  lettersAt(point: string): readonly Letter[] {
    return conductorsOf(this.#system).get(point) ?? [];
  }

  /** The looks at a point as one comparable text. */
  textAt(point: string): string {
    let text = "";
    for (const letter of this.lettersAt(point)) text += `${letter} ${this.at(point, letter)} `;
    return text;
  }

  get backfed(): ReadonlySet<ConductorId> {
    if (this.#backfed !== undefined) return this.#backfed;
    const { ids, states } = this.column;
    const found = new Set<ConductorId>();
    for (let row = states.indexOf(BACKFED); row !== -1; row = states.indexOf(BACKFED, row + 1))
      found.add(ids[row]!);
    return (this.#backfed = found);
  }

  /** Points with a conductor that looks otherwise than before. */
  changedSince({ column: before }: Looks): Set<string> {
    const { ids, states } = this.column;
    const changed = new Set<string>();
    if (before === this.column) return changed;
    if (before.ids === ids) {
      for (let row = 0; row < ids.length; row++)
        if (states[row] !== before.states[row]) changed.add(pointOf(ids[row]!));
      return changed;
    }
    const rows = rowsOf(before.ids);
    ids.forEach((id, row) => {
      const was = rows.get(id);
      if (states[row] !== (was === undefined ? UNKNOWN : before.states[was])) changed.add(pointOf(id));
    });
    before.ids.forEach((id) => {
      if (!this.#rows.has(id)) changed.add(pointOf(id));
    });
    return changed;
  }
}

export const pointOf = (id: ConductorId): string => id.slice(0, id.lastIndexOf("/"));
