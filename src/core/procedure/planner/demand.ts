import { type StillhotDocument, workPointsOf } from "../../document";
import { circuitOf } from "../../network";
import { workedOn } from "./intent";
import type { Demand } from "./search";
import { type Separation, suppliesOf } from "./ways";
import type { Wishes } from "./wishes";

/** What a set of openings has to bring about, by what the rules have asked for so far. */
export function demandOf(document: StillhotDocument, wishes: Wishes): Demand {
  const circuit = circuitOf(document.system);
  const targets = workedOn(document).flatMap((id) => circuit.nodeOf.get(id) ?? []);
  const supplies: Separation = { name: "supplies", targets, sources: suppliesOf(circuit, wishes.strictness) };
  return {
    start: workPointsOf(document)[0]![1].at,
    separations: [supplies, ...wishes.separations],
    strictness: wishes.strictness,
    forced: wishes.forced,
    forbidden: wishes.forbidden,
    first: wishes.first,
    ties: [],
  };
}

/** One text for demands that are alike. */
export const demandKey = ({ separations, strictness, forced, forbidden, first }: Demand): string =>
  JSON.stringify([separations.map(({ name }) => name), strictness, forced, [...forbidden], [...first]]);
