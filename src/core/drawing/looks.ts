import { MANY_OTHERWISE } from "./tolerances";
import { conductorsOf, perObject, type System } from "../document";
import { STATES, rowsOf, type StateColumn } from "../hazard";
import type { ConductorId, Letter } from "../terms";
import type { Look } from "./shapes";

const NONE: StateColumn = { ids: [], states: new Uint8Array() };
const BACKFED = STATES.indexOf("backfed");
const UNKNOWN = STATES.indexOf("unknown");

/** Rows of the conductors at each point. */
const rowsAtPoints = perObject((ids: readonly ConductorId[]): ReadonlyMap<string, readonly number[]> => {
  const rows = new Map<string, number[]>();
  ids.forEach((id, row) => {
    const point = pointOf(id);
    const own = rows.get(point);
    if (own === undefined) rows.set(point, [row]);
    else own.push(row);
  });
  return rows;
});

const NO_ROWS: readonly number[] = [];

/** How the conductors of a drawing look, by their states. A conductor whose state is not told is unknown. */
export class Looks {
  readonly #rows: ReadonlyMap<string, readonly number[]>;
  readonly #conductors: ReadonlyMap<string, readonly Letter[]>;
  readonly column: StateColumn;
  #backfed: ReadonlySet<ConductorId> | undefined;

  constructor(system: System, column: StateColumn = NONE) {
    this.column = column;
    this.#conductors = conductorsOf(system);
    this.#rows = rowsAtPoints(column.ids);
  }

  at(point: string, letter: Letter): Look {
    const { ids, states } = this.column;
    for (const row of this.#rows.get(point) ?? NO_ROWS)
      if (ids[row]!.endsWith(letter)) return STATES[states[row]!]!;
    return "unknown";
  }

  lettersAt(point: string): readonly Letter[] {
    return this.#conductors.get(point) ?? [];
  }

  /** The conductors of a point and their looks as one comparable text. */
  textAt(point: string): string {
    let text = "";
    for (const letter of this.lettersAt(point)) text += letter;
    for (const row of this.#rows.get(point) ?? NO_ROWS)
      text += `${this.column.ids[row]!.at(-1)}${this.column.states[row]}`;
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

  /** Whether so many conductors look otherwise than before that all are best looked at again, each when it is asked for. */
  areManyOtherwise({ column: before }: Looks): boolean {
    const { ids, states } = this.column;
    if (before === this.column || !areAlike(before.ids, ids)) return false;
    let differing = 0;
    for (let row = 0; row < states.length; row++) if (states[row] !== before.states[row]) differing++;
    return differing > Math.min(MANY_OTHERWISE, ids.length / 3);
  }

  /** Points with a conductor that looks otherwise than before. */
  changedSince({ column: before }: Looks): Set<string> {
    const { ids, states } = this.column;
    const changed = new Set<string>();
    if (before === this.column) return changed;
    if (areAlike(before.ids, ids)) {
      for (let row = 0; row < ids.length; row++)
        if (states[row] !== before.states[row]) changed.add(pointOf(ids[row]!));
      return changed;
    }
    const [rows, now] = [rowsOf(before.ids), rowsOf(ids)];
    ids.forEach((id, row) => {
      const was = rows.get(id);
      if (states[row] !== (was === undefined ? UNKNOWN : before.states[was])) changed.add(pointOf(id));
    });
    before.ids.forEach((id) => {
      if (!now.has(id)) changed.add(pointOf(id));
    });
    return changed;
  }
}

const knownAlike = new WeakMap<readonly ConductorId[], readonly ConductorId[]>();

/** Whether two lists have the same rows: compared once, since lists are kept from edit to edit. */
function areAlike(one: readonly ConductorId[], other: readonly ConductorId[]): boolean {
  if (one === other || knownAlike.get(one) === other) return true;
  if (one.length !== other.length || !one.every((id, row) => id === other[row])) return false;
  knownAlike.set(one, other);
  knownAlike.set(other, one);
  return true;
}

/** The id of the point that a conductor is at. */
export const pointOf = (id: ConductorId): string => id.slice(0, id.lastIndexOf("/"));
