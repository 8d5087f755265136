import { elementsOfKind, isSameStructure, type StillhotDocument, type System } from "../../document";
import { SPIKE, type StepBy } from "../../steps";
import { conductorId, type Letter, type Message, type PointId, say } from "../../terms";
import { DISCHARGE_SECONDS } from "../effects/trappedCharge";
import { islandOf } from "../job/joined";
import { nameOf } from "../job/names";
import { leadsToSource } from "../rules/groundReturn";
import { comesWithWork, type GroundPlace, type Intent, placesOfSpikes, placesOfWork } from "./intent";
import { isInStation, isOnPole, RANK, step } from "./said";
import type { PlannedGroup } from "./schedule";
import type { PlannedStep } from "./types";

const SECONDS_A_MINUTE = 60;

/** The wait for what holds a charge. */
export const waiting = ({ waitSeconds }: Intent, open: readonly PlannedGroup[]): PlannedGroup[] =>
  waitSeconds === 0
    ? []
    : [
        {
          rank: RANK.wait,
          after: open,
          steps: [
            step(
              { do: "wait", seconds: waitSeconds },
              say("why.wait", { minutes: DISCHARGE_SECONDS / SECONDS_A_MINUTE }),
            ),
          ],
        },
      ];

/** The wait for what holds a charge, the tests and the grounds, once everything is open. */
export function provingDead(
  document: StillhotDocument,
  intent: Intent,
  open: readonly PlannedGroup[],
): PlannedGroup[] {
  const wait = intent.waitsToSupply ? [] : waiting(intent, open);
  const proofs = proofsAt(document, intent, [...open, ...wait], (it) => !comesWithWork(document, it));
  const spikes = placesOfSpikes(document).map(({ at, phases }): PlannedGroup => ({
    rank: RANK.retest,
    after: [...open, ...wait, ...proofs],
    at,
    steps: [step({ do: "test", at, phases, with: SPIKE }, say("why.test.spike"))],
  }));
  return [...wait, ...proofs, ...spikes];
}

/** The tests and the grounds where work at another place has hung what is worked on. */
export const provingWhatCame = (
  document: StillhotDocument,
  intent: Intent,
  worked: readonly PlannedGroup[],
): PlannedGroup[] => proofsAt(document, intent, worked, (it) => comesWithWork(document, it));

/** The tests and the grounds at some of the places, once what stands before them is done. */
function proofsAt(
  document: StillhotDocument,
  intent: Intent,
  open: readonly PlannedGroup[],
  isHere: (place: Pick<GroundPlace, "at" | "phases">) => boolean,
): PlannedGroup[] {
  const { system } = document;
  const work = placesOfWork(document, intent.choice.ready).filter(isHere);
  const testedAt = new Map(work.map((it) => [it.at, it.tested]));
  // Of a neutral in hand nobody takes it that it is one.
  const toGround = intent.grounds.filter(isHere).map((it) => ({
    ...it,
    tested: testedAt.get(it.at)?.includes("N") === true ? `${it.phases}N` : it.phases,
  }));
  // Beyond an open neutral a set has its way home by the others alone: those are on first.
  const [home, beyond] = partition(poles(system, toGround), (places) =>
    places.every(({ at, to }) => to === "earth" || leadsToSource(intent.choice.ready, at)),
  );
  const grounded = (places: readonly GroundPlaceTested[], after: readonly PlannedGroup[]): PlannedGroup => ({
    rank: RANK.ground,
    after: [...open, ...after],
    at: places[0]!.at,
    steps: [...testSteps(places), ...places.map((it) => groundStep(document, it))],
  });
  const first = home.map((places) => grounded(places, []));
  const grounds = [...first, ...beyond.map((places) => grounded(places, first))];
  const again = intent.retest ? work : work.filter(({ at }) => !intent.grounds.some((it) => it.at === at));
  const tests = poles(system, again).map((places): PlannedGroup => ({
    rank: RANK.retest,
    after: [...open, ...grounds],
    at: places[0]!.at,
    steps: testSteps(places).map((it) =>
      intent.retest && it.do === "test" ? { ...it, why: say("why.retest") } : it,
    ),
  }));
  return [...grounds, ...tests];
}

type GroundPlaceTested = GroundPlace & { readonly tested: string };

function partition<Item>(items: readonly Item[], isFirst: (item: Item) => boolean): [Item[], Item[]] {
  return [items.filter(isFirst), items.filter((it) => !isFirst(it))];
}

/** Places on one pole are tested together, then grounded: the detector is proven twice and not four times. */
function poles<Place extends { readonly at: PointId }>(system: System, places: readonly Place[]): Place[][] {
  const found: Place[][] = [];
  for (const place of places) {
    const pole = found.find(([first]) => isSameStructure(system, first!.at, place.at));
    if (pole === undefined) found.push([place]);
    else pole.push(place);
  }
  return found;
}

const checkBefore = step({ do: "check-detector" }, say("why.check-detector.before"));
const checkAfter = step({ do: "check-detector" }, say("why.check-detector.after"));

/** Tests of a dead line, the detector proven before and after. */
export const testSteps = (
  places: readonly { readonly at: PointId; readonly tested: string }[],
  why = say("why.test"),
): PlannedStep[] => [
  checkBefore,
  ...places.map(({ at, tested }) => step({ do: "test", at, phases: tested }, why)),
  checkAfter,
];

const groundStep = (document: StillhotDocument, it: GroundPlace): PlannedStep =>
  step(
    {
      do: "ground",
      element: it.id,
      at: it.at,
      phases: it.phases,
      to: it.to,
      first: "neutral",
      ...(it.cable === "" ? {} : { cable: it.cable as NonNullable<StepBy<"ground">["cable"]> }),
    },
    whyGround(document, it),
  );

const whyGround = (document: StillhotDocument, { at, bank }: GroundPlace): Message => {
  const gaps = { at: nameOf(document, at) };
  if (bank === undefined)
    return say(
      isOnPole(document.system, at)
        ? "why.ground.work"
        : isInStation(document.system, at)
          ? "why.ground.work.station"
          : "why.ground.work.enclosure",
      gaps,
    );
  const meters = metersOn(document.system, at);
  return say(WHY_SECONDARY[meters] ?? "why.ground.secondary.meters", {
    ...gaps,
    name: nameOf(document, bank),
    meters,
  });
};

/** By how many meters hang on a secondary; of more they are counted. */
const WHY_SECONDARY = ["why.ground.secondary", "why.ground.secondary.meter"] as const;

/** How many meters hang on a secondary as found: what a ground set on it is weighed against. */
function metersOn(system: System, at: PointId): number {
  const own = new Set(
    (["A", "B", "C", "1", "2"] as const).map((it) => islandOf(system, conductorId(at, it))),
  );
  own.delete(-1);
  return elementsOfKind(system, "meter").reduce((sum, [, it]) => {
    if (it.open !== "") return sum;
    return [...it.phases].some((letter) => own.has(islandOf(system, conductorId(it.from, letter as Letter))))
      ? sum + it.count
      : sum;
  }, 0);
}
