import { type StillhotDocument, type System, transformersOf } from "../../document";
import { circuitOf, REACH, reachOf, standingOf } from "../../network";
import { conductorId, type ElementId, lettersOf } from "../../terms";
import { inThisOrder, type Move, systemMoved } from "./closing";

/**
 * The same closings with what completes a bank before what brings the supply to it: a link that blew is renewed and its cutout
 * closed while nothing feeds it, so that no bank stands on fewer of its phases meanwhile.
 */
export function withWholeBanks(
  document: StillhotDocument,
  start: System,
  moves: readonly Move[],
): readonly Move[] {
  let order = moves;
  for (let at = 0; at < order.length; at++) {
    const move = order[at]!;
    const left = newlyCrippled(move.before, systemMoved(document, move));
    if (move.way === "off" || left.length === 0) continue;
    const earlier = order
      .slice(at + 1)
      .filter(({ way, opening }) => way === "on" && opening.element !== move.opening.element)
      .map((later) =>
        inThisOrder(document, start, [
          ...order.slice(0, at),
          later,
          ...order.slice(at).filter((it) => it !== later),
        ]),
      )
      .find((tried) =>
        [tried[at]!, tried[at + 1]!].every(
          (it) => newlyCrippled(it.before, systemMoved(document, it)).length === 0,
        ),
      );
    if (earlier !== undefined) order = earlier;
  }
  return order;
}

/** Banks that stand on fewer of their phases after something moved, and did not before. */
function newlyCrippled(before: System, after: System): ElementId[] {
  const were = crippledIn(before);
  return crippledIn(after).filter((id) => !were.includes(id));
}

/** Banks of which the supply comes to some phases and not to others. */
function crippledIn(system: System): ElementId[] {
  const circuit = circuitOf(system);
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: true });
  return transformersOf(system).flatMap(([id, { from, phases }]) => {
    const fed = lettersOf(phases).filter(
      (letter) => (how[circuit.nodeOf.get(conductorId(from, letter)) ?? -1]! & REACH.forward) !== 0,
    );
    return fed.length === 0 || fed.length === phases.length ? [] : [id];
  });
}
