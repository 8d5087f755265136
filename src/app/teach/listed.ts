import { matching } from "../words/matching";

/** A longer list is not read through: what is in it is sought by what is written on it. */
const MOST_LISTED = 400;
const MOST_FOUND = 50;

/** A thing that may stand in a list, found by its label and its id. */
export interface Listable {
  readonly value: string;
  readonly label: string;
  readonly around: "";
}

/** Whether a list is too long to be read through: in such a one things are sought. */
export const isLong = (all: readonly Listable[]): boolean => all.length > MOST_LISTED;

/** Those that stand in the list: all of a short one, and of a long one what is sought, with the one that is chosen. */
export function listed<Line extends Listable>(
  all: readonly Line[],
  sought: string,
  chosen: string,
): readonly Line[] {
  if (!isLong(all)) return all;
  const found = sought.trim() === "" ? [] : matching(all, sought).slice(0, MOST_FOUND);
  const own = all.find(({ value }) => value === chosen);
  return own === undefined || found.includes(own) ? found : [own, ...found];
}

/** A record as it is sought: by what is written on it, and by its id. */
export function listable(value: string, id: string, record: object): Listable {
  const { label } = record as { label?: unknown };
  return { value, label: typeof label === "string" ? `${label} ${id}` : id, around: "" };
}
