declare const brand: unique symbol;
/** A string that names one kind of thing, so that a point's id cannot be passed where an element's is wanted. */
type Id<Kind extends string> = string & { readonly [brand]: Kind };

/** A pole, pad, vault, station or house: what people walk to. */
export type StructureId = Id<"structure">;

/** The id of a point. */
export type PointId = Id<"point">;

/** The id of an element. */
export type ElementId = Id<"element">;

/** The id of a work point. */
export type WorkPointId = Id<"workPoint">;

/** One thing of a document that can be pointed at. */
export type Owner =
  | { readonly of: "structure"; readonly id: StructureId }
  | { readonly of: "point"; readonly id: PointId }
  | { readonly of: "element"; readonly id: ElementId }
  | { readonly of: "workPoint"; readonly id: WorkPointId };

/** One text for the same thing, whoever speaks of it. */
export const ownerKey = ({ of, id }: Owner): string => `${of} ${id}`;

/** A phase conductor of a line, or a leg of a split secondary. */
export type Phase = "A" | "B" | "C" | "1" | "2";
/** One conductor of a point: a phase, a leg of a split secondary, or the neutral. */
export type Letter = Phase | "N";
/** A conductor of a point, written `p1/A`. */
export type ConductorId = `${string}/${Letter}`;

/** Every letter that a conductor has, in the order in which they are told. */
export const LETTERS: readonly Letter[] = ["A", "B", "C", "1", "2", "N"];

/** Whether a text is the letter of a conductor. */
export const isLetter = (text: string): text is Letter => (LETTERS as readonly string[]).includes(text);

/** A conductor: the letter at a point. */
export const conductorId = (point: string, letter: Letter): ConductorId => `${point}/${letter}`;

/** Splits `p1/A` into its point and its letter. */
export function partsOfConductor(id: ConductorId): { point: PointId; letter: Letter } {
  const slash = id.lastIndexOf("/");
  return { point: id.slice(0, slash) as PointId, letter: id.slice(slash + 1) as Letter };
}

/** Format D1: 1 to 40 of letters, digits, `_` and `-`, not starting with `-`, and no name that JavaScript objects carry. */
export const isWellFormedId = (text: string): boolean =>
  /^[A-Za-z0-9_][A-Za-z0-9_-]{0,39}$/.test(text) &&
  text !== "__proto__" &&
  text !== "constructor" &&
  text !== "prototype";

/** The letters of a phases string, in order. */
export const lettersOf = (phases: string): Phase[] => [...phases] as Phase[];
