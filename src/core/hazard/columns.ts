import { type ConductorId, type ElementId, type Letter, LETTERS } from "../terms";
import { STATES, type StateColumn } from "./stateColumn";
import type { Assessment, ConductorReport, ElementReport } from "./types";

/**
 * An assessment as columns, to be sent elsewhere: tens of thousands of small records take longer to copy than a frame,
 * a few arrays do not.
 */
export interface AssessmentColumns {
  /** parted by spaces; absent where they are those of the answer before */
  readonly conductorIds?: string;
  readonly elementIds?: string;
  /** places in `STATES` */
  readonly states: Uint8Array;
  readonly volts: Float64Array;
  /** not a number where it is not told */
  readonly voltsWorst: Float64Array;
  readonly voltsLoadsOff: Float64Array;
  readonly angleDeg: Float64Array;
  /** which of `sources` reach each conductor */
  readonly reachedBy: Uint32Array;
  readonly sources: readonly (readonly ElementId[])[];
  /** bits of `LETTERS` for each element, and the figures of its letters one after the other */
  readonly letters: Uint8Array;
  readonly amps: Float64Array;
  readonly ampAngleDeg: Float64Array;
  readonly workPoints: Assessment["workPoints"];
  readonly findings: Assessment["findings"];
}

/** Ids of an answer, kept to name the rows of the next one. */
export interface RowIds {
  readonly conductors: readonly ConductorId[];
  readonly elements: readonly ElementId[];
}

/** The assessment that columns were made of; each record is made when it is asked for. */
export function fromColumns(
  columns: AssessmentColumns,
  before?: RowIds,
): { readonly assessment: Assessment; readonly ids: RowIds; readonly states: StateColumn } {
  const ids: RowIds = {
    conductors: split<ConductorId>(columns.conductorIds) ?? before!.conductors,
    elements: split<ElementId>(columns.elementIds) ?? before!.elements,
  };
  const { states, workPoints, findings } = columns;
  return {
    ids,
    states: { ids: ids.conductors, states },
    assessment: {
      conductors: recordOf(ids.conductors, (row) => conductorAt(columns, row)),
      elements: recordOf(ids.elements, flowsOf(columns)),
      workPoints,
      findings,
    },
  };
}

const split = <Id extends string>(text: string | undefined): readonly Id[] | undefined =>
  text === undefined ? undefined : text === "" ? [] : (text.split(" ") as Id[]);

const conductorAt = (columns: AssessmentColumns, row: number): ConductorReport => ({
  state: STATES[columns.states[row]!]!,
  volts: columns.volts[row]!,
  ...(Number.isNaN(columns.voltsWorst[row]!) ? {} : { voltsWorst: columns.voltsWorst[row]! }),
  voltsLoadsOff: columns.voltsLoadsOff[row]!,
  angleDeg: columns.angleDeg[row]!,
  sources: columns.sources[columns.reachedBy[row]!]!,
});

function flowsOf({ letters, amps, ampAngleDeg }: AssessmentColumns): (row: number) => ElementReport {
  let starts: Uint32Array | undefined;
  return (row) => {
    starts ??= startsOf(letters);
    const own = LETTERS.filter((_, bit) => (letters[row]! & (1 << bit)) !== 0);
    const figures = (column: Float64Array): Partial<Record<Letter, number>> =>
      Object.fromEntries(own.map((letter, nth) => [letter, column[starts![row]! + nth]!]));
    return { amps: figures(amps), angleDeg: figures(ampAngleDeg) };
  };
}

function startsOf(letters: Uint8Array): Uint32Array {
  const starts = new Uint32Array(letters.length);
  for (let row = 1; row < letters.length; row++) {
    let count = 0;
    for (let bits = letters[row - 1]!; bits !== 0; bits &= bits - 1) count++;
    starts[row] = starts[row - 1]! + count;
  }
  return starts;
}

/** An object whose members are made when they are asked for, and then kept. */
function recordOf<Id extends string, Member>(
  ids: readonly Id[],
  at: (row: number) => Member,
): Readonly<Record<Id, Member>> {
  const made = new Map<string, Member>();
  const rows = () => rowsOf(ids);
  const member = (id: string | symbol): Member | undefined => {
    if (typeof id === "symbol") return undefined;
    const row = made.has(id) ? undefined : rows().get(id);
    if (row !== undefined) made.set(id, at(row));
    return made.get(id);
  };
  return new Proxy({} as Record<Id, Member>, {
    get: (_, id) => member(id),
    has: (_, id) => typeof id === "string" && rows().has(id),
    ownKeys: () => ids,
    getOwnPropertyDescriptor: (_, id) => {
      const value = member(id);
      return value === undefined ? undefined : { value, enumerable: true, configurable: true };
    },
    set: () => false,
    defineProperty: () => false,
    deleteProperty: () => false,
  });
}

const knownRows = new WeakMap<readonly string[], ReadonlyMap<string, number>>();

/** The row of each id. */
export function rowsOf(ids: readonly string[]): ReadonlyMap<string, number> {
  const known = knownRows.get(ids);
  if (known !== undefined) return known;
  const fresh = new Map(ids.map((id, row) => [id, row]));
  knownRows.set(ids, fresh);
  return fresh;
}
