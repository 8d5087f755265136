/** Where things stand in the columns of a circuit. */
import { perObject } from "../document";
import type { Circuit } from "./circuit";

const indices = perObject(
  (elementIds: Circuit["elementIds"]) => new Map(elementIds.map((id, index) => [id as string, index])),
);

/** Index of an element; nothing where the circuit has none of that id. */
export const indexOfElement = ({ elementIds }: Circuit, id: string): number | undefined =>
  indices(elementIds).get(id);

/** The rows of an element in each of a circuit's columns. */
export interface Rows {
  readonly join: number[];
  readonly stretch: number[];
  readonly unit: number[];
  readonly branch: number[];
  readonly emf: number[];
}

/** Where the parts of an element stand, by its index; nothing where it has none. */
export const rowsOf = (circuit: Circuit, element: number): Rows | undefined =>
  rowsByElement(circuit).get(element);

const known = new WeakMap<object, ReadonlyMap<number, Rows>>();

/** The same for circuits that lie alike. */
function rowsByElement(circuit: Circuit): ReadonlyMap<number, Rows> {
  const { structure, joins, stretches, units, branches, emfs } = circuit;
  const found = known.get(structure);
  if (found !== undefined) return found;
  const rows = new Map<number, Rows>();
  const add = (element: number, column: keyof Rows, row: number) => {
    let own = rows.get(element);
    if (own === undefined)
      rows.set(element, (own = { join: [], stretch: [], unit: [], branch: [], emf: [] }));
    own[column].push(row);
  };
  joins.element.forEach((element, row) => add(element, "join", row));
  stretches.forEach(({ element }, row) => add(element, "stretch", row));
  units.forEach(({ element }, row) => add(element, "unit", row));
  branches.forEach(({ element }, row) => add(element, "branch", row));
  emfs.forEach(({ element }, row) => add(element, "emf", row));
  known.set(structure, rows);
  return rows;
}
