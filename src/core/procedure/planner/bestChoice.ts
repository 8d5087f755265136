import { MOST_SETS_BEYOND, MOST_SUPPLIES_TRIED, MOST_TIES } from "../tolerances";
import type { StillhotDocument } from "../../document";
import { compareRanks } from "./breaking";
import { isOff } from "./ending";
import { type Choice, choices, type DeadEnds, type Demand } from "./search";

/** One of the sets of openings that bring about what is demanded, the best being 0; ties feed the rest where they can. */
export function nthChoiceOf(
  document: StillhotDocument,
  demand: Demand,
  deadEnds: DeadEnds,
  nth: number,
): Choice | undefined {
  const found = cheapest(document, demand, deadEnds, nth);
  const [first] = found;
  if (first !== undefined) found.push(...withTies(document, demand, first));
  return found.sort(byCost)[nth];
}

/** Sets in the order of what they cost, as many as are asked for and some beyond: what closes again makes a dearer one cheaper. */
function cheapest(document: StillhotDocument, demand: Demand, deadEnds: DeadEnds, nth: number): Choice[] {
  const found: Choice[] = [];
  for (const choice of choices(document, demand, deadEnds)) {
    found.push(choice);
    const isEnough =
      found.length > nth &&
      found.some(({ customers, least, isApart }) => isApart && customers.count <= least);
    if (isEnough || found.length > nth + MOST_SETS_BEYOND) break;
  }
  return found.sort(byCost);
}

const byCost = (a: Choice, b: Choice): number => compareRanks(a.cost, b.cost);

/** Better sets, with the work cut off from a supply on its far side too, and that supply closed for the rest. */
function withTies(document: StillhotDocument, demand: Demand, first: Choice): Choice[] {
  const better: Choice[] = [];
  let best = first;
  let ties = demand.ties;
  while (ties.length < MOST_TIES && best.customers.count > 0) {
    const [next] = best.restored.refused
      .filter((it) => isOff(document.system, it))
      .slice(0, MOST_SUPPLIES_TRIED)
      .flatMap((tie) => {
        const [choice] = cheapest(document, { ...demand, ties: [...ties, tie] }, { ways: [], stuck: [] }, 0);
        return choice === undefined || byCost(choice, best) >= 0 ? [] : [{ choice, tie }];
      })
      .sort((a, b) => byCost(a.choice, b.choice));
    if (next === undefined) break;
    best = next.choice;
    ties = [...ties, next.tie];
    better.push(best);
  }
  return better;
}
