import { type ConductorId, type Message, partsOfConductor, type PointId, say } from "../terms";
import { listOf, pointName } from "./names";
import type { System } from "./types";

/**
 * Conductors as people call them: `pole 4, phases A B`. Those of one point stand together, and no more than a few points
 * are told.
 */
export function conductorNames(
  document: { readonly system: System },
  ids: readonly ConductorId[],
  most = 4,
): Message {
  const letters = new Map<PointId, string>();
  for (const { point, letter } of ids.map(partsOfConductor))
    letters.set(point, (letters.get(point) ?? "") + letter);
  const each = [...letters].map(([point, its]) =>
    say("name.conductors", { point: pointName(document, point), which: whichOf(its) }),
  );
  const more = each.length - most;
  const told = more > 0 ? [...each.slice(0, most), say("name.more", { count: more })] : each;
  return listOf(told);
}

function whichOf(letters: string): Message {
  const phases = [...letters].filter((it) => it !== "N");
  const isLeg = phases.some((it) => it === "1" || it === "2");
  const count = phases.length === 1 ? "one" : "many";
  const named = say(`name.${isLeg ? "leg" : "phase"}.${count}`, { letters: phases.join(" ") });
  if (phases.length === letters.length) return named;
  return phases.length === 0 ? say("name.neutral") : say("name.withNeutral", { phases: named });
}
