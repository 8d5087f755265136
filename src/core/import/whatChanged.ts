import { complete, completePoint, type StillhotDocument } from "../document";

/** What one drawing has otherwise than another; ids, the keys of what is there in both told apart. */
export interface Changes {
  /** in the newer one alone */
  readonly added: readonly string[];
  /** in the older one alone */
  readonly gone: readonly string[];
  readonly changed: readonly { readonly id: string; readonly keys: readonly string[] }[];
}

/**
 * What a newer import of a model has otherwise than an older drawing of it: points and elements go by their ids, which an import
 * makes of the file's own. What was changed by hand since stands in the same list; places, which are metres about the middle
 * of all, are not compared.
 */
export function whatChanged(older: StillhotDocument, newer: StillhotDocument): Changes {
  const [was, is] = [recordsOf(older), recordsOf(newer)];
  return {
    added: [...is.keys()].filter((id) => !was.has(id)),
    gone: [...was.keys()].filter((id) => !is.has(id)),
    changed: [...is].flatMap(([id, record]) => {
      const before = was.get(id);
      const keys = before === undefined ? [] : keysApart(before, record);
      return keys.length === 0 ? [] : [{ id, keys }];
    }),
  };
}

/** Complete records by id; a point and an element of one id are told apart by a mark that no id has. */
function recordsOf({ system: { points, elements } }: StillhotDocument): Map<string, object> {
  const records = new Map<string, object>();
  for (const [id, point] of Object.entries(points)) records.set(id, completePoint(point));
  for (const [id, element] of Object.entries(elements))
    records.set(Object.hasOwn(points, id) ? `${id} ` : id, complete(element));
  return records;
}

function keysApart(before: object, after: object): string[] {
  const [was, is] = [before, after].map((it) => new Map<string, unknown>(Object.entries(it)));
  return [...new Set([...was!.keys(), ...is!.keys()])].filter(
    (key) => key !== "x" && key !== "y" && JSON.stringify(was!.get(key)) !== JSON.stringify(is!.get(key)),
  );
}
