import { isWellFormedId } from "../terms";

const LONGEST = 40;
const MARK_LENGTH = 8;

/** What an id is made of: a name, and what tells two of one name apart. */
export interface IdSource {
  readonly name: string;
  readonly own: string;
}

/**
 * Ids of a set of things: the name where it is one thing's alone, else the name and a mark made of the thing's own id.
 * They depend on the set and not on its order, and differ in more than case; none is one that something else has already.
 */
export function idsFor<Key>(
  things: ReadonlyMap<Key, IdSource>,
  others: Iterable<string> = [],
): Map<Key, string> {
  const wanted = new Map<string, number>();
  for (const { name } of things.values()) {
    const plain = plainId(name).toLowerCase();
    wanted.set(plain, (wanted.get(plain) ?? 0) + 1);
  }
  const taken = new Set([...others].map((id) => id.toLowerCase()));
  const ofOthers = new Set(taken);
  const ids = new Map<Key, string>();
  for (const [key, { name, own }] of things) {
    const plain = plainId(name);
    const isAlone = wanted.get(plain.toLowerCase()) === 1 && !ofOthers.has(plain.toLowerCase());
    const id = isAlone && isWellFormedId(plain) ? plain : marked(plain, own, taken);
    taken.add(id.toLowerCase());
    ids.set(key, id);
  }
  return ids;
}

/** A name with nothing in it that an id may not hold. */
const plainId = (name: string): string =>
  name
    .normalize("NFKD")
    .replace(/[^A-Za-z0-9_-]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, LONGEST);

function marked(plain: string, own: string, taken: ReadonlySet<string>): string {
  for (let salt = 0; ; salt++) {
    const mark = markOf(salt === 0 ? own : `${own} ${salt}`);
    const id = plain === "" ? `n-${mark}` : `${plain.slice(0, LONGEST - MARK_LENGTH - 1)}-${mark}`;
    if (!taken.has(id.toLowerCase())) return id;
  }
}

/** Eight letters that stand for any text (FNV-1a, 32 bits; Fowler, Noll and Vo). */
function markOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193) >>> 0;
  return hash.toString(16).padStart(MARK_LENGTH, "0");
}
