import {
  asHeard,
  elementName,
  type Message,
  nameOnStructure,
  pointName,
  say,
  structureName,
  structuresOf,
} from "../../src/core";
import type { french } from "../../src/core/words";
import type { Drawn } from "./madeDrawings";
import { spell } from "./words";

type Language = typeof french;

/** Ids by what they are called, as the ear takes it. */
type Called = ReadonlyMap<string, readonly string[]>;

/** All that a drawing names, by what it is called; a place that is all of its structure is called as that is. */
export function namesIn(drawn: Drawn, catalogue?: Language): Called {
  const { system } = drawn;
  // A structure that follows from its points is called as the nearest of them that has a label.
  const structures = [...structuresOf(system).values()].filter(
    ({ points, isDerived, label }) => points.length > 1 && (!isDerived || label === ""),
  );
  return byName(
    [
      ...structures.map(({ id }) => [`structure ${id}`, structureName(drawn, id)] as const),
      ...Object.keys(system.points).map((id) => [id, pointName(drawn, id)] as const),
      ...Object.keys(system.elements).map((id) => [id, elementName(drawn, id)] as const),
    ],
    catalogue,
  );
}

/** What whoever stands at each structure is told of what is on it, by what that is called there. */
export const namesThere = (drawn: Drawn, catalogue?: Language): readonly Called[] =>
  [...structuresOf(drawn.system).values()].map(({ points, elements }) =>
    byName(
      [...points, ...elements].map((id) => [id, nameOnStructure(drawn, id)] as const),
      catalogue,
    ),
  );

/** Things that one could be taken for another, a heap for each name. */
export const takenForEachOther = (called: Called): readonly (readonly string[])[] =>
  [...called.values()].filter((ids) => ids.length > 1);

function byName(
  named: readonly (readonly [id: string, name: Message | string])[],
  catalogue: Language | undefined,
): Called {
  const called = new Map<string, string[]>();
  for (const [id, name] of named) {
    const heard = asHeard(spell(say("name.plain", { name }), catalogue));
    called.set(heard, [...(called.get(heard) ?? []), id]);
  }
  return called;
}
