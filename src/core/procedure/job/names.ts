import {
  elementOf,
  elementsOf,
  elementsOfKind,
  labelIn,
  listOf,
  nameIn,
  nameOfWhere,
  type StillhotDocument,
  type System,
  workPointName,
} from "../../document";
import { type Letter, type Message, say } from "../../terms";

export { elementOf, elementsOf, listOf };

/** What a person calls an element or a point. */
export const nameOf = nameIn;

/** What a person calls a ground set, on or taken off. */
export const setName = (document: { readonly system: System }, id: string): string | Message =>
  elementOf(document.system, id) === undefined ? say("name.set") : nameOf(document, id);

/** A ground set and the very place that it is on, each said once: what has no label goes by its place already. */
export function setAndPlace(document: { readonly system: System }, id: string): string | Message {
  const sets = elementsOfKind(document.system, "ground");
  const at = sets.find(([it]) => it === id)?.[1].at;
  const label = labelIn(document.system, id);
  const isOneOfSeveral = label === "" && sets.filter(([, it]) => it.at === at).length > 1;
  if (at === undefined || isOneOfSeveral) return setName(document, id);
  return say("name.at", { kind: label === "" ? say("kind.ground") : label, place: nameOf(document, at) });
}

/** Work points in words, by their label or the place where they are. */
export const workPlaces = (document: StillhotDocument, ids: Iterable<string>): Message =>
  listOf([...ids].map((id) => workPointName(document, id)));

/** One conductor of a thing that is named: a phase by its letter, a leg as one. */
export const letterIn = (letter: Letter): string | Message =>
  letter === "1" || letter === "2" ? say("name.leg.one", { letters: letter }) : letter;

/** Names in a row, no more than a few of them. */
export function namesOf(names: readonly (Message | string)[], most = 4): Message {
  const more = names.length - most;
  return listOf(more > 0 ? [...names.slice(0, most), say("name.more", { count: more })] : names);
}

/** A number as a person would write it: three figures, no more. */
export function figure(value: number): number {
  return Math.abs(value) >= 1000 ? Math.round(value) : Number(value.toPrecision(3));
}

/** What a finding is about, in words: a thing of the drawing, or what is none, the permit and the job itself. */
export function nameOfPlace(document: StillhotDocument, where: string): string | Message {
  const name = nameOfWhere(document, where);
  if (name !== where) return name;
  return where === "permit" ? say("do.permit") : where === "job" ? say("do.job") : name;
}
