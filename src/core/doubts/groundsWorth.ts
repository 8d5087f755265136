import { GROUNDING_CABLES } from "../devices";
import {
  amended,
  elementsOfKind,
  hasNeutral,
  hopsFrom,
  perQuestion,
  phasesAtPoint,
  type StillhotDocument,
  type System,
} from "../document";
import type { ElementId, PointId, WorkPointId } from "../terms";
import { Asker } from "./asker";
import type { Doubt } from "./doubts";
import { asDrawn } from "./lookFirst";
import { whileWorking } from "./whileWorking";

/** What the ground sets do against what may be otherwise than drawn. */
export interface GroundsWorth {
  /** doubts that would put the worker over the limit if no set stood */
  readonly hurting: number;
  /** those of them that are harmless with the sets in place */
  readonly held: number;
  /** those that the sets do not hold */
  readonly left: readonly Doubt[];
  /** what would hold all that is left; nothing where none of what could be tried does, and where none is needed */
  readonly remedy: Remedy | undefined;
  /** how many doubts were asked before the work that one answer may take was spent, and how many there are */
  readonly asked: number;
  readonly of: number;
}

/** A cable of at least that size in every set, else one more set. */
export type Remedy = { readonly cable: string } | { readonly setAt: PointId };

/** The work that one answer may be, in multiplications: less than a second. */
const MOST_WORK = 1e6;

/** One more set is tried at points with at most so many things between them and the work. */
const MOST_HOPS = 2;

/** The cable of one more set: the largest that a hand can well put on; common practice, no source. */
const HEAVY_CABLE = "4/0";

/**
 * How many of the doubts around a work point the grounds make harmless: those of the order, as they stand when hands go
 * to the work, or those that are drawn where there is no order. Each doubt is asked with the sets taken away, and again with
 * them in place. Nothing where no set stands. That a line that is drawn is not there is left out: it stands, nearly always.
 */
export const groundsWorth: (document: StillhotDocument, id: WorkPointId) => GroundsWorth | undefined =
  perQuestion(worth);

function worth(document: StillhotDocument, id: WorkPointId): GroundsWorth | undefined {
  const drawn = asDrawn(document, id);
  const working = whileWorking(document, id);
  const grounded = working ?? drawn.grounded;
  const { system } = grounded.document;
  const sets = elementsOfKind(system, "ground").map(([set]) => set);
  if (sets.length === 0) return undefined;
  const bare = { ...grounded.document, system: amended(system, [{ remove: sets }]) };
  const asker = new Asker({
    ...drawn,
    base: { document: bare, tested: grounded.tested },
    grounded,
    handled: working?.handled ?? drawn.handled,
    mostWork: MOST_WORK,
  });
  const doubts = asker.doubts.filter((it) => it.doubt !== "no-span");
  const asked = doubts.filter((it) => asker.ask([it]));
  const hurting = asker.found.filter((it) => asker.isOver(it));
  const left = hurting.filter((it) => !it.groundsHold);
  const holdsAll = (changed: System) => left.every((it) => !asker.isSpent && asker.holds(it, changed));
  return {
    hurting: hurting.length,
    held: hurting.length - left.length,
    left: left.map((it) => it.doubts[0]!),
    remedy: left.length === 0 ? undefined : remedyFor(system, sets, drawn.workPoint.at, holdsAll),
    asked: asked.length,
    of: doubts.length,
  };
}

function remedyFor(
  system: System,
  sets: readonly ElementId[],
  at: PointId,
  holdsAll: (changed: System) => boolean,
): Remedy | undefined {
  const cable = GROUNDING_CABLES.find((size) => holdsAll(withCable(system, sets, size)));
  if (cable !== undefined) return { cable };
  const setAt = pointsNear(system, at).find((point) => holdsAll(withSet(system, point)));
  return setAt === undefined ? undefined : { setAt };
}

/** The drawing with at least such a cable in every set. */
function withCable(
  system: System,
  sets: readonly ElementId[],
  size: (typeof GROUNDING_CABLES)[number],
): System {
  const sizes: readonly unknown[] = GROUNDING_CABLES;
  const thinner = sets.filter((id) => sizes.indexOf(system.elements[id]!["cable"]) < sizes.indexOf(size));
  return amended(system, [{ set: Object.fromEntries(thinner.map((id) => [id, { cable: size }])) }]);
}

/** Points where one more set could stand, the nearest first. */
const pointsNear = (system: System, at: PointId): PointId[] =>
  [...hopsFrom(system, [at])]
    .filter(([id, hops]) => hops <= MOST_HOPS && phasesAtPoint(system, id) !== "")
    .sort(([, a], [, b]) => a - b)
    .map(([id]) => id as PointId);

/** The drawing with one more set, bonded to the pole. */
function withSet(system: System, at: PointId): System {
  const to = hasNeutral(system, at) ? "neutral" : "earth";
  const set = { kind: "ground", at, phases: phasesAtPoint(system, at), to, cable: HEAVY_CABLE } as const;
  return amended(system, [{ add: { elements: { [ONE_MORE]: set } } }]);
}

/** No file can hold a thing of this name. */
const ONE_MORE = "one more set";
